import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { outcomeOf, readSaid } from '../../bench/said-lines.ts';

/** Lines of three kinds, each written with its meaning before any was tried; the aim is the language's own. */
const FOLDER = new URL('../../../fixtures/said/', import.meta.url);
const RIGHT = 0.85;
const understand = makeUnderstand();

describe('lines as people say them', () => {
  it.each(readdirSync(FOLDER))(
    'of %s come to what was meant, or are asked where that is right, and none to another',
    (name) => {
      const lines = readSaid(new URL(name, FOLDER).pathname);
      const told = lines.map((line) => ({ line, outcome: outcomeOf(line, understand(line.text, line.expectation)) }));
      const right = told.filter(({ line, outcome }) => outcome === 'right' || (line.soft && outcome === 'asked-right'));
      expect(lines.length).toBeGreaterThanOrEqual(40);
      expect(told.filter(({ outcome }) => outcome === 'wrong').map(({ line }) => line.text)).toEqual([]);
      expect(right.length / lines.length).toBeGreaterThanOrEqual(RIGHT);
    },
  );

  it.each([
    ['leg to leg two forty, sorry, two thirty', 230],
    ['suction one thirty, make that one twenty eight', 128],
    ["I'm not getting anything on leg one", 0],
    ["blower isn't drawing anything", 0],
  ])('are logged where they are plain: "%s"', (text, value) => {
    expect(understand(text)).toMatchObject({ verdict: 'logged', meaning: { kind: 'reading', reading: { value } } });
  });

  it.each(['leg to leg two forty, sorry, twenty three', "secondary's dead"])(
    'are asked where they are not: "%s"',
    (text) => {
      expect(understand(text).verdict).toBe('asked');
    },
  );
});
