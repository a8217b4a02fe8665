import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { CAPACITOR_ZONES, IN_PROOF, OUTDOOR_ZONES, provedWith } from '../rules/isolation.ts';
import { isPairOf } from '../rules/proof-plan.ts';
import { zoneOf } from '../steps/plans.ts';
import { doubtCharge, dropProof } from './end-proofs.ts';

/** Whether a proof of a zone still stands, begun or whole. */
export function standsProof(turn: Turn, zone: ZoneId): boolean {
  return IN_PROOF.includes(turn.context.energy[zone]);
}

/** A proof taken back: its zone, and what was proved with it, is back to what was reported of its switch. */
export function takeBackProof(turn: Turn, zone: ZoneId, by: 'taking back' | 'a correction' = 'taking back'): void {
  const together: readonly ZoneId[] = zone === 'outdoor-load' ? OUTDOOR_ZONES : [zone];
  const standing = together.filter((one) => standsProof(turn, one));
  const why = BECAUSE.takenBack;
  for (const one of standing) turn.move(one, 'lapsed', why);
  doubtCharge(
    turn,
    turn.context.discharged.filter((one) => together.includes(one)),
  );
  if (turn.context.proof?.zone === zone) dropProof(turn, why);
  if (turn.context.search?.zone === zone) turn.record({ type: 'search.ended', zone, why });
  turn.record({ type: 'proof.withdrawn', zone, ...(by === 'a correction' ? { corrected: true } : {}) });
  turn.say('readback', SAY.proofBack(zone));
}

/** A reading no longer counts: whatever of a proof rested on it is open again. */
export function reopenProof(turn: Turn, reading: Reading): void {
  const zone = zoneOf(reading.at);
  if (zone === 'none') return;
  if (reading.quantity === 'voltage-dc') return reopenCharge(turn, zone);
  if (reading.quantity !== 'voltage') return;
  const { proof, search } = turn.context;
  if (search !== undefined && samePlaces(search.at, reading.at)) {
    turn.record({ type: 'search.ended', zone: search.zone, why: BECAUSE.takenBack });
  }
  const proved = provedWith(zone);
  if (proof?.zone === proved) {
    turn.record({ type: 'proof.reopened', zone: proof.zone, at: reading.at, why: BECAUSE.takenBack });
  } else if (isPairOf(proved, reading.at) && standsProof(turn, proved)) takeBackProof(turn, proved);
}

/** The charge of a section is not known any more: its unit reads dead at most, whatever was proven. */
function reopenCharge(turn: Turn, zone: ZoneId): void {
  const why = BECAUSE.takenBack;
  if ((CAPACITOR_ZONES as readonly ZoneId[]).includes(zone)) turn.move(zone, 'lapsed', why);
  if (turn.move(provedWith(zone), 'charge-doubted', why)) turn.say('warning', SAY.chargeOpen(provedWith(zone)));
  doubtCharge(
    turn,
    turn.context.discharged.filter((one) => one === zone),
  );
}
