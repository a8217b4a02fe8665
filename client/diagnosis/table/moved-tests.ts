import type { Column } from './fault-table.ts';

/** Of a fault's draws, the share that must differ from the same draws of the sound unit. */
const SHARE = 0.04;

function numberMoves(mean: Float32Array, spread: Float32Array, p: number, q: number): boolean {
  return Math.abs(mean[p]! - mean[q]!) > 0.5 * Math.min(spread[p]!, spread[q]!);
}

function lookMoves(chance: Float32Array, answers: number, p: number, q: number): boolean {
  for (let a = 0; a < answers; a += 1) {
    if (Math.abs(chance[p * answers + a]! - chance[q * answers + a]!) > 0.04) return true;
  }
  return false;
}

/**
 * Which faults can move the reading of a test at all: 1 for each that can. Where a fault cannot, its draws must not
 * speak: what they differ in is chance, and chance is not evidence.
 */
export function movedBy(column: Column, first: Uint32Array, sound: number): Uint8Array {
  const moved = new Uint8Array(first.length - 1);
  for (let f = 0; f < moved.length; f += 1) {
    const draws = first[f + 1]! - first[f]!;
    let differ = 0;
    for (let k = 0; k < draws; k += 1) {
      const p = first[f]! + k;
      const q = first[sound]! + k;
      const moves =
        column.kind === 'look'
          ? lookMoves(column.chance, column.answers, p, q)
          : numberMoves(column.mean, column.spread, p, q);
      if (moves) differ += 1;
    }
    moved[f] = differ > SHARE * draws ? 1 : 0;
  }
  return moved;
}
