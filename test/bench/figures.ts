/** One measured figure. A figure means something only beside a limit or a peer of the same run. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What it is to be held against: a limit measured in the same run, or an aim. */
  readonly against?: string;
}

/** What a `NAME.bench.ts` of this folder exports as `bench`. `options` are the words NAME=VALUE of the command line. */
export type Bench = (options: ReadonlyMap<string, string>, progress: (text: string) => void) => Promise<Figure[]>;

/** The median of the numbers; of an even count the mean of the middle two. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? Number.NaN)) / 2;
}

/** The value that the share (0 to 1) of the numbers does not exceed. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
