/** Upper cumulative normal, good to 1e-7 (Abramowitz and Stegun 7.1.26). */
function cumulative(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = 0.5 * poly * Math.exp(-x * x);
  return z > 0 ? 1 - tail : tail;
}

export interface Binned {
  readonly bins: number;
  readonly firstBin: Uint8Array;
  readonly share: Float32Array;
}

const MOST_BINS = 24;

/** Cuts between predicted readings: about two standard deviations apart, coarser until there are few enough. */
function findEdges(mean: Float32Array, spread: Float32Array): number[] {
  const order = Array.from(mean.keys()).sort((a, b) => mean[a]! - mean[b]!);
  for (let width = 2; ; width *= 1.4) {
    const edges: number[] = [];
    let start = mean[order[0]!]!;
    for (let i = 1; i < order.length; i += 1) {
      const p = order[i]!;
      const before = mean[order[i - 1]!]!;
      if (mean[p]! - start > width * spread[p]!) {
        edges.push((before + mean[p]!) / 2);
        start = mean[p]!;
      }
    }
    if (edges.length < MOST_BINS) return edges;
  }
}

/** Puts each particle's reading into bins; the three bins around its mean carry it. */
export function binReadings(mean: Float32Array, spread: Float32Array): Binned {
  const edges = findEdges(mean, spread);
  const bins = Math.max(3, edges.length + 1);
  const firstBin = new Uint8Array(mean.length);
  const share = new Float32Array(mean.length * 3);
  const below = (z: number) => cumulative(z);
  for (let p = 0; p < mean.length; p += 1) {
    let home = 0;
    while (home < edges.length && mean[p]! > edges[home]!) home += 1;
    const first = Math.min(Math.max(home - 1, 0), bins - 3);
    firstBin[p] = first;
    const at = (edge: number) => (edge < edges.length ? below((edges[edge]! - mean[p]!) / spread[p]!) : 1);
    const a = at(first);
    const b = at(first + 1);
    share[p * 3] = a;
    share[p * 3 + 1] = b - a;
    share[p * 3 + 2] = 1 - b;
  }
  return { bins, firstBin, share };
}
