import { expect, test } from 'vitest';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { inTodaysNames } from '../../../grammar/visit/older-events.ts';

const time = { at: '2026-06-01T08:00:00.000Z', mono: 0 };

test('a pressure test judged by an earlier version stands in the view under its name of today', () => {
  const judged = { rule: 'r', word: 'fits', band: '', source: 'practice' };
  const older = { type: 'circuit.judged', check: 'pressure-test', value: 0, minutes: 15, judged, time };
  const { refrigerant, unknown } = foldVisit([older as unknown as VisitEvent]);
  expect(refrigerant.map(({ check, minutes }) => ({ check, minutes }))).toEqual([
    { check: 'pressure-test', minutes: 15 },
  ]);
  expect(unknown).toEqual([]);
});

test('a timer of an earlier version elapses under its name of today', () => {
  const older = { type: 'input.taken', input: { type: 'timer.elapsed', timer: 'circuit', time } } as unknown;
  expect(inTodaysNames(older as VisitEvent)).toMatchObject({ input: { timer: 'refrigerant' } });
});
