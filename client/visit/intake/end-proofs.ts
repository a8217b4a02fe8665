import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF, provedWith } from '../rules/isolation.ts';

/** Ends what was reported or proven of these zones, and with it a proof in progress and the charge that was read there. */
export function endProofs(turn: Turn, zones: readonly ZoneId[], move: 'live' | 'doubted', why: string): void {
  for (const zone of ZONES) if (zones.includes(zone)) turn.move(zone, move, why);
  doubtCharge(
    turn,
    turn.context.discharged.filter((zone) => zones.includes(zone) || zones.includes(provedWith(zone))),
  );
  const { proof } = turn.context;
  if (proof !== undefined && zones.includes(proof.zone)) dropProof(turn, why);
}

/** The stored charge of these is not known any more. */
export function doubtCharge(turn: Turn, zones: readonly ZoneId[]): void {
  if (zones.length > 0) turn.record({ type: 'charge.doubted', zones });
}

/** The proof in progress begins again. */
export function dropProof(turn: Turn, why: string): void {
  const { proof } = turn.context;
  if (proof !== undefined) turn.record({ type: 'proof.reopened', zone: proof.zone, why });
}

/** Every proof, begun or whole, lapses aloud to what was reported of its switch. */
export function lapseProofs(turn: Turn, why: string, words: string): void {
  const { energy } = turn.context;
  for (const zone of ZONES.filter((one) => IN_PROOF.includes(energy[one]))) {
    turn.move(zone, 'lapsed', why);
  }
  doubtCharge(turn, turn.context.discharged);
  dropProof(turn, why);
  turn.say('warning', words);
}
