import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { CAPACITOR_ZONES, IN_PROOF, provedWith } from '../rules/isolation.ts';
import { zoneOf } from '../steps/plans.ts';
import { endProofs } from './end-proofs.ts';

/** Whether a proof of a zone still stands, begun or whole. */
export function standsProof(turn: Turn, zone: ZoneId): boolean {
  return IN_PROOF.includes(turn.context.energy[zone]);
}

/** A proof taken back: its zone, and what was proved with it, is back to what was reported of its switch. */
export function takeBackProof(turn: Turn, zone: ZoneId): void {
  const together = zone === 'outdoor-load' ? [zone, ...CAPACITOR_ZONES] : [zone];
  const standing = together.filter((one) => standsProof(turn, one));
  const why = BECAUSE.takenBack;
  endProofs(turn, standing, 'energy.doubted', why);
  for (const one of standing) turn.raise({ type: 'energy.reported-off', zone: one, why: BECAUSE.openedBefore });
  turn.say('readback', SAY.proofBack(zone));
}

/** A reading no longer counts: whatever of a proof rested on it is open again. */
export function reopenProof(turn: Turn, reading: Reading): void {
  const zone = zoneOf(reading.at);
  if (zone === 'none') return;
  if (reading.quantity === 'voltage-dc') return reopenCharge(turn, zone);
  const { proof } = turn.context;
  if (reading.quantity !== 'voltage' || proof?.zone !== provedWith(zone)) return;
  turn.set({ proof: { ...proof, pairs: proof.pairs.filter((pair) => !samePlaces(pair.at, reading.at)) } });
}

/** The charge of a section is not known any more: its unit reads dead at most, whatever was proven. */
function reopenCharge(turn: Turn, zone: ZoneId): void {
  const { energy } = turn.context;
  const why = BECAUSE.takenBack;
  const section = (CAPACITOR_ZONES as readonly ZoneId[]).includes(zone);
  if (section && IN_PROOF.includes(energy[zone])) {
    turn.raise({ type: 'energy.doubted', zone, why });
    turn.raise({ type: 'energy.reported-off', zone, why: BECAUSE.openedBefore });
  }
  if (fallToReadsDead(turn, provedWith(zone), why)) turn.say('warning', SAY.chargeOpen(provedWith(zone)));
  turn.set({ discharged: turn.context.discharged.filter((one) => one !== zone) });
}

/**
 * A zone that was proven dead reads dead only: no voltage was found there, but a charge may stand.
 *
 * @returns whether it was proven dead
 */
export function fallToReadsDead(turn: Turn, zone: ZoneId, why: string): boolean {
  if (turn.context.energy[zone] !== 'proven-dead') return false;
  for (const type of ['energy.doubted', 'energy.reported-off', 'energy.proof-began', 'energy.read-dead'] as const) {
    turn.raise({ type, zone, why });
  }
  return true;
}
