export const isText = (value: unknown): value is string => typeof value === 'string';

export const isListOf =
  (look: (value: unknown) => boolean) =>
  (value: unknown): boolean =>
    Array.isArray(value) && value.every(look);

/** A verdict with its source; a band of another form than today's is none. */
export function isJudged(value: unknown): boolean {
  const { word, rule, source } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return isText(word) && isText(rule) && isText(source);
}

/** What a closed visit comes to, for its readers. */
export function isSummary(value: unknown): boolean {
  const { plain, technical, openItems } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return isText(plain) && isListOf(isText)(technical) && isListOf(isText)(openItems);
}

/** Where tips stand: points, or a list of them for each of several values. */
export function isPlaces(value: unknown): boolean {
  return isListOf(isText)(value) || isListOf(isListOf(isText))(value);
}

/** Suspects as they were ranked: whoever reads them goes by the first, and adds them up. */
export const isRanking = isListOf((value) => {
  const { fault, probability } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return isText(fault) && isChance(probability);
});

/** Shares that were divided by their sum may lie a rounding beside one. */
export const isChance = (value: unknown): value is number =>
  typeof value === 'number' && value >= 0 && value <= 1 + 1e-9;
