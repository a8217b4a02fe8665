import { POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { TESTS_BY_ID } from '../../../grammar/vocabulary/tests.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { placeWords, pointWords } from './place-words.ts';

/** When in a visit a step is asked, by the first word of its id. */
const PHASES: Readonly<Record<string, string>> = {
  arrive: 'on arrival',
  energy: 'power',
  repair: 'repair',
  refrigerant: 'refrigerant circuit',
  prove: 'after the repair',
  close: 'at the close',
};

/** What is not plain from the id's own words. */
const NAMES: Readonly<Record<string, string>> = {
  call: 'thermostat, looked at',
  fan: 'outdoor fan, looked at',
  sound: 'whether sound may be kept',
  meter: 'category of the meter',
  source: 'search for what feeds it',
  'source-opened': 'what feeds it switched off',
  pair: 'proof that it is dead',
  section: 'capacitor section read',
  ground: 'ground tried on a live line',
  'absence-proved': 'meter proved on a live source',
  'meter-again': 'meter proved once more',
  'charge-left': 'charge left to run down',
  searched: 'leak search',
  recovered: 'refrigerant weighed out',
  'test-start': 'test pressure',
  'test-end': 'test pressure, once more',
  evacuated: 'vacuum',
  isolated: 'pump valved off',
  decay: 'vacuum, once more',
  charged: 'refrigerant weighed in',
  customer: 'customer signs',
  technician: 'technician signs',
  thermostat: 'thermostat as agreed',
  recommend: 'recommendations',
};

/**
 * A step of a visit in plain words, for tables of many: "Power, search for what feeds it, disconnect line 1 to disconnect
 * line 2". Of a step that no table knows, its id's own words.
 *
 * @param step its id, as the record holds it
 */
export function stepName(step: string): string {
  const [head = '', ...where] = step.replace(/#\d+$/, '').split('@');
  if (Object.hasOwn(TESTS_BY_ID, head)) return nameIn(TESTS_BY_ID, head);
  const [phase = '', ...rest] = head.split('.');
  const own = rest.join('.').replace(/-\d+$/, '');
  const winding = /^winding-(.+)$/.exec(own)?.[1];
  const name = winding === undefined ? (NAMES[own] ?? own) : `winding to its shell, ${pointWords(winding)}`;
  const places = where.flatMap((one) => one.split('+'));
  const place = places.every((one) => Object.hasOwn(POINTS_BY_ID, one))
    ? placeWords(places as PointId[])
    : places.map((one) => (ZONE_NAMES as Readonly<Record<string, string>>)[one] ?? one).join(' to ');
  return [PHASES[phase] ?? phase, name, place]
    .map((words) => words.replaceAll(/[-.:@+#]+/g, ' ').trim())
    .filter((words) => words !== '')
    .join(', ');
}
