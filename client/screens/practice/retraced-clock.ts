import { type InputTime, MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import type { Clock } from '../../visit/run/visit-run.ts';

interface Timer {
  readonly due: number;
  readonly callback: () => void;
  handle?: ReturnType<typeof setTimeout>;
}

/**
 * The clock of an exercise. It begins standing, at the moments of what was done before a reload, one after another;
 * from `goOn` on it is the page's, ahead by what has passed since, and by what is let pass at once.
 */
export class RetracedClock implements Clock {
  readonly #began: number;
  readonly #timers = new Set<Timer>();
  /** Milliseconds since the exercise began; once it goes on, those at which it did. */
  #mono = 0;
  #since: number | undefined;
  /** Of the wall clock, by minutes that were let pass. Milliseconds. */
  #ahead = 0;

  /** @param began Unix time, milliseconds */
  constructor(began: number) {
    this.#began = began;
  }

  now(): InputTime {
    const wall = this.#since === undefined ? this.#began + this.#mono : Date.now() + this.#ahead;
    return { at: new Date(wall).toISOString(), mono: this.#now() };
  }

  #now(): number {
    return this.#since === undefined ? this.#mono : Math.round(this.#mono + performance.now() - this.#since);
  }

  after(minutes: number, callback: () => void): void {
    const timer: Timer = { due: this.#now() + minutes * MS_A_MINUTE, callback };
    this.#timers.add(timer);
    if (this.#since !== undefined) this.#await(timer);
  }

  #await(timer: Timer): void {
    clearTimeout(timer.handle);
    timer.handle = setTimeout(() => this.#call(timer), Math.max(0, timer.due - this.#now()));
  }

  #call(timer: Timer): void {
    clearTimeout(timer.handle);
    if (this.#timers.delete(timer)) timer.callback();
  }

  /** Calls back what is due until then, and stands there. @param settled all that follows from a timer has happened */
  async moveTo(mono: number, settled: () => Promise<void>): Promise<void> {
    for (;;) {
      const [next] = [...this.#timers].sort((a, b) => a.due - b.due);
      if (next === undefined || next.due > mono) break;
      this.#moveOn(next.due - this.#now());
      this.#call(next);
      await settled();
    }
    this.#moveOn(mono - this.#now());
  }

  /** Minutes pass at once. */
  letPass(minutes: number, settled: () => Promise<void>): Promise<void> {
    return this.moveTo(this.#now() + minutes * MS_A_MINUTE, settled);
  }

  #moveOn(by: number): void {
    if (by <= 0) return;
    this.#mono += by;
    if (this.#since === undefined) return;
    this.#ahead += by;
    for (const timer of this.#timers) this.#await(timer);
  }

  /** From now on time passes by itself: the monotonic one by what the wall clock says has passed. */
  goOn(): void {
    const wall = this.#began + this.#mono;
    // Minutes that were let pass have the exercise ahead of the day.
    this.#ahead = Math.max(0, wall - Date.now());
    this.#mono = Math.max(this.#mono, Date.now() - this.#began);
    this.#since = performance.now();
    for (const timer of this.#timers) this.#await(timer);
  }
}
