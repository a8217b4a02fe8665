import type { Focus } from '../../../grammar/visit/events.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { LookId } from '../../diagnosis/measuring/look-tests.ts';
import type { Step } from '../chart/context.ts';
import { CAPACITOR_ZONES } from '../rules/isolation.ts';

/** Which part of the unit a look searches. */
const FOCUS_OF_LOOK: Readonly<Record<LookId, Focus>> = {
  'look-outdoor-fan': 'line-circuit',
  'look-compressor': 'line-circuit',
  'look-contactor': 'line-circuit',
  'look-no-call': 'line-circuit',
  'look-contactor-no-call': 'line-circuit',
  'look-contacts': 'line-circuit',
  'look-capacitor': 'line-circuit',
  'look-blower': 'air-side',
  'look-filter': 'air-side',
  'look-indoor-coil': 'air-side',
  'look-outdoor-coil': 'refrigerant',
  'look-drain-pan': 'air-side',
  'look-oil': 'refrigerant',
  'look-thermostat': 'air-side',
  'look-breaker': 'line-circuit',
  'look-disconnect': 'line-circuit',
  'look-fan-by-hand': 'line-circuit',
  'look-blower-by-hand': 'line-circuit',
  'look-compressor-heat': 'line-circuit',
};

/** Which part of the unit a test of the planner's searches. */
export function focusOf(step: Step): Focus {
  const { ask, zone } = step;
  if (ask.kind !== 'reading') return FOCUS_OF_LOOK[step.test as LookId];
  switch (ask.quantity) {
    case 'pressure':
    case 'vacuum':
    case 'mass':
      return 'refrigerant';
    case 'temperature':
      return ask.at.some((place) => place.endsWith('-line') || place.startsWith('condenser'))
        ? 'refrigerant'
        : 'air-side';
    case 'wet-bulb':
    case 'static-pressure':
    case 'airflow':
    case 'humidity':
    case 'difference':
      return 'air-side';
    case 'resistance':
    case 'insulation':
    case 'capacitance':
    case 'current':
    case 'voltage-dc':
      return zone === 'control' ? 'control-circuit' : 'loads';
    case 'voltage':
    case 'frequency':
    case 'time':
      if (zone === 'control') return 'control-circuit';
      if (zone === 'air-handler') return 'air-side';
      return zone !== 'none' && (CAPACITOR_ZONES as readonly ZoneId[]).includes(zone) ? 'loads' : 'line-circuit';
  }
}
