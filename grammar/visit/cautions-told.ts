/** A caution as the view or the printed record has it. */
interface CautionLine {
  readonly caution: string;
  readonly words: string;
  readonly zone?: string;
}

/** One caution, however often it was told in one place. */
export interface ToldCaution<L extends CautionLine> {
  /** Each time it was told, in their order. */
  readonly lines: readonly [L, ...L[]];
  /** Nobody acknowledged it since it was told last. */
  readonly open: boolean;
}

/**
 * Cautions as they are counted, in the list, in the review and in print: one that was told again is the same, and it is
 * open unless it was acknowledged when it was told last.
 */
export function cautionsTold<L extends CautionLine>(
  cautions: readonly L[],
  isAcknowledged: (line: L) => boolean,
): readonly ToldCaution<L>[] {
  const told = new Map<string, [L, ...L[]]>();
  for (const line of cautions) {
    const key = JSON.stringify([line.caution, line.words, line.zone]);
    const before = told.get(key);
    if (before === undefined) told.set(key, [line]);
    else before.push(line);
  }
  return [...told.values()].map((lines) => ({ lines, open: !isAcknowledged(lines.at(-1) as L) }));
}
