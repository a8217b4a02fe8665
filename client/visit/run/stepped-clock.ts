import { type InputTime, MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import type { Clock } from './visit-run.ts';

/** Each reading of the clock moves it on a little, as talk does. */
const MS_A_LOOK = 700;

/** A clock that moves only when told to (and a little with each look): recorded visits and tests run on it. */
export class SteppedClock implements Clock {
  #mono = 0;
  readonly #start: number;
  readonly #timers: { readonly due: number; readonly callback: () => void }[] = [];

  /** @param start Unix time of the first look, in milliseconds. */
  constructor(start: number) {
    this.#start = start;
  }

  now(): InputTime {
    this.#mono += MS_A_LOOK;
    return { at: new Date(this.#start + this.#mono).toISOString(), mono: this.#mono };
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
}
