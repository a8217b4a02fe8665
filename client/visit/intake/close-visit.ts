import type { VisitSummary } from '../../../grammar/visit/events.ts';
import type { VisitContext } from '../context.ts';
import { jumpersInPlace, looseWires } from '../landings.ts';
import { capital, faultWords, placeWords, pointNamed, readbackWords, SAY, valueWords } from '../prompts.ts';
import type { Turn } from '../turn.ts';

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
  turn.record({ type: 'visit.closed', summary });
  turn.say('answer', `${summary.plain}${summary.openItems.length === 0 ? '' : ` ${SAY.openItems(summary.openItems)}`}`);
  turn.raise({ type: 'step.set-aside' });
  turn.raise({ type: 'phase.go', to: 'closed' });
}

function whyNotClosed(context: VisitContext): readonly string[] {
  const loose = looseWires(context.wires).map((wire) =>
    [wire.size, wire.colour, 'wire from', pointNamed(wire.from)].filter(Boolean).join(' '),
  );
  return [
    ...(jumpersInPlace(context.wires) > 0 ? ['A jumper is still in place. Take it off and say so.'] : []),
    ...(loose.length > 0 ? [`Not landed: ${loose.join(', ')}. Land it and say so.`] : []),
    ...(context.question === undefined ? [] : ['A question stands open. Answer it first.']),
  ];
}

function summarise(context: VisitContext, left: readonly string[]): VisitSummary {
  const { finding } = context;
  const repaired = context.parts.length > 0;
  const proved = context.readings.some((item) => item.phase === 'prove');
  const technical = context.readings.map(
    ({ number, reading, phase, judgedWord }) =>
      `${number}. ${phase}: ${readbackWords(reading)}${judgedWord === undefined ? '' : ` ${capital(judgedWord)}.`}`,
  );
  return {
    finding: finding?.fault ?? 'none',
    technical: [...technical, ...pairs(context)],
    plain: plainWords(context),
    openItems: [
      ...left,
      ...(repaired && !proved ? ['the repair was not proved by readings'] : []),
      ...(context.settled.includes('energy.covers-on') ? [] : ['covers were not reported back on']),
      ...(context.call === 'unknown' ? ['the thermostat was not reported'] : []),
      ...context.parts.flatMap((part) => part.doubts.map((doubt) => `${part.part}: ${doubt}`)),
      ...context.parked.map(({ step, why }) => `${step}: ${why}`),
    ],
  };
}

/** The same place read before the repair and in its proof, side by side. */
function pairs(context: VisitContext): readonly string[] {
  const after = context.readings.filter((item) => item.phase === 'prove');
  return after.flatMap(({ reading }) => {
    const before = context.readings.find(
      (item) =>
        item.phase !== 'prove' &&
        item.reading.quantity === reading.quantity &&
        placeWords(item.reading.at) === placeWords(reading.at),
    );
    if (before === undefined) return [];
    const was = valueWords(before.reading.value, before.reading.unit);
    return [`Before and after, ${placeWords(reading.at)}: ${was}, then ${valueWords(reading.value, reading.unit)}.`];
  });
}

function plainWords(context: VisitContext): string {
  const { finding, parts } = context;
  if (finding === undefined) return 'No fault was proved on this visit. What was measured is in the record.';
  const found = `The readings point to this: ${faultWords(finding.fault)}.`;
  const done = parts.length === 0 ? 'No part was fitted.' : `Fitted: ${parts.map((part) => part.words).join('; ')}.`;
  return `${found} ${done} What was measured before and after is in the record.`;
}
