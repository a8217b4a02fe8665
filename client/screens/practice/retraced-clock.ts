import { type InputTime, MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import type { Clock } from '../../visit/run/visit-run.ts';

/**
 * The clock of an exercise that is gone through again after a reload: it stands at the moments of what was done, one
 * after another, and from `goOn` on it is the page's, ahead by what has passed since.
 */
export class RetracedClock implements Clock {
  readonly #began: number;
  #timers: { readonly due: number; readonly callback: () => void }[] = [];
  /** Milliseconds since the exercise began; once it goes on, those at which it did. */
  #mono = 0;
  #since: number | undefined;

  /** @param began Unix time, milliseconds */
  constructor(began: number) {
    this.#began = began;
  }

  now(): InputTime {
    if (this.#since === undefined) return { at: new Date(this.#began + this.#mono).toISOString(), mono: this.#mono };
    return { at: new Date().toISOString(), mono: Math.round(this.#mono + performance.now() - this.#since) };
  }

  after(minutes: number, callback: () => void): void {
    if (this.#since === undefined) this.#timers.push({ due: this.#mono + minutes * MS_A_MINUTE, callback });
    else setTimeout(callback, minutes * MS_A_MINUTE);
  }

  /** Calls back what is due until then, and stands there. @param settle all that follows from a timer has happened */
  async moveTo(mono: number, settle: () => Promise<void>): Promise<void> {
    for (;;) {
      const next = this.#timers.sort((a, b) => a.due - b.due)[0];
      if (next === undefined || next.due > mono) break;
      this.#timers.shift();
      this.#mono = Math.max(this.#mono, next.due);
      next.callback();
      await settle();
    }
    this.#mono = Math.max(this.#mono, mono);
  }

  /** From now on time passes by itself: the monotonic one by what the wall clock says has passed. */
  goOn(): void {
    this.#mono = Math.max(this.#mono, Date.now() - this.#began);
    this.#since = performance.now();
    for (const { due, callback } of this.#timers) setTimeout(callback, Math.max(0, due - this.#mono));
    this.#timers = [];
  }
}
