import { type InputTime, MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import type { Clock } from './visit-run.ts';

/** Each reading of the clock moves it on a little, as talk does. */
const MS_A_LOOK = 700;

/** A clock that moves only when told to (and a little with each look): recorded visits and tests run on it. */
export class SteppedClock implements Clock {
  #mono = 0;
  /** The wall clock less the monotonic one, in milliseconds. */
  #ahead: number;
  #timers: { readonly due: number; readonly callback: () => void }[] = [];

  /** @param start Unix time of the first look, in milliseconds. */
  constructor(start: number) {
    this.#ahead = start;
  }

  now(): InputTime {
    this.#mono += MS_A_LOOK;
    return { at: new Date(this.#ahead + this.#mono).toISOString(), mono: this.#mono };
  }

  after(minutes: number, callback: () => void): void {
    this.#timers.push({ due: this.#mono + minutes * MS_A_MINUTE, callback });
  }

  /** Moves on to the next timer or by the given minutes, whichever comes first; returns the minutes that are left. */
  step(minutes: number): number {
    const end = this.#mono + minutes * MS_A_MINUTE;
    this.#timers.sort((a, b) => a.due - b.due);
    const next = this.#timers[0];
    if (next === undefined || next.due > end) {
      this.#mono = end;
      return 0;
    }
    this.#timers.shift();
    this.#mono = Math.max(this.#mono, next.due);
    next.callback();
    return (end - this.#mono) / MS_A_MINUTE;
  }

  /** The wall clock alone moves, back too: it was set anew, or the device slept. */
  jumpWall(minutes: number): void {
    this.#ahead += minutes * MS_A_MINUTE;
  }

  /**
   * As for a program begun anew: nothing is called back, and the monotonic clock goes on from the last time in the
   * record by as much as the wall clock says has passed since.
   */
  beginAnew(last: InputTime): void {
    const wall = this.#ahead + this.#mono;
    this.#mono = last.mono + Math.max(0, wall - Date.parse(last.at));
    this.#ahead = wall - this.#mono;
    this.#timers = [];
  }
}
