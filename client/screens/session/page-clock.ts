import { type InputTime, MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import type { Clock } from '../../visit/run/visit-run.ts';

/**
 * The page's clock edge. `mono` goes on from the last time in the record, by as much as the wall clock says has passed
 * since, and never goes back, whatever is done to the wall clock.
 */
export class PageClock implements Clock {
  readonly #ahead: number;

  /** @param last time of the last event of the record; missing for a new visit, whose `mono` begins at 0. */
  constructor(last?: InputTime) {
    const away = last === undefined ? 0 : Math.max(0, Date.now() - Date.parse(last.at));
    this.#ahead = (last?.mono ?? 0) + away - performance.now();
  }

  now(): InputTime {
    return { at: new Date().toISOString(), mono: Math.round(performance.now() + this.#ahead) };
  }

  after(minutes: number, callback: () => void): void {
    setTimeout(callback, minutes * MS_A_MINUTE);
  }
}
