import {
  actionWords,
  CALL_BOTH_STAGES,
  DISCHARGE_WITH_START,
  type Pace,
  repairWords,
} from '../../words/talk/action-words.ts';
import { ANSWER } from '../../words/talk/answer-words.ts';
import { cautionById } from '../../words/talk/caution-words.ts';
import { plateQuestion } from '../../words/talk/plate-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { lookStepWords, placementWords, readingStepWords, underCautions } from '../../words/talk/step-words.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';
import { cautionsFor } from '../rules/cautions-due.ts';
import { unreadSections } from '../rules/charged-sections.ts';
import { repairOf } from '../rules/repairs.ts';
import { readOnceMore } from './choose-step.ts';
import { unreadFields } from './plate-steps.ts';

const HAZARDOUS: readonly ActionDone[] = ['capacitors-discharged', 'power-on'];

/** The words that ask a step; a live step already cautioned begins with the caution's short form. */
export function stepWords(step: Step, context: VisitContext): string {
  // A proof and a switch say themselves how they are met.
  const isSaid = step.ask.kind === 'action' && !HAZARDOUS.includes(step.ask.done);
  const leads = isSaid ? [] : cautionsFor(step).map((id) => cautionById(id).again);
  return underCautions(
    leads.filter((words) => words !== ''),
    askWords(step, context),
  );
}

/** A trainee is asked in full. */
export function paceOf({ role, pace }: VisitContext): Pace {
  return role === 'trainee' ? 'full' : pace;
}

/** Discharging ends in the first section to be read; each further one is asked for itself. */
function dischargeWords({ zone }: Step, context: VisitContext): string {
  const pace = paceOf(context);
  const [first] = zone === 'none' ? [] : unreadSections(zone, context);
  const plain = actionWords('capacitors-discharged', zone, pace);
  const words = pace === 'full' ? plain : withUnknownStart(plain, zone, context);
  if (first === undefined || pace === 'full') return words;
  return `${words} ${readingStepWords('', { quantity: 'voltage-dc', at: first.at, bench: false }, pace)}`;
}

/** Whether a start capacitor is there is not known: who looks for it finds it. */
function withUnknownStart(words: string, zone: Step['zone'], { unit, startCapacitor }: VisitContext): string {
  const isKnown = unit.hardStart !== undefined || startCapacitor;
  return zone !== 'outdoor-load' || isKnown ? words : DISCHARGE_WITH_START;
}

/** Where probes, clamps or hoses go for a step, and what the meter is set to. */
export function placeStepWords(step: Step, context: VisitContext): string {
  const { ask } = step;
  if (ask.kind === 'reading') return placementWords(ask) || ANSWER.nothingToPlace(askWords(step, context));
  if (ask.kind === 'action' && ask.done === 'clamps-placed') return ANSWER.clamps;
  if (ask.kind === 'action' && (ask.done === 'absence-proved' || ask.done === 'meter-again')) return ANSWER.knownSource;
  if (ask.kind === 'action' && ask.done === 'capacitors-discharged' && step.zone !== 'none') {
    const [first] = unreadSections(step.zone, context);
    if (first !== undefined) return placementWords({ quantity: 'voltage-dc', at: first.at });
  }
  return ANSWER.nothingToPlace(askWords(step, context));
}

/** What a step asks, without the short form of its caution. */
export function askWords(step: Step, context: VisitContext): string {
  const again = step.test !== undefined && context.phase === 'testing' ? readOnceMore(context) : undefined;
  const words = askedWords(step, context);
  if (again === undefined || again.id !== step.test) return words;
  return again.wait === undefined ? SAY.onceMore(words) : SAY.afterWait(again.wait, words);
}

function askedWords(step: Step, context: VisitContext): string {
  const pace = paceOf(context);
  const { ask } = step;
  switch (ask.kind) {
    case 'action':
      if (ask.done === 'part-fitted') return repairWords(repairOf(context.finding?.fault), pace);
      if (step.plate !== undefined) return plateQuestion(unreadFields(step, context), pace);
      if (ask.done === 'capacitors-discharged') return dischargeWords(step, context);
      if (ask.done === 'call-on' && context.unit.twoStage === true) return CALL_BOTH_STAGES[pace];
      return actionWords(ask.done, step.zone, pace);
    case 'look':
      return lookStepWords(step.id, { test: step.test, answers: ask.answers }, pace);
    case 'reading':
      return readingStepWords(step.id, { quantity: ask.quantity, at: ask.at, bench: step.needs.bench }, pace);
  }
}
