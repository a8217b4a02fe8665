import type { Judged, TakenUnder } from '../../../grammar/visit/events.ts';
import { judgeReading, samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { latestReading, standingReadings } from '../../../grammar/visit/standing.ts';
import { inBaseUnit } from '../../../grammar/vocabulary/in-base-unit.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { chosenFor, type UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { unprovenWords } from '../../words/things/reading-words.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { answersStep, answersTest } from '../rules/answers-test.ts';
import { unreadSections } from '../rules/charged-sections.ts';
import { DEAD_BELOW_VOLTS } from '../rules/dead-threshold.ts';
import { holdsWithoutCall } from '../rules/holds-without-call.ts';
import { isolationOf, OUTDOOR_ZONES, placesOpening, provedWith } from '../rules/isolation.ts';
import { isSought } from '../rules/source-search.ts';
import { unitLacks } from '../rules/unit-lacks.ts';
import { zonesAt } from '../rules/zones-at.ts';
import { paceOf } from '../steps/ask-step.ts';
import { isDue, isProvenDead, powerAt } from '../steps/choose-step.ts';
import { ARRIVE_PLAN, PROVE_PLAN, zoneOf } from '../steps/plans.ts';
import { endProofs } from './end-proofs.ts';
import { askedForDc, followCharge } from './follow-charge.ts';
import { foundVoltage, isWhereOff } from './found-voltage.ts';
import { doubtUntried } from './heed-power.ts';
import { heedGround, heedReturn, metNow } from './heed-return.ts';
import { judgeCharge } from './judge-charge.ts';
import { judgeSplit } from './judge-split.ts';
import { cautionLate } from './late-cautions.ts';
import { takeProofNumber } from './take-proof.ts';
import { followRefrigerant, refusedInVacuum } from './take-refrigerant.ts';
import { takeCharge } from './take-work.ts';
import { notProvenDead, recordUnproven } from './tell-unproven.ts';
import { readingWaits } from './wait-for-supervisor.ts';
import { warnOfHolding } from './warn-of-holding.ts';

const DEAD_ONLY = ['resistance', 'capacitance', 'insulation'] as const;

/** How far a reading has come: straight from speech, or already confirmed by the technician. */
export type Confirmed = 'as heard' | 'confirmed' | 'digits settled';

/** A reading that may be the other of a teen/ty pair: asked before anything else is done with it. */
export function askTwin(turn: Turn, reading: Reading, twin: number): void {
  if (typeof reading.value !== 'number') return;
  const options = [Math.min(reading.value, twin), Math.max(reading.value, twin)] as const;
  turn.record({ type: 'reading.asked', reading, why: BECAUSE.teenOrTy, twin });
  turn.ask({ kind: 'teen-or-ty', reading, options }, SAY.twin(options));
}

/** Takes one reading: interlocks first, then its rule, then the record, the energy and the diagnosis. */
export function takeReading(turn: Turn, heard: Reading, confirmed: Confirmed): void {
  const reading = asAsked(heard, turn.context);
  const zone = zoneOf(reading.at);
  if (refusedWhileNotDead(turn, reading) || leftToSupervisor(turn, reading) || askedForDc(turn, reading)) return;
  if (confirmed === 'as heard' && asksForFunction(turn, reading)) return;
  if (confirmed !== 'confirmed') heedGround(turn, reading);
  const under = circumstances(turn.context, zone, reading);
  const judged = judgeReading(reading, under, turn.context.unit);
  const doubt = doubtOf(reading, judged, turn.context);
  if (confirmed !== 'confirmed' && doubt !== undefined && !actsAtOnce(reading, turn.context)) {
    turn.record({ type: 'reading.asked', reading, why: doubt.why });
    turn.ask({ kind: 'confirm-reading', reading: heard, why: doubt.words }, SAY.doubtful(reading, doubt.words));
    return;
  }
  const work = turn.context.refrigerantWork;
  const saysOnItsOwn = !holdsWithoutCall(turn.context) && !answersStep(turn.context.step, reading);
  // Where none should be, no verdict is told, and none is written by which it would be as it should: it is warned of, and
  // read back behind that.
  const alarming = isAlarming(reading, turn.context);
  logReading(turn, reading, under, alarming ? withoutFits(judged) : judged, confirmed);
  if (alarming) followEnergy(turn, reading, zone);
  const remark =
    judged !== undefined && !alarming && isRemarked(judged, under, reading, turn.context) ? SAY.judged(judged) : '';
  const isDue = remark === '' && confirmed === 'as heard' && isSectionDue(turn, reading);
  turn.say('readback', isDue ? SAY.readInProof(reading) : readback(turn.context, reading, confirmed, remark));
  if (!alarming) followEnergy(turn, reading, zone);
  if (saysOnItsOwn) warnOfHolding(turn);
  followRefrigerant(turn, reading, turn.context.readingCount, work);
  judgeFigures(turn);
  takeCharge(turn, reading);
}

/** The verdict on a voltage where none should be: it never fits there, whatever its rule says of a place that is fed. */
export function withoutFits(judged: Judged | undefined): Judged | undefined {
  return judged?.word === 'does not fit' ? judged : undefined;
}

/** What does not fit is said at once; that a reading fits, in full talk alone, and never of volts where power is not known to be on: a zero there is no proof. */
function isRemarked({ word }: Judged, { power }: TakenUnder, { quantity }: Reading, context: VisitContext): boolean {
  if (word !== 'fits') return word === 'marginal' || word === 'does not fit';
  const isOfPower = quantity === 'voltage' || quantity === 'voltage-dc';
  return paceOf(context) === 'full' && context.step?.source !== 'energy' && (!isOfPower || power === 'on');
}

/**
 * Volts of a capacitor that nobody asked for, and nobody called d.c.: a meter on a.c. shows none at a charged one, so the
 * function is asked for before a zero counts.
 */
function asksForFunction(turn: Turn, reading: Reading): boolean {
  const { value, quantity } = reading;
  if (quantity !== 'voltage-dc' || typeof value !== 'number' || Math.abs(inBaseUnit(reading) ?? 0) >= DEAD_BELOW_VOLTS)
    return false;
  const { step } = turn.context;
  const saidDc = /\b(?:d ?c|dc|direct|charge|discharged?|drained|bled)\b/.test(
    turn.heard?.understanding.heard.toLowerCase() ?? 'dc',
  );
  // Once the charge is asked for, as a step or number by number, its own function is meant.
  if (saidDc || step?.id.startsWith('energy.') === true) return false;
  turn.record({ type: 'reading.asked', reading, why: BECAUSE.functionNotSaid });
  turn.ask({ kind: 'confirm-reading', reading, why: BECAUSE.functionNotSaid }, SAY.onDc(reading));
  return true;
}

/** The first charged section, which is named as all are to be discharged. */
function isSectionDue({ context }: Turn, { at, quantity }: Reading): boolean {
  const { step } = context;
  if (quantity !== 'voltage-dc' || step?.id !== 'energy.capacitors-discharged' || step.zone === 'none') return false;
  const [due] = unreadSections(step.zone, context);
  return due !== undefined && samePlaces(due.at, at);
}

/** What was just asked for is read back in fewer words; a unit that is not the chosen one is always told. */
function readback(
  { step, units }: Pick<VisitContext, 'step' | 'units'>,
  reading: Reading,
  confirmed: Confirmed,
  remark: string,
): string {
  if (confirmed === 'confirmed') return SAY.confirmed;
  if (step === undefined || !answersStep(step, reading) || confirmed !== 'as heard')
    return SAY.read(reading, confirmed === 'digits settled', remark);
  const isOfProof = step.id.startsWith('energy.pair@') || step.id.startsWith('energy.section@');
  if (isOfProof && remark === '') return SAY.readInProof(reading);
  return isInBareUnit(reading, units) ? SAY.readAsAsked(reading, remark) : SAY.read(reading, false, remark);
}

const isInBareUnit = ({ quantity, unit }: Reading, units: UnitChoice): boolean =>
  unit === (chosenFor(quantity, units) ?? unit);

/** An answer has the function of the step that asked for it: volts at its places are a.c. or d.c. as it asked. */
function asAsked(reading: Reading, context: VisitContext): Reading {
  const { step, caution } = context;
  const ask = step?.ask;
  if (ask?.kind !== 'reading' || caution !== undefined || !samePlaces(ask.at, reading.at)) return reading;
  if (ask.quantity === reading.quantity) {
    const onBench = step?.needs.bench === true && isProvenDead(step.zone, context);
    return onBench ? { ...reading, bench: true } : reading;
  }
  const volts: readonly Reading['quantity'][] = ['voltage', 'voltage-dc'];
  if (!volts.includes(ask.quantity) || !volts.includes(reading.quantity)) return reading;
  // A.c. that stands where a charge is asked for is never taken for a charge.
  return ask.quantity === 'voltage-dc' && isLiveVoltage(reading) ? reading : { ...reading, quantity: ask.quantity };
}

/** What the latest reading makes together with others: the split of the proof, the figures of the charge. */
export function judgeFigures(turn: Turn): void {
  // A reading of the proof may be corrected when the visit has gone on to its close.
  if (latestReading(turn.context)?.under.phase === 'prove') judgeSplit(turn);
  judgeCharge(turn);
}

/**
 * Why a reading is asked once more: the unit has no such place by its profile, or the value does not fit and nobody
 * tested for it.
 */
function doubtOf(
  reading: Reading,
  judged: Judged | undefined,
  context: VisitContext,
): { readonly why: string; readonly words: string } | undefined {
  const lacks = unitLacks(context.unit, reading.at);
  const known = standingReadings(context).some((item) => samePlaces(item.reading.at, reading.at));
  if (lacks !== undefined && !known) return { why: BECAUSE.listedWithout(lacks), words: SAY.lacks(lacks) };
  if (answersTest(context.step, reading)) return undefined;
  return judged?.word === 'does not fit' ? { why: judged.word, words: SAY.judged(judged) } : undefined;
}

/** A live reading of a trainee alone waits; where it speaks against a proof, that is heeded at once. */
export function leftToSupervisor(turn: Turn, reading: Reading): boolean {
  return readingWaits(turn, reading, () => {
    if (actsAtOnce(reading, turn.context) && isPresent(reading)) followEnergy(turn, reading, zoneOf(reading.at));
  });
}

/** Ohms, continuity and microfarads outside proven dead: refused with value and reason, and never evidence. */
export function refusedWhileNotDead(turn: Turn, reading: Reading): boolean {
  if (refusedInVacuum(turn, reading)) return true;
  const deadOnly = (DEAD_ONLY as readonly string[]).includes(reading.quantity);
  if (reading.bench === true) return refusedOnBench(turn, reading);
  const open = notProvenDead(turn, zonesAt(reading.at));
  if (!deadOnly || open.length === 0) return false;
  turn.record({ type: 'reading.refused', reading, reason: 'not-proven-dead' });
  recordUnproven(turn, unprovenWords(reading), open, 'alone');
  turn.say('warning', SAY.notProvenDead);
  return true;
}

/** A compressor does not come out: whatever is said to be measured of it on the bench was measured in the unit. */
function refusedOnBench(turn: Turn, reading: Reading): boolean {
  if (!reading.at.some((point) => point.startsWith('comp') || point === 'shell')) return false;
  turn.record({ type: 'reading.refused', reading, reason: 'not-on-the-bench' });
  turn.say('warning', SAY.notOnTheBench);
  return true;
}

/** A charge, or voltage where none should be, is never held back by a question: it acts at once. */
export function actsAtOnce(reading: Reading, context: VisitContext): boolean {
  if (reading.quantity === 'voltage-dc') return true;
  return isAlarming(reading, context);
}

/** An a.c. voltage or amps where power was reported off, where a proof stands, or where its source is sought. */
function isAlarming(reading: Reading, context: VisitContext): boolean {
  const zone = zoneOf(reading.at);
  return zone !== 'none' && isLiveVoltage(reading) && (isWhereOff({ context }, zone) || isSought(zone, context));
}

/** A number of volts or amps that no dead conductor shows. */
export function isPresent(reading: Reading): boolean {
  const { quantity, value } = reading;
  return (
    isLiveVoltage(reading) ||
    (quantity === 'voltage-dc' && typeof value === 'number' && Math.abs(inBaseUnit(reading) ?? 0) >= DEAD_BELOW_VOLTS)
  );
}

export function circumstances(context: VisitContext, zone: ZoneId | 'none', reading?: Reading): TakenUnder {
  const evidence = reading !== undefined && isLiveVoltage(reading) ? 'on' : powerAt(zone, context);
  // A lock that is only doubted is a lock: what was read behind it vouches for nothing.
  const isLocked =
    zone !== 'none' &&
    (isolationOf(zone, context) === 'locked' ||
      placesOpening([zone]).some((place) => context.lockedBy[place] !== undefined));
  return {
    power: evidence,
    call: context.call,
    phase: context.phase,
    ...(isLocked ? { locked: true as const } : {}),
  };
}

/** Nothing dead draws amps or has a frequency. */
const SHOWS_POWER: readonly Reading['quantity'][] = ['current', 'frequency'];

export function isLiveVoltage(reading: Reading): boolean {
  return (
    (reading.quantity === 'voltage' &&
      typeof reading.value === 'number' &&
      Math.abs(inBaseUnit(reading) ?? 0) >= DEAD_BELOW_VOLTS) ||
    (SHOWS_POWER.includes(reading.quantity) && typeof reading.value === 'number' && reading.value > 0)
  );
}

/** Writes a reading to the record and the evidence, and settles the step that asked for it. */
function logReading(
  turn: Turn,
  reading: Reading,
  under: TakenUnder,
  judged: Judged | undefined,
  confirmed: Confirmed,
): void {
  const { context } = turn;
  const number = context.readingCount + 1;
  const test = answersStep(context.step, reading) ? context.step?.test : undefined;
  turn.record({
    type: 'reading.logged',
    reading,
    number,
    under,
    ...(test === undefined ? {} : { test }),
    ...(confirmed === 'confirmed' ? { confirmed: true } : {}),
  });
  if (judged !== undefined) turn.record({ type: 'reading.judged', number, judged });
  const steps = settledBy(reading, context);
  if (steps.length > 0) turn.record({ type: 'steps.settled', steps });
}

/** A plan's reading counts for its phase whether it was asked or volunteered. */
function settledBy(reading: Reading, context: VisitContext): readonly string[] {
  const id = context.step?.id;
  // What a proof or a search still wants is told by the facts, and may be asked again.
  const isOnce = context.step?.source !== 'energy';
  const asked = id !== undefined && isOnce && answersStep(context.step, reading) ? [id] : [];
  const volunteered = [...ARRIVE_PLAN, ...PROVE_PLAN]
    .filter((step) => isReadBy(step, reading, context))
    .map((step) => step.id);
  return [...new Set([...asked, ...volunteered])];
}

function isReadBy(step: Step, reading: Reading, context: VisitContext): boolean {
  return (
    step.source === context.phase &&
    step.ask.kind === 'reading' &&
    step.ask.quantity === reading.quantity &&
    samePlaces(step.ask.at, reading.at) &&
    isDue(step, context)
  );
}

/** A reading set right: it says what is there, but proves nothing. What it had proved is read again. */
export function followCorrected(turn: Turn, reading: Reading, zone: ZoneId | 'none'): void {
  if (isPresent(reading)) followEnergy(turn, reading, zone);
}

/** What a logged reading says of the energy: live evidence, a number of the proof, a section's charge. */
export function followEnergy(turn: Turn, reading: Reading, zone: ZoneId | 'none'): void {
  if (reading.quantity === 'voltage-dc') return followCharge(turn, reading, zone);
  followRun(turn, reading);
  if (zone === 'none') return;
  if (isLiveVoltage(reading)) return followLiveEvidence(turn, reading, zone);
  if (reading.quantity === 'voltage') takeProofNumber(turn, reading, zone);
}

/** A compressor that draws runs, whether or not anybody looked at its fan. */
function followRun(turn: Turn, { quantity, at, value }: Reading): void {
  const draws = quantity === 'current' && at[0] === 'compressor' && typeof value === 'number' && value >= 1;
  if (!draws || turn.context.runningSince !== undefined || turn.context.phase !== 'prove') return;
  turn.record({ type: 'run.changed', running: true });
  turn.callSplitTime();
}

function followLiveEvidence(turn: Turn, reading: Reading, zone: ZoneId): void {
  const why = BECAUSE.reads(reading);
  const zones = provedWith(zone) === 'outdoor-load' ? OUTDOOR_ZONES : [zone];
  const met = metNow(turn, zones, 'every');
  if (isWhereOff(turn, zone) && !isSought(zone, turn.context)) {
    foundVoltage(turn, { zone, at: reading.at }, why);
    heedReturn(turn, zones, met);
    return;
  }
  endProofs(turn, zones, 'live', why);
  if (zone === 'disconnect-line') doubtUntried(turn, why);
  if (isSought(zone, turn.context)) turn.say('warning', SAY.stillPresent(reading.at));
  else if (reading.quantity === 'voltage') cautionLate(turn, zone);
}
