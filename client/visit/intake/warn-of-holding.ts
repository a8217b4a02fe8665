import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { holdsWithoutCall } from '../rules/holds-without-call.ts';
import { isOpened } from '../rules/isolation.ts';

/** A pull-out is no load switch, and nothing else drops this load: how it is opened is said before anybody does. */
export function warnOfHolding(turn: Turn): void {
  if (isOpened('outdoor-load', turn.context) || !holdsWithoutCall(turn.context)) return;
  turn.warn(SAY.holdsWithoutCall, 'outdoor-load');
}
