import { FAULTS, type FaultId } from '../../../grammar/vocabulary/faults.ts';

export function faultWords(id: FaultId): string {
  return FAULTS.find((fault) => fault.id === id)?.name ?? id;
}
