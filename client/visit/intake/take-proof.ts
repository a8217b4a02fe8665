import type { Report } from '../../../grammar/phrases/meaning.ts';
import type { ProofInProgress, ProvedPair } from '../../../grammar/visit/facts.ts';
import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { sectionsOf, waitsOut } from '../rules/charged-sections.ts';
import { DEAD_BELOW_VOLTS } from '../rules/dead-threshold.ts';
import { HANDS_MAY_BE, holdsCharge, isolationOf, provedWith, TO_BE_PROVED } from '../rules/isolation.ts';
import { isGroundProved } from '../rules/proof-ground.ts';
import { isPairOf, missingPairs, PROOF_MINUTES, provesMeter } from '../rules/proof-plan.ts';
import { askStillOff } from './ask-still-off.ts';
import { dropProof } from './end-proofs.ts';
import { foundVoltage, isWhereOff } from './found-voltage.ts';
import { placeValues } from './place-values.ts';
import { missingBeforeProof } from './proof-order.ts';
import { QUIET_MINUTES } from './take-timer.ts';

type Proof = Extract<Report, { type: 'absence-of-voltage' }>;

/**
 * A proof in one breath: meter, pairs, meter again. Voltage in it counts whatever else it lacks. Where pairs are left,
 * what was said stands begun and the rest is asked; behind the last one the meter is proven again.
 */
export function takeProof(turn: Turn, proof: Proof): void {
  const { before, values, after } = proof;
  const zone = provedWith(proof.zone);
  // Who says the meter again and names no places begins anew: a value never moves to another pair.
  const isAnew = proof.at === undefined;
  const begun = turn.context.proof?.zone === zone && !isAnew ? turn.context.proof.pairs : [];
  const { pairs, at, strangers } = placeValues(zone, begun, proof);
  const present = values.findIndex((value) => Math.abs(value) >= DEAD_BELOW_VOLTS);
  if (present >= 0) {
    turn.record({ type: 'proof.recorded', zone, before, values, after, at, result: 'voltage present' });
    return foundVoltage(turn, { zone, at: at[present] ?? [] }, BECAUSE.foundInProof(values[present] ?? 0));
  }
  if (!mayBeProved(turn, zone)) return;
  if (!provesMeter(zone, before) || !provesMeter(zone, after)) {
    turn.record({ type: 'proof.recorded', zone, before, values, after, at, result: 'meter not proven' });
    return meterNotProven(turn, zone);
  }
  if (isAnew) dropProof(turn, BECAUSE.provedAnew);
  openProof(turn, zone, before);
  for (const pair of pairs) turn.record({ type: 'proof.pair', zone, ...pair });
  turn.say('readback', SAY.provedPairs(pairs, strangers));
  if (missing(turn).length === 0) endProof(turn, after);
}

/** A proof that is asked about first: voltage in it ends what it can touch before it is asked. */
export function warnOfVoltageInProof(turn: Turn, { zone, values }: Proof): void {
  const present = values.find((value) => Math.abs(value) >= DEAD_BELOW_VOLTS);
  const proved = provedWith(zone);
  if (present !== undefined && isWhereOff(turn, proved)) {
    foundVoltage(turn, { zone: proved, at: [] }, BECAUSE.foundInProof(present));
  }
}

/** The meter read on a known live source: opens a proof, or closes one whose pairs are all read. */
export function takeMeterProof(turn: Turn, volts: number): void {
  const zone = turn.context.proof?.zone ?? zoneToProve(turn.context);
  // On the live source once more, or on what was dead: nobody asked for it.
  const isProved = HANDS_MAY_BE.includes(turn.context.energy[zone]);
  if (isProved && askStillOff(turn, turn.heard?.understanding.heard ?? '')) return;
  if (!mayBeProved(turn, zone)) return;
  if (!provesMeter(zone, volts)) return meterNotProven(turn, zone);
  const isOpened = openProof(turn, zone, volts);
  const [next] = missing(turn);
  if (next === undefined) return endProof(turn, volts);
  turn.say('readback', isOpened ? SAY.meterProves(volts) : SAY.meterGoesOn(volts, next));
}

/** A value of a pair, read one by one while its proof is open; whatever else is read there belongs to no pair. */
export function takeProofNumber(turn: Turn, reading: Reading, zone: ZoneId): void {
  meantElsewhere(turn, reading, provedWith(zone));
  const { proof } = turn.context;
  if (proof === undefined || proof.zone !== provedWith(zone) || typeof reading.value !== 'number') return;
  const [next] = missingPairs(proof);
  if (!isPairOf(proof.zone, reading.at)) {
    if (next !== undefined) turn.say('answer', SAY.strangePair(next));
    return;
  }
  turn.record({ type: 'proof.pair', zone: proof.zone, at: reading.at, value: reading.value });
}

/** A meter was proven, and the first pair is one of another zone that may be proved: that one was meant. */
function meantElsewhere(turn: Turn, reading: Reading, zone: ZoneId): void {
  const { proof } = turn.context;
  if (proof === undefined || proof.pairs.length > 0 || proof.zone === zone || !isPairOf(zone, reading.at)) return;
  if (missingBeforeProof(zone, turn.context) !== undefined || !provesMeter(zone, proof.before)) return;
  const { before, began } = proof;
  restart(turn, proof.zone, BECAUSE.provedElsewhere);
  turn.record({ type: 'proof.began', zone, before, began });
  turn.move(zone, 'proof-began', BECAUSE.meterReadsLive(before));
}

/** What was begun too long ago starts again: nobody knows what the meter and the unit did meanwhile. */
export function heedProofAge(turn: Turn): void {
  const { proof, now } = turn.context;
  if (proof === undefined || now.mono - proof.began <= PROOF_MINUTES * MS_A_MINUTE) return;
  restart(turn, proof.zone, BECAUSE.proofTooLong(PROOF_MINUTES));
  turn.say('warning', SAY.proofTooLong(PROOF_MINUTES));
}

/** The proof in progress begins again from its meter on. */
export function restart(turn: Turn, zone: ZoneId, why: string): void {
  if (turn.context.proof?.zone === zone) dropProof(turn, why);
  if (turn.context.energy[zone] === 'proving') turn.move(zone, 'lapsed', why);
}

/** The zone a meter proof is for: the one the step asks for, else the unit, else the first that is locked off. */
function zoneToProve(context: VisitContext): ZoneId {
  const { step, energy } = context;
  if (step?.ask.kind === 'action' && step.ask.done === 'absence-proved' && step.zone !== 'none') return step.zone;
  const off = ZONES.filter((zone) => zone === provedWith(zone) && TO_BE_PROVED.includes(energy[zone]));
  const locked = off.filter((zone) => isolationOf(zone, context) === 'locked');
  const among = locked.length > 0 ? locked : off;
  return USUAL_ORDER.find((zone) => among.includes(zone)) ?? 'outdoor-load';
}

/** Which of several is most likely worked at. A first pair that is named says it. */
const USUAL_ORDER = ['outdoor-load', 'air-handler', 'disconnect-line', 'control'] as const satisfies readonly ZoneId[];

function mayBeProved(turn: Turn, zone: ZoneId): boolean {
  const wanted = missingBeforeProof(zone, turn.context);
  if (wanted === undefined) return true;
  turn.record({ type: 'proof.refused', zone, why: wanted });
  turn.say('answer', wanted);
  return false;
}

function missing({ context: { proof } }: Turn): ReturnType<typeof missingPairs> {
  return proof === undefined ? [] : missingPairs(proof);
}

/** Opens a proof, or lets one go on that stands begun with pairs: its meter was proven once more. Whether it opened. */
function openProof(turn: Turn, zone: ZoneId, before: number): boolean {
  const { proof } = turn.context;
  if (proof?.zone === zone && proof.pairs.length > 0) return false;
  turn.record({ type: 'proof.began', zone, before });
  turn.move(zone, 'proof-began', BECAUSE.meterReadsLive(before));
  if (!isGroundProved(zone, turn.context)) {
    turn.warn(SAY.groundNotProven, zone);
  }
  turn.startTimer('quiet', QUIET_MINUTES);
  turn.startTimer('proof', PROOF_MINUTES + A_SECOND);
  return true;
}

/** When a proof in progress is looked at again, taken up so late. Minutes. */
export function minutesLeft({ began }: ProofInProgress, now: number): number {
  return Math.max(0, PROOF_MINUTES + A_SECOND - (now - began) / MS_A_MINUTE);
}

/** The timer comes when the time is over, not as it ends. In minutes. */
const A_SECOND = 1 / 60;

function meterNotProven(turn: Turn, zone: ZoneId): void {
  restart(turn, zone, BECAUSE.meterNotProven);
  turn.say('answer', SAY.meterNotProven);
}

/** Every pair read dead between two readings of the source. */
function endProof(turn: Turn, after: number): void {
  const { proof } = turn.context;
  if (proof === undefined) return;
  const { zone, before } = proof;
  const pairs: readonly ProvedPair[] = proof.pairs;
  const values = pairs.map(({ value }) => value);
  const at = pairs.map((pair) => pair.at);
  turn.record({ type: 'proof.recorded', zone, before, values, after, at, result: 'reads dead' });
  readDead(turn, zone);
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
  for (const section of sectionsOf(zone, turn.context)) {
    if (section.zone !== zone) turn.move(section.zone, 'reported-off', why);
  }
  turn.say('answer', waitsOut(zone, turn.context) ? SAY.readsDeadElectronic : SAY.readsDead);
}
