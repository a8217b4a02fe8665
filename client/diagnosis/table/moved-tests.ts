import type { Drawn } from './drawn-readings.ts';

/** Of a fault's draws, the share that must differ from the same draws of the healthy unit. */
const SHARE = 0.04;

function numberMoves(own: Drawn, healthy: Drawn, k: number): boolean {
  return Math.abs(own.mean[k]! - healthy.mean[k]!) > 0.5 * Math.min(own.spread[k]!, healthy.spread[k]!);
}

function lookMoves(own: Drawn, healthy: Drawn, k: number): boolean {
  for (let a = k * own.answers; a < (k + 1) * own.answers; a += 1) {
    if (Math.abs(own.chance[a]! - healthy.chance[a]!) > 0.04) return true;
  }
  return false;
}

/**
 * Whether a fault can move the reading of a test at all, by its first draws beside the same draws of the healthy unit.
 * Where it cannot, its draws must not speak: what they differ in is chance, and chance is not evidence.
 */
export function moves(own: Drawn, healthy: Drawn, draws: number): boolean {
  let differ = 0;
  for (let k = 0; k < draws; k += 1) {
    if (own.answers > 0 ? lookMoves(own, healthy, k) : numberMoves(own, healthy, k)) differ += 1;
  }
  return differ > SHARE * draws;
}
