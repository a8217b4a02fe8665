import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import type { Readings } from '../refrigerant/expected-figures.ts';
import type { Standing, Taken } from './take-readings.ts';

/** Share of readings that were misread, misheard or taken at the wrong place. */
export const STRAY = 0.02;
/** However often a reading is repeated, it may have been taken at the wrong place. */
const LEAST_STRAY = 1e-4;

/** How often a result that was read so many times is a stray one. */
export const strayShare = (times: number): number => Math.max(LEAST_STRAY, STRAY ** times);

/** Which results of the tests that others rest on are taken to be right. */
export interface Reliance {
  /** For each such test the result that is right; undefined when none is. */
  readonly right: ReadonlyMap<TestId, Taken | undefined>;
  /** The numbers that figures are worked out from. */
  readonly numbers: Readings;
}

/** Another way in which it may be, beside all the latest results being right. */
export interface Misreading {
  readonly reliance: Reliance;
  readonly wrong: readonly Taken[];
  /** How often it is so for each time that the latest results are right. */
  readonly share: number;
}

/** The tests that some standing figure is worked out from or judged by. */
function bases(standing: Standing): TestId[] {
  const found = new Set<TestId>();
  for (const { test } of standing.all) {
    const { measure } = TEST_MODELS[test];
    if (measure.kind === 'residual') for (const id of [...measure.requires, ...measure.sharpenedBy]) found.add(id);
  }
  return [...found].filter((id) => standing.taken.has(id));
}

/** All the latest results are right. */
export function usualReliance(standing: Standing): Reliance {
  const numbers = [...standing.taken.values()].filter(({ value }) => !Number.isNaN(value));
  return {
    right: new Map(bases(standing).map((test) => [test, standing.taken.get(test)])),
    numbers: new Map(numbers.map(({ test, value }) => [test, value])),
  };
}

/** How often this result, or none, is the right one of the results of a test. */
function shareOf(results: readonly Taken[], right: Taken | undefined): number {
  return results.reduce((product, result) => {
    const stray = strayShare(result.times);
    return product * (result === right ? 1 - stray : stray);
  }, 1);
}

/**
 * A reading that others rest on, outdoor air or a gauge, spoils all of them when it is misread: superheat and
 * subcooling are then wrong together, and reading the temperature of a line twice mends neither. So each is weighed as
 * a misread one too: what rests on it is worked out from an earlier result, or without it. One at a time: two misread
 * together are rare.
 */
export function misreadings(standing: Standing, usual: Reliance): Misreading[] {
  return [...usual.right].flatMap(([test, latest]) => {
    const results = standing.all.filter((result) => result.test === test);
    const others = [...results.filter((result) => result !== latest), undefined];
    return others.map((right) => ({
      reliance: relyOn(usual, test, right),
      wrong: results.filter((result) => result !== right),
      share: shareOf(results, right) / shareOf(results, latest),
    }));
  });
}

function relyOn(usual: Reliance, test: TestId, right: Taken | undefined): Reliance {
  const numbers = new Map(usual.numbers);
  if (right) numbers.set(test, right.value);
  else numbers.delete(test);
  return { right: new Map(usual.right).set(test, right), numbers };
}
