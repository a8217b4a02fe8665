import { pairName } from '../../../grammar/vocabulary/pairs.ts';
import { POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';

/** A point or terminal by its name; what no table knows by whatever the record holds. */
export function pointWords(id: string): string {
  return nameIn(POINTS_BY_ID, id);
}

/** Where the tips of a reading stand. */
export function placeWords(at: readonly PointId[]): string {
  return pairName(at, 'aloud') ?? at.map(pointWords).join(' to ');
}
