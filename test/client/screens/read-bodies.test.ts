import { describe, expect, test } from 'vitest';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';

const time = { at: '2026-06-15T14:00:00.000Z', mono: 4_000 };

describe('a record read by a page of another version', () => {
  test('keeps the number of every entry, and shows what it does not know as unknown', () => {
    const bodies = [
      JSON.stringify({ type: 'note.taken', text: 'first', time }),
      JSON.stringify({ type: 'drone.launched', height: 3, time: { ...time, mono: 5_000 } }),
      JSON.stringify({ type: 'input.taken', input: { type: 'blinked.eye', time } }),
      JSON.stringify({ type: 'note.taken', text: 'no time' }),
      JSON.stringify({ type: 'input.taken' }),
      'not json at all',
      '7',
      JSON.stringify({ type: 'note.taken', text: 'last', time: { ...time, mono: 9_000 } }),
    ];
    const folded = foldVisit(readBodies(bodies));
    expect(folded.notes.map(({ seq, text }) => [seq, text])).toEqual([
      [1, 'first'],
      [8, 'last'],
    ]);
    expect(folded.unknown.map(({ seq, type }) => [seq, type])).toEqual([
      [2, 'drone.launched'],
      [4, 'unreadable'],
      [5, 'unreadable'],
      [6, 'unreadable'],
      [7, 'unreadable'],
    ]);
    expect(folded.unknown.map((line) => line.time.mono)).toEqual([5_000, 4_000, 4_000, 4_000, 4_000]);
  });
});
