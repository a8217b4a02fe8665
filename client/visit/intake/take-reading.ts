import type { Judged, TakenUnder } from '../../../grammar/visit/events.ts';
import { cautionKey } from '../../../grammar/visit/facts.ts';
import { judgeReading, samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { latestReading, standingReadings } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { cautionById } from '../../words/talk/caution-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { unprovenWords } from '../../words/things/reading-words.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { liveCaution } from '../rules/cautions-due.ts';
import { DEAD_BELOW_VOLTS } from '../rules/dead-threshold.ts';
import { CAPACITOR_ZONES, holdsCharge, OUTDOOR_ZONES, provedWith, TAKEN_OFF } from '../rules/isolation.ts';
import { unitLacks } from '../rules/unit-lacks.ts';
import { zonesAt } from '../rules/zones-at.ts';
import { isDue, powerAt } from '../steps/choose-step.ts';
import { ARRIVE_PLAN, PROVE_PLAN, zoneOf } from '../steps/plans.ts';
import { doubtCharge, dropProof } from './end-proofs.ts';
import { heedGround, heedReturn, metNow } from './heed-return.ts';
import { judgeCharge } from './judge-charge.ts';
import { judgeSplit } from './judge-split.ts';
import { takeProofNumber } from './take-proof.ts';
import { followRefrigerant } from './take-refrigerant.ts';
import { takeCharge } from './take-work.ts';
import { notProvenDead, recordUnproven } from './tell-unproven.ts';

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
export function takeReading(turn: Turn, reading: Reading, confirmed: Confirmed): void {
  const zone = zoneOf(reading.at);
  if (refusedWhileNotDead(turn, reading)) return;
  if (confirmed !== 'confirmed') heedGround(turn, reading);
  const under = circumstances(turn.context, zone, reading);
  const judged = judgeReading(reading, under, turn.context.unit);
  const doubt = doubtOf(reading, judged, turn.context);
  if (confirmed !== 'confirmed' && doubt !== undefined && !actsAtOnce(reading, turn.context)) {
    turn.record({ type: 'reading.asked', reading, why: doubt.why });
    turn.ask({ kind: 'confirm-reading', reading, why: doubt.words }, SAY.doubtful(reading, doubt.words));
    return;
  }
  const work = turn.context.refrigerantWork;
  logReading(turn, reading, under, judged, confirmed);
  // Where none should be, no verdict on its value is given: it is warned of, and the value read back behind that.
  const alarming = isAlarming(reading, turn.context);
  if (alarming) followEnergy(turn, reading, zone);
  const remark = judged?.word === 'marginal' && !alarming ? SAY.judged(judged) : '';
  turn.say('readback', SAY.read(reading, confirmed === 'digits settled', remark));
  if (!alarming) followEnergy(turn, reading, zone);
  followRefrigerant(turn, reading, work);
  judgeFigures(turn);
  takeCharge(turn, reading);
}

/** What the latest reading makes together with others: the split of the proof, the figures of the charge. */
export function judgeFigures(turn: Turn): void {
  // A reading of the proof may be corrected when the visit has gone on to its close.
  if (latestReading(turn.context)?.under.phase === 'prove') judgeSplit(turn);
  judgeCharge(turn);
}

/** Why a reading is asked once more: the unit has no such place by its profile, or the value does not fit. */
function doubtOf(
  reading: Reading,
  judged: Judged | undefined,
  context: VisitContext,
): { readonly why: string; readonly words: string } | undefined {
  const lacks = unitLacks(context.unit, reading.at);
  const known = standingReadings(context).some((item) => samePlaces(item.reading.at, reading.at));
  if (lacks !== undefined && !known) return { why: BECAUSE.listedWithout(lacks), words: SAY.lacks(lacks) };
  return judged?.word === 'does not fit' ? { why: judged.word, words: SAY.judged(judged) } : undefined;
}

/** Ohms, continuity and microfarads outside proven dead: refused with value and reason, and never evidence. */
export function refusedWhileNotDead(turn: Turn, reading: Reading): boolean {
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

/** An a.c. voltage or amps in a zone that was reported off, or that stands in a proof. */
function isAlarming(reading: Reading, context: VisitContext): boolean {
  const zone = zoneOf(reading.at);
  return zone !== 'none' && isLiveVoltage(reading) && TAKEN_OFF.includes(context.energy[zone]);
}

/** A number of volts or amps that no dead conductor shows. */
export function isPresent(reading: Reading): boolean {
  const { quantity, value } = reading;
  return (
    isLiveVoltage(reading) ||
    (quantity === 'voltage-dc' && typeof value === 'number' && Math.abs(value) >= DEAD_BELOW_VOLTS)
  );
}

export function circumstances(context: VisitContext, zone: ZoneId | 'none', reading?: Reading): TakenUnder {
  const evidence = reading !== undefined && isLiveVoltage(reading) ? 'on' : powerAt(zone, context);
  return { power: evidence, call: context.call, phase: context.phase };
}

function isLiveVoltage(reading: Reading): boolean {
  return (
    (reading.quantity === 'voltage' &&
      typeof reading.value === 'number' &&
      Math.abs(reading.value) >= DEAD_BELOW_VOLTS) ||
    (reading.quantity === 'current' && typeof reading.value === 'number' && reading.value > 0)
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
  const test = context.step !== undefined && answersStep(reading, context) ? context.step.test : undefined;
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

function answersStep(reading: Reading, context: VisitContext): boolean {
  const ask = context.step?.ask;
  return ask?.kind === 'reading' && ask.quantity === reading.quantity && samePlaces(ask.at, reading.at);
}

/** A plan's reading counts for its phase whether it was asked or volunteered. */
function settledBy(reading: Reading, context: VisitContext): readonly string[] {
  const id = context.step?.id;
  const asked = id !== undefined && answersStep(reading, context) ? [id] : [];
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

/** What a logged reading says of the energy: live evidence, a number of the proof, a section's charge. */
export function followEnergy(turn: Turn, reading: Reading, zone: ZoneId | 'none'): void {
  if (reading.quantity === 'voltage-dc') return followCharge(turn, reading, zone);
  if (zone === 'none') return;
  if (isLiveVoltage(reading)) return followLiveEvidence(turn, reading, zone);
  if (reading.quantity === 'voltage') takeProofNumber(turn, reading, zone);
}

function followLiveEvidence(turn: Turn, reading: Reading, zone: ZoneId): void {
  const wasOff = TAKEN_OFF.includes(turn.context.energy[zone]);
  const zones = (OUTDOOR_ZONES as readonly ZoneId[]).includes(zone) ? OUTDOOR_ZONES : [zone];
  const why = BECAUSE.reads(reading);
  const met = metNow(turn, zones, 'every');
  for (const one of zones) turn.move(one, 'live', why);
  dropProof(turn, why);
  doubtCharge(turn, turn.context.discharged);
  if (wasOff) {
    const words = SAY.handsOff(reading.at);
    turn.record({ type: 'hazard.warned', words, zone });
    turn.say('warning', words);
    heedReturn(turn, zones, met);
    turn.raise({ type: 'step.set-aside' });
    return;
  }
  cautionLate(turn, zone, reading);
}

/** A volunteered live reading is taken, and cautioned at once. */
function cautionLate(turn: Turn, zone: ZoneId, reading: Reading): void {
  if (reading.quantity !== 'voltage') return;
  const id = liveCaution(zone);
  const key = cautionKey(id, zone);
  const { acknowledged, caution: pending, saidLate } = turn.context;
  if (acknowledged.includes(key)) return;
  const caution = cautionById(id);
  turn.record({ type: 'caution.spoken', caution: id, words: caution.words, source: caution.source, zone, late: true });
  if (pending?.spoken.some((one) => one.id === id) || saidLate.includes(key)) return;
  turn.say('caution', caution.words);
}

/** Volts d.c. across a capacitor: below the threshold its charge is released, and with the last one the proof ends. */
function followCharge(turn: Turn, reading: Reading, zone: ZoneId | 'none'): void {
  if (zone === 'none' || typeof reading.value !== 'number') return;
  const proved = provedWith(zone);
  if (!holdsCharge(proved)) return;
  if (Math.abs(reading.value) >= DEAD_BELOW_VOLTS) {
    const why = BECAUSE.holdsCharge(reading.at);
    turn.move(zone, 'live', why);
    if (zone !== proved) turn.move(proved, 'charge-doubted', why);
    doubtCharge(
      turn,
      turn.context.discharged.filter((one) => one === zone),
    );
    turn.say('warning', SAY.charged(reading));
    return;
  }
  const energy = turn.context.energy[proved];
  if (energy !== 'reads-dead' && energy !== 'proven-dead') return;
  const why = BECAUSE.discharged(reading.at, DEAD_BELOW_VOLTS);
  const sections: readonly ZoneId[] = proved === 'outdoor-load' ? CAPACITOR_ZONES : [];
  if (sections.includes(zone)) {
    turn.move(zone, 'released', why);
    turn.record({ type: 'charge.released', zone });
  }
  if (!sections.every((one) => turn.context.discharged.includes(one))) return;
  if (turn.context.gate !== undefined) {
    turn.say('answer', SAY.gatedProof);
    return;
  }
  turn.move(proved, 'released', BECAUSE.chargeReleased);
  turn.say('answer', SAY.provenDead);
}
