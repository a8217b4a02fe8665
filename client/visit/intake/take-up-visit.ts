import { MS_A_MINUTE, type VisitInput } from '../../../grammar/visit/inputs.ts';
import { latestReading } from '../../../grammar/visit/standing.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { minutesToStand } from '../rules/refrigerant-plan.ts';
import { chooseStep } from '../steps/choose-step.ts';
import { zoneOf } from '../steps/plans.ts';
import { lapseProofs } from './end-proofs.ts';
import { cautionLate } from './late-cautions.ts';
import { minutesLeft } from './take-proof.ts';
import { isLiveVoltage } from './take-reading.ts';
import { QUIET_MINUTES } from './take-timer.ts';

/**
 * A visit taken up again from its record: the timers that ran are set anew, and what stood open is put again (the
 * step by the step itself). Where the record broke off inside a sentence, what of it was kept is not known.
 */
export function takeUpVisit(turn: Turn, { cut }: Extract<VisitInput, { type: 'restored.visit' }>): void {
  if (turn.context.visit === '') return;
  if (cut !== undefined) {
    if (Object.values(turn.context.energy).some((state) => IN_PROOF.includes(state))) {
      lapseProofs(turn, BECAUSE.recordCut, SAY.recordCut);
    } else turn.say('warning', SAY.recordCut);
  }
  setTimers(turn);
  cautionCutOff(turn);
  if (!putAgain(turn) && chooseStep(turn.context) === undefined && cut === undefined) {
    const { lastPrompt } = turn.context;
    if (lastPrompt !== undefined) turn.say('answer', lastPrompt.text);
  }
}

/**
 * A visit carried on by another device. What was proven dead was proven by another's hands: it is proven again before
 * these go in (common practice: each who works on it verifies for themselves).
 */
export function takeOverVisit(turn: Turn, input: Extract<VisitInput, { type: 'took.over.visit' }>): void {
  const { type: _type, time: _time, software: _software, ...taken } = input;
  turn.record({ type: 'visit.taken-over', ...taken });
  turn.say('answer', SAY.takenOver(turn.context.site));
  if (input.missing !== undefined) turn.say('warning', SAY.entriesMissing(input.missing));
  const proven = ZONES.some((zone) => IN_PROOF.includes(turn.context.energy[zone]));
  if (proven || turn.context.discharged.length > 0) lapseProofs(turn, BECAUSE.takenOver, SAY.provenByAnother);
  setTimers(turn);
  putAgain(turn);
}

/** Where the talk broke off before the caution behind the latest reading was given whole, it is given now. */
function cautionCutOff(turn: Turn): void {
  const { energy, search } = turn.context;
  const reading = latestReading(turn.context)?.reading;
  if (search !== undefined || reading?.quantity !== 'voltage' || !isLiveVoltage(reading)) return;
  const zone = zoneOf(reading.at);
  if (zone !== 'none' && energy[zone] === 'live') cautionLate(turn, zone);
}

/** What stood open when the talk broke off. */
function putAgain(turn: Turn): boolean {
  const { questions, held } = turn.context;
  if (questions.length > 0) turn.putQuestion();
  else if (held) turn.say('answer', SAY.held);
  return questions.length > 0 || held;
}

function setTimers(turn: Turn): void {
  const { context } = turn;
  const { check, energy, now, lastHeard, proof } = context;
  turn.callSplitTime();
  if (minutesToStand(context) > 0) turn.startTimer('refrigerant', minutesToStand(context));
  if (proof !== undefined) turn.startTimer('proof', minutesLeft(proof, now.mono));
  if (check !== undefined) turn.startTimer('check', Math.max(0, (check.due - now.mono) / MS_A_MINUTE));
  if (Object.values(energy).some((state) => IN_PROOF.includes(state))) {
    turn.startTimer('quiet', Math.max(0, QUIET_MINUTES - (now.mono - lastHeard) / MS_A_MINUTE));
  }
}
