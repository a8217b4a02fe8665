import type { Meaning, Report } from '../../grammar/phrases/meaning.ts';
import type { VisitOutcome } from '../../grammar/visit/events.ts';
import type { IsolationPlace } from '../../grammar/vocabulary/isolation-places.ts';
import type { FittedPartId } from '../../grammar/vocabulary/parts.ts';
import { POINTS_BY_ID, type PointId } from '../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../grammar/vocabulary/quantities.ts';
import type { WorkId } from '../../grammar/vocabulary/works.ts';
import { CHARGE } from '../visit/rules/repairs.ts';
import type { SimulatedUnit } from './simulated-unit.ts';
import type { WorkClock } from './work-clock.ts';

/**
 * What each act takes, in minutes, the walk not among it: one table for whoever does the exercise (common practice, our
 * figures). What a test takes stands with the test.
 */
const MINUTES = {
  switch: 0.5,
  call: 0.5,
  'meter on a source': 0.5,
  'a reading': 0.3,
  'a charge led off': 0.5,
  'a cover': 1,
  'a wire': 1,
  'a weight': 10,
} as const;

const PART_MINUTES: Readonly<Partial<Record<FittedPartId, number>>> = {
  compressor: 180,
  'reversing-valve': 150,
  'expansion-valve': 90,
  'filter-drier': 45,
  'blower-motor': 45,
  'fan-motor': 30,
  breaker: 20,
  disconnect: 30,
  fuse: 3,
  'control-fuse': 3,
  filter: 2,
  capacitor: 8,
  'dual-capacitor': 8,
  'hard-start': 10,
  'valve-core': 5,
};
const WORK_MINUTES: Readonly<Partial<Record<WorkId, number>>> = {
  'leak-repaired': 45,
  'coil-thawed': 60,
  'outdoor-coil-cleaned': 30,
  'indoor-coil-cleaned': 45,
  'coil-cleaned': 30,
  'blower-cleaned': 60,
};
const OTHER_PART = 15;
const OTHER_WORK = 5;

const SWITCH_AT: Readonly<Record<IsolationPlace, string>> = {
  outdoor: 'disconnect',
  panel: 'panel',
  'air-handler': 'air-handler',
};

/** Where hands have to go for a reading. */
export function placeOfPoints(at: readonly PointId[]): string | undefined {
  const zone = at.map((point) => POINTS_BY_ID[point].zone).find((one) => one !== 'none');
  if (zone === undefined) return undefined;
  if (zone === 'disconnect-line') return 'disconnect';
  return zone === 'air-handler' || zone === 'control' ? 'air-handler' : 'outdoor';
}

/** A reading that is no test of the search: one of a proof, or one that tells of no suspect. */
export function countReading(work: WorkClock, quantity: QuantityId, at: readonly PointId[]): void {
  const isOhms = quantity === 'resistance' || quantity === 'insulation' || quantity === 'capacitance';
  work.act(isOhms ? 'ohms and microfarads' : 'volts and amps', MINUTES['a reading'], placeOfPoints(at));
}

export function countMeterProof(work: WorkClock): void {
  work.act('power and proving dead', MINUTES['meter on a source']);
}

/** How the switches and the thermostat of a unit stand. */
export type Switched = Readonly<Record<IsolationPlace | 'call', boolean>>;
export const switchedNow = (unit: SimulatedUnit): Switched => ({
  ...{ outdoor: unit.isClosed('outdoor'), panel: unit.isClosed('panel'), 'air-handler': unit.isClosed('air-handler') },
  call: unit.call !== 'none',
});

/** What was switched since. */
export function countSwitched(work: WorkClock, before: Switched, unit: SimulatedUnit): void {
  const now = switchedNow(unit);
  for (const place of ['outdoor', 'panel', 'air-handler'] as const)
    if (now[place] !== before[place]) work.act('power and proving dead', MINUTES.switch, SWITCH_AT[place]);
  if (now.call !== before.call) work.act('call', MINUTES.call, 'thermostat');
}

/** What is told of and leaves no event that names it. */
export function countTold(work: WorkClock, meaning: Meaning): void {
  if (meaning.kind === 'several') {
    // Both sections of a capacitor are one act.
    const [first] = meaning.parts;
    const isOne = meaning.parts.every((part) => part.kind === 'report' && part.report.type === 'discharged');
    for (const part of isOne && first !== undefined ? [first] : meaning.parts) countTold(work, part);
  } else if (meaning.kind === 'report') countReport(work, meaning.report);
  else if (meaning.kind === 'reading' && meaning.reading.quantity === 'mass')
    work.act('repairs', MINUTES['a weight'], 'outdoor');
}

function countReport(work: WorkClock, { type }: Report): void {
  if (type === 'discharged') work.act('power and proving dead', MINUTES['a charge led off'], 'outdoor');
  if (type === 'cover' || type === 'part-moved') work.act('panel', MINUTES['a cover']);
}

/** What the record says was done with the hands. */
export function countDone(work: WorkClock, event: VisitOutcome): void {
  switch (event.type) {
    case 'part.fitted':
      // Its weight was counted as it was told.
      if (event.part !== CHARGE) work.act('repairs', PART_MINUTES[event.part] ?? OTHER_PART);
      return;
    case 'work.done':
      return work.act('repairs', WORK_MINUTES[event.work] ?? OTHER_WORK);
    case 'wire.moved':
      return work.act('repairs', MINUTES['a wire']);
    default:
      return;
  }
}
