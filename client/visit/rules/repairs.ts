import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { PartId } from '../../../grammar/vocabulary/parts.ts';
import type { WorkId } from '../../../grammar/vocabulary/works.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';

/** Refrigerant weighed in counts as a part fitted. */
export const CHARGE = 'refrigerant';

/** Which suspects a fitted part cures: the diagnosis starts again without them. */
const CURES: Readonly<Partial<Record<PartId | typeof CHARGE, readonly FaultId[]>>> = {
  [CHARGE]: ['low-charge', 'overcharge', 'non-condensables'],
  'valve-core': ['low-charge'],
  'dual-capacitor': [
    'herm-capacitor-weak',
    'herm-capacitor-open',
    'herm-capacitor-shorted',
    'fan-capacitor-weak',
    'fan-capacitor-open',
    'fan-capacitor-shorted',
  ],
  capacitor: [
    'herm-capacitor-weak',
    'herm-capacitor-open',
    'fan-capacitor-weak',
    'fan-capacitor-open',
    'blower-capacitor-weak',
  ],
  'hard-start': ['hard-start-failed'],
  contactor: [
    'contactor-pole-1-burnt',
    'contactor-pole-2-burnt',
    'contactor-pole-1-stuck-closed',
    'contactor-pole-2-stuck-closed',
    'contactor-stuck-closed',
    'contactor-jammed-open',
    'contactor-coil-open',
    'contactor-coil-shorted',
  ],
  'fan-motor': ['fan-run-winding-open', 'fan-start-winding-open', 'fan-motor-grounded', 'fan-bearings-seized'],
  'blower-motor': ['blower-motor-open', 'blower-seized'],
  fuse: ['line-fuse-1-open', 'line-fuse-2-open'],
  'control-fuse': ['control-fuse-open'],
  breaker: ['breaker-tripped', 'breaker-pole-1-open', 'breaker-pole-2-open'],
  transformer: ['transformer-dead'],
  thermostat: ['thermostat-not-calling'],
  'float-switch': ['float-switch-open'],
  'pressure-switch': ['high-switch-open', 'low-switch-open'],
  disconnect: ['disconnect-open', 'loose-lug-1', 'loose-lug-2'],
  filter: ['filter-dirty', 'low-indoor-air'],
  'filter-drier': ['liquid-restriction'],
  'expansion-valve': ['liquid-restriction'],
  'defrost-board': ['defrost-fan-relay-open'],
  'blower-relay': ['blower-relay-open'],
  'reversing-valve': ['reversing-valve-stuck'],
  'crankcase-heater': ['crankcase-heater-open'],
  'door-switch': ['door-switch-open'],
  compressor: [
    'compressor-run-winding-open',
    'compressor-start-winding-open',
    'compressor-grounded',
    'compressor-overload-open',
    'compressor-seized',
    'leaking-valves',
  ],
};

/** The faults among the suspects that a part cures. A part the table does not know cures none. */
export function repairedBy(part: string, suspects: readonly FaultId[]): readonly FaultId[] {
  const cures = CURES[part as PartId | typeof CHARGE] ?? [];
  return [...new Set(suspects)].filter((fault) => cures.includes(fault));
}

/** Which suspects a piece of work without a part cures. */
const MENDS: Readonly<Record<WorkId, readonly FaultId[]>> = {
  'outdoor-coil-cleaned': ['condenser-dirty'],
  'indoor-coil-cleaned': ['low-indoor-air'],
  'coil-cleaned': ['condenser-dirty', 'low-indoor-air'],
  'coil-thawed': ['indoor-coil-iced'],
  'filter-cleaned': ['filter-dirty', 'low-indoor-air'],
  'blower-cleaned': ['low-indoor-air', 'blower-seized'],
  'vents-opened': ['low-indoor-air'],
  'drain-cleared': ['float-switch-open'],
  'lug-1-tightened': ['loose-lug-1'],
  'lug-2-tightened': ['loose-lug-2'],
  'lugs-tightened': ['loose-lug-1', 'loose-lug-2'],
  'contacts-cleaned': ['contactor-jammed-open', 'contactor-pole-1-burnt', 'contactor-pole-2-burnt'],
  'control-wire-repaired': [
    'R-wire-broken',
    'C-wire-broken',
    'G-wire-broken',
    'Y-wire-broken-indoors',
    'Y-wire-broken-outdoors',
    'control-short-Y-C',
  ],
  'switch-reset': ['high-switch-open', 'low-switch-open'],
  'door-closed': ['door-switch-open'],
  'thermostat-set': ['thermostat-not-calling'],
  'fan-freed': ['fan-bearings-seized'],
  // The charge is still low until it is weighed in.
  'leak-repaired': [],
  'supply-restored': ['supply-low', 'lost-utility-leg'],
};

/** The faults among the suspects that a piece of work cures. */
export function mendedBy(work: WorkId, suspects: readonly FaultId[]): readonly FaultId[] {
  return [...new Set(suspects)].filter((fault) => MENDS[work].includes(fault));
}

const IN_THE_CIRCUIT: readonly FaultId[] = ['low-charge', 'overcharge', 'non-condensables'];

/** What repairs a fault by the trade's usual way: a part that is fitted, work without one, either, or the charge. */
export function repairOf(fault: FaultId): 'part' | 'work' | 'either' | 'charge' {
  if (IN_THE_CIRCUIT.includes(fault)) return 'charge';
  const byPart = Object.values(CURES).some((faults) => faults.includes(fault));
  const byWork = Object.values(MENDS).some((faults) => faults.includes(fault));
  if (byPart === byWork) return 'either';
  return byPart ? 'part' : 'work';
}

/** Where hands go for a repair, if not into the outdoor unit; `none`: no live part is met. */
const REPAIRED_AT: Readonly<Partial<Record<FaultId, ZoneId | 'none'>>> = {
  'breaker-pole-1-open': 'disconnect-line',
  'breaker-pole-2-open': 'disconnect-line',
  'disconnect-open': 'disconnect-line',
  'air-handler-no-power': 'air-handler',
  'transformer-dead': 'air-handler',
  'blower-motor-open': 'air-handler',
  'blower-seized': 'air-handler',
  'blower-relay-open': 'air-handler',
  'blower-capacitor-weak': 'air-handler',
  'door-switch-open': 'air-handler',
  'control-fuse-open': 'control',
  'control-short-Y-C': 'control',
  'R-wire-broken': 'control',
  'Y-wire-broken-indoors': 'control',
  'Y-wire-broken-outdoors': 'control',
  'C-wire-broken': 'control',
  'G-wire-broken': 'control',
  'float-switch-open': 'control',
  'thermostat-not-calling': 'control',
  'filter-dirty': 'none',
  'indoor-coil-iced': 'none',
  'low-indoor-air': 'none',
  'supply-low': 'none',
  'lost-utility-leg': 'none',
};

/** The zone that must be proven dead before a fault is repaired; the outdoor unit where none is known. */
export function repairZone(fault: FaultId | undefined): ZoneId | 'none' {
  return (fault === undefined ? undefined : REPAIRED_AT[fault]) ?? 'outdoor-load';
}
