import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { SHOWN_LISTS, transcriptLines } from '../../../client/screens/review/transcript-lines.ts';
import { ENTRIES, entryOf, INPUT_ENTRIES } from '../../../client/words/shown/entry-words.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { inTodaysNames } from '../../../grammar/visit/older-events.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { PROJECT_ROOT } from '../../browser/project-root.ts';
import { RECORDED, recordedBodies } from '../../browser/put-visit.ts';

const OLD_RECORDS = ['0.2.0-library', '0.2.0-one-pole'] as const;
const oldBodies = (name: string) =>
  readFileSync(join(PROJECT_ROOT, 'fixtures/records', `${name}.jsonl`), 'utf8')
    .trim()
    .split('\n');
const visits: readonly (readonly [string, readonly VisitEvent[]])[] = [
  ...RECORDED.map((name) => [name, readBodies(recordedBodies(name))] as const),
  ...OLD_RECORDS.map((name) => [name, readBodies(oldBodies(name))] as const),
];

/** The types of a union, as its source names them: what the compiler checks is asked of the text as well. */
function typesIn(file: string): readonly string[] {
  const source = readFileSync(join(PROJECT_ROOT, 'grammar/visit', file), 'utf8');
  return [...new Set([...source.matchAll(/readonly type: '([a-z]+\.[a-z]+)'/g)].map((match) => match[1] ?? ''))];
}

describe('what a record holds', () => {
  test('has for each kind of event, as events and inputs name them, a line, a line it stands with, or a reason', () => {
    const events = typesIn('events.ts').filter((type) => type !== 'input.taken');
    expect(events.length).toBeGreaterThan(80);
    expect(events.filter((type) => !Object.hasOwn(ENTRIES, type))).toEqual([]);
    const inputs = typesIn('inputs.ts');
    expect(inputs.length).toBeGreaterThan(8);
    expect(inputs.filter((type) => !Object.hasOwn(INPUT_ENTRIES, type))).toEqual([]);
    for (const entry of [...Object.values(ENTRIES), ...Object.values(INPUT_ENTRIES)]) {
      if (typeof entry === 'function') continue;
      if ('withLine' in entry) expect(SHOWN_LISTS).toContain(entry.withLine);
      else expect(entry.leftOut).toMatch(/\w{3}/);
    }
  });

  test.each(visits)('is shown or named entry by entry: %s', (_, events) => {
    const lines = transcriptLines(foldVisit(events), events);
    const seqs = new Set(lines.map(({ seq }) => seq));
    const missing = events
      .map((event, index) => ({ seq: index + 1, event: inTodaysNames(event) }))
      .filter(({ seq }) => !seqs.has(seq))
      // What stands with a line of another entry: the verdict of a reading, the answer to a caution.
      .filter(({ event }) => !['reading.judged', 'caution.acknowledged'].includes(event.type))
      .map(({ event }) => event.type);
    expect(missing).toEqual([]);
    expect(lines.every(({ text }) => text.trim() !== '' && !text.includes('undefined'))).toBe(true);
    const order = lines.map(({ seq }) => seq);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  test.each(visits)('leaves out of %s only kinds whose reason is given, and says how many of each', (_, events) => {
    const left = transcriptLines(foldVisit(events), events).filter(({ leftOut }) => leftOut !== undefined);
    const named = Object.entries({ ...ENTRIES, ...INPUT_ENTRIES })
      .filter(([, entry]) => typeof entry !== 'function' && 'leftOut' in entry)
      .map(([type]) => type);
    expect([...new Set(left.map(({ text }) => text))].filter((type) => !named.includes(type))).toEqual([]);
  });

  test('what it holds of a later version is shown as unknown, and what cannot be put into words as that', () => {
    const time = { at: '2026-06-15T14:00:00.000Z', mono: 0 };
    const events = [
      { type: 'drone.launched', time },
      { type: 'input.taken', input: { type: 'waved.hand', time } },
      { type: 'deed.reported', deed: { type: 'juggled' }, time },
      { type: 'wire.moved', wire: {}, time },
      { type: 'suspects.ranked', version: 'x', forSeq: 1, suspects: [null], hazards: [], time },
    ] as unknown as VisitEvent[];
    const lines = transcriptLines(foldVisit(events.slice(0, 2)), events.slice(0, 2));
    expect(lines.map(({ kind, text }) => [kind, text])).toEqual([
      ['unknown', 'Unknown entry: drone.launched'],
      ['unknown', 'Unknown entry: waved.hand'],
    ]);
    expect(() => transcriptLines(foldVisit(events.slice(0, 1)), events)).not.toThrow();
    expect(entryOf(events[0] as VisitEvent)).toBeUndefined();
  });
});
