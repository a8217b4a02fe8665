import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ReplayTimes, showMoment } from '../../../client/screens/review/replay-times.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';

const noteAt = (mono: number): VisitEvent => ({
  type: 'note.taken',
  text: 'n',
  time: { at: '2026-06-15T14:00:00.000Z', mono },
});

describe('the clock of a replay', () => {
  test('counts from the first event and never goes back, whatever the device did to its clock', () => {
    expect(ReplayTimes.of([5_000, 6_500, 4_000, 9_000].map(noteAt)).moments).toEqual([0, 1.5, 1.5, 4]);
  });

  test('shortens quiet stretches, and only those', () => {
    const times = new ReplayTimes([0, 2, 2, 902, 904]);
    expect(times.playedEnd).toBe(2 + 1.5 + 2);
    expect(times.runOn(2, 1.5)).toBeCloseTo(902);
    expect(times.runOn(0, 1)).toBeCloseTo(1);
    expect(times.runOn(903, 60)).toBe(904);
  });

  test('steps from event to event, those of one moment at once', () => {
    const times = new ReplayTimes([0, 2, 2, 5]);
    expect(times.step(0, 'on')).toBe(2);
    expect(times.step(2, 'on')).toBe(5);
    expect(times.step(5, 'back')).toBe(2);
    expect(times.step(3, 'back')).toBe(2);
    expect(times.step(2, 'back')).toBe(0);
    expect(times.step(0, 'back')).toBe(0);
    expect(times.step(5, 'on')).toBe(5);
  });

  test('knows how many events have happened by a moment', () => {
    const times = new ReplayTimes([0, 2, 2, 5]);
    expect([-1, 0, 1.9, 2, 4.9, 5, 99].map((moment) => times.countAt(moment))).toEqual([0, 1, 1, 3, 3, 4, 4]);
  });

  test('goes to what is played and back to the same moment', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 600, noNaN: true }), { minLength: 1, maxLength: 30 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (gaps, share) => {
          let at = 0;
          const times = new ReplayTimes([0, ...gaps.map((gap) => (at += gap))]);
          const moment = share * times.end;
          expect(times.toMoment(times.toPlayed(moment))).toBeCloseTo(moment, 3);
          expect(times.toPlayed(moment)).toBeLessThanOrEqual(moment + 1e-6);
        },
      ),
    );
  });

  test('is empty before the first event', () => {
    const times = new ReplayTimes([]);
    expect([times.end, times.playedEnd, times.countAt(3), times.step(0, 'on'), times.runOn(0, 9)]).toEqual([
      0, 0, 0, 0, 0,
    ]);
  });

  test('tells moments to the tenth at first, and by the second once they are long', () => {
    expect([0, 9.96, 83.5, 600, 3723.4].map(showMoment)).toEqual(['0:00.0', '0:10.0', '1:23.5', '10:00', '1:02:03']);
  });
});
