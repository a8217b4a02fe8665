import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { isGrounded, resetsSinceTrip, showsGround, windingsDue } from '../rules/after-trip.ts';
import { provedWith } from '../rules/isolation.ts';
import { metByPower, type Unlocked } from '../rules/met-by-power.ts';

/**
 * Power has come back to these zones, or may have: what it meets there is said at this moment, and what a trip leaves
 * behind where the windings are fed.
 *
 * @param met what it meets, named before the report moved a switch
 */
export function heedReturn(turn: Turn, zones: readonly ZoneId[], met: readonly string[]): void {
  if (met.length > 0) turn.warn(SAY.stillThere(met), zones[0]);
  if (!zones.some((zone) => provedWith(zone) === 'outdoor-load')) return;
  if (isGrounded(turn.context)) turn.warn(SAY.groundedFed, zones[0]);
  else if (windingsDue(turn.context).length > 0) turn.warn(SAY.windingsUnread, zones[0]);
}

/** The breaker was closed: one reset is one, and each behind it is told of. Counted when the report is recorded. */
export function heedReset(turn: Turn, place: IsolationPlace): void {
  const times = resetsSinceTrip(turn.context);
  if (place === 'panel' && times > 1) turn.warn(SAY.resetAgain(times), 'disconnect-line');
}

/** A breaker that is told reset had tripped, though nobody had said so: the windings come before power. */
export function heedFirstReset(turn: Turn): void {
  const wasSeen = turn.context.observations.some(({ observation }) => observation === 'breaker-tripped');
  const isFirst = turn.context.works.filter(({ work }) => work === 'breaker-reset').length === 1;
  if (wasSeen || !isFirst) return;
  if (windingsDue(turn.context).length > 0) turn.warn(SAY.windingsUnread, 'disconnect-line');
}

/** What power would meet now. @param unlocked whose lock is off by that */
export function metNow(turn: Turn, zones: readonly ZoneId[], unlocked: Unlocked): readonly string[] {
  return metByPower(turn.context, zones, unlocked);
}

/** A winding that reads to its shell is warned of as it is read, whatever is asked of the value. */
export function heedGround(turn: Turn, reading: Reading): void {
  if (showsGround(reading, turn.context)) turn.warn(SAY.grounded, 'outdoor-load');
}
