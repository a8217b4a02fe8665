import type { Focus } from '../../../grammar/vocabulary/focuses.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { LookId } from '../../diagnosis/measuring/look-tests.ts';
import type { Step } from '../chart/context.ts';
import { CAPACITOR_ZONES } from '../rules/isolation.ts';
import { LOOKS } from './looks.ts';

/** Which part of the unit a test of the planner's searches. */
export function focusOf(step: Step): Focus {
  const { ask, zone, id } = step;
  if (id.startsWith('refrigerant.')) return 'refrigerant';
  if (ask.kind !== 'reading') return LOOKS[step.test as LookId].focus;
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
