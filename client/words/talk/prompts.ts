import { sayDigits, sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { Deed, Judged, VisitSummary, WireMove } from '../../../grammar/visit/events.ts';
import type { ProvedPair } from '../../../grammar/visit/facts.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import type { DictatedAs, JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { TESTS_BY_ID, type TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { WorkId } from '../../../grammar/vocabulary/works.ts';
import { ZONE_NAMES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital, uncapital } from '../capital.ts';
import { deedWords } from '../things/deed-words.ts';
import { exclusionWords } from '../things/exclusion-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { itemWords, workWords } from '../things/job-words.ts';
import { briefObservationWords, observationWords } from '../things/observation-words.ts';
import { placeWords } from '../things/place-words.ts';
import { briefReadbackWords, readbackWords } from '../things/reading-words.ts';
import { bareValueWords, UNIT_WORDS, valueWords } from '../things/value-words.ts';
import { wireWords } from '../things/wire-words.ts';
import { MOST_WORDS, within, wordsIn } from '../within.ts';
import { HAND_OVER } from './hand-over-words.ts';

/**
 * What the visit says that is neither a step nor a caution. None holds a word that is listened for while the mouth
 * speaks, suggests a value before it is read, or calls anything safe. What is filled in comes as ids and numbers:
 * whatever has words of its own is put into words here.
 */
export const SAY = {
  opened: (site: string) => `Visit open: ${site}.`,

  // Readings, and what is asked back of them.
  read: (reading: Reading, digitByDigit: boolean, remark: string) =>
    withRemark(capital(readbackWords(reading, digitByDigit)), remark),
  /** What a step has just asked for: its unit is understood. */
  readAsAsked: (reading: Reading, remark: string) => withRemark(capital(briefReadbackWords(reading)), remark),
  /** A number of the proof, which was asked for by its place. */
  readInProof: ({ value }: Reading) => `${capital(bareValueWords(value))}.`,
  /** That it was taken on the bench was asked for, and is not in doubt. */
  doubtful: ({ bench: _, ...reading }: Reading, why: string) =>
    [capital(readbackWords(reading, true)).replace(/\.$/, '?'), why].filter(Boolean).join(' '),
  judged: ({ word }: Judged) => `${capital(word)}.`,
  twin: ([one, other]: readonly [number, number]) => `Was that ${sayDigits(one)}, or ${sayDigits(other)}?`,
  impossible: (reading: Reading) => `${capital(readbackWords(reading, true))} That cannot be. Measure it again.`,
  rejected: (reading: Reading) => `${capital(readbackWords(reading))} Set aside. Measure it again.`,
  notProvenDead: 'Refused: not proven dead. Prove it, then measure again.',
  notOnTheBench: 'Refused: a compressor is not measured on the bench. Prove it dead, then measure it in place.',
  lacks: (what: string) => `This unit is listed without ${what}.`,
  otherUnit: 'That unit does not belong to this reading. Say the number with its own unit.',
  contradiction: 'Two readings contradict each other. Measure the last one again.',
  /** What was just read out as a question, and answered with yes. */
  confirmed: 'Taken.',
  corrected: (reading: Reading, remark: string) => withRemark(`Corrected: ${readbackWords(reading)}`, remark),
  correctWithUnit: 'In which unit? Say the correction with its unit.',
  nothingToCorrect: 'Nothing to correct yet.',
  correctWhat: 'Correction: say the right number.',
  proofBack: (zone: ZoneId) => `Taken back: the proof, ${ZONE_NAMES[zone]}. Not proven dead: prove it again.`,
  chargeOpen: (zone: ZoneId) => `Proof ended: ${ZONE_NAMES[zone]}. Discharge again, then volts DC.`,
  takenBack: (reading: Reading) => `Taken back: ${readbackWords(reading)}`,
  observationBack: 'Taken back.',
  switchBack: (place: IsolationPlace) =>
    `Taken back: the switch at ${SWITCH_PLACES[place]}. Counts as live unless another is locked.`,
  itemBack: (item: JobItemId) => `Taken back: ${itemWords(item)}.`,
  recommendationBack: (text: string) => `Taken back: recommend ${text}.`,
  partBack: (words: string) => `Taken back: ${words}.`,
  deedBack: (deed: Deed) => `Taken back: ${deedWords(deed)}.`,
  unprovenBack: (what: string) => `Taken back: ${what}.`,
  wireBack: (wire: WireMove) => `Taken back: ${wireWords(wire)}.`,

  // What was not understood, or waits for an answer.
  unclear: 'Not understood. Say the place, then the number.',
  /** What a question asked of, where nobody answered it. */
  leftOut: (question: Question) => {
    const at = 'reading' in question ? question.reading.at : question.kind === 'what-value' ? question.of[0].at : [];
    if (question.kind === 'which-switch') return 'Switch left out: say which.';
    return at.length === 0 ? 'Left out.' : `${capital(placeWords(at))}: left out.`;
  },
  visitIsClosed: 'The visit is closed. Nothing was changed.',
  openAlready: 'This visit is open already.',
  recordCut: 'The record broke off inside what was said last. Say it again.',
  notTaken: 'Say it again: the place, then the number.',
  which: 'Which place was that?',
  whichPlace: (value: Value, unit: UnitCode | undefined) =>
    `${capital(unit === undefined ? bareValueWords(value) : valueWords(value, unit))}: which place was that?`,
  whichSwitch: 'Which switch was that?',
  cannotBe: (words: string) => `${capital(words)}? That cannot be. Say it again.`,
  valueAt: (at: readonly PointId[]) => `${capital(placeWords(at))}: what does it read?`,
  answerFirst: 'Say it again, digit by digit.',
  digitsPlease: 'Say the digits one by one.',
  setAside: 'Set aside. Say it again.',
  questionOpen: 'A question stands open. Answer it first.',
  meant: (words: string) => `${capital(words)}: is that right?`,

  // Power, its proof, and what speaks against it.
  handsOff: (zone: ZoneId, at: readonly PointId[]) =>
    `Hands off: voltage present at ${at.length === 0 ? ZONE_NAMES[zone] : placeWords(at)}. Back-feed, or another switch.`,
  stillPresent: (at: readonly PointId[]) => `Voltage present at ${placeWords(at)}.`,
  powerIsOn: (seen: ObservationId) =>
    `Hands off: ${observationWords(seen)}. Power is on: it may come from another switch.`,
  reportedOff: 'Off, not proven. Lock and tag it.',
  reportedOffLocked: 'Locked, not proven.',
  /** Told of again where the proof stands. */
  lockedAgain: 'Locked.',
  offAgain: 'Off.',
  /** A switch that was told not to be opened or locked. */
  notDone: (what: 'pulled' | 'off' | 'locked') => `Not ${what}, then: power counts as on.`,
  unlocked: 'Reported unlocked. Proof ended: counts as live.',
  powerBack: (isProofEnded: boolean) => `Power back.${isProofEnded ? ' Proof ended.' : ''}`,
  dictateWhat: (as: 'note' | DictatedAs) => DICTATE[as],
  /** Words of free speech that no ear here can tell. */
  dictated: (isSoundKept: boolean) => (isSoundKept ? 'Sound kept.' : 'Noted, words unsure: read them over.'),
  dictationLost: 'Not caught. Type it.',
  nameLost: 'Names are not heard here. Write it under More.',
  maybeBack: (zones: readonly ZoneId[], proofs: readonly ZoneId[]) =>
    `Power may be back. ${proofs.length === 0 ? `Counts as live: ${zoneList(zones)}` : `Proof ended: ${zoneList(proofs)}`}.`,
  unproven: (zones: readonly ZoneId[]) => `${capital(zoneList(zones))}: not proven dead.`,
  stillThere: (what: readonly string[]) => `Power back with: ${what.join(', ')}.`,
  armature: 'Never push a contactor in by hand while it is fed.',
  bypassed: 'What is bypassed protects nothing. Take the bypass out before it runs.',
  shellBurns: 'Hand off the shell: it burns. Unit not proven dead.',
  grounded: 'A winding reads to its shell. It may vent at the terminals: stay clear, do not reset.',
  groundedFed:
    'Power on a winding that reads to its shell: it may vent at the terminals. Stay clear, open the breaker.',
  groundedHolds: 'A winding reads to its shell: power is not asked for. It may vent at the terminals. Do not reset.',
  windingsUnread:
    'Power is back after a trip, and not every winding was read to its shell. Stay clear of the terminals.',
  resetAgain: (times: number) => `Reset ${sayNumber(times)}: one is all it gets. Leave it open and find what trips it.`,
  nothingLocked: 'First say which switch is open and locked: device and place.',
  notLocked: 'Off, not locked. Lock and tag it, then the meter.',
  callOffFirst: 'Call off first, then the meter. Say when it is off.',
  provenAlready: (zone: ZoneId) => `${capital(ZONE_NAMES[zone])}: its proof stands.`,
  groundNotSeen: (zone: ZoneId) => `Not counted: a live leg was never read to this ground. ${GROUND_ADVICE[zone]}`,
  groundNotProven: 'Neither leg is fed: this ground is not proven. Leg to leg counts most.',
  meterProves: (volts: number) => `Meter ${bareValueWords(volts)}.`,
  meterGoesOn: (volts: number, next: readonly PointId[]) =>
    `Meter ${valueWords(volts, 'V')}. Next: ${placeWords(next)}.`,
  provedPairs: (pairs: readonly ProvedPair[], strangers: number) =>
    [
      pairs.length === 0 ? '' : `${capital(pairWords(pairs))}.`,
      strangers === 0 ? '' : `Not counted: ${sayNumber(strangers)} without a pair.`,
    ]
      .filter(Boolean)
      .join(' '),
  strangePair: (next: readonly PointId[]) => `Not one of its pairs. ${capital(placeWords(next))}.`,
  proofTooLong: (minutes: number) => `Over ${sayNumber(minutes)} minutes: the proof starts again, meter first.`,
  meterNotProven: 'Not counted: meter on a live source first and last. Again.',
  readsDead: 'Reads dead.',
  readsDeadElectronic:
    "Reads dead. Its drive holds a charge: let five minutes pass, or the maker's time where that is longer. Then say done.",
  discharged: 'Discharged.',
  dischargedNow: (at: readonly PointId[]) => `Discharged. Now ${placeWords(at)}, volts DC.`,
  dischargedLive: (zone: ZoneId) => `${capital(ZONE_NAMES[zone])} does not read dead: prove that first.`,
  chargedEarly: (reading: Reading) =>
    `${capital(readbackWords(reading))} Charged, and it does not read dead yet. Prove it first, then discharge.`,
  dcTooEarly: 'DC counts once it reads dead. Prove it first.',
  acOrDc: (reading: Reading) => `${capital(readbackWords(reading))} DC counts where it reads dead. Was that AC?`,
  onDc: (reading: Reading) => `${capital(readbackWords(reading))} Meter on DC?`,
  timeLeft: (minutes: number) => `${capital(sayNumber(minutes))} minutes left. The maker's figure governs.`,
  charged: (reading: Reading) => `${capital(readbackWords(reading))} Still charged. Discharge it, read it again.`,
  provenDead: 'Below three volts: proven dead.',
  gatedProof: "Below three volts where it was read. The maker's procedure governs the rest: not called dead here.",
  clockJumped: 'The clock jumped. Proof ended.',
  ...HAND_OVER,
  away: 'Taken up again after a while. Proof ended: prove it dead again before hands go in.',
  quiet: 'Thirty quiet minutes. The proof has lapsed: prove it dead again before hands go in.',
  supervisorFirst: "A trainee's live step: a supervisor must acknowledge it first.",
  waits: (words: string) => `${capital(words)}: kept, not taken. A supervisor must acknowledge first.`,
  supervised: (places: readonly (readonly PointId[])[], proofToo: boolean) => {
    const again = [...new Set(places.map((at) => placeWords(at)))];
    return [
      'Supervisor acknowledged.',
      ...(again.length === 0
        ? []
        : [`Read it again: ${again.slice(0, MOST_NAMED).join(', ')}${again.length > MOST_NAMED ? ' and more' : ''}.`]),
      ...(proofToo ? ['Prove it again, from the meter on.'] : []),
    ].join(' ');
  },
  supervisorNotNeeded: 'A supervisor is asked for on a visit of a trainee alone.',
  supervisorBack: 'Taken back: the supervisor has not acknowledged.',
  cautionFirst: 'Say "live" first.',
  injury: 'Power off. Call for help. See a doctor even if you feel well. Visit held.',
  meterTooLow:
    'Category three or better is used at equipment wired to the building: that meter stays off line voltage.',

  // Steps, and what the readings say.
  nextIs: 'Working it out.',
  leftPassed: 'What is left was passed over. Say what you can read, or finish the visit.',
  nothingNextRepaired: 'Nothing more tells. Read what you doubt, or finish the visit.',
  nothingNext: 'Nothing more tells. Say the part fitted, or finish the visit.',
  /** @param leading the likeliest cause now, where one is known */
  notCured: (leading: FaultId | undefined) =>
    `Not proved: not seen running.${leading === undefined ? '' : ` Most likely now: ${faultWords(leading)}.`} Say what you fit or see, or finish the visit.`,
  nothingWithout: (step: string) =>
    `Nothing is left without it: ${uncapital(step)} Say when that is done, or finish the visit.`,
  parked: (step: string) => `Parked: ${step}`,
  /** A step whose answer alone carries the finding is asked again, with the reason. */
  onceMore: (asked: string) => `Again: ${uncapital(asked)}`,
  /** What may end by itself is waited for. @param minutes whole ones */
  afterWait: (minutes: number, asked: string) =>
    `Give it ${sayNumber(minutes)} minutes, then again: ${uncapital(asked)}`,
  /** @param unproved tests that would have proved it and could not be done */
  finding: (fault: FaultId, unproved: readonly TestId[] = []) =>
    unproved.length === 0
      ? `Finding: ${faultWords(fault)}.`
      : `Finding by exclusion: ${faultWords(fault)}. ${capital(exclusionWords(fault, unproved.slice(0, 1)))}.`,
  /** @param excluded the likeliest first */
  noneOfTheList: (excluded: readonly FaultId[]) => {
    const tail = 'Check leads and connections, say what you see, or finish the visit.';
    const told = (count: number) =>
      excluded.length === 0 ? '' : `; excluded: ${excluded.slice(0, count).map(faultWords).join(', ')}`;
    const [two, one] = [2, 1].map((count) => `Nothing listed fits${told(count)}. ${tail}`);
    return wordsIn(two!) <= MOST_WORDS ? two! : one!;
  },
  runIn: (minutes: number) => `${capital(sayNumber(minutes))} minutes to the split: filter, drain.`,
  splitSoon: (minutes: number) => `${capital(sayNumber(minutes))} more.`,
  split: (degrees: number, fits: boolean) =>
    `Split ${sayNumber(degrees)}, ${fits ? 'fits' : 'does not fit: repair not proven by it'}.`,

  // What was seen and done.
  seen: (observation: ObservationId, as?: string) => `${capital(as ?? observationWords(observation))}.`,
  /** What was just looked at is not named again. */
  seenAsAsked: (observation: ObservationId, as?: string) => `${capital(briefObservationWords(observation, as))}.`,
  item: (item: JobItemId) => `${ITEM_READBACKS[item] ?? capital(itemWords(item))}.`,
  deed: (done: Deed) => `${capital(deedWords(done))}.`,
  work: (work: WorkId) => `${capital(workWords(work))}.`,
  fitted: (words: string) => `Fitted: ${words}.`,
  partDoubted: (why: readonly string[]) => around('Does not match.', why, 'Keep it all the same?'),
  overcurrentRefused: (why: readonly string[]) => around('Refused.', why, 'Fit a smaller one, or say note and why.'),
  reasonWanted: 'A yes is not enough. Say note and the reason.',
  keptForReason: (words: string) => `Fitted all the same, with its reason: ${words}.`,
  fittedBefore: (words: string, why: readonly string[]) => around(`${capital(words)} does not match.`, why, ''),
  wireMoved: (wire: WireMove) => `${capital(wireWords(wire))}.`,
  wireDoubted: (wire: WireMove, why: string) => `${capital(wireWords(wire))}. ${why} Is that so?`,
  pulledUnderLoad: 'Pulled with the load on: a pull-out is not a load switch. Look at its blades before it goes back.',
  holdsWithoutCall: 'It holds in: open at the breaker, not under load.',
  noVoice: 'The voice failed. Read the screen.',
  callIsThere: 'Something feeds the control circuit. Its proof ended.',
  plateBack: (field: string) => `Taken back: nameplate ${field}.`,
  refusalBack: 'It was refused: nothing to take back of it.',
  proofDoubted: 'Hands off: then it is not proven. Proof ended. Meter on a live source, and each pair again.',
  windingsFirst: {
    fuse: 'A fuse blew: each winding to its shell, while dead, before power returns.',
    breaker: 'The breaker tripped: each winding to its shell, while dead, before power returns.',
  },
  stayClear: 'Stay clear. Power off from outside of it. Call for help.',
  stillOff: 'Not understood. Still off and locked?',
  stillOffThen: 'Still off.',
  proofStands: 'As you say. The proof stands as measured.',
  notSaidOff: 'Hands off: nobody said it is still off. Prove it dead again.',
  maybeVoltage: 'Hands off: that may be a voltage. Proof ended. Read it again.',
  wiresPulled: 'Wires pulled, none moved.',
  noted: 'Noted.',
  declined: 'Declined: nothing is done to the unit. Say "customer agrees" to go on, or finish the visit.',
  takenUp: 'The work goes on.',
  recommended: (text: string) => `Recommended: ${text}.`,
  taken: (text: string) => `${capital(text)}.`,
  signed: (as: 'technician' | 'customer', name: string) => `Signed, ${as}: ${name}.`,

  // The talk itself, and its end.
  stillHurt: 'See a doctor even if you feel well. Visit held.',
  held: 'Visit held. Say "go on with the visit" to take it up.',
  resumed: 'Visit goes on.',
  units: ({ temperature, pressure }: UnitChoice) =>
    `From now on ${SCALE_WORDS[temperature]} and ${UNIT_WORDS[pressure]}. What was read stays as it was.`,
  brief: 'Short talk.',
  full: 'Full talk.',
  help: 'Say a place and number, what you see, switched or fitted, or: what next, why, correction, take that back, say again, finish the visit.',
  helpInProof:
    'Each number alone, as it is asked. Or in one breath: meter and its number, each pair in order, meter again.',
  helpAtCharge: 'The volts DC of each section, its number alone. Or both in one breath: herm section, fan section.',
  reasonInWords: 'That is not a reason. Say note, and why.',
  notClosed: (why: readonly string[]) => around('Not closed:', why, 'Or say note and the reason.'),
  /** The summary itself stands on the screen and in the record. */
  closed: ({ openItems }: VisitSummary) =>
    openItems.length === 0
      ? 'Visit closed.'
      : around(
          `Visit closed, open items: ${sayNumber(openItems.length)}.`,
          openItems.slice(0, MOST_ITEMS).map(itemSentence),
          '',
        ),

  // The lone-worker check.
  checkSet: (minutes: number, every: boolean) =>
    `Checking on you ${every ? 'every' : 'in'} ${sayNumber(minutes)} minutes. Say "cancel the check" to end it.`,
  check: 'Check: say "I am fine".',
  checkAgain: 'Check again: say "I am fine". Say "I am fine".',
  checkUnanswered:
    'Check without an answer. Say "I am fine". Whoever hears this: look for the technician, touch nothing live, call for help.',
  checkNext: (minutes: number) => `Good. Next check in ${sayNumber(minutes)} minutes.`,
  checkOver: 'The check has ended.',
  noCheck: 'There is none running. Say "check on me every twenty minutes".',
} as const;

const SCALE_WORDS: Readonly<Record<UnitChoice['temperature'], string>> = {
  '[degF]': 'degrees Fahrenheit',
  Cel: 'degrees Celsius',
};

/** Places that are named in a list, and open items at the close; all of them stand on the screen. */
const MOST_NAMED = 2;
const MOST_ITEMS = 3;

/** As many of the sentences as leave the prompt short enough. */
function around(before: string, sentences: readonly string[], behind: string): string {
  return [before, within(sentences, `${before} ${behind}`), behind].filter((words) => words !== '').join(' ');
}

/** An open item aloud: a step that was passed by its name. */
function itemSentence(item: string): string {
  const [, step = '', how = ''] = /^([\w@+.-]+): (.*)$/.exec(item) ?? [];
  const test = TESTS_BY_ID[step as TestId];
  const words = test === undefined ? item : `${test.name} ${how}`;
  return `${capital(words).replace(/\.$/, '')}.`;
}

/** Asks for the words behind a heading. */
const DICTATE: Readonly<Record<'note' | DictatedAs, string>> = {
  note: 'Note what?',
  recommendation: 'Recommend what?',
  saying: 'What do they say?',
  certificate: 'What certificate?',
  cylinder: 'Which cylinder?',
  technician: 'Whose name?',
  customer: 'Whose name?',
  supervisor: 'Whose name?',
};

/** What is read back shorter than it is written down. */
const ITEM_READBACKS: Readonly<Partial<Record<JobItemId, string>>> = {
  'consent-given': 'Agreed',
  'sound-kept': 'Kept',
  'sound-not-kept': 'Not kept',
  'meter-category-two': 'Category two',
  'meter-category-three': 'Category three',
  'meter-category-four': 'Category four',
  'nameplate-unreadable': 'Unreadable',
  'thermostat-as-agreed': 'As agreed',
  'nothing-to-recommend': 'Nothing',
  'customer-not-present': 'Not present',
};

const SWITCH_PLACES: Readonly<Record<IsolationPlace, string>> = {
  outdoor: 'the outdoor unit',
  panel: 'the panel',
  'air-handler': 'the air handler',
};

/** What can be done where a ground was not read in time. */
const GROUND_ADVICE: Readonly<Record<ZoneId, string>> = {
  'outdoor-load': 'Disconnect locked, breaker on: read line side one to ground, then prove it again.',
  'disconnect-line': 'Breaker on, disconnect locked: read line side one to ground, then lock the breaker.',
  'air-handler': "Switch on: read the air handler's leg one to ground, then lock it again.",
  control: '',
  'capacitor-herm': '',
  'capacitor-fan': '',
  'capacitor-start': '',
};

/** Pairs with their values; the same value is said once behind all of them. */
function pairWords(pairs: readonly ProvedPair[]): string {
  const values = [...new Set(pairs.map(({ value }) => value))];
  const named = (value: number) =>
    pairs
      .filter((pair) => pair.value === value)
      .map(({ at }) => shortPair(at))
      .join(', ');
  const said = (value: number) => (values.length === 1 ? valueWords(value, 'V') : bareValueWords(value));
  return values.map((value) => `${named(value)}: ${said(value)}`).join('; ');
}

/** A leg by its own name, ground understood; two conductors by both. */
function shortPair(at: readonly PointId[]): string {
  return placeWords(at).replace(/ to ground$/, '');
}

/** The outdoor unit's name stands for its capacitor too. */
function zoneList(zones: readonly ZoneId[]): string {
  const outdoors = zones.includes('outdoor-load');
  return zones
    .filter((zone) => !(outdoors && zone.startsWith('capacitor-')))
    .map((zone) => ZONE_NAMES[zone])
    .join(', ');
}

function withRemark(words: string, remark: string): string {
  return remark === '' ? words : `${words} ${remark}`;
}
