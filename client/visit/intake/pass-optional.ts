import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { isSettled } from '../steps/choose-step.ts';
import { ARRIVE_PLAN } from '../steps/plans.ts';

/**
 * The optional questions of arrival never stand in the way of work: whoever is at it already has passed them by, all
 * of them. They can still be answered at any time.
 */
export function passOptional(turn: Turn, { accepted, understanding }: HeardUtterance): void {
  const { step, questions } = turn.context;
  if (step?.optional !== true || questions.length > 0) return;
  if (!accepted || understanding.verdict !== 'logged' || !isWork(understanding.meaning)) return;
  const passed = ARRIVE_PLAN.filter((one) => one.optional === true && !isSettled(one, turn.context)).map(
    ({ id }) => id,
  );
  for (const id of passed) turn.record({ type: 'step.parked', step: id, why: BECAUSE.workBegan, optional: true });
}

/** Readings, looks, switches, parts and wires; the nameplate and what else is asked on arrival is not yet work. */
function isWork(meaning: Meaning): boolean {
  switch (meaning.kind) {
    case 'report':
      return meaning.report.type !== 'job-item' && meaning.report.type !== 'meter-proof';
    case 'several':
      return meaning.parts.some(isWork);
    case 'reading':
    case 'value':
    case 'part':
    case 'wire':
      return true;
    case 'command':
    case 'nameplate':
    case 'work':
    case 'note':
    case 'dictated':
    case 'check-on-me':
    case 'unclear':
      return false;
  }
}
