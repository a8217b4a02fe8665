import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { factsOf } from '../../../grammar/visit/facts-of.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { TypedVisit } from '../../client/visit/typed-visit.ts';

/** Records that version 0.2.0 wrote, kept as they are: a recorded visit of each kind, to its close. */
const RECORDS = ['0.2.0-library', '0.2.0-one-pole'] as const;

function bodiesOf(name: string): readonly string[] {
  const file = new URL(`../../../fixtures/records/${name}.jsonl`, import.meta.url);
  return readFileSync(file, 'utf8').trim().split('\n');
}

const eventsOf = (bodies: readonly string[]): readonly VisitEvent[] => bodies.map((body) => JSON.parse(body));

describe.each(RECORDS)('the record %s of an older version', (name) => {
  const bodies = bodiesOf(name);
  const view = foldVisit(eventsOf(bodies));

  it('is shown whole', () => {
    expect(view.phase).toBe('closed');
    expect(view.finding?.probability).toBeGreaterThan(0.95);
    expect(view.readings.length).toBeGreaterThan(5);
    expect(view.parts.length).toBeGreaterThan(0);
    expect(view.summary?.technical.length).toBeGreaterThan(5);
    expect([view.unknown, view.damaged]).toEqual([[], []]);
  });

  it('ends in what its own events say of each zone', () => {
    for (const [zone, energy] of Object.entries(view.energy)) {
      expect(energy).toBe(view.energyChanges.findLast((change) => change.zone === zone)?.to ?? 'unknown');
    }
  });

  it('tells the running visit what the view tells: facts are held once', () => {
    const facts = factsOf(eventsOf(bodies));
    for (const [fact, held] of Object.entries(facts)) expect(view[fact as keyof typeof view]).toEqual(held);
  });

  it.each([0.2, 0.4, 0.6, 0.8])('restores from its first %s, believes no proof, and can be closed', async (share) => {
    const inputs = bodies.flatMap((body, index) => (body.startsWith('{"type":"input.taken"') ? [index] : []));
    const kept = bodies.slice(0, inputs[Math.floor(share * inputs.length)]);
    const past = factsOf(eventsOf(kept));
    const visit = new TypedVisit();
    visit.bodies.push(...kept);
    visit.clock.step(past.now.mono / 60_000 + 24 * 60);
    visit.run = await VisitRun.restore(visit.edges(), kept);
    await visit.run.settled();
    const { context } = visit.run;
    expect(context.readings).toEqual(past.readings);
    expect([context.phase, context.finding, context.parts]).toEqual([past.phase, past.finding, past.parts]);
    expect(Object.values(context.energy)).not.toContain('proven-dead');
    await visit.type(
      'outdoor disconnect is back in',
      'breaker at the panel is back on',
      'finish the visit',
      'note the visit went on under another version',
    );
    expect(visit.run.context.phase).toBe('closed');
  });
});
