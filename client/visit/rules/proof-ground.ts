import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import { POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { zoneOf } from '../steps/plans.ts';
import { DEAD_BELOW_VOLTS } from './dead-threshold.ts';
import { FULL_LEG_VOLTS, type Pair } from './proof-plan.ts';

/** Whose readings vouch for the ground at a zone. The 24 V side is proved without a ground. */
const GROUND_OF: Readonly<Record<ZoneId, readonly ZoneId[] | 'none'>> = {
  'disconnect-line': ['disconnect-line', 'outdoor-load'],
  'outdoor-load': ['disconnect-line', 'outdoor-load'],
  'air-handler': ['air-handler'],
  control: 'none',
  'capacitor-herm': 'none',
  'capacitor-fan': 'none',
  'capacitor-start': 'none',
};

/** An open ground reads a false zero: the ground of a proof has itself read a full leg while that was still fed. */
export function isGroundProved(zone: ZoneId, context: VisitContext): boolean {
  const vouching = GROUND_OF[zone];
  return vouching === 'none' || standingReadings(context).some((line) => vouches(line, vouching));
}

/** A value that was ever set right does not vouch, unless each of them was a full leg. */
function vouches({ reading, corrected, under }: ReadingLine, zones: readonly ZoneId[]): boolean {
  const { at } = reading;
  // The ground in the panel is not the one at the unit.
  if (under.locked === true || at.some((point) => POINTS_BY_ID[point].place === 'panel')) return false;
  const zone = zoneOf(at);
  if (zone === 'none' || !zones.includes(zone)) return false;
  return [...corrected, reading].every(
    (one) =>
      one.quantity === 'voltage' &&
      one.at.includes('ground') &&
      samePlaces(one.at, at) &&
      typeof one.value === 'number' &&
      one.value >= FULL_LEG_VOLTS,
  );
}

/** Where a leg is read to the ground of a zone while it is fed; where neither shows any, across both. */
export const GROUND_LEGS: Readonly<Record<'disconnect-line' | 'outdoor-load' | 'air-handler', readonly Pair[]>> = {
  'disconnect-line': [
    ['disconnect-line-1', 'ground'],
    ['disconnect-line-2', 'ground'],
    ['disconnect-line-1', 'disconnect-line-2'],
  ],
  'outdoor-load': [
    ['L1', 'ground'],
    ['L2', 'ground'],
    ['L1', 'L2'],
  ],
  'air-handler': [
    ['handler-L1', 'ground'],
    ['handler-L2', 'ground'],
    ['handler-L1', 'handler-L2'],
  ],
};

/** The first of these that was not read yet while it was fed: what was answered is not asked again. */
export function legToRead(legs: readonly Pair[], context: VisitContext): Pair | undefined {
  return legs.find((leg) => !standingReadings(context).some((line) => isRead(line, leg)));
}

function isRead({ reading, under }: ReadingLine, leg: readonly PointId[]): boolean {
  return reading.quantity === 'voltage' && under.locked !== true && samePlaces(reading.at, leg);
}

/**
 * Whether no live leg is there to read against a zone's ground: its breaker stands tripped, or both legs read dead to
 * ground and to each other while nothing was opened. Its ground cannot be proven then, and nothing is switched on for it.
 */
export function hasNoLiveLeg(zone: ZoneId, context: VisitContext): boolean {
  const vouching = GROUND_OF[zone];
  if (vouching === 'none') return false;
  if (vouching.includes('disconnect-line') && standsTripped(context)) return true;
  return vouching.some((one) => {
    const legs = one in GROUND_LEGS ? GROUND_LEGS[one as keyof typeof GROUND_LEGS] : [];
    return legs.length > 0 && legs.every((leg) => readsDead(leg, context));
  });
}

/** Seen and understood so: words that were not are no ground for less of a proof. */
function standsTripped({ observations, breakerClosed }: VisitContext): boolean {
  const tripped = observations.findLast(({ observation }) => observation === 'breaker-tripped');
  return tripped !== undefined && tripped.seq > (breakerClosed.at(-1) ?? 0);
}

function readsDead(leg: Pair, context: VisitContext): boolean {
  const value = standingReadings(context).findLast((line) => isRead(line, leg))?.reading.value;
  return typeof value === 'number' && Math.abs(value) < DEAD_BELOW_VOLTS;
}
