import {
  coversOff,
  isBypassed,
  leadsOff,
  overcurrentLeft,
  partsOut,
  wireMoves,
} from '../../../grammar/visit/standing.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { ISOLATION_PLACES } from '../../../grammar/vocabulary/isolation-places.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { MET_BY_POWER } from '../../words/talk/return-words.ts';
import { jumperWords, looseWireWords } from '../../words/things/wire-words.ts';
import type { VisitContext } from '../chart/context.ts';
import { handsAtPart, zonesOfLeads } from './hands-at.ts';
import { provedWith, zonesOpenedAt } from './isolation.ts';
import { landingRows, looseWires } from './landings.ts';
import { zonesAt } from './zones-at.ts';

/** Whose lock is off by what was told: of the switch that came back, of none, or of every one that it may mean. */
export type Unlocked = IsolationPlace | 'none' | 'every';

/**
 * What power meets in these zones when it comes back, each by name: a jumper, a wire off, a cover off, a part out, a
 * bypassed switch, a lock that is still recorded.
 *
 * @param unlocked the switch by which it comes back: its own lock is off by that
 */
export function metByPower(context: VisitContext, zones: readonly ZoneId[], unlocked: Unlocked): readonly string[] {
  const meets = (where: readonly ZoneId[]) => where.some((one) => zones.some((zone) => provedWith(zone) === one));
  // A wire whose terminal was not named may be anywhere.
  const isMet = (ends: readonly (string | undefined)[]) => zonesAt(ends).length === 0 || meets(zonesAt(ends));
  const moves = wireMoves(context);
  const jumpers = landingRows(moves).filter(({ state }) => state === 'jumper');
  const loose = looseWires(moves).filter(({ from }) => isMet([from]));
  const leads = leadsOff(context).filter((part) => meets(zonesOfLeads(part)));
  const covers = meets(['outdoor-load']) ? coversOff(context) : [];
  const parts = partsOut(context).filter((part) => meets(handsAtPart(part, [], context)));
  const refused = overcurrentLeft(context).filter(({ part }) => meets(handsAtPart(part, [], context)));
  // What a protecting switch guards is fed from more than its own circuit.
  const bypassed = isBypassed(context);
  const locked = ISOLATION_PLACES.filter(
    (one) =>
      unlocked !== 'every' && one !== unlocked && context.lockedBy[one] !== undefined && meets(zonesOpenedAt(one)),
  );
  return [
    ...jumpers.map(jumperWords),
    ...loose.map(looseWireWords),
    ...leads.map(MET_BY_POWER.leadsOff),
    ...covers.map(MET_BY_POWER.coverOff),
    ...parts.map(MET_BY_POWER.partOut),
    ...refused.map(({ words }) => MET_BY_POWER.refusedPart(words)),
    ...(bypassed ? [MET_BY_POWER.bypassed] : []),
    ...locked.map(MET_BY_POWER.locked),
  ];
}
