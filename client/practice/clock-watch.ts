import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { Clock, VisitRun } from '../visit/run/visit-run.ts';

/** Wall and monotonic clock of a device that nobody sets stay as near as this, in milliseconds (ours). */
const TOGETHER_MS = 1000;

/**
 * Has the visit heed a clock that was set before an act is judged by what the visit believes: it ends a proof by the
 * time of an input, and much of what is done in an exercise is judged ahead of any.
 */
export class ClockWatch {
  readonly #clock: Clock;
  readonly #run: VisitRun;
  #last: InputTime;

  constructor(clock: Clock, run: VisitRun) {
    this.#clock = clock;
    this.#run = run;
    this.#last = clock.now();
  }

  async heed(): Promise<void> {
    const [before, now] = [this.#last, this.#clock.now()];
    this.#last = now;
    const apart = Date.parse(now.at) - Date.parse(before.at) - (now.mono - before.mono);
    if (Math.abs(apart) < TOGETHER_MS) return;
    // Says nothing but what time it is.
    this.#run.take({ type: 'timer.elapsed', timer: 'proof' });
    await this.#run.settled();
  }
}
