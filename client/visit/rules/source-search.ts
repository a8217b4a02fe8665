import type { Search } from '../../../grammar/visit/facts.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { provedWith, reachedByVoltage } from './isolation.ts';
import type { Pair } from './proof-plan.ts';

/**
 * What tells where a voltage comes from, in the order in which it is read: the line side shows whether the right switch
 * was opened, each load leg to ground whether one pole stayed closed or a winding feeds back. Common practice.
 */
const SEARCH_PLAN: Readonly<Record<ZoneId, readonly Pair[]>> = {
  'outdoor-load': [
    ['disconnect-line-1', 'disconnect-line-2'],
    ['disconnect-load-1', 'ground'],
    ['disconnect-load-2', 'ground'],
  ],
  'disconnect-line': [
    ['disconnect-line-1', 'ground'],
    ['disconnect-line-2', 'ground'],
    ['disconnect-line-1', 'disconnect-line-2'],
  ],
  'air-handler': [
    ['handler-L1', 'handler-L2'],
    ['handler-L1', 'ground'],
    ['handler-L2', 'ground'],
  ],
  control: [
    ['R@air-handler', 'C@air-handler'],
    ['handler-L1', 'handler-L2'],
  ],
  'capacitor-herm': [],
  'capacitor-fan': [],
  'capacitor-start': [],
};

/** Whether a search goes on for what feeds a zone. */
export function isSought(zone: ZoneId, context: VisitContext): boolean {
  const { search } = context;
  return search !== undefined && reachedByVoltage(search.zone, context).includes(zone);
}

export function searchStepId(search: Search, pair: Pair): string {
  return `energy.source@${pair.join('+')}#${search.seq}`;
}

/** The next place to read in a search; undefined once each was read since it began, or passed over. */
export function placeToSearch(search: Search, context: VisitContext): Pair | undefined {
  const readSince = standingReadings(context).filter(({ seq }) => seq > search.seq);
  return SEARCH_PLAN[provedWith(search.zone)].find(
    (pair) =>
      !readSince.some(({ reading }) => reading.quantity === 'voltage' && samePlaces(reading.at, pair)) &&
      !context.parked.some(({ step }) => step === searchStepId(search, pair)),
  );
}
