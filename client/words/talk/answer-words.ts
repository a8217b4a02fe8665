import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { FOCUSES, type Focus } from '../../../grammar/vocabulary/focuses.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { rowsBy } from '../../../grammar/vocabulary/rows-by.ts';
import { URGENT_WORDS } from '../../../grammar/vocabulary/urgent-words.ts';
import { ZONE_NAMES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { faultWords } from '../things/fault-words.ts';
import { observationWords } from '../things/observation-words.ts';
import { placeWords } from '../things/place-words.ts';
import { readbackWords } from '../things/reading-words.ts';
import type { Likely } from './status-words.ts';

/**
 * What is answered to a question put to Readback: at most 25 words each, so that the hands need not wait for it. None
 * tells what a reading will be, calls anything safe, or holds a word that is listened for meanwhile.
 */
export const ANSWER = {
  // What did you hear, what was it.
  nothingHeard: 'Nothing yet since the visit was taken up.',
  taken: (words: string) => `Taken: ${words}.`,
  asked: (words: string) => `Heard: ${words}. Asked, not taken yet.`,
  notTaken: (heard: string) =>
    HOLDS_URGENT.test(heard) || heard.split(' ').length > LONGEST_QUOTED
      ? 'It was not understood. Its words are on the screen.'
      : `Heard "${heard}". Not understood, not taken.`,
  read: (reading: Reading) => capital(readbackWords(reading)),
  notRead: (at: readonly PointId[]) => `${capital(placeWords(at))}: not read yet.`,
  nothingRead: 'Nothing is read yet.',

  // Where and how.
  nothingToPlace: (asked: string) => `Nothing to place here. ${asked}`,
  knownSource: 'Meter on volts AC, on a known live source of the same kind, before the pairs and after them.',
  clamps: 'Clamp around one lead of the motor, alone, jaws closed.',

  // What it should do.
  countsUntilWhole: 'What it shows counts. It is live until every pair is read.',
  seeWhich: (answers: readonly ObservationId[]) =>
    `Say which: ${answers.slice(0, MOST_NAMED).map(observationWords).join(', or ')}.`,
  nothingAsked: 'Nothing is asked to be read now.',

  // What it means.
  means: (judged: string | undefined, leading: Likely | undefined) =>
    [
      judged === undefined ? 'It has its place among the others.' : `${capital(judged)} by its rule.`,
      leading === undefined ? '' : `Most likely so far: ${faultWords(leading.fault)}.`,
    ]
      .filter(Boolean)
      .join(' '),
  moreLikely: (more: Likely | undefined, less: Likely | undefined) =>
    [
      more === undefined ? '' : `More likely now: ${faultWords(more.fault)}.`,
      less === undefined ? '' : `Less: ${faultWords(less.fault)}.`,
    ]
      .filter(Boolean)
      .join(' '),

  // What it may be.
  nothingLikely: 'Nothing stands out yet. Each reading tells more.',
  mayBe: (faults: readonly FaultId[]) => `Most likely first: ${faults.map(faultWords).join(', ')}.`,

  // What is left.
  pairsLeft: (pairs: readonly (readonly PointId[])[]) =>
    pairs.length === 0
      ? 'The pairs are read. The meter on its source again, then the charge.'
      : `${counted(pairs.length, 'pair')}: ${pairs.slice(0, MOST_NAMED).map(placeWords).join(', ')}${pairs.length > MOST_NAMED ? ' and more' : ''}. Then the meter.`,
  sectionsLeft: (sections: readonly (readonly PointId[])[]) =>
    `Charge to be read: ${sections.map(placeWords).join(', ')}.`,
  left: {
    arrive: (questions: number) => `${counted(questions, 'question')} of arrival, then the search for the fault.`,
    testing: (likely: number) =>
      `${counted(likely, 'suspect')} left in the search. Then the repair, its proof, the close.`,
    repair: 'The repair, then its proof, then the close.',
    prove: (readings: number, minutes: number) =>
      `${counted(readings, 'reading')} of the proof${minutes > 0 ? `, ${counted(minutes, 'minute')} to the split` : ''}. Then the close.`,
    close: (items: number) => `${counted(items, 'question')} of the close, then finish the visit.`,
  },

  // Where to go on.
  goesTo: (focus: Focus) => `To the ${FOCUS_NAMES[focus].name}.`,
  nothingBefore: 'There is nothing before this.',
  staysTold: 'That stands as it was told. Say what has changed there.',
  readAnew: 'Say its place and the number, with "correction" before it.',
  inTheWay: {
    proof: 'Not now: a proof is in progress. Finish it or pass it first.',
    search: 'Not now: find first where the voltage comes from.',
    repair: 'Not now: the repair and its proof come first.',
    close: 'Not now: the visit is being closed.',
    gate: "Not asked for on this unit: the maker's procedure governs. What you read is taken.",
    power: (zone: ZoneId) => `Not now: it wants power on, and the ${ZONE_NAMES[zone]} is off.`,
    call: 'Not now: it wants a call for cooling, and there is none.',
    opened: 'Not now: the refrigerant circuit is open and must be closed first.',
    nothingLeft: (focus: Focus) => `Nothing is left to read on the ${FOCUS_NAMES[focus].name}.`,
  },

  // A moment.
  handsOff: 'Hands off meanwhile: it is live.',
} as const;

const FOCUS_NAMES = rowsBy('id', FOCUSES);
const HOLDS_URGENT = new RegExp(`\\b(?:${URGENT_WORDS.join('|')})\\b`, 'i');
const LONGEST_QUOTED = 12;
const MOST_NAMED = 3;

function counted(count: number, what: string): string {
  return `${capital(sayNumber(count))} ${what}${count === 1 ? '' : 's'}`;
}

/** What a reading tells, in words that name both sides: what it will be is seen on the meter alone. */
export const TELLS: Readonly<Record<QuantityId, string>> = {
  voltage: 'Its full voltage where it is fed; next to nothing across a closed contact, or where the feed is lost.',
  'voltage-dc': 'It falls as the charge goes. Say what is left.',
  current: 'Near the plate if it works as it is meant to, far over if it labours, nothing if it is not fed.',
  resistance: 'A whole path shows its ohms, a broken one none. To the shell a path is a fault.',
  insulation: 'High where it is dry and whole, low where it leaks.',
  capacitance: 'Near its label if it is good, well under it if it is worn.',
  temperature: 'It tells beside the others: too far apart or too near is the sign.',
  'wet-bulb': 'Under the dry bulb, the more the drier the air.',
  pressure: 'It tells beside the line and the air: too high, too low, or as the weather wants.',
  vacuum: 'It falls, and stays down once the pump is off.',
  'static-pressure': 'The more the air is held up, the higher.',
  airflow: 'What the tons want, less where it is held up.',
  frequency: 'What the supply has.',
  humidity: 'Whatever the air has: it sets what the others are held to.',
  mass: 'What the plate allows, and what went out.',
  time: 'Whatever it takes: it is written down.',
  difference: 'It tells how much heat was moved.',
};
