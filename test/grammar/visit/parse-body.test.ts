import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MOST_NESTED, parseBody } from '../../../grammar/visit/parse-body.ts';
import { isInTheOpen } from '../../../grammar/visit/personal.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';

const nested = (depth: number, inside = '') => `${'['.repeat(depth)}${inside}${']'.repeat(depth)}`;
const VISITS = ['fuse', 'library', 'low-charge', 'one-pole'];

/** How deep JSON is nested, by JSON.parse alone. */
function depthOf(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  return 1 + Math.max(0, ...Object.values(value).map(depthOf));
}

describe('a body', () => {
  test('is parsed as far as events are nested, with room', () => {
    for (const name of VISITS) {
      const url = new URL(`../../../fixtures/visits/${name}/events.jsonl`, import.meta.url);
      for (const body of readFileSync(url, 'utf8').trim().split('\n')) {
        expect(parseBody(body)).toEqual(JSON.parse(body));
        expect(depthOf(JSON.parse(body))).toBeLessThan(MOST_NESTED / 4);
      }
    }
  });

  test.each([
    ['as deep as is read', nested(MOST_NESTED), true],
    ['deeper', nested(MOST_NESTED + 1), false],
    ['far deeper, of records', `${'{"a":'.repeat(9_000)}1${'}'.repeat(9_000)}`, false],
    ['wide, and not deep', `[${'[],'.repeat(5_000)}[]]`, true],
    ['deep in a text alone', JSON.stringify({ text: '[{'.repeat(5_000) }), true],
    ['deep in a text behind a quote in it', JSON.stringify({ text: `"\\"${'['.repeat(5_000)}` }), true],
    ['deep behind a text that ends in a backslash', `["\\\\",${nested(MOST_NESTED)}]`, false],
  ])('%s', (_, body, isRead) => {
    expect(parseBody(body) !== undefined).toBe(isRead);
  });

  test('that is nested deeper is no event, keeps its number, and may hold what is personal', () => {
    const time = { at: '2026-06-15T14:00:00.000Z', mono: 1 };
    const body = `{"type":"note.taken","text":"the Harpers","x":${nested(5_000)},"time":${JSON.stringify(time)}}`;
    const [event, next] = readBodies([body, JSON.stringify({ type: 'visit.held', time })]);
    expect([event?.type, next?.type]).toEqual(['unreadable', 'visit.held']);
    expect(isInTheOpen(body)).toBe(true);
  });

  test.each(['2026', 'June 15, 2026', '2026-06-15T14:00:00+02:00', '2026-13-45T14:00:00Z', 5])(
    'that claims the time %s is none',
    (at) => {
      const [event] = readBodies([JSON.stringify({ type: 'visit.held', time: { at, mono: 1 } })]);
      expect(event?.type).toBe('unreadable');
    },
  );
});
