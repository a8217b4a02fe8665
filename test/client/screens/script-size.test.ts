import { describe, expect, test } from 'vitest';
import { scriptsOf, zippedKilobytes } from '../../browser/built-scripts.ts';

/** Kilobytes, compressed by gzip. */
const LIMIT = 300;

describe('the scripts of a page, all that it needs to be drawn', () => {
  test.each(['review-page', 'fleet-page'])('%s are at most 300 kB', (page) => {
    const names = scriptsOf('index', page);
    expect(names.size).toBeGreaterThan(2);
    expect(zippedKilobytes(names)).toBeGreaterThan(50);
    expect(zippedKilobytes(names)).toBeLessThanOrEqual(LIMIT);
  });

  test('of the technician leave the charts of the review where they are', () => {
    const names = [...scriptsOf('index', 'technician-page')];
    expect(names.filter((name) => /^(review|fleet)-page/.test(name))).toEqual([]);
  });
});
