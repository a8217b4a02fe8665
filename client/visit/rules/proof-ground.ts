import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import { POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { zoneOf } from '../steps/plans.ts';
import { DEAD_BELOW_VOLTS } from './dead-threshold.ts';
import { IN_PROOF, provedWith } from './isolation.ts';
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

/** Where a leg is read to the ground of a zone while it is fed; at a supply also across both, where neither shows any. */
export const GROUND_LEGS: Readonly<Record<'disconnect-line' | 'outdoor-load' | 'air-handler', readonly Pair[]>> = {
  'disconnect-line': [
    ['disconnect-line-1', 'ground'],
    ['disconnect-line-2', 'ground'],
    ['disconnect-line-1', 'disconnect-line-2'],
  ],
  'outdoor-load': [
    ['L1', 'ground'],
    ['L2', 'ground'],
  ],
  'air-handler': [
    ['handler-L1', 'ground'],
    ['handler-L2', 'ground'],
    ['handler-L1', 'handler-L2'],
  ],
};

/**
 * What shows that a zone has no supply: outdoors only the line side, for the unit's own legs read zero behind a
 * disconnect that is out as well.
 */
const SUPPLY_OF: Readonly<Record<ZoneId, readonly Pair[]>> = {
  'disconnect-line': GROUND_LEGS['disconnect-line'],
  'outdoor-load': GROUND_LEGS['disconnect-line'],
  'air-handler': GROUND_LEGS['air-handler'],
  control: [],
  'capacitor-herm': [],
  'capacitor-fan': [],
  'capacitor-start': [],
};

/** The first of these that was not read yet while it was fed: what was answered is not asked again. */
export function legToRead(legs: readonly Pair[], context: VisitContext): Pair | undefined {
  return legs.find((leg) => !standingReadings(context).some((line) => isRead(line, leg)));
}

function isRead({ reading, under }: ReadingLine, leg: readonly PointId[]): boolean {
  return reading.quantity === 'voltage' && under.locked !== true && samePlaces(reading.at, leg);
}

/**
 * Whether no live leg is there to read against a zone's ground: its breaker stands tripped, or both legs of its supply
 * read dead to ground and to each other while nothing was opened. Its ground cannot be proven then, and nothing is
 * switched on for it.
 */
export function hasNoLiveLeg(zone: ZoneId, context: VisitContext): boolean {
  const supply = SUPPLY_OF[zone];
  if (supply.length === 0) return false;
  const isOutdoors = supply === GROUND_LEGS['disconnect-line'];
  return (isOutdoors && standsTripped(context)) || supply.every((leg) => readsDead(leg, isOutdoors, context));
}

/** Seen and understood so, and neither a reset nor a voltage outdoors since: words alone are no ground for less of a proof. */
function standsTripped(context: VisitContext): boolean {
  const { observations, breakerClosed } = context;
  const tripped = observations.findLast(({ observation }) => observation === 'breaker-tripped');
  if (tripped === undefined || tripped.seq < (breakerClosed.at(-1) ?? 0)) return false;
  return !standingReadings(context).some((line) => line.seq > tripped.seq && showsSupply(line));
}

function showsSupply({ reading: { quantity, at, value } }: ReadingLine): boolean {
  const zone = zoneOf(at);
  if (quantity !== 'voltage' || zone === 'none' || !GROUND_OF[zone].includes('disconnect-line')) return false;
  return typeof value !== 'number' || Math.abs(value) >= DEAD_BELOW_VOLTS;
}

/** By the newest reading there, taken while nothing was off and no breaker was closed since. */
function readsDead(leg: Pair, isOutdoors: boolean, context: VisitContext): boolean {
  const line = standingReadings(context).findLast(
    ({ reading }) => reading.quantity === 'voltage' && samePlaces(reading.at, leg),
  );
  if (line === undefined || line.under.locked === true || line.under.power === 'off') return false;
  if (isOutdoors && line.seq < (context.breakerClosed.at(-1) ?? 0)) return false;
  const { value } = line.reading;
  return typeof value === 'number' && Math.abs(value) < DEAD_BELOW_VOLTS;
}

/**
 * Zones outdoors whose proof was begun or made without a live leg: once a breaker is told closed there may be one, and
 * their ground was never proved.
 */
export function untriedOutdoors(context: VisitContext): readonly ZoneId[] {
  return ZONES.filter(
    (zone) =>
      GROUND_OF[provedWith(zone)].includes('disconnect-line') &&
      IN_PROOF.includes(context.energy[zone]) &&
      !isGroundProved(provedWith(zone), context),
  );
}
