import type { Focus } from '../../../grammar/vocabulary/focuses.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { LOOK_TESTS, type LookId } from '../../diagnosis/measuring/look-tests.ts';

/** What the visit knows of a look beside its answers. */
interface Look {
  /** Which part of the unit it searches. */
  readonly focus: Focus;
  /** Whose energy it depends on, and where hands would meet it. */
  readonly zone: ZoneId | 'none';
}

const OUTDOORS: Look = { focus: 'line-circuit', zone: 'outdoor-load' };
const INDOORS: Look = { focus: 'air-side', zone: 'air-handler' };

export const LOOKS: Readonly<Record<LookId, Look>> = {
  'look-outdoor-fan': OUTDOORS,
  'look-compressor': OUTDOORS,
  'look-contactor': OUTDOORS,
  'look-no-call': OUTDOORS,
  'look-contactor-no-call': OUTDOORS,
  'look-contacts': OUTDOORS,
  'look-capacitor': OUTDOORS,
  'look-blower': INDOORS,
  'look-filter': INDOORS,
  'look-indoor-coil': INDOORS,
  'look-outdoor-coil': { focus: 'refrigerant', zone: 'outdoor-load' },
  'look-drain-pan': INDOORS,
  'look-oil': { focus: 'refrigerant', zone: 'outdoor-load' },
  'look-thermostat': { focus: 'air-side', zone: 'control' },
  'look-breaker': { focus: 'line-circuit', zone: 'none' },
  'look-disconnect': { focus: 'line-circuit', zone: 'none' },
  'look-fan-by-hand': OUTDOORS,
  'look-blower-by-hand': INDOORS,
  'look-second-stage': OUTDOORS,
  'look-compressor-heat': OUTDOORS,
};

/** Where something is seen: the zone of the first look that it answers, the outdoor unit's else. */
export function zoneOfSeen(observation: ObservationId): ZoneId {
  const ids = Object.keys(LOOK_TESTS) as LookId[];
  const look = ids.find((id) => (LOOK_TESTS[id].measure.answers as readonly ObservationId[]).includes(observation));
  const zone = look === undefined ? 'none' : LOOKS[look].zone;
  return zone === 'none' ? 'outdoor-load' : zone;
}
