import { MS_A_MINUTE, type VisitInput } from '../../../grammar/visit/inputs.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { minutesToStand } from '../rules/refrigerant-plan.ts';
import { chooseStep } from '../steps/choose-step.ts';
import { lapseProofs } from './end-proofs.ts';
import { minutesLeft } from './take-proof.ts';
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
  const { questions, lastPrompt, held } = turn.context;
  if (questions.length > 0) turn.putQuestion();
  else if (held) turn.say('answer', SAY.held);
  else if (chooseStep(turn.context) === undefined && lastPrompt !== undefined && cut === undefined) {
    turn.say('answer', lastPrompt.text);
  }
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
