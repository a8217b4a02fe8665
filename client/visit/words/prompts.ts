import type { Meaning, Report } from '../../../grammar/phrases/meaning.ts';
import { sayDigits, sayNumber } from '../../../grammar/phrases/numbers/say-number.ts';
import type { ChargeFigure, Judged, JudgedWord, RefrigerantCheck, WireMove } from '../../../grammar/visit/events.ts';
import { COMMANDS } from '../../../grammar/vocabulary/commands.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';
import { DICTATIONS, JOB_ITEMS, type JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { NAMEPLATE_FIELDS } from '../../../grammar/vocabulary/nameplate.ts';
import { OBSERVATIONS, type ObservationId } from '../../../grammar/vocabulary/observations.ts';
import { PART_RATINGS, PARTS } from '../../../grammar/vocabulary/parts.ts';
import { POINTS, type PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { WORKS, type WorkId } from '../../../grammar/vocabulary/works.ts';

/** All words of the visit that are not cautions. None suggests a value before it is read; none calls anything safe. */

const UNIT_WORDS: Readonly<Record<UnitCode, string>> = {
  V: 'volts',
  mV: 'millivolts',
  A: 'amps',
  mA: 'milliamps',
  Ohm: 'ohms',
  kOhm: 'kilohms',
  MOhm: 'megohms',
  uF: 'microfarads',
  '[degF]': 'degrees',
  Cel: 'degrees Celsius',
  '[psi]': 'psi',
  "[in_i'Hg]": 'inches of mercury',
  "[in_i'H2O]": 'inches of water',
  'um[Hg]': 'microns',
  '[cft_i]/min': 'cubic feet a minute',
  Hz: 'hertz',
  '%': 'percent',
  min: 'minutes',
  '[lb_av]': 'pounds',
  '[oz_av]': 'ounces',
};

export const FUNCTION_WORDS: Readonly<Record<QuantityId, string>> = {
  voltage: 'volts',
  'voltage-dc': 'volts DC',
  current: 'amps',
  resistance: 'ohms',
  capacitance: 'microfarads',
  temperature: 'temperature',
  'wet-bulb': 'wet bulb',
  pressure: 'pressure',
  vacuum: 'vacuum',
  'static-pressure': 'static',
  airflow: 'airflow',
  frequency: 'hertz',
  humidity: 'humidity',
  insulation: 'megohms',
  mass: 'weight',
  time: 'minutes',
  difference: 'difference',
};

export function pointWords(id: PointId): string {
  return POINTS.find((point) => point.id === id)?.name ?? id;
}

/** Pairs that the trade names as one thing. */
const PAIR_WORDS: readonly (readonly [PointId, PointId, string])[] = [
  ['cap-C', 'cap-HERM', 'herm section'],
  ['cap-C', 'cap-FAN', 'fan section'],
  ['coil-1', 'coil-2', 'contactor coil'],
  ['L1', 'T1', 'pole one'],
  ['L2', 'T2', 'pole two'],
  ['disconnect-line-1', 'disconnect-line-2', 'disconnect line side'],
  ['disconnect-load-1', 'disconnect-load-2', 'disconnect load side'],
  ['fuse-1-line', 'fuse-1-load', 'fuse one'],
  ['fuse-2-line', 'fuse-2-load', 'fuse two'],
  ['start-cap-1', 'start-cap-2', 'start capacitor'],
  ['heater-1', 'heater-2', 'crankcase heater'],
  ['float-1', 'float-2', 'float switch'],
  ['high-switch-1', 'high-switch-2', 'high pressure switch'],
  ['low-switch-1', 'low-switch-2', 'low pressure switch'],
  ['control-fuse-1', 'control-fuse-2', 'control fuse'],
  ['transformer-primary-1', 'transformer-primary-2', 'transformer primary'],
  ['transformer-secondary-1', 'transformer-secondary-2', 'transformer secondary'],
  ['blower-1', 'blower-2', 'blower motor leads'],
  ['blower-cap-1', 'blower-cap-2', 'blower capacitor'],
  ['door-switch-1', 'door-switch-2', 'blower door switch'],
];

/** A terminal by whatever name the record holds. */
export function pointNamed(id: string): string {
  return POINTS.find((point) => point.id === id)?.name ?? id;
}

export function placeWords(at: readonly PointId[]): string {
  const pair = PAIR_WORDS.find(([one, other]) => at.includes(one) && at.includes(other));
  if (pair !== undefined) return pair[2];
  return at.map(pointWords).join(' to ');
}

export function faultWords(id: FaultId): string {
  return FAULTS.find((fault) => fault.id === id)?.name ?? id;
}

/** Names with a word that is listened for while the mouth speaks are said in another way; it is understood as well. */
const SPOKEN_NAMES: Readonly<Partial<Record<ObservationId, string>>> = {
  'compressor-very-hot': 'compressor is burning to the touch',
  'compressor-not-hot': 'compressor is cool',
  'no-oil-stain': 'joints are clean',
};

export function observationWords(id: ObservationId): string {
  const spoken = SPOKEN_NAMES[id];
  if (spoken !== undefined) return spoken;
  return OBSERVATIONS.find((observation) => observation.id === id)?.name ?? id;
}

/** "four pounds two ounces", as a scale shows it. */
function weightWords(ounces: number): string {
  const pounds = Math.floor(ounces / 16);
  const rest = Math.round((ounces - pounds * 16) * 10) / 10;
  const parts = [
    ...(pounds > 0 ? [`${sayNumber(pounds)} ${pounds === 1 ? 'pound' : 'pounds'}`] : []),
    ...(rest > 0 || pounds === 0 ? [`${sayNumber(rest)} ${rest === 1 ? 'ounce' : 'ounces'}`] : []),
  ];
  return parts.join(' ');
}

export function itemWords(id: JobItemId): string {
  return JOB_ITEMS.find((item) => item.id === id)?.name ?? id;
}

/** "one eighteen volts": value and unit the trade's way; digit by digit where a doubt was just cleared. */
export function valueWords(value: Value, unit: UnitCode, digitByDigit = false): string {
  if (value === 'open') return 'open line';
  if (unit === '[oz_av]') return weightWords(Math.abs(value));
  return `${digitByDigit ? sayDigits(value) : sayNumber(value)} ${UNIT_WORDS[unit]}`;
}

/** What was measured: its place, and the quantity where the place alone does not say which. */
function measuredWords({ quantity, at, value }: Reading): string {
  const place = placeWords(at);
  switch (quantity) {
    case 'wet-bulb':
      return `${place} wet bulb`;
    case 'mass':
      return typeof value === 'number' && value < 0 ? 'refrigerant out' : 'refrigerant in';
    case 'vacuum':
      return at[0] === 'system' ? 'vacuum' : place;
    case 'pressure':
      return at[0] === 'system' ? 'system pressure' : place;
    default:
      return place;
  }
}

export function readbackWords(reading: Reading, digitByDigit = false): string {
  const direct = reading.quantity === 'voltage-dc' ? ' DC' : '';
  const bench = reading.bench === true ? ', on the bench' : '';
  return `${measuredWords(reading)}, ${valueWords(reading.value, reading.unit, digitByDigit)}${direct}${bench}.`;
}

export function nameplateWords(field: string, value: number | string, unit?: UnitCode): string {
  const name = NAMEPLATE_FIELDS.find((one) => one.id === field)?.name ?? field;
  const words = typeof value === 'number' ? (unit === undefined ? sayNumber(value) : valueWords(value, unit)) : value;
  return `Nameplate ${name}, ${words}.`;
}

/** "dual capacitor, herm 45 microfarads": a part with its ratings in words. */
export function partWords(part: string, ratings: Readonly<Record<string, number | string>>): string {
  const name = PARTS.find((one) => one.id === part)?.name ?? part;
  const rated = Object.entries(ratings).map(([id, value]) => ratingWords(id, value));
  return [name, ...rated].join(', ');
}

export function workWords(id: WorkId): string {
  return WORKS.find((work) => work.id === id)?.name ?? id;
}

function ratingWords(id: string, value: number | string): string {
  if (typeof value === 'number' && id in UNIT_WORDS) return valueWords(value, id as UnitCode);
  const unit = PART_RATINGS.find((one) => one.id === id)?.unit;
  const said = typeof value === 'number' ? sayNumber(value) : value;
  const section = id === 'herm-uF' ? 'herm ' : id === 'fan-uF' ? 'fan ' : '';
  const unitWords = unit === undefined || unit === '1' ? id : unit in UNIT_WORDS ? UNIT_WORDS[unit as UnitCode] : unit;
  return `${section}${said} ${unitWords}`;
}

/** "brown wire lifted from capacitor fan". */
export function wireWords(wire: WireMove): string {
  const what = [wire.size, wire.colour].filter((word) => word !== undefined).join(' ');
  const from = wire.from === undefined ? '' : ` from ${pointWords(wire.from as PointId)}`;
  const to =
    wire.to === undefined ? '' : ` ${wire.action === 'landed' ? 'on' : 'to'} ${pointWords(wire.to as PointId)}`;
  const thing =
    wire.action === 'jumper-on' || wire.action === 'jumper-off' ? 'jumper' : what === '' ? 'wire' : `${what} wire`;
  return `${thing} ${wire.action.replace('jumper-', '')}${from}${to}`;
}

/** A meaning in words, for asking whether it was meant; undefined where it has none of its own. */
export function meaningWords(meaning: Meaning): string | undefined {
  switch (meaning.kind) {
    case 'reading':
      return readbackWords(meaning.reading).replace(/\.$/, '');
    case 'wire':
      return wireWords(meaning.wire);
    case 'part':
      return `fitted ${partWords(meaning.part, meaning.ratings)}`;
    case 'work':
      return workWords(meaning.work);
    case 'nameplate':
      return nameplateWords(meaning.field, meaning.value, meaning.unit).replace(/\.$/, '');
    case 'command':
      return COMMANDS.find((command) => command.id === meaning.command)?.name;
    case 'report':
      return reportWords(meaning.report);
    case 'several': {
      const parts = meaning.parts.map(meaningWords);
      return parts.includes(undefined) ? undefined : parts.join(', and ');
    }
    case 'dictated':
      return `${DICTATIONS.find((row) => row.as === meaning.as)?.name ?? meaning.as} ${meaning.text}`;
    case 'check-on-me':
      return `check on you ${meaning.every ? 'every' : 'in'} ${sayNumber(meaning.minutes)} minutes`;
    case 'note':
      return `note ${meaning.text}`;
    case 'value':
    case 'unclear':
      return undefined;
  }
}

function reportWords(report: Report): string | undefined {
  switch (report.type) {
    case 'observation':
      return observationWords(report.observation);
    case 'energy':
      return `${report.place.replace('-', ' ')} ${report.device.replace('-', ' ')} ${report.state}`;
    case 'meter-proof':
      return `meter proves ${sayNumber(report.value)}`;
    case 'absence-of-voltage':
      return `proof: meter ${[report.before, ...report.values].map(sayNumber).join(', ')}, meter ${sayNumber(report.after)}`;
    case 'discharged':
      return 'capacitor discharged';
    case 'job-item':
      return itemWords(report.item);
    case 'injury':
      return undefined;
  }
}

export function surpriseWords(reading: Reading, why: string): string {
  const words = capital(readbackWords(reading, true));
  return [words, why, 'Is that what the meter shows?'].filter((part) => part !== '').join(' ');
}

export function judgedWords(judged: Judged): string {
  return judged.word === 'marginal' ? 'That is marginal.' : 'That does not fit.';
}

export function twinWords(options: readonly [number, number]): string {
  return `Was that ${sayDigits(options[0])}, or ${sayDigits(options[1])}?`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const CHARGE_WORDS: Readonly<Record<ChargeFigure, string>> = {
  superheat: 'Superheat',
  subcooling: 'Subcooling',
  'condensing-over-ambient': 'Condensing over ambient',
};

const REFRIGERANT_WORDS: Readonly<Record<RefrigerantCheck, (value: string, word: JudgedWord) => string>> = {
  'pressure-test': (value, word) =>
    `Changed by ${value} psi beyond temperature. ${word === 'does not fit' ? 'It leaks: find it, then test again.' : word === 'fits' ? 'It held.' : 'That is marginal: within a gauge error or a small leak.'}`,
  evacuation: (_value, word) =>
    word === 'does not fit'
      ? 'Not deep enough yet: five hundred microns or below.'
      : 'Deep enough. Valve off the pump.',
  decay: (_value, word) =>
    word === 'does not fit'
      ? 'It rose too far: moisture or a leak. Evacuate again, or search.'
      : word === 'fits'
        ? 'It stood.'
        : 'That is marginal: moisture, most likely.',
};

export const SAY = {
  opened: (site: string, complaint: string) => `Visit open: ${site}. Complaint: ${complaint}.`,
  notProvenDead: 'Refused: power was not proven off. Prove it dead, then measure again.',
  impossible: (reading: Reading) => `${capital(readbackWords(reading, true))} That cannot be. Measure it again.`,
  lacks: (what: string) => `This unit is listed without ${what}.`,
  otherUnit: 'That unit does not belong to this reading. Say the number with its own unit.',
  handsOff: (where: string) =>
    `Hands off: voltage present at ${where}. It may come back through a winding, or from another switch.`,
  reportedOff: 'Reported off. Not proven. Lock and tag it.',
  reportedOffLocked: 'Reported off and locked. Not proven.',
  nothingLocked: 'Say which switch is open and locked, device and place, before the proof.',
  groundNotSeen:
    'A live leg has not been read to this ground. Read one on the disconnect line side first, then prove again.',
  proofShort: 'The proof wants both pairs to ground and leg to leg: three numbers between the two meter numbers.',
  meterNotProven: 'The meter was not proven: before and after must read a known live source. Prove it again.',
  stillVoltage: (volts: string) =>
    `${volts} is not below three volts. Not dead. Find the other source, retest with a low impedance meter.`,
  readsDead: 'Reads dead. Only test and discharge until the capacitor is read.',
  charged: (words: string) => `${words} Still charged. Discharge it again, then read it.`,
  provenDead: 'Below three volts on every pair and section. Proven dead here.',
  gatedProof: "Below three volts where it was read. The maker's procedure governs the rest: not called dead here.",
  supervisorFirst: "A trainee's live step: a supervisor must acknowledge it first.",
  quiet: 'Thirty quiet minutes. The proof has lapsed: prove it dead again before hands go in.',
  unlocked: 'Reported unlocked. Proof ended: counts as live.',
  powerBack: 'Power reported back. Proof ended.',
  corrected: (reading: Reading) => `Corrected: ${readbackWords(reading)}`,
  nothingToCorrect: 'Nothing to correct yet.',
  takenBack: (reading: Reading) => `Taken back: ${readbackWords(reading)}`,
  observationBack: 'Taken back.',
  powerIsOn: (what: string) => `Hands off: ${what}. Power is on: it may come from another switch.`,
  unclear: 'Not understood. Say the place, then the number.',
  notTaken: 'Say it again: the place, then the number.',
  which: 'Which place was that?',
  answerFirst: 'Say it again, digit by digit.',
  digitsPlease: 'Say the digits one by one.',
  setAside: 'Set aside. Say it again.',
  questionOpen: 'A question stands open. Answer it first.',
  cautionFirst: 'Say "live" first.',
  nextIs: 'Working it out.',
  nothingNext: 'None of the tests left tells more. Say the part you fitted, or finish the visit.',
  parked: (what: string) => `Parked: ${what}`,
  noted: 'Noted.',
  held: 'Visit held. Say "go on with the visit" to take it up.',
  resumed: 'Visit goes on.',
  brief: 'Short talk.',
  full: 'Full talk.',
  injury: 'Power off. Call for help. See a doctor even if you feel well. Visit held.',
  contradiction: 'Two readings contradict each other. Measure the last one again.',
  help: 'Say a place and a number, what you see, what you switched, the part you fitted, or: what next, why, correction, take that back, say again, finish the visit.',
  splitSoon: (minutes: string) => `Running ${minutes} minutes. The split is judged after fifteen.`,
  split: (degrees: string, minutes: string, fits: boolean) =>
    `Split ${degrees} degrees after ${minutes} minutes. ${fits ? 'That fits.' : 'That does not fit.'}`,
  whileThere: (test: string) => `Once more while you are there: ${test}. Much rests on it.`,
  onceMore: (test: string) => `All rests on one reading, ${test}. Take it once more before a part is condemned.`,
  charge: (figure: ChargeFigure, words: string) => `${CHARGE_WORDS[figure]}: ${words}.`,
  leakFirst: 'Repair the leak, then the pressure test begins anew.',
  readAgain: 'Time: read it again.',
  standing: (minutes: string) => `Let it stand. Read it again in ${minutes} minutes.`,
  standsStill: (minutes: string) => `It has to stand ${minutes} minutes more.`,
  refrigerant: (check: RefrigerantCheck, value: string, word: JudgedWord) => REFRIGERANT_WORDS[check](value, word),
  checkSet: (minutes: string, every: boolean) =>
    `Checking on you ${every ? 'every' : 'in'} ${minutes} minutes. Say "cancel the check" to end it.`,
  check: 'Check: say "I am fine".',
  checkAgain: 'Check again: say "I am fine". Say "I am fine".',
  checkUnanswered:
    'Check without an answer. Say "I am fine". Whoever hears this: look for the technician, touch nothing live, call for help.',
  checkNext: (minutes: string) => `Good. Next check in ${minutes} minutes.`,
  checkOver: 'The check has ended.',
  noCheck: 'There is none running. Say "check on me every twenty minutes".',
  declined: 'Declined: nothing is done to the unit. Say "customer agrees" to go on, or finish the visit.',
  meterTooLow:
    'Category three or better is used at equipment wired to the building: that meter stays off line voltage.',
  recommendWhat: 'Say what is recommended behind the word.',
  signedByWhom: 'Say the name behind it, or write it under More.',
  because: (fault: string, was: string, now: string) => `That moves ${fault} from ${was} to ${now}.`,
  finding: (fault: string, percent: string) => `Finding: ${fault}, ${percent}.`,
  openItems: (items: readonly string[]) => `Open: ${items.join('. ')}.`,
} as const;
