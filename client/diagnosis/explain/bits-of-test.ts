import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { alive, informationOf } from '../planner/information.ts';
import type { Standing } from '../posterior/take-readings.ts';
import { weighParticles } from '../posterior/weigh-particles.ts';
import type { FaultTable } from '../table/fault-table.ts';

/**
 * Mutual information between the fault and the outcome of a test, as far as the readings leave it open. Bits; 0 for a
 * test that this unit has not.
 */
export function bitsOfTest(table: FaultTable, test: TestId, standing: Standing): number {
  const entry = table.columns[table.tests.indexOf(test)];
  if (!entry) return 0;
  return informationOf(table, alive(table, weighParticles(table, standing)), entry, 0) / Math.LN2;
}
