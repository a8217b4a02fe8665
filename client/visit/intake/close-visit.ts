import type { VisitSummary } from '../../../grammar/visit/events.ts';
import type { VisitContext } from '../context.ts';
import { capital, faultWords, readbackWords, SAY } from '../prompts.ts';
import type { Turn } from '../turn.ts';

/** Closes the visit, or refuses and says why. Open items are named in the summary; a jumper in place always refuses. */
export function closeVisit(turn: Turn): void {
  const refused = whyNotClosed(turn.context);
  if (refused.length > 0) {
    turn.record({ type: 'close.refused', why: refused });
    turn.say('answer', `Not closed: ${refused.join(' ')}`);
    return;
  }
  const summary = summarise(turn.context);
  turn.record({ type: 'visit.closed', summary });
  turn.say('answer', `${summary.plain}${summary.openItems.length === 0 ? '' : ` ${SAY.openItems(summary.openItems)}`}`);
  turn.raise({ type: 'step.set-aside' });
  turn.raise({ type: 'phase.go', to: 'closed' });
}

function whyNotClosed(context: VisitContext): readonly string[] {
  const on = context.wires.filter((wire) => wire.action === 'jumper-on').length;
  const off = context.wires.filter((wire) => wire.action === 'jumper-off').length;
  const lifted = context.wires.filter((wire) => wire.action === 'lifted').length;
  const landed = context.wires.filter((wire) => wire.action === 'landed').length;
  return [
    ...(on > off ? ['A jumper is still in place. Take it off and say so.'] : []),
    ...(lifted > landed ? ['A wire that was lifted is not landed. Land it and say so.'] : []),
    ...(context.question === undefined ? [] : ['A question stands open. Answer it first.']),
  ];
}

function summarise(context: VisitContext): VisitSummary {
  const { finding } = context;
  const unproved = context.readings.some((item) => item.phase === 'prove')
    ? []
    : ['the repair was not proved by readings'];
  const covers = context.settled.includes('energy.covers-on') ? [] : ['covers were not reported back on'];
  const parked = context.parked.map(({ step, why }) => `${step}: ${why}`);
  const technical = context.readings.map(
    ({ number, reading, phase, judgedWord }) =>
      `${number}. ${phase}: ${readbackWords(reading)}${judgedWord === undefined ? '' : ` ${capital(judgedWord)}.`}`,
  );
  return {
    finding: finding?.fault ?? 'none',
    technical,
    plain: plainWords(context),
    openItems: [...unproved, ...covers, ...parked],
  };
}

function plainWords(context: VisitContext): string {
  const { finding, parts } = context;
  if (finding === undefined) return 'No fault was proved on this visit. What was measured is in the record.';
  const found = `The readings point to this: ${faultWords(finding.fault)}.`;
  const done = parts.length === 0 ? 'No part was fitted.' : `Fitted: ${parts.join(', ')}.`;
  return `${found} ${done} What was measured before and after is in the record.`;
}
