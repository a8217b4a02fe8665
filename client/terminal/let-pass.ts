import type { SteppedClock } from '../visit/run/stepped-clock.ts';
import type { VisitRun } from '../visit/run/visit-run.ts';

/** Minutes pass: the timers that fall due on the way are rung one after another. */
export async function letPass(run: VisitRun, clock: SteppedClock, minutes: number): Promise<void> {
  let left = minutes;
  while (left > 0) {
    left = clock.step(left);
    await run.settled();
  }
}
