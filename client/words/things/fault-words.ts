import { FAULTS_BY_ID, type FaultId } from '../../../grammar/vocabulary/faults.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';

export function faultWords(id: FaultId): string {
  return nameIn(FAULTS_BY_ID, id);
}
