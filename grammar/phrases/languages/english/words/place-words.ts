/** Words that tell one place from the one across from it: taken for one another, a value lands at the wrong place. */
export const OPPOSITE_WORDS: ReadonlySet<string> = new Set([
  'line',
  'load',
  'run',
  'start',
  'herm',
  'fan',
  'primary',
  'secondary',
  'high',
  'low',
  'supply',
  'return',
  'suction',
  'liquid',
  'indoor',
  'outdoor',
]);
