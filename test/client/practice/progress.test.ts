import { describe, expect, it } from 'vitest';
import type { Counts } from '../../../client/practice/debrief.ts';
import { type ExerciseDone, progressOf } from '../../../client/practice/progress.ts';

const COUNTS: Counts = {
  ...{ minutes: 20, tests: 5, redundant: 0, harmful: 0, nearMisses: 0 },
  ...{
    skippedProofs: 0,
    probesElsewhere: 0,
    needlessParts: 0,
    notProven: 0,
    hints: 0,
    notSwitchedOff: 0,
    notRead: 0,
    untested: 0,
    leftOpen: 0,
    unfounded: 0,
  },
};
const done = (family: ExerciseDone['family'], counts: Partial<Counts>, mended = true): ExerciseDone => ({
  ...{ family, mended, plannerMinutes: 10 },
  counts: { ...COUNTS, ...counts },
});

describe('progress', () => {
  it('holds the last three exercises of a family beside those before, each count by itself', () => {
    const hints = [6, 4, 1, 2, 0];
    const [motors, ...others] = progressOf(hints.map((count) => done('motors', { hints: count })));
    expect(others).toEqual([]);
    expect(motors).toMatchObject({ family: 'motors', exercises: 5, mended: 5, hints: { before: 5, lately: 1 } });
    expect(motors?.pace).toEqual({ before: 2, lately: 2 });
  });

  it('keeps families apart and tells nothing of what was not practised', () => {
    const told = progressOf([done('power', { harmful: 1 }, false), done('cooling', {})]);
    expect(told.map(({ family, mended }) => [family, mended])).toEqual([
      ['power', 0],
      ['cooling', 1],
    ]);
    expect(told[0]?.harmful).toEqual({ before: undefined, lately: 1 });
    expect(progressOf([])).toEqual([]);
  });
});
