import { pairName } from '../../../grammar/vocabulary/pairs.ts';
import { POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';

/** A point or terminal by its name; what no table knows by whatever the record holds. */
export function pointWords(id: string): string {
  return nameIn(POINTS_BY_ID, id);
}

/** Where the tips of a reading stand. */
export function placeWords(at: readonly PointId[]): string {
  return pairName(at, 'aloud') ?? joined(at.map(pointWords));
}

/** "R to C at the condenser": where both are at one place, it is said once. */
function joined(names: readonly string[]): string {
  const [first = '', second] = names;
  const shared = / at .*$/.exec(first)?.[0];
  if (second === undefined || shared === undefined || !second.endsWith(shared)) return names.join(' to ');
  return `${first.slice(0, -shared.length)} to ${second}`;
}
