import { repairsMade } from '../../../grammar/visit/standing.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { VisitContext } from '../chart/context.ts';
import { isLeftPassed } from '../steps/choose-step.ts';

/** Where nothing is left that tells more, or only what was passed over. */
export function nothingNextWords(context: VisitContext): string {
  if (isLeftPassed(context)) return SAY.leftPassed;
  return repairsMade(context).length > 0 ? SAY.nothingNextRepaired : SAY.nothingNext;
}
