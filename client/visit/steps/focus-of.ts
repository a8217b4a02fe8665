import type { Focus } from '../../../grammar/visit/events.ts';
import type { Step } from '../chart/context.ts';

const AIR_LOOKS = ['look-blower', 'look-filter', 'look-indoor-coil', 'look-drain-pan', 'look-thermostat'];
const REFRIGERANT_LOOKS = ['look-oil', 'look-outdoor-coil'];

/** Which part of the unit a test searches. */
export function focusOf(step: Step): Focus {
  const { ask, zone } = step;
  if (ask.kind !== 'reading') {
    if (AIR_LOOKS.includes(step.id)) return 'air-side';
    return REFRIGERANT_LOOKS.includes(step.id) ? 'refrigerant' : 'line-circuit';
  }
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
    default:
      if (zone === 'control') return 'control-circuit';
      if (zone === 'air-handler') return 'air-side';
      return zone === 'capacitor-herm' || zone === 'capacitor-fan' ? 'loads' : 'line-circuit';
  }
}
