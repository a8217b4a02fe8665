import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { LookId } from '../../diagnosis/measuring/look-tests.ts';

/** Whose energy the hands or the head of a look meet; `none`: it is made from where nothing is reached. */
const LOOK_ZONES: Readonly<Record<LookId, ZoneId | 'none'>> = {
  'look-outdoor-fan': 'none',
  'look-compressor': 'none',
  'look-contactor': 'none',
  'look-no-call': 'none',
  'look-contactor-no-call': 'none',
  'look-contacts': 'outdoor-load',
  'look-capacitor': 'outdoor-load',
  'look-blower': 'none',
  'look-filter': 'none',
  'look-indoor-coil': 'none',
  'look-outdoor-coil': 'none',
  'look-drain-pan': 'none',
  'look-oil': 'none',
  'look-thermostat': 'none',
  'look-breaker': 'none',
  'look-disconnect': 'none',
  'look-fan-by-hand': 'outdoor-load',
  'look-blower-by-hand': 'air-handler',
  'look-compressor-heat': 'outdoor-load',
};

/** The zone of a look of the planner's. */
export function zoneOfLook(test: TestId): ZoneId | 'none' {
  return (LOOK_ZONES as Readonly<Partial<Record<TestId, ZoneId | 'none'>>>)[test] ?? 'none';
}
