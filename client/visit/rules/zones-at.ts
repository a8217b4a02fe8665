import { isPoint, POINTS_BY_ID } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { provedWith } from './isolation.ts';

/** The zones that hands or probes at these points meet, each by the one it is proved with; ground and shells have none. */
export function zonesAt(points: readonly (string | undefined)[]): readonly ZoneId[] {
  const zones = points.flatMap((point) => (isPoint(point) ? [POINTS_BY_ID[point].zone] : []));
  return [...new Set(zones.flatMap((zone) => (zone === 'none' ? [] : [provedWith(zone)])))];
}
