import type { FaultId } from '../../grammar/vocabulary/faults.ts';

/** Which part cures which suspects, by the beginning of the fault's id: for restarting the diagnosis after a repair. */
const CURES: Readonly<Record<string, readonly string[]>> = {
  capacitor: ['cap-', 'capacitor-', 'fan-capacitor', 'herm-capacitor'],
};

export function repairedBy(part: string, suspects: readonly FaultId[]): readonly FaultId[] {
  const cures = CURES[part] ?? [];
  return suspects.filter((fault) => cures.some((stem) => fault.startsWith(stem)));
}
