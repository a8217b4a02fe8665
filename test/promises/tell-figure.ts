import { appendFileSync } from 'node:fs';

/** Set by `npm run promises`: the file that gathers what tests measured. */
export const FIGURES_FILE = 'READBACK_FIGURES';

/** A figure that a test measured, by its name, for the page of promises; outside of that run nothing is kept. */
export function tellFigure(name: string, value: number | string): void {
  const file = process.env[FIGURES_FILE];
  if (file !== undefined) appendFileSync(file, `${JSON.stringify({ name, value })}\n`);
}
