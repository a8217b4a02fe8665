import type { Report } from '../../../grammar/phrases/meaning.ts';
import type { ProvedPair } from '../../../grammar/visit/facts.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { DEAD_BELOW_VOLTS } from '../rules/dead-threshold.ts';
import { CAPACITOR_ZONES, holdsCharge, isolationOf, provedWith, TO_BE_PROVED } from '../rules/isolation.ts';
import { zoneOf } from '../steps/plans.ts';
import { QUIET_MINUTES } from './take-timer.ts';

/** A known live source reads at least this, in volts: well under any leg or 24 V circuit, well over a ghost. Our choice. */
const KNOWN_SOURCE_VOLTS = { line: 100, control: 18 } as const;
/** Leg to leg and each leg to ground; one pair on the 24 V side. */
const PAIRS_TO_PROVE = { line: 3, control: 1 } as const;

type Proof = Extract<Report, { type: 'absence-of-voltage' }>;

const kindOf = (zone: ZoneId): 'line' | 'control' => (zone === 'control' ? 'control' : 'line');

/** The whole proof in one breath: meter, every pair, meter again. Numbers are required; the dialogue is not. */
export function takeProof(turn: Turn, proof: Proof): void {
  const { before, values, after } = proof;
  const zone = provedWith(proof.zone);
  if (!mayBeProved(turn, zone)) return;
  if (values.length < PAIRS_TO_PROVE[kindOf(zone)]) {
    turn.say('answer', SAY.proofShort);
    return;
  }
  const present = values.find((value) => Math.abs(value) >= DEAD_BELOW_VOLTS);
  const known = KNOWN_SOURCE_VOLTS[kindOf(zone)];
  const proven = before >= known && after >= known;
  const result = present !== undefined ? 'voltage present' : proven ? 'reads dead' : 'meter not proven';
  turn.record({ type: 'proof.recorded', zone, before, values, after, result });
  if (present !== undefined) return foundVoltage(turn, zone, present);
  if (!proven) {
    turn.say('answer', SAY.meterNotProven);
    return;
  }
  readDead(turn, zone);
}

/** The meter read on a known live source: opens a proof, or closes one whose pairs are all read. */
export function takeMeterProof(turn: Turn, volts: number): void {
  const { proof } = turn.context;
  const zone = proof?.zone ?? zoneToProve(turn.context);
  if (!mayBeProved(turn, zone)) return;
  if (volts < KNOWN_SOURCE_VOLTS[kindOf(zone)]) {
    turn.say('answer', SAY.meterNotProven);
    return;
  }
  if (proof === undefined || proof.pairs.length === 0) {
    turn.record({ type: 'proof.began', zone, before: volts });
    turn.move(zone, 'proof-began', BECAUSE.meterReadsLive(volts));
    turn.startTimer('quiet', QUIET_MINUTES);
    turn.say('readback', SAY.meterProves(volts));
    return;
  }
  if (!coversEveryPair(proof.pairs, zone)) {
    turn.say('answer', SAY.proofShort);
    return;
  }
  const values = proof.pairs.map((pair) => pair.value);
  takeProof(turn, { type: 'absence-of-voltage', zone, before: proof.before, values, after: volts });
}

/** The zone a meter proof is for: the one the step asks for, else the first that is reported off or in a proof that was begun. */
function zoneToProve(context: VisitContext): ZoneId {
  const { step, energy } = context;
  if (step?.ask.kind === 'action' && step.ask.done === 'absence-proved' && step.zone !== 'none') return step.zone;
  return ZONES.find((zone) => TO_BE_PROVED.includes(energy[zone])) ?? 'outdoor-load';
}

/** A voltage below the threshold while a proof is open counts as one of its pairs. */
export function takeProofNumber(turn: Turn, reading: Reading, zone: ZoneId): void {
  const { proof } = turn.context;
  if (proof === undefined || proof.zone !== provedWith(zone) || typeof reading.value !== 'number') return;
  turn.record({ type: 'proof.pair', zone: proof.zone, at: reading.at, value: reading.value });
}

/** Both legs read to ground and to each other: the same pair read three times proves one pair. */
function coversEveryPair(pairs: readonly ProvedPair[], zone: ZoneId): boolean {
  if (zone === 'control') return pairs.length >= PAIRS_TO_PROVE.control;
  const grounded: readonly PointId[] = pairs.flatMap(({ at }) =>
    at.includes('ground') ? at.filter((one) => one !== 'ground') : [],
  );
  return pairs.some(({ at: [one, other] }) => {
    if (one === undefined || other === undefined || legOf(one) === legOf(other)) return false;
    return grounded.includes(one) && grounded.includes(other);
  });
}

/** Which leg a conductor belongs to, by the number in its name: L1 and T1 are one leg, however many places it has. */
function legOf(point: PointId): string | undefined {
  return /[12]/.exec(point)?.[0];
}

function mayBeProved(turn: Turn, zone: ZoneId): boolean {
  const { context } = turn;
  if (!TO_BE_PROVED.includes(context.energy[zone])) {
    turn.say('answer', SAY.nothingLocked);
    return false;
  }
  if (isolationOf(zone, context) !== 'locked') {
    turn.say('answer', SAY.reportedOff);
    return false;
  }
  if (zone !== 'control' && !groundHasReadALiveLeg(context, zone)) {
    turn.say('answer', SAY.groundNotSeen);
    return false;
  }
  return true;
}

/** An open ground reads a false zero: the ground used must itself have read a full leg while live. */
function groundHasReadALiveLeg(context: VisitContext, zone: ZoneId): boolean {
  const indoors = zone === 'air-handler';
  return standingReadings(context).some(
    ({ reading }) =>
      reading.quantity === 'voltage' &&
      reading.at.includes('ground') &&
      (zoneOf(reading.at) === 'air-handler') === indoors &&
      typeof reading.value === 'number' &&
      reading.value >= KNOWN_SOURCE_VOLTS.line,
  );
}

function foundVoltage(turn: Turn, zone: ZoneId, volts: number): void {
  const words = SAY.stillVoltage(volts);
  turn.record({ type: 'hazard.warned', words, zone });
  turn.move(zone, 'live', BECAUSE.foundInProof(volts));
  turn.say('warning', words);
}

/** Reads dead: where a charge may be held, only testing and discharging; where none can be, proven dead at once. */
function readDead(turn: Turn, zone: ZoneId): void {
  const why = BECAUSE.provedAbsent(DEAD_BELOW_VOLTS);
  turn.move(zone, 'read-dead', why);
  turn.startTimer('quiet', QUIET_MINUTES);
  if (!holdsCharge(zone)) {
    turn.move(zone, 'released', BECAUSE.holdsNoCharge);
    turn.say('answer', SAY.provenDead);
    return;
  }
  if (zone === 'outdoor-load') {
    for (const section of CAPACITOR_ZONES) turn.move(section, 'reported-off', why);
  }
  turn.say('answer', SAY.readsDead);
}
