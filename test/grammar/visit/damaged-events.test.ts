import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { transcriptLines } from '../../../client/screens/review/transcript-lines.ts';
import { printedSheet } from '../../../client/words/printed/printed-sheet.ts';
import { readingsCsv } from '../../../grammar/export/readings-csv.ts';
import { talkVtt } from '../../../grammar/export/talk-vtt.ts';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { SEED, tries } from '../../how-much.ts';
import { tellFigure } from '../../promises/tell-figure.ts';

const bodiesOf = (name: string): string[] =>
  readFileSync(new URL(`../../../fixtures/visits/${name}/events.jsonl`, import.meta.url), 'utf8')
    .trim()
    .split('\n');

type Holder = Record<string, unknown> | unknown[];
/** What a damaged field may hold, of every kind that JSON has. */
/** Stands for lists within each other: no program writes them out of what it holds. */
const DEEP = 'nested deep';
const writtenOut = (event: VisitEvent) =>
  JSON.stringify(event).replaceAll(JSON.stringify(DEEP), `${'['.repeat(5_000)}${']'.repeat(5_000)}`);
const WRONG: readonly unknown[] = [
  undefined,
  null,
  0,
  -1,
  1e300,
  '',
  'x',
  [],
  {},
  [null],
  [[1]],
  { at: 1 },
  true,
  DEEP,
  ['x', DEEP],
  { x: 'x' },
];

/** Every place inside an event where something is held. */
function places(value: unknown, found: [Holder, string | number][] = []): [Holder, string | number][] {
  if (typeof value !== 'object' || value === null) return found;
  for (const key of Object.keys(value)) {
    found.push([value as Holder, key]);
    places((value as Record<string, unknown>)[key], found);
  }
  return found;
}

/** All that a reader is shown of a visit. */
function shown(events: readonly VisitEvent[]) {
  const folded = foldVisit(events);
  const record = toVisitRecord(events);
  return [transcriptLines(folded, events), printedSheet(record), readingsCsv(record), talkVtt(folded)];
}

describe('one damaged event of a known kind', { timeout: 600_000 }, () => {
  it('leaves the rest of the visit to be shown, whatever was done to it', () => {
    let at = SEED % 2_147_483_647;
    const random = (below: number) => {
      // Lehmer's congruence, 48271.
      at = (at * 48_271) % 2_147_483_647;
      return at % below;
    };
    const bodies = bodiesOf('low-charge');
    const whole = foldVisit(readBodies(bodies)).readings.length;
    const kinds = new Map<string, number[]>();
    for (const [index, body] of bodies.entries()) {
      const { type } = JSON.parse(body) as { type: string };
      kinds.set(type, [...(kinds.get(type) ?? []), index]);
    }
    const failed: string[] = [];
    for (const [type, indices] of kinds) {
      for (let round = 0; round < tries(4, 60); round += 1) {
        const index = indices[random(indices.length)] as number;
        const event = JSON.parse(bodies[index] as string) as VisitEvent;
        const all = places(event).filter(([holder, key]) => !(holder === (event as unknown) && key === 'type'));
        const [holder, key] = all[random(all.length)] as [Holder, string];
        const wrong = WRONG[random(WRONG.length)];
        (holder as Record<string, unknown>)[key] = wrong;
        const damaged = bodies.with(index, writtenOut(event));
        try {
          shown(readBodies(damaged));
          expect(foldVisit(readBodies(damaged)).readings.length).toBeGreaterThanOrEqual(whole - 1);
        } catch (error) {
          failed.push(
            `${type} ${key} = ${JSON.stringify(wrong)}: ${(error as Error).stack?.split('\n').slice(0, 3).join(' ')}`,
          );
        }
      }
    }
    tellFigure('damaged events shown', kinds.size * tries(4, 60) - failed.length);
    expect(failed).toEqual([]);
  });
});
