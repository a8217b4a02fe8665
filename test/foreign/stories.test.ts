import { describe, expect, it } from 'vitest';
import type { AskedTest } from '../../client/practice/plant/answer-test.ts';
import { unitOf } from '../../client/practice/plant/hidden-case.ts';
import { listLines } from '../../client/terminal/diagnose-session.ts';
import { caseOf, STORIES } from './stories.ts';
import { PUBLISHED } from './story.ts';

const TESTS = new Map(
  (listLines() as (AskedTest & { list: string })[]).filter((l) => l.list === 'test').map((t) => [t.id, t]),
);

/** The third simulator is held to what texts say is read; only then may it judge anybody. */
describe('what texts say is read at a fault', () => {
  it('has twenty stories and more, two of them of two faults', () => {
    expect(STORIES.length).toBeGreaterThanOrEqual(20);
    expect(STORIES.filter((s) => s.hidden.length === 2)).toHaveLength(2);
    expect(new Set(STORIES.map((s) => s.title)).size).toBe(STORIES.length);
  });

  const published = STORIES.filter(({ source }) => source.startsWith(PUBLISHED));

  it(`takes ${published.length} of its ${STORIES.length} stories from published texts, the rest from common practice`, () => {
    expect(published.length).toBeGreaterThanOrEqual(20);
    const named = published.map(({ source }) => source.slice(PUBLISHED.length));
    expect(named.every((source) => source.length > 20)).toBe(true);
    for (const source of new Set(named)) {
      const these = published.filter((story) => story.source.endsWith(source));
      process.stdout.write(`${these.length} stories: ${source}\n`);
    }
  });

  it.each(STORIES.map((story) => [story.title, story] as const))('%s', (_title, story) => {
    const { build, seed, hidden } = caseOf(story);
    // What stands before another fault is read with that one mended.
    const units = hidden.map((_, i) => unitOf(build, seed, hidden.slice(i)));
    for (const [id, said] of Object.entries(story.reads)) {
      const readings = units.map((unit) => unit.answer(TESTS.get(id)!));
      const agrees = readings.some((reading) =>
        typeof said === 'string'
          ? reading === said
          : typeof reading === 'number' && reading >= said[0]! && reading <= said[1]!,
      );
      expect(agrees, `${id}: ${readings.join(', ')} where texts say ${said}`).toBe(true);
    }
  });
});
