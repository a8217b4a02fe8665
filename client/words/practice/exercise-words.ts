import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { FOCUSES, type Focus } from '../../../grammar/vocabulary/focuses.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { DIALS, type DialId } from '../../../grammar/vocabulary/practice-orders.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { rowsBy } from '../../../grammar/vocabulary/rows-by.ts';
import { TESTS_BY_ID, type TestId } from '../../../grammar/vocabulary/tests.ts';
import { ZONE_NAMES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { showValue } from '../shown/show-reading.ts';
import { faultWords } from '../things/fault-words.ts';
import { placeWords } from '../things/place-words.ts';
import { FUNCTION_WORDS, valueWords } from '../things/value-words.ts';

const DIALS_BY_ID = rowsBy('id', DIALS);
const FOCUSES_BY_ID = rowsBy('id', FOCUSES);

/** What an exercise itself says; everything else is said by the visit that it wraps. */
export const EXERCISE = {
  begins: (complaint: string) =>
    `Exercise. A simulated unit: ${complaint}. Say where the probes go and what you do; the meter answers.`,
  dial: (dial: DialId) => `Meter on ${DIALS_BY_ID[dial].name}.`,
  /** The digits of the instrument. */
  meter: (value: Value, unit: UnitCode) => showValue(value, unit),
  /** What stands in the record as heard: the place and what the meter shows. */
  heard: (at: readonly PointId[], quantity: QuantityId, value: Value, unit: UnitCode) =>
    `${placeWords(at)}, ${FUNCTION_WORDS[quantity]}, ${valueWords(value, unit)}`,
  onSource: (volts: number) => `meter ${volts} volts`,
  noSuchPlace: 'This unit lacks that place, or there is nothing to read.',
  oneAtATime: 'One place at a time. The meter says the number.',
  probesOn: (at: readonly PointId[]) => `Probes on ${placeWords(at)}.`,
  /** A place was named, and the probes were put elsewhere. */
  probesStay: (stood: readonly PointId[], named: readonly PointId[]) =>
    `Nothing read: the probes stay on ${placeWords(stood)}. Move them, or say "probes on ${placeWords(named)}". Said once more, it is read where they stand.`,
  meterSays: 'The meter says the number. Say where the probes go.',
  /** A hint while something is asked. */
  hintOfAsked: (question: string) => `Nothing to hint at: first answer what is asked. ${question}`,
  noProbes: 'Put the probes on the drawing first, or say where they go.',
  whichSuspect: (suspects: readonly FaultId[]) =>
    `Whom do you suspect? ${suspects.map((fault, i) => `${i + 1}: ${faultWords(fault)}`).join('. ')}. Or none yet.`,
  whom: 'Whom do you suspect? Say the number, or none yet.',
  lead: 'You lead. Say where the probes go, or what you look at.',
  passed: (minutes: number) => `${minutes} minutes pass.`,
  noSuchSuspect: 'Not a suspect of the list. Say its number, its name, or none yet.',
  suspectTaken: (fault: FaultId | 'none-yet') =>
    fault === 'none-yet' ? 'None yet.' : `${capital(faultWords(fault))}.`,
  tellsOfNobody: 'The suspects say nothing of that place: it could tell nothing.',
  notTaken: 'Not understood. Say where the probes go, or what you do; the meter has the number.',
  toldNothing: 'This test could hardly tell anything: every suspect would show the same.',
  noMoreHints: 'The hints of this exercise are used up.',
  /** A hint once more, where it may say nothing further. */
  saidAll: (hint: string) => `${hint} That is all of it.`,
  saidLess: (hint: string) => `${hint} Hints say less now: you found the last ones by yourself.`,
  noHint: 'Nothing to hint at: go by what is asked.',
  gaveUp: 'Given up.',
  outOfTime: (minutes: number) => `${minutes} minutes of work are over. The exercise ends.`,
  over: 'The exercise is over.',
  goOn: 'Say go on.',
  goesOn: 'Goes on.',
  ends: 'The exercise ends here.',
  measuring: (at: readonly PointId[], quantity: QuantityId) => `${placeWords(at)}, ${FUNCTION_WORDS[quantity]}`,
  looking: (test: TestId) => TESTS_BY_ID[test].name,
};

const DOORS: Readonly<Record<string, string>> = {
  thermostat: 'at the thermostat',
  'air-handler': 'at the air handler',
  panel: 'at the breaker panel',
  disconnect: 'at the outdoor disconnect',
  outdoor: 'at the outdoor unit',
};
const BY: Readonly<Record<string, string>> = {
  look: 'with your eyes',
  volts: 'with volts',
  ohms: 'with ohms, proven dead',
  amps: 'with the clamp',
  microfarads: 'with microfarads, proven dead',
  temperature: 'with the thermometer',
  pressure: 'with the gauges',
};

/** Hints, each giving away more than the one before. */
export const HINT_WORDS = {
  direction: (focus: Focus) => `Think of the ${FOCUSES_BY_ID[focus].name}.`,
  place: (place: string, by: string) => `${capital(DOORS[place] ?? place)}, ${BY[by] ?? by}.`,
  test: (test: TestId, { call }: { readonly call: string }) =>
    `${capital(TESTS_BY_ID[test].name)}${call === 'cooling' ? ', with a call' : ''}.`,
};

interface Stopped {
  readonly zone: ZoneId;
  readonly volts: number;
  readonly what: string;
  readonly between?: number;
  readonly words?: string;
  readonly said?: string;
}
const metVolts = ({ volts }: Stopped) => `${Math.round(volts)} volts`;

/** What stood between the probes, and the most to ground where that is more. */
const volted = ({ volts, between }: Stopped) =>
  between === undefined || Math.round(between) >= Math.round(volts)
    ? `${Math.round(volts)} volts between the probes`
    : `${Math.round(between)} volts between the probes, ${Math.round(volts)} to ground`;

/** What stops an exercise, and why it would stop a person. */
export const STOP_WORDS = {
  'touched-live': (s: Stopped) =>
    `Held. ${capital(s.what)}: ${metVolts(s)} at the ${ZONE_NAMES[s.zone]}. On a real unit this is a shock or an arc. Open, lock, prove dead, discharge; then hands.`,
  'ohms-on-live': (s: Stopped) =>
    `Held. ${capital(s.what)}: ${volted(s)}, into a meter on ohms or microfarads. It may burst in the hand. Prove dead first.`,
  'charged-capacitor': (s: Stopped) =>
    `Held. ${capital(s.what)}: the capacitor still holds ${metVolts(s)} DC. Discharge it over a resistor, then read volts DC.`,
  'energised-hands-in': (s: Stopped) =>
    `Held. ${capital(s.what)} while the unit stands open: wires off or a part out. Land, refit and close first; hands out.`,
  'not-proven-dead': (s: Stopped) =>
    `Held. ${capital(s.what)}: the ${ZONE_NAMES[s.zone]} is not proven dead. This time it held ${metVolts(s)}; a switch that is off proves nothing. Meter, every pair, meter again.`,
  'circuit-open': (s: Stopped) =>
    `Held. ${s.words ?? capital(s.what)} Recover by weight, nitrogen, vacuum, standing vacuum, charge by weight; then power.`,
  'against-warning': (s: Stopped) => {
    const words = s.words ?? capital(s.what);
    if (s.said === undefined) return `Held. ${words}`;
    return s.said === words
      ? `Held. Done against a warning: ${words}`
      : `Held. Done against what was said: "${s.said}" ${words}`;
  },
} as const;
