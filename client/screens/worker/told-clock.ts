import type { InputTime } from '../../../grammar/visit/inputs.ts';
import type { Clock } from '../../visit/run/visit-run.ts';

/** Told times that lie nearer to what was reckoned only took their way, in milliseconds. */
const ON_ITS_WAY_MS = 1_000;

/** The page's clock as the worker has it: told with each message, and reckoned on in between. It never goes back. */
export class ToldClock implements Clock {
  readonly after: Clock['after'];
  /** How far the page's running clock, and its wall clock, are ahead of this worker's own. Milliseconds. */
  #mono = Number.NEGATIVE_INFINITY;
  #wall = Number.NaN;

  /** @param after calls back once after so many minutes of the page's clock */
  constructor(after: Clock['after']) {
    this.after = after;
  }

  told({ at, mono }: InputTime): void {
    const here = performance.now();
    this.#mono = Math.max(this.#mono, mono - here);
    const wall = Date.parse(at) - here;
    if (!(Math.abs(wall - this.#wall) < ON_ITS_WAY_MS)) this.#wall = wall;
  }

  now(): InputTime {
    const here = performance.now();
    return { at: new Date(here + this.#wall).toISOString(), mono: Math.round(here + this.#mono) };
  }
}
