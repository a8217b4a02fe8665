import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clockJumps } from '../../../client/screens/review/clock-jumps.ts';
import { goalsOf, nextGoal } from '../../../client/screens/review/goals.ts';
import { labelWidth, placeLabels } from '../../../client/screens/review/place-labels.ts';
import { ReplayTimes } from '../../../client/screens/review/replay-times.ts';
import { transcriptLines } from '../../../client/screens/review/transcript-lines.ts';
import { asParameters, readQuery } from '../../../client/screens/review/use-list-query.ts';
import { VisitMoments } from '../../../client/screens/review/visit-moments.ts';
import { WallClock } from '../../../client/screens/review/wall-clock.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { RECORDED, recordedBodies } from '../../browser/put-visit.ts';

const noteAt = (mono: number, wall = mono): VisitEvent => ({
  type: 'note.taken',
  text: 'n',
  time: { at: new Date(Date.UTC(2026, 5, 15, 14) + wall).toISOString(), mono },
});
const remarkAt = (mono: number): VisitEvent => ({ ...noteAt(mono), type: 'remark.made', author: 'Ines' }) as VisitEvent;

describe('a moment of a visit', () => {
  test.each(RECORDED)('holds what the record folded up to then holds: %s', (name) => {
    const events = readBodies(recordedBodies(name));
    const moments = new VisitMoments(events);
    expect(moments.whole).toEqual(foldVisit(events));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: events.length }), (count) => {
        const folded = foldVisit(events.slice(0, count));
        const { facts, heard, said, suspects, energyChanges } = moments.at(count);
        expect({ ...folded, ...facts }).toEqual(folded);
        expect(heard?.seq).toBe(folded.heard.at(-1)?.seq);
        expect(said?.seq).toBe(folded.said.at(-1)?.seq);
        expect(suspects).toEqual(folded.suspects.at(-1));
        expect(energyChanges).toEqual(folded.energyChanges);
      }),
      { numRuns: 25 },
    );
  });
});

describe('a visit that comes in pieces', () => {
  const pieces = (events: readonly VisitEvent[], ends: readonly number[]) => {
    let moments = new VisitMoments([]);
    return ends.map((end) => {
      moments = new VisitMoments(events.slice(0, end), moments);
      return { end, moments };
    });
  };

  test.each(RECORDED)('is folded on as if it had come whole, and what was shown before stays as it was: %s', (name) => {
    const events = readBodies(recordedBodies(name));
    const shown = pieces(events, [1, 63, 64, 65, 200, 200, events.length]);
    for (const { end, moments } of shown) {
      expect(moments.whole).toEqual(foldVisit(events.slice(0, end)));
      for (const count of [0, 1, 63, 64, 65, 127, 128, end].filter((one) => one <= end))
        expect(moments.at(count).facts).toEqual(new VisitMoments(events).at(count).facts);
    }
  });

  test('is folded anew where another beginning came to count', () => {
    const events = readBodies(recordedBodies('library'));
    const before = new VisitMoments(events.slice(0, 100));
    const others = [...events.slice(0, 40), ...events.slice(60)];
    expect(new VisitMoments(others, before).whole).toEqual(foldVisit(others));
    expect(new VisitMoments(events.slice(0, 20), new VisitMoments(events)).whole).toEqual(
      foldVisit(events.slice(0, 20)),
    );
  });

  test('may be gone on with twice: whoever comes second folds it anew', () => {
    const events = readBodies(recordedBodies('fuse'));
    const before = new VisitMoments(events.slice(0, 100));
    const both = [new VisitMoments(events, before), new VisitMoments(events, before)];
    for (const { whole } of both) expect(whole).toEqual(foldVisit(events));
  });
});

describe('clocks', () => {
  test('a remark stands where it was written in the order of the record, whatever its own clock says', () => {
    expect(ReplayTimes.of([noteAt(0), noteAt(4_000), remarkAt(1e12), noteAt(9_000)]).moments).toEqual([0, 4, 4, 9]);
  });

  test('a running clock that began anew is carried on by the wall clock', () => {
    const times = ReplayTimes.of([noteAt(0, 0), noteAt(600_000, 600_000), noteAt(0, 660_000), noteAt(5_000, 665_000)]);
    expect(times.moments).toEqual([0, 600, 660, 665]);
  });

  test('gaps of three hours are played short, and last what they lasted', () => {
    const times = ReplayTimes.of([noteAt(0), noteAt(3 * 3_600_000), noteAt(3 * 3_600_000 + 1_000)]);
    expect(times.end).toBe(10_801);
    expect(times.playedEnd).toBeLessThan(5);
    expect(times.longStretches(60)).toEqual([{ begins: 0, lasts: 10_800 }]);
  });

  test('and tells when that was, by its own clock in the time zone of the visit', () => {
    const events = [noteAt(0), { ...remarkAt(4_000), text: 'r' } as VisitEvent];
    const folded = { ...foldVisit(events), zone: 'America/Denver' };
    const [remark] = transcriptLines(folded, events).filter(({ kind }) => kind === 'remark');
    // 14:00:04 UTC; Denver is six hours behind in June.
    expect(remark?.detail).toBe('written 15 Jun 2026, 08:00:04');
  });

  test('a wall clock that was set is told of, with the entry and by how much; a remark by another clock is not', () => {
    const events = [noteAt(0), noteAt(1_000), remarkAt(5e9), noteAt(2_000, -3_600_000), noteAt(3_000, -3_599_000)];
    expect(clockJumps(events)).toEqual([{ seq: 4, seconds: -3_602 }]);
    expect(clockJumps(readBodies(recordedBodies('library')))).toEqual([]);
  });

  test('the wall clock is shown in the zone of the visit, and in a zone that is none in the reader’s own', () => {
    const events = [noteAt(0), noteAt(60_000)];
    const times = ReplayTimes.of(events);
    expect(new WallClock(events, times, 'America/Chicago').at(30)).toBe('09:00:30');
    expect(new WallClock(events, times, 'UTC').at(60)).toBe('14:01:00');
    expect(new WallClock(events, times, 'Nowhere/At_All').at(0)).toMatch(/^\d\d:\d\d:\d\d$/);
    expect(new WallClock([], ReplayTimes.of([])).at(0)).toMatch(/^\d\d:\d\d:\d\d$/);
  });
});

describe('labels', () => {
  const boxOf = ({ text, x, y }: { text: string; x: number; y: number }) => ({
    left: x - labelWidth(text) / 2,
    right: x + labelWidth(text) / 2,
    top: y - 13,
    bottom: y + 2,
  });

  test('lie over no other and within their bounds, however many want a place', () => {
    const place = fc.record({ x: fc.integer({ min: -50, max: 900 }), y: fc.integer({ min: 0, max: 200 }) });
    const label = fc.record({
      text: fc.string({ minLength: 1, maxLength: 12 }),
      at: fc.array(place, { minLength: 1, maxLength: 3 }),
    });
    fc.assert(
      fc.property(fc.array(label, { maxLength: 60 }), (labels) => {
        const boxes = placeLabels(labels, { left: 0, right: 800 }).flatMap((one) =>
          one === undefined ? [] : [boxOf(one)],
        );
        for (const [i, a] of boxes.entries()) {
          expect(a.left >= 0 && a.right <= 800).toBe(true);
          for (const b of boxes.slice(i + 1)) {
            const over = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
            expect(over).toBe(false);
          }
        }
      }),
    );
  });

  test('that have room are all there', () => {
    const labels = [10, 110, 210].map((x) => ({ text: '118', at: [{ x: x + 20, y: 20 }] }));
    expect(placeLabels(labels, { left: 0, right: 300 }).every((one) => one !== undefined)).toBe(true);
  });
});

describe('going from one landmark to the next', () => {
  test('goes on from the last to the first, and back from the first to the last', () => {
    expect([0, 5, 7, 20].map((count) => nextGoal([5, 9, 20], count, 'on'))).toEqual([5, 9, 9, 5]);
    expect([0, 5, 9, 30].map((count) => nextGoal([5, 9, 20], count, 'back'))).toEqual([20, 20, 5, 20]);
    expect(nextGoal([], 3, 'on')).toBeUndefined();
  });

  test('knows of each kind where it stands', () => {
    const line = { kind: 'note', text: 'n' } as const;
    const goals = goalsOf(
      [
        { ...line, seq: 2, landmark: 'proof' },
        { ...line, seq: 4 },
        { ...line, seq: 6, landmark: 'proof' },
      ],
      [{ seq: 9, seconds: 90 }],
    );
    expect(goals.get('proof')).toEqual([2, 6]);
    expect(goals.get('caution')).toEqual([]);
    expect(goals.get('clock')).toEqual([9]);
  });
});

describe('the query of a list', () => {
  test('is read from an address, and nothing else of it', () => {
    expect(readQuery('?words=blower&state=&visit=x&repeated=true')).toEqual({ words: 'blower', repeated: 'true' });
  });

  test('asks for whole days of the reader', () => {
    const asked = asParameters({ from: '2026-06-15', until: '2026-06-15', words: 'a' });
    expect(Number(asked.get('until')) - Number(asked.get('from'))).toBe(86_400_000);
    expect(new Date(Number(asked.get('from'))).getHours()).toBe(0);
    expect(asParameters({ from: 'yesterday' }).get('from')).toBeNull();
  });
});

describe('the chips of a review', () => {
  test.each(RECORDED)('count each kind by itself, as the record has it: %s', (name) => {
    const events = readBodies(recordedBodies(name));
    const folded = foldVisit(events);
    const goals = goalsOf(transcriptLines(folded, events), []);
    const of = (type: string) => events.filter((event) => event.type === type).length;
    expect(goals.get('caution')).toHaveLength(of('caution.spoken'));
    expect(goals.get('refused')).toHaveLength(folded.refused.length);
    expect(goals.get('warning')).toHaveLength(of('hazard.warned') + of('flammable.told') + of('circuit.early'));
    expect(goals.get('held-back')).toHaveLength(of('proof.refused') + of('part.doubted') + of('close.refused'));
  });
});
