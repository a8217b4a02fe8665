import { POINTS, type PointId } from '../../../grammar/vocabulary/points.ts';

/** Pairs that the trade names as one thing. */
const PAIR_WORDS: readonly (readonly [PointId, PointId, string])[] = [
  ['cap-C', 'cap-HERM', 'herm section'],
  ['cap-C', 'cap-FAN', 'fan section'],
  ['coil-1', 'coil-2', 'contactor coil'],
  ['L1', 'T1', 'pole one'],
  ['L2', 'T2', 'pole two'],
  ['disconnect-line-1', 'disconnect-line-2', 'disconnect line side'],
  ['disconnect-load-1', 'disconnect-load-2', 'disconnect load side'],
  ['fuse-1-line', 'fuse-1-load', 'fuse one'],
  ['fuse-2-line', 'fuse-2-load', 'fuse two'],
  ['start-cap-1', 'start-cap-2', 'start capacitor'],
  ['heater-1', 'heater-2', 'crankcase heater'],
  ['float-1', 'float-2', 'float switch'],
  ['high-switch-1', 'high-switch-2', 'high pressure switch'],
  ['low-switch-1', 'low-switch-2', 'low pressure switch'],
  ['control-fuse-1', 'control-fuse-2', 'control fuse'],
  ['transformer-primary-1', 'transformer-primary-2', 'transformer primary'],
  ['transformer-secondary-1', 'transformer-secondary-2', 'transformer secondary'],
  ['blower-1', 'blower-2', 'blower motor leads'],
  ['blower-cap-1', 'blower-cap-2', 'blower capacitor'],
  ['door-switch-1', 'door-switch-2', 'blower door switch'],
];

/** A point or terminal by its name; what no table knows by whatever the record holds. */
export function pointWords(id: string): string {
  return POINTS.find((point) => point.id === id)?.name ?? id;
}

/** Where the tips of a reading stand. */
export function placeWords(at: readonly PointId[]): string {
  const pair = PAIR_WORDS.find(([one, other]) => at.includes(one) && at.includes(other));
  if (pair !== undefined) return pair[2];
  return at.map(pointWords).join(' to ');
}
