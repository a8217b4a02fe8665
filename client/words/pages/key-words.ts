import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { FUNCTION_NAMES, showPlace, showPoint, showReading, showValue } from '../shown/show-reading.ts';
import { partWords } from '../things/part-words.ts';

/** Keys and sheets of the visit's page. What a key enters stands in the record by its label, as what was heard. */
export const KEY = {
  supervisorHere: 'Supervisor is here',
  fine: 'I am fine',
  goOn: 'Go on with the visit',
  live: 'Live – I have it',
  /** To a caution of anything else than live parts. */
  haveIt: 'I have it',
  whatNext: 'What next',
  yes: 'Yes',
  stillOff: 'Still off, locked',
  notOff: 'Not off',
  yesShows: 'Yes, it shows that',
  no: 'No',
  setAside: 'Set it aside',
  leaveOut: 'Leave it out',
  pass: 'Pass',
  enterIt: 'Enter it',
  enterNumbers: 'Enter the numbers',
  enterMeter: 'Enter the meter',
  timePassed: 'Time has passed',
  discharged: 'Discharged',
  enterVoltsDc: 'Enter volts d.c.',
  repairDone: 'Repair is done',
  wireLanded: (wire: { readonly colour?: string; readonly size?: string; readonly from: string }) =>
    [wire.colour, wire.size, 'wire landed on', wire.from].filter(Boolean).join(' '),
  clampsOn: 'Clamps and covers on',
  noneMoves: 'Done: none moves',
  writeRecommendation: 'Write a recommendation',
  writeName: 'Write the name',
  writePlate: 'Write it',
  enterPlate: 'Enter the plate',
  finish: 'Finish the visit',
  talkDown: 'Listening: let go when said',
  talkUp: 'Hold to talk',
} as const;

/** The switch that takes a zone off, and what was done with it. */
export const SWITCH = {
  names: {
    disconnect: 'Outdoor disconnect',
    breaker: 'Breaker at the panel',
    'service-switch': "Air handler's switch",
  },
  locked: (name: string) => `${name} is open and locked`,
  backOn: (name: string) => `${name} is back on`,
} as const;

export const MORE = {
  title: 'More',
  /** What the hands or the ears are at, in the order in which they stand. */
  groups: {
    measure: 'Measured, seen, switched',
    work: 'Work done',
    mend: 'Said wrong',
    ask: 'Ask',
    lead: 'Go on otherwise',
    write: 'For the customer',
    talk: 'Talk, ear, screen',
  },
  lacks: { said: 'nothing was said yet', wires: 'no wire was told of', reading: 'no reading yet' },
  hurt: 'Somebody is hurt',
  reading: 'A reading',
  seen: 'Something seen',
  switched: 'Power switched',
  proof: 'Prove it dead',
  part: 'Part fitted or work done',
  wires: 'Wires',
  write: 'Recommend, sign',
  dictated: 'What was dictated',
  plate: 'Nameplate',
  setRight: 'Set it right',
  takeBack: 'Take it back',
  whatNext: 'What next',
  why: 'Why',
  sayAgain: 'Say again',
  whatLeft: 'What is left',
  whereProbes: 'Where the probes go',
  goBack: 'Go back',
  pass: 'Pass on this',
  cannotReach: 'Cannot reach it',
  status: 'Where are we',
  phrases: 'What can be said',
  goOn: 'Go on',
  hold: 'Hold the visit',
  fullTalk: 'Full talk',
  shortTalk: 'Short talk',
  earOff: 'Ear off',
  earOn: 'Ear on',
  sound: 'Sound',
  soundCheck: 'Sound check',
  screen: 'Screen',
  finish: 'Finish the visit',
  /** Entered by the key for it. */
  hurtHeard: 'somebody is hurt',
} as const;

/** Device, place and state: a word of power counts only with all three. */
export const SWITCHED = {
  disconnect: 'Outdoor disconnect',
  breaker: 'Breaker in the panel',
  'service-switch': 'Air handler switch',
  states: { locked: 'open and locked', open: 'open', closed: 'closed', unlocked: 'unlocked' },
  pick: (name: string, state: string) => `${name} ${state}`,
} as const;

export const PAD = {
  openLine: 'open line',
  minus: 'minus',
  back: 'back',
  leave: 'Leave',
  enter: 'Enter',
  /** The values that a pad was given of those that it asks for. */
  soFar: (values: readonly Value[], of: number) => `${values.join(', ')} (${values.length} of ${of} on the pad)`,
  oneOf: (number: number, of: number, title: string) => `${number} of ${of}: ${title}`,
  reading: (at: readonly PointId[], quantity: QuantityId) => `${showPlace(at)}, ${FUNCTION_NAMES[quantity]}`,
  setRight: (reading: Reading) => `Set right: ${showReading(reading)}`,
  charge: (at: readonly PointId[]) => `${showPlace(at)}, volts d.c.`,
  proof: {
    meter: 'meter on a known live source',
    pair: (at: readonly PointId[]) => showPlace(at),
    meterAgain: 'meter on the live source again',
  },
  /** What stands in the record as heard for numbers that were entered. */
  heard: {
    correction: (value: Value, unit: UnitCode) => `correction ${showValue(value, unit)}`,
    proof: (before: number, values: readonly number[], after: number) =>
      `meter ${before}, ${values.join(', ')}, meter ${after}`,
    meter: (volts: number) => `meter proves ${volts}`,
    several: (readings: readonly Reading[]) => readings.map(showReading).join(', '),
  },
} as const;

export const PART_PICKER = {
  title: 'Part fitted, or what was done',
  rating: (id: string) => `${id.replaceAll('-', ' ')} on the new part`,
  heard: (part: string, ratings: readonly number[]) => ['fitted', partWords(part, {}), ...ratings].join(' '),
} as const;

export const READING_PICKER = {
  meterFunction: 'Meter function',
  where: 'Where',
  firstProbe: 'One probe on',
  secondProbe: (first: PointId) => `${showPoint(first)} to`,
} as const;

export const WRITE = {
  recommendation: 'Recommend to the customer',
  saying: 'The customer says',
  certificate: 'Certificate for refrigerant',
  cylinder: 'Recovered into cylinder',
  technician: 'Signed by the technician, name',
  customer: 'Signed by the customer, name',
  record: 'Record it',
  absent: 'Customer not present',
  absentHeard: 'customer is not present',
  heard: (heading: string, text: string) => `${heading} ${text}`,
} as const;

/** What can be said now; "…" is a number or words. */
export const PHRASES = {
  title: 'What can be said',
  find: 'Find, by any of its words',
  found: (count: number) => `${count} phrases; … is a number, or your words`,
  groups: {
    now: 'Asked now',
    orders: 'Orders and questions',
    power: 'Power and switches',
    readings: 'Readings',
    seen: 'Seen and heard',
    plate: 'Nameplate',
    work: 'Parts and work',
    job: 'The job',
    written: 'Written down',
  },
} as const;

export const PLATE = {
  notRead: 'not read',
  heard: (lines: string) => `nameplate ${lines}`,
} as const;

export const SUPERVISOR = {
  title: 'Supervisor',
  name: 'I am here, and acknowledge the trainee’s live steps. Name:',
  acknowledge: 'Acknowledge',
} as const;
