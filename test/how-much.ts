/**
 * A test run is short (`npm test`) or long (`npm run test:long`). What takes minutes stands in files named
 * `*.long.test.ts`; what can be tried often or seldom asks here how often, and is tried again, often, in the long run.
 */
export const LONG = process.env['READBACK_RUN'] === 'long';

/** How many of something are tried in this run; `npm run trial` may say a number of its own. */
export function tries(short: number, long: number): number {
  const own = process.env['READBACK_TRIES'];
  if (own !== undefined) return Number(own);
  return LONG ? long : short;
}

/**
 * The seed of this run's random cases: the same in every short run, another in each long one, unless `READBACK_SEED`
 * says which. It is printed with the counts at the end of the run, so that whatever failed can be had again.
 */
export const SEED = Number(process.env['READBACK_SEED'] ?? 20_240_611);
