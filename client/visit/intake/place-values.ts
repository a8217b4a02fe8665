import type { Report } from '../../../grammar/phrases/meaning.ts';
import type { ProvedPair } from '../../../grammar/visit/facts.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { isPairOf, missingPairs } from '../rules/proof-plan.ts';

type Proof = Extract<Report, { type: 'absence-of-voltage' }>;

/** The values of a breath at their pairs. */
export interface PlacedValues {
  readonly pairs: readonly ProvedPair[];
  /** The pair of each value, in the order said; empty for one that belongs to none. */
  readonly at: readonly (readonly PointId[])[];
  /** How many values count for nothing: an unknown or repeated place, or more than there are pairs. */
  readonly strangers: number;
}

/**
 * Gives each value of a breath its pair: a named one its own, once; those without a name the pairs that are still
 * missing, in the order in which they are asked.
 */
export function placeValues(zone: ZoneId, begun: readonly ProvedPair[], { values, at: said }: Proof): PlacedValues {
  const named = (said ?? []).filter((places) => places.length > 0);
  const open = missingPairs({ zone, pairs: begun }).filter((pair) => !named.some((places) => samePlaces(places, pair)));
  const pairs: ProvedPair[] = [];
  const at = values.map((value, index): readonly PointId[] => {
    const places = said?.[index] ?? [];
    const pair = places.length > 0 ? ownPair(zone, places, pairs) : open.shift();
    if (pair === undefined) return [];
    pairs.push({ at: pair, value });
    return pair;
  });
  return { pairs, at, strangers: values.length - pairs.length };
}

function ownPair(
  zone: ZoneId,
  places: readonly PointId[],
  taken: readonly ProvedPair[],
): readonly PointId[] | undefined {
  const isTaken = taken.some((pair) => samePlaces(pair.at, places));
  return isPairOf(zone, places) && !isTaken ? places : undefined;
}
