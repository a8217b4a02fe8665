import { beforeAll, describe, expect, it } from 'vitest';
import { TEST_MODELS } from '../../client/diagnosis/measuring/test-models.ts';
import { CAUTIONS } from '../../client/words/talk/caution-words.ts';
import { TESTS, type TestId } from '../../grammar/vocabulary/tests.ts';
import { tries } from '../how-much.ts';
import { runRound } from './quality.ts';
import type { Outcome } from './run-case.ts';

const testsOf = ({ asked }: Outcome): TestId[] => asked.map((line) => line.split('=')[0] as TestId);

/** How often a visit that was live goes dead: off, locked and proven each time. */
function timesDead(tests: readonly TestId[]): number {
  let power = 'on';
  return tests.reduce((times, test) => {
    const { needs } = TEST_MODELS[test];
    const goesDead = needs.power === 'off' && power === 'on';
    if (needs.power !== 'any') power = needs.power;
    return times + (goesDead ? 1 : 0);
  }, 0);
}

/** What a technician would shake the head at, counted over simulated visits (common practice). */
describe('asks like a technician', () => {
  let visits: readonly Outcome[];

  beforeAll(() => {
    const casesEach = tries(8, 40);
    visits = runRound({ wrong: 'matched', designs: 4, casesEach, faults: 1, seed: 31, misread: 0.01 }).outcomes;
  }, 300_000);

  const share = (which: (tests: readonly TestId[], visit: Outcome) => boolean) =>
    visits.filter((visit) => which(testsOf(visit), visit)).length / visits.length;

  it('puts no probes on a running capacitor while anything else tells', () => {
    expect(share((tests) => tests.some((test) => test.startsWith('volts-cap-')))).toBeLessThanOrEqual(0.04);
  });

  it('reads the microfarads of a bad capacitor before gauges go on', () => {
    const gaugesFirst = share((tests, { faults }) => {
      const gauges = tests.findIndex((test) => TEST_MODELS[test].function === 'pressure');
      const microfarads = tests.findIndex((test) => TEST_MODELS[test].function === 'microfarads');
      const isCapacitor = /^(herm|fan)-capacitor-(weak|open)$/.test(faults[0]!);
      return isCapacitor && gauges >= 0 && (microfarads < 0 || gauges < microfarads);
    });
    expect(gaugesFirst).toBeLessThanOrEqual(0.02);
  });

  it('ends on no look at what was in sight all the while', () => {
    expect(share((tests) => tests.length > 3 && /^look-(outdoor-fan|compressor)$/.test(tests.at(-1)!))).toBe(0);
  });

  it('asks for the heat of a compressor near its shell, and no hand on it', () => {
    const heat = TESTS.find(({ id }) => id === 'look-compressor-heat')!;
    expect(heat.name).toContain('near the shell');
    expect(CAUTIONS.find(({ id }) => id === 'shell-heat')!.words).toMatch(/hand near, not on it/);
    expect(TESTS.filter(({ name }) => /touch|hand on|feel/.test(name))).toEqual([]);
  });

  it('goes dead once: seldom dead, live again, and dead again', () => {
    expect(share((tests) => timesDead(tests) > 1)).toBeLessThanOrEqual(0.12);
  });
});
