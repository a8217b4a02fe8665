import type { Meaning, Report } from '../../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';

/** Whether what was said answers the step whose caution was spoken whole in the same breath: nobody need say more. */
export function answersCaution({ step, caution }: VisitContext, meaning: Meaning): boolean {
  if (step === undefined || caution === undefined || isHeldBack({ step, caution })) return false;
  return answersStep(step, meaning.kind === 'several' ? meaning.parts[0] : meaning);
}

/**
 * Its caution is not through yet, or the step was not in its breath. At a discharge the caution says what is to be done:
 * who reads a section behind it answers that.
 */
export function isHeldBack({ step, caution }: Pick<VisitContext, 'step' | 'caution'>): boolean {
  if (caution === undefined) return false;
  const isDischarge = step?.ask.kind === 'action' && step.ask.done === 'capacitors-discharged';
  return !(caution.isSpoken && (caution.withStep || isDischarge));
}

/** What is done is answered by its own kind of words: a reading answers no switch. */
const ANSWERED_BY: Readonly<Partial<Record<ActionDone, readonly Meaning['kind'][]>>> = {
  'absence-proved': ['reading', 'value'],
  'meter-again': ['reading', 'value'],
  'capacitors-discharged': ['reading', 'value'],
  'part-fitted': ['part', 'work', 'wire'],
  'wires-landed': ['wire'],
};

function answersStep({ ask }: Step, meaning: Meaning | undefined): boolean {
  if (meaning === undefined) return false;
  switch (ask.kind) {
    case 'reading':
      if (meaning.kind === 'value') return true;
      return meaning.kind === 'reading' && samePlaces(meaning.reading.at, ask.at);
    case 'look': {
      const seen = meaning.kind === 'report' && meaning.report.type === 'observation' && meaning.report.observation;
      return seen !== false && ask.answers.includes(seen);
    }
    case 'action':
      if (meaning.kind === 'report') return answersAction(ask.done, meaning.report);
      return ANSWERED_BY[ask.done]?.includes(meaning.kind) === true;
  }
}

/** A switch answers only what asked for it so; an injury answers nothing. */
function answersAction(done: ActionDone, report: Report): boolean {
  if (report.type === 'energy') {
    const isOpen = report.state === 'open' || report.state === 'locked';
    return isOpen !== (done === 'power-on');
  }
  return report.type !== 'injury' && report.type !== 'observation';
}
