import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { ISOLATION_PLACES } from '../rules/isolation-places.ts';
import { jumpersInPlace, looseWires } from '../rules/landings.ts';
import { pointNamed, SAY } from '../words/prompts.ts';
import { endCheck } from './check-on-me.ts';
import { summarise } from './summarise.ts';

/** Closes the visit, or refuses and says why; a note spoken right after is the reason that overrides. */
export function closeVisit(turn: Turn): void {
  const refused = whyNotClosed(turn.context);
  if (refused.length > 0) {
    turn.set({ closeRefused: refused });
    turn.record({ type: 'close.refused', why: refused });
    turn.say('answer', `Not closed: ${refused.join(' ')} To close all the same, say note and the reason.`);
    return;
  }
  close(turn, []);
}

/** The reason for closing with something left: it is recorded, and what is left stays an open item. */
export function overrideClose(turn: Turn, reason: string): void {
  const why = turn.context.closeRefused;
  turn.record({ type: 'close.overridden', why, reason });
  turn.set({ closeRefused: [], question: undefined });
  close(turn, [...why, `closed all the same: ${reason}`]);
}

function close(turn: Turn, left: readonly string[]): void {
  const summary = summarise(turn.context, left);
  endCheck(turn);
  turn.record({ type: 'visit.closed', summary });
  turn.say('answer', `${summary.plain}${summary.openItems.length === 0 ? '' : ` ${SAY.openItems(summary.openItems)}`}`);
  turn.raise({ type: 'step.set-aside' });
  turn.raise({ type: 'phase.go', to: 'closed' });
}

function whyNotClosed(context: VisitContext): readonly string[] {
  const loose = looseWires(context.wires).map((wire) =>
    [wire.size, wire.colour, 'wire from', pointNamed(wire.from)].filter(Boolean).join(' '),
  );
  const locked = ISOLATION_PLACES.filter((place) => context.isolation[place] === 'locked');
  return [
    ...(jumpersInPlace(context.wires) > 0 ? ['A jumper is still in place. Take it off and say so.'] : []),
    ...(loose.length > 0 ? [`Not landed: ${loose.join(', ')}. Land it and say so.`] : []),
    ...locked.map((place) => `The switch at the ${place.replace('-', ' ')} is still locked. Report it back on.`),
    ...(context.question === undefined ? [] : [SAY.questionOpen]),
  ];
}
