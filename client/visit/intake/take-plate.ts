import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { isSettled } from '../steps/choose-step.ts';
import { PLATE_PLAN, plateStep, unreadFields } from '../steps/plate-steps.ts';

/** A line of the plate that cannot be read: the next one is asked, without a word. Where none was asked, the step is put again. */
export function passPlateLine(turn: Turn): void {
  const { step } = turn.context;
  if (step === undefined) return void turn.say('question', SAY.notTaken);
  if (step.plate === undefined) return turn.repeatStep();
  for (const field of unreadFields(step, turn.context))
    turn.record({ type: 'step.parked', step: plateStep(field), why: BECAUSE.unreadable, optional: true });
}

/** Who passes the plate passes all that is left of it. */
export function passPlate(turn: Turn, why: string): void {
  for (const { id } of PLATE_PLAN.filter((step) => !isSettled(step, turn.context)))
    turn.record({ type: 'step.parked', step: id, why, optional: true });
  turn.raise({ type: 'step.answered' });
}
