import { describe, expect, test } from 'vitest';
import { fragmentOf, momentOf } from '../../client/screens/review/media-fragment.ts';

/** Source: W3C Media Fragments URI 1.0 (Recommendation, 25 September 2012), section 4.2.1 and its examples. */
describe('links to a moment follow W3C Media Fragments', () => {
  test.each([
    ['t=10,20', 10],
    ['t=,20', 0],
    ['t=10', 10],
    ['t=npt:10,20', 10],
    ['t=npt:,121.5', 0],
    ['t=0:02:00,121.5', 120],
    ['t=npt:120,0:02:01.5', 120],
    ['t=01:30', 90],
    ['t=1:00:00.25', 3600.25],
    ['#t=12.5', 12.5],
    ['xywh=160,120,320,240&t=7', 7],
    // Percent-encoding does not change the meaning (section 4.1).
    ['t=npt%3A10', 10],
    // Of several the last one counts.
    ['t=3&t=8', 8],
  ])('%s begins at %d s', (fragment, moment) => {
    expect(momentOf(fragment)).toBe(moment);
  });

  test.each(['', 't=', 't=20,10', 't=10,10', 't=a', 't=10,', 't=1:99', 't=smpte:0:00:00', 't=-3', 'track=1', 't=%'])(
    '"%s" names no moment',
    (fragment) => {
      expect(momentOf(fragment)).toBeUndefined();
    },
  );

  test('what is written is read back', () => {
    for (const moment of [0, 0.1, 83.2, 4000]) expect(momentOf(fragmentOf(moment))).toBe(moment);
  });
});
