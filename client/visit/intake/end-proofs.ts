import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Turn } from '../chart/turn.ts';
import { provedWith } from '../rules/isolation.ts';

/** Ends what was reported or proven of these zones, and with it a proof in progress and the charge that was read there. */
export function endProofs(
  turn: Turn,
  zones: readonly ZoneId[],
  message: 'energy.live' | 'energy.doubted',
  why: string,
): void {
  const { proof, discharged } = turn.context;
  for (const zone of ZONES) if (zones.includes(zone)) turn.raise({ type: message, zone, why });
  turn.set({
    discharged: discharged.filter((zone) => !zones.includes(zone) && !zones.includes(provedWith(zone))),
    ...(proof !== undefined && zones.includes(proof.zone) ? { proof: undefined } : {}),
  });
}
