import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import { PLACES, type PlaceId } from '../../vocabulary/places.ts';
import { POINTS, type Point, type PointId } from '../../vocabulary/points.ts';
import type { Item } from './segment.ts';

const order = new Map<PointId, number>(POINTS.map((point, index) => [point.id, index]));
const pointRows = new Map<PointId, Point>(POINTS.map((point) => [point.id, point]));

/** Points in any order, as one key: the two tips of a pair have no order of their own. */
export const pairKey = (at: readonly PointId[]): string =>
  [...at].sort((a, b) => order.get(a)! - order.get(b)!).join(' ');

const rowsOfPair = new Map<string, Measurand[]>();
for (const row of MEASURANDS) {
  if (row.onlyByName) continue;
  const key = pairKey(row.at);
  rowsOfPair.set(key, [...(rowsOfPair.get(key) ?? []), row]);
}

/** What a segment may have been read on: rows of the table, in its order. A place that was said narrows them. */
export function rowsSaid(items: readonly Item[]): Measurand[] {
  const named = items.findLast((item) => item.tag === 'named');
  const tips = items.filter((item) => item.tag === 'tip');
  const place = items.findLast((item) => item.tag === 'place')?.place;
  let rows: Measurand[] = [];
  if (named !== undefined) rows = named.rows.map((index) => MEASURANDS[index]!);
  else if (tips.length > 0) rows = rowsOfTips(tips[0]!.points, tips[1]?.points ?? ['ground']);
  return place === undefined ? rows : rows.filter((row) => row.at.some((point) => standsAt(point, place)));
}

function rowsOfTips(first: readonly PointId[], second: readonly PointId[]): Measurand[] {
  const rows = new Set<Measurand>();
  for (const one of first) {
    for (const other of second) for (const row of rowsOfPair.get(pairKey([one, other])) ?? []) rows.add(row);
  }
  return MEASURANDS.filter((row) => rows.has(row));
}

/** Whether a point belongs to a place that was said: "at the condenser" takes in the contactor. */
export function standsAt(point: PointId, place: PlaceId): boolean {
  const at = pointRows.get(point)?.place;
  const within: readonly PlaceId[] = PLACES.find((row) => row.id === place)!.within;
  return at === place || (at !== undefined && within.includes(at));
}
