import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { FaultTable } from '../table/fault-table.ts';

/** A reading is moved by a fault when this share of its draws differ from the sound unit's. */
const SHARE = 0.15;

/**
 * Whether a fault can move the reading of a test: its draws are compared with the same draws of the sound unit. After
 * a repair the moved readings no longer hold.
 */
export function influence(table: FaultTable): (fault: FaultId, test: TestId) => boolean {
  const sound = table.faults.indexOf('nothing-wrong');
  return (fault, test) => {
    const f = table.faults.indexOf(fault);
    const column = table.columns[table.tests.indexOf(test)]?.column;
    if (f < 0 || fault === 'something-else') return true;
    if (!column) return false;
    let moved = 0;
    const draws = table.first[f + 1]! - table.first[f]!;
    for (let k = 0; k < draws; k += 1) {
      const p = table.first[f]! + k;
      const q = table.first[sound]! + k;
      moved += column.kind === 'look' ? lookMoved(column.chance, column.answers, p, q) : numberMoved(column, p, q);
    }
    return moved / draws > SHARE;
  };
}

function numberMoved(column: { mean: Float32Array; spread: Float32Array }, p: number, q: number): 0 | 1 {
  const spread = Math.hypot(column.spread[p]!, column.spread[q]!);
  return Math.abs(column.mean[p]! - column.mean[q]!) > spread ? 1 : 0;
}

function lookMoved(chance: Float32Array, answers: number, p: number, q: number): 0 | 1 {
  let distance = 0;
  for (let a = 0; a < answers; a += 1) distance += Math.abs(chance[p * answers + a]! - chance[q * answers + a]!);
  return distance > 0.3 ? 1 : 0;
}
