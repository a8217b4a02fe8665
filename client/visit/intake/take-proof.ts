import type { Report } from '../../../grammar/phrases/meaning.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../context.ts';
import { DEAD_BELOW_VOLTS } from '../dead-threshold.ts';
import { CAPACITOR_ZONES } from '../plans.ts';
import { capital, SAY, valueWords } from '../prompts.ts';
import type { Turn } from '../turn.ts';
import { QUIET_MINUTES } from './take-timer.ts';

/** A known live source reads at least this, in volts: well under any 120 V leg, well over a 24 V circuit. Our choice. */
const KNOWN_SOURCE_VOLTS = 100;
/** Leg to leg and each leg to ground. */
const PAIRS_TO_PROVE = 3;

type Proof = Extract<Report, { type: 'absence-of-voltage' }>;

/** The whole proof in one breath: meter, every pair, meter again. Numbers are required; the dialogue is not. */
export function takeProof(turn: Turn, proof: Proof): void {
  const { zone, before, values, after } = proof;
  if (!mayBeProved(turn, zone)) return;
  if (values.length < PAIRS_TO_PROVE) {
    turn.say('answer', SAY.proofShort);
    return;
  }
  const present = values.find((value) => Math.abs(value) >= DEAD_BELOW_VOLTS);
  const proven = before >= KNOWN_SOURCE_VOLTS && after >= KNOWN_SOURCE_VOLTS;
  const result = present !== undefined ? 'voltage present' : proven ? 'reads dead' : 'meter not proven';
  turn.record({ type: 'proof.recorded', zone, before, values, after, result });
  if (present !== undefined) {
    turn.set({ proof: undefined });
    const words = SAY.stillVoltage(capital(valueWords(present, 'V')));
    turn.record({ type: 'hazard.warned', words, zone });
    turn.raise({ type: 'energy.live', zone, why: `${valueWords(present, 'V')} in the proof` });
    turn.say('warning', words);
    return;
  }
  if (!proven) {
    turn.say('answer', SAY.meterNotProven);
    return;
  }
  readDead(turn, zone);
}

/** The meter read on a known live source: opens a proof, or closes one whose pairs are all read. */
export function takeMeterProof(turn: Turn, volts: number): void {
  const zone: ZoneId = 'outdoor-load';
  if (!mayBeProved(turn, zone)) return;
  const { proof } = turn.context;
  if (volts < KNOWN_SOURCE_VOLTS) {
    turn.say('answer', SAY.meterNotProven);
    return;
  }
  if (proof?.before === undefined || proof.values.length === 0) {
    turn.set({ proof: { before: volts, values: [] } });
    turn.say('readback', `Meter ${valueWords(volts, 'V')}. Now each pair and each leg to ground.`);
    return;
  }
  takeProof(turn, { type: 'absence-of-voltage', zone, before: proof.before, values: proof.values, after: volts });
}

/** A voltage below the threshold while a proof is open counts as one of its pairs. */
export function takeProofNumber(turn: Turn, reading: Reading, zone: ZoneId): void {
  const { proof } = turn.context;
  if (proof?.before === undefined || zone !== 'outdoor-load' || typeof reading.value !== 'number') return;
  turn.set({ proof: { ...proof, values: [...proof.values, reading.value] } });
}

function mayBeProved(turn: Turn, zone: ZoneId): boolean {
  const { context } = turn;
  if (context.energy[zone] !== 'reported-off' && context.energy[zone] !== 'proving') {
    turn.say('answer', SAY.nothingLocked);
    return false;
  }
  if (!context.locked) {
    turn.say('answer', SAY.reportedOff);
    return false;
  }
  if (!groundHasReadALiveLeg(context)) {
    turn.say('answer', SAY.groundNotSeen);
    return false;
  }
  return true;
}

/** An open ground reads a false zero: the ground used must itself have read a full leg while live. */
function groundHasReadALiveLeg(context: VisitContext): boolean {
  return context.readings.some(
    ({ reading }) =>
      reading.quantity === 'voltage' &&
      reading.at.includes('ground') &&
      typeof reading.value === 'number' &&
      reading.value >= KNOWN_SOURCE_VOLTS,
  );
}

function readDead(turn: Turn, zone: ZoneId): void {
  const why = 'meter proven, every pair and leg to ground below 3 volts, meter proven again';
  turn.set({ proof: undefined });
  turn.raise({ type: 'energy.proof-began', zone, why });
  turn.raise({ type: 'energy.read-dead', zone, why });
  for (const section of CAPACITOR_ZONES) turn.raise({ type: 'energy.reported-off', zone: section, why });
  turn.startTimer('quiet', QUIET_MINUTES);
  turn.say('answer', SAY.readsDead);
}
