import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { Ratings } from '../simulator/hidden-unit.ts';

/** What a technician says once the usual repair of a fault is done; common practice. */
export function repairLine(fault: FaultId, ratings: Ratings): string {
  const dual = `fitted a ${ratings.herm} over ${ratings.fanMicrofarads} dual capacitor 440 volt`;
  const contactor = `fitted a ${ratings.poles} pole 40 amp contactor 24 volt coil`;
  if (/^(herm|fan)-capacitor/.test(fault)) return dual;
  if (/^contactor/.test(fault)) return contactor;
  if (/^compressor/.test(fault)) return 'fitted a compressor';
  if (/^fan-(run|start|motor|bearings)/.test(fault)) return 'fitted a quarter horse fan motor 230 volt 1.2 amps';
  return LINES[fault] ?? 'replaced the part';
}

const LINES: Readonly<Partial<Record<FaultId, string>>> = {
  'supply-low': 'supply is restored',
  'lost-utility-leg': 'supply is restored',
  'breaker-tripped': 'fitted a 30 amp breaker',
  'breaker-pole-1-open': 'fitted a 30 amp breaker',
  'breaker-pole-2-open': 'fitted a 30 amp breaker',
  'disconnect-open': 'fitted a disconnect',
  'line-fuse-1-open': 'fitted a 30 amp fuse',
  'line-fuse-2-open': 'fitted a 30 amp fuse',
  'loose-lug-1': 'tightened the lugs',
  'loose-lug-2': 'tightened the lugs',
  'transformer-dead': 'fitted a 40 VA transformer',
  'control-fuse-open': 'fitted a control fuse',
  'Y-wire-broken-outdoors': 'repaired the control wire',
  'Y-wire-broken-indoors': 'repaired the control wire',
  'C-wire-broken': 'repaired the control wire',
  'R-wire-broken': 'repaired the control wire',
  'thermostat-not-calling': 'fitted a thermostat',
  'float-switch-open': 'cleared the drain',
  'blower-motor-open': 'fitted a blower motor',
  'blower-seized': 'fitted a blower motor',
  'filter-dirty': 'fitted a filter',
  'condenser-dirty': 'cleaned the outdoor coil',
  'low-charge': 'repaired the leak',
};
