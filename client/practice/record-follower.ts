import type { VisitEvent } from '../../grammar/visit/events.ts';
import { countDone } from './act-minutes.ts';
import type { ExerciseDeed } from './exercise-log.ts';
import { followDone } from './exercise-world.ts';
import type { SimulatedUnit } from './simulated-unit.ts';
import type { WorkClock } from './work-clock.ts';

/**
 * Has the unit follow what the visit recorded as done, and be broken again by what it recorded as taken back: what was
 * only told, asked about and left out is not done.
 */
export class RecordFollower {
  readonly #unit: SimulatedUnit;
  readonly #note: (deed: ExerciseDeed) => void;
  /** How many events the record of the visit holds. */
  events = 0;
  /** The last split that was judged behind a repair speaks against it. */
  disproved = false;
  #waiting: VisitEvent[] = [];
  /** What was hidden before each repair, by its number. */
  readonly #leftBefore = new Map<number, SimulatedUnit['left']>();

  constructor(unit: SimulatedUnit, note: (deed: ExerciseDeed) => void) {
    this.#unit = unit;
    this.#note = note;
  }

  /** Takes up what was written. @param bodies events as the record has them */
  take(bodies: readonly string[]): void {
    this.events += bodies.length;
    this.#waiting.push(...bodies.map((body) => JSON.parse(body) as VisitEvent));
  }

  /** The unit follows what was written since. Returns it. */
  follow(work: WorkClock): readonly VisitEvent[] {
    const events = this.#waiting;
    this.#waiting = [];
    for (const event of events) this.#followOne(event, work);
    return events;
  }

  #followOne(event: VisitEvent, work: WorkClock): void {
    if (event.type === 'input.taken') return;
    if ((event.type === 'part.withdrawn' || event.type === 'work.withdrawn') && event.number !== undefined)
      this.#takeBack(event.number);
    if (event.type === 'split.judged') this.disproved = event.word === 'does not fit';
    countDone(work, event);
    const before = this.#unit.left;
    const mended = followDone(event, this.#unit);
    if (mended === undefined) return;
    if (mended.number !== undefined) this.#leftBefore.set(mended.number, before);
    this.disproved = false;
    this.#note(mended);
  }

  /** What was told fitted or done was not: what it had cured is there again. */
  #takeBack(number: number): void {
    const before = this.#leftBefore.get(number);
    this.#leftBefore.delete(number);
    this.#note({ type: 'taken-back', number });
    if (before !== undefined && before.length > this.#unit.left.length) this.#unit.unmend(before);
  }
}
