/** A share with its 95 % interval (Wilson, 1927), in per cent. */
export interface Share {
  readonly count: number;
  readonly of: number;
  readonly percent: number;
  readonly low: number;
  readonly high: number;
}

export function shareOf(count: number, of: number): Share {
  const z = 1.96;
  const p = count / Math.max(1, of);
  const middle = (p + (z * z) / (2 * of)) / (1 + (z * z) / of);
  const half = (z * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of))) / (1 + (z * z) / of);
  const percent = (value: number): number => Math.round(1000 * value) / 10;
  return {
    count,
    of,
    percent: percent(p),
    low: percent(Math.max(0, middle - half)),
    high: percent(Math.min(1, middle + half)),
  };
}

export const written = ({ count, of, percent, low, high }: Share): string =>
  `${percent} % (${count}/${of}, ${low}–${high})`;
