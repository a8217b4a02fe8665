import { inBaseUnit } from '../vocabulary/in-base-unit.ts';
import { inFahrenheit } from '../vocabulary/in-fahrenheit.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { FittedPartId } from '../vocabulary/parts.ts';
import type { WorkId } from '../vocabulary/works.ts';
import type { VisitOutcome } from './events.ts';
import type { RefrigerantWork, VisitFacts } from './facts.ts';

/** Whether a part cannot be fitted, or work not be done, without opening the refrigerant circuit. */
const OPENS_REFRIGERANT: Readonly<Record<FittedPartId | WorkId, boolean>> = {
  'dual-capacitor': false,
  capacitor: false,
  'hard-start': false,
  contactor: false,
  'fan-motor': false,
  'blower-motor': false,
  fuse: false,
  'control-fuse': false,
  breaker: false,
  transformer: false,
  thermostat: false,
  'float-switch': false,
  'pressure-switch': false,
  disconnect: false,
  filter: false,
  'filter-drier': true,
  compressor: true,
  'defrost-board': false,
  'blower-relay': false,
  'reversing-valve': true,
  'crankcase-heater': false,
  'door-switch': false,
  'expansion-valve': true,
  'valve-core': false,
  refrigerant: false,
  'outdoor-coil-cleaned': false,
  'indoor-coil-cleaned': false,
  'coil-cleaned': false,
  'coil-thawed': false,
  'filter-cleaned': false,
  'blower-cleaned': false,
  'vents-opened': false,
  'drain-cleared': false,
  'lug-1-tightened': false,
  'lug-2-tightened': false,
  'lugs-tightened': false,
  'contacts-cleaned': false,
  'control-wire-repaired': false,
  'switch-reset': false,
  'door-closed': false,
  'thermostat-set': false,
  'fan-freed': false,
  'leak-repaired': true,
  'supply-restored': false,
};

/** Whether the circuit was opened, by word or by what was done to it. */
export function isRefrigerantOpened({ items, parts, works }: VisitFacts): boolean {
  return (
    items.some(({ item }) => item === 'circuit-opened') ||
    parts.some(({ part }) => OPENS_REFRIGERANT[part as FittedPartId]) ||
    works.some(({ work }) => OPENS_REFRIGERANT[work])
  );
}

/** What an event says of an opened refrigerant circuit. Refrigerant taken out counts even before it is opened. */
export function evolveRefrigerant(facts: VisitFacts, event: VisitOutcome): RefrigerantWork {
  const { refrigerantWork: work, now } = facts;
  const opened = isRefrigerantOpened(facts);
  switch (event.type) {
    case 'reading.logged':
      return afterReading(facts, event.reading);
    case 'reading.corrected':
      return opened && event.to.at[0] === 'system'
        ? afterReading({ ...facts, refrigerantWork: anew(work) }, event.to)
        : work;
    case 'reading.withdrawn': {
      const line = facts.readings.find(({ number }) => number === event.number);
      return opened && line?.reading.at[0] === 'system' ? anew(work) : work;
    }
    case 'item.reported':
      if (event.item === 'circuit-opened' || event.item === 'leak-found') return anew(work);
      if (event.item === 'no-leak-found') return { ...work, searched: true };
      return event.item === 'vacuum-isolated' && opened ? { ...work, isolatedAt: now.mono } : work;
    case 'refrigerant.judged':
      return afterVerdict(work, event);
    default:
      return work;
  }
}

function afterReading(facts: VisitFacts, reading: Reading): RefrigerantWork {
  const { quantity, at, value } = reading;
  const { refrigerantWork: work, now } = facts;
  if (at[0] !== 'system' || typeof value !== 'number') return work;
  const opened = isRefrigerantOpened(facts);
  if (quantity === 'mass') {
    const ounces = inBaseUnit(reading) ?? value;
    if (ounces < 0) return { ...work, recovered: -ounces };
    return opened ? { ...work, charged: ounces } : work;
  }
  const begins = quantity === 'pressure' && opened && work.held !== true && work.test === undefined;
  return begins
    ? { ...work, test: { psi: inBaseUnit(reading) ?? value, fahrenheit: outdoorFahrenheit(facts), mono: now.mono } }
    : work;
}

function afterVerdict(work: RefrigerantWork, { check, value, judged }: Judged): RefrigerantWork {
  const fits = judged.word !== 'does not fit';
  switch (check) {
    case 'pressure-test':
      return fits ? { ...work, held: true } : anew(work);
    case 'evacuation':
      return fits ? { ...work, microns: value } : work;
    case 'decay': {
      if (fits) return { ...work, stood: true };
      const { microns: _was, isolatedAt: _when, ...rest } = work;
      return rest;
    }
  }
}
type Judged = Extract<VisitOutcome, { type: 'refrigerant.judged' }>;

/** All tests begin anew; what was recovered stays recovered. */
function anew({ recovered }: RefrigerantWork): RefrigerantWork {
  return recovered === undefined ? {} : { recovered };
}

/** The outdoor air as it was read last, in degrees Fahrenheit. */
export function outdoorFahrenheit({ readings }: VisitFacts): number | undefined {
  const line = readings.findLast(
    ({ reading, withdrawn }) => !withdrawn && reading.quantity === 'temperature' && reading.at[0] === 'outdoor-air',
  );
  return line === undefined ? undefined : inFahrenheit(line.reading);
}
