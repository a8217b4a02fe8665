import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { PartId } from '../../grammar/vocabulary/parts.ts';

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
