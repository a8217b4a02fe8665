import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import type { FaultTable, TestColumn } from '../table/fault-table.ts';
import { ohmsScale } from '../table/predict.ts';
import type { Taken } from './take-readings.ts';

/** A reading falls with a repair when this share of the fault's draws differ from the healthy unit's. */
const SHARE = 0.15;

/**
 * Whether a reading falls with the repair of a fault: when the fault often moves its test, or moves it now and then and
 * the reading is not what a healthy unit shows. What the fault cannot move stays.
 */
export function influence(table: FaultTable): (fault: FaultId, reading: Taken) => boolean {
  return (fault, reading) => {
    const f = table.faults.indexOf(fault);
    const entry = table.columns[table.tests.indexOf(reading.test)];
    if (f < 0 || fault === 'something-else') return true;
    if (!entry || entry.start[f]! < 0) return false;
    return shareMoved(table, entry, f) > SHARE || !looksHealthy(table, entry, reading);
  };
}

function shareMoved(table: FaultTable, { column, start }: TestColumn, f: number): number {
  const draws = table.first[f + 1]! - table.first[f]!;
  let moved = 0;
  for (let k = 0; k < draws; k += 1) {
    const p = start[f]! + k;
    const q = start[table.healthy]! + k;
    moved += column.kind === 'look' ? lookMoved(column.chance, column.answers, p, q) : numberMoved(column, p, q);
  }
  return moved / draws;
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

/** The reading lies within three deviations of some healthy draw, or is an answer that a healthy unit often gives. */
function looksHealthy(table: FaultTable, { column, start }: TestColumn, reading: Taken): boolean {
  const { measure } = TEST_MODELS[reading.test];
  // A figure of the refrigerant side needs its conditions to be judged: it is taken again.
  if (measure.kind === 'residual') return false;
  const answer = measure.kind === 'look' ? measure.answers.indexOf(reading.observation!) : -1;
  const value = measure.kind === 'ohms' || measure.kind === 'ohms-part' ? ohmsScale(reading.value) : reading.value;
  const from = start[table.healthy]!;
  const draws = table.first[table.healthy + 1]! - table.first[table.healthy]!;
  for (let d = from; d < from + draws; d += 1) {
    const healthy =
      column.kind === 'look'
        ? column.chance[d * column.answers + answer]! > 0.3
        : Math.abs(value - column.mean[d]!) < 3 * column.spread[d]!;
    if (healthy) return true;
  }
  return false;
}
