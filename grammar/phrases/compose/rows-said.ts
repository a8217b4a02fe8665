import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import { PLACES_BY_ID, type PlaceId } from '../../vocabulary/places.ts';
import { POINTS, POINTS_BY_ID, type PointId } from '../../vocabulary/points.ts';
import type { Item } from './segment.ts';

const order = new Map<PointId, number>(POINTS.map((point, index) => [point.id, index]));

/** Points in the order of the table: the two tips of a pair have no order of their own. */
export const inOrder = (at: readonly PointId[]): readonly PointId[] =>
  [...at].sort((a, b) => order.get(a)! - order.get(b)!);

/** Points in any order, as one key. */
export const pairKey = (at: readonly PointId[]): string => inOrder(at).join(' ');

/** The other tip where only one is said. */
const GROUND: readonly PointId[] = ['ground'];
const rowsOfPair = new Map<string, Measurand[]>();
for (const row of MEASURANDS) {
  if (row.onlyByName) continue;
  const key = pairKey(row.at);
  rowsOfPair.set(key, [...(rowsOfPair.get(key) ?? []), row]);
}

/**
 * What a segment may have been read on: rows of the table, in its order. A place narrows the name or the tip it follows
 * ("R to C at the thermostat", "Y at the air handler to Y at the condenser").
 */
export function rowsSaid(items: readonly Item[]): Measurand[] {
  let rows: Measurand[] | undefined;
  const tips: (readonly PointId[])[] = [];
  for (const item of items) {
    if (item.tag === 'named') rows = item.rows.map((index) => MEASURANDS[index]!);
    else if (item.tag === 'tip') tips.push(item.points);
    else if (item.tag === 'place') {
      rows = rows?.filter((row) => row.at.some((point) => standsAt(point, item.place)));
      const last = tips.pop();
      if (last !== undefined) tips.push(last.filter((point) => standsAt(point, item.place)));
    }
  }
  const [first, second = GROUND] = tips;
  return rows ?? (first === undefined ? [] : rowsOfTips(first, second));
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
  const at = POINTS_BY_ID[point].place;
  return at === place || (at !== undefined && PLACES_BY_ID[place].within.includes(at));
}
