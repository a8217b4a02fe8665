import { isBypassed, leadsOff, overcurrentLeft, wireMoves } from '../../../grammar/visit/standing.ts';
import { ISOLATION_PLACES } from '../../../grammar/vocabulary/isolation-places.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { asOpen, NOT_CLOSED } from '../../words/talk/doubt-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { looseWireWords } from '../../words/things/wire-words.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { jumpersInPlace, looseWires } from '../rules/landings.ts';
import { endCheck } from './check-on-me.ts';
import { withdrawQuestions } from './questions.ts';
import { summarise } from './summarise.ts';

/** Closes the visit, or refuses and says why; a note spoken right after is the reason that overrides. */
export function closeVisit(turn: Turn): void {
  const refused = whyNotClosed(turn.context);
  if (refused.length > 0) {
    turn.record({ type: 'close.refused', why: refused });
    turn.say('answer', SAY.notClosed(refused));
    return;
  }
  close(turn, []);
}

/** The reason for closing with something left: it is recorded, and what is left stays an open item. */
export function overrideClose(turn: Turn, reason: string): void {
  const why = turn.context.closeRefused;
  turn.record({ type: 'close.overridden', why, reason });
  withdrawQuestions(turn);
  close(turn, [...why, BECAUSE.closedAllTheSame(reason)]);
}

/** What a close would name as open now: first what would refuse it, then what it would leave. */
export function openAtClose(context: VisitContext): readonly string[] {
  return summarise(context, whyNotClosed(context)).openItems;
}

function close(turn: Turn, left: readonly string[]): void {
  const summary = summarise(turn.context, left.map(asOpen));
  endCheck(turn);
  turn.record({ type: 'visit.closed', summary });
  turn.say('answer', SAY.closed(summary));
  turn.talk({ step: undefined, caution: undefined });
  turn.record({ type: 'phase.entered', phase: 'closed' });
}

/** What was done in each zone that was not proven dead then, each thing once. */
function unprovenWork({ unproven }: VisitContext): readonly string[] {
  return ZONES.flatMap((zone) => {
    const what = [...new Set(unproven.filter((line) => line.zone === zone).map((line) => line.what))];
    return what.length === 0 ? [] : [NOT_CLOSED.unproven(zone, what)];
  });
}

function whyNotClosed(context: VisitContext): readonly string[] {
  const loose = looseWires(wireMoves(context)).map(looseWireWords);
  const locked = ISOLATION_PLACES.filter((place) => context.lockedBy[place] !== undefined);
  return [
    ...(jumpersInPlace(wireMoves(context)) > 0 ? [NOT_CLOSED.jumper] : []),
    ...(isBypassed(context) ? [NOT_CLOSED.bypassed] : []),
    ...overcurrentLeft(context).map(({ words }) => NOT_CLOSED.refusedPart(words)),
    ...leadsOff(context).map(NOT_CLOSED.leadsOff),
    ...(loose.length > 0 ? [NOT_CLOSED.notLanded(loose)] : []),
    ...locked.map(NOT_CLOSED.locked),
    ...unprovenWork(context),
    ...(context.questions.length === 0 ? [] : [SAY.questionOpen]),
  ];
}
