import type { Understanding } from '../../grammar/phrases/meaning.ts';
import type { VisitEvent, VisitOutcome } from '../../grammar/visit/events.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { countDone, countSwitched, switchedNow } from './act-minutes.ts';
import type { ExerciseDeed } from './exercise-log.ts';
import { followDone, followRecorded } from './exercise-world.ts';
import { repairBegun, type Written } from './heed-record.ts';
import type { Stop } from './judge-safety.ts';
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
  /** All that the visit said, but for what was written last. */
  readonly #said: string[] = [];
  /** A repair that was heard, and asked about. */
  #unsure: ExerciseDeed | undefined;
  /** What was hidden before each repair, by its number. */
  readonly #leftBefore = new Map<number, SimulatedUnit['left']>();

  constructor(unit: SimulatedUnit, note: (deed: ExerciseDeed) => void) {
    this.#unit = unit;
    this.#note = note;
  }

  /** Takes note of a repair that is begun: at once where it was surely heard, else when the record has it. */
  hear({ verdict, meaning, heard }: Understanding, context: VisitContext): void {
    if (verdict === 'rejected') return;
    // An answer to what was asked about.
    if (meaning.kind === 'value' || (meaning.kind === 'command' && meaning.command !== 'no')) return;
    const begun = repairBegun(meaning, heard, context);
    this.#unsure = verdict === 'asked' ? begun : undefined;
    if (verdict === 'logged' && begun !== undefined) this.#note(begun);
  }

  /** Takes up what was written. @param bodies events as the record has them */
  take(bodies: readonly string[]): void {
    this.events += bodies.length;
    this.#waiting.push(...bodies.map((body) => JSON.parse(body) as VisitEvent));
  }

  /**
   * The unit follows what was written since.
   * @returns it, what had been said before it, and what stops whoever did it: nothing of that is done then
   */
  follow(work: WorkClock, context: VisitContext): Written & { readonly stop?: Stop } {
    const said = [...this.#said];
    const events = this.#waiting;
    this.#waiting = [];
    if (this.#unsure !== undefined && events.some(({ type }) => type === 'part.fitted' || type === 'work.done')) {
      this.#note(this.#unsure);
      this.#unsure = undefined;
    }
    const stops = events.flatMap((event) =>
      event.type === 'input.taken' ? [] : this.#followOne(event, work, context),
    );
    this.#said.push(...events.flatMap((event) => (event.type === 'prompt.said' ? [event.text] : [])));
    return { events, said, ...(stops[0] === undefined ? {} : { stop: stops[0] }) };
  }

  #followOne(event: VisitOutcome, work: WorkClock, context: VisitContext): readonly Stop[] {
    if ((event.type === 'part.withdrawn' || event.type === 'work.withdrawn') && event.number !== undefined)
      this.#takeBack(event.number);
    if (event.type === 'split.judged') this.disproved = event.word === 'does not fit';
    countDone(work, event);
    const [before, switched] = [this.#unit.left, switchedNow(this.#unit)];
    const { stop, mended = followDone(event, this.#unit) } = followRecorded(event, this.#unit, context);
    countSwitched(work, switched, this.#unit);
    if (mended !== undefined) this.#noteMended(mended, before);
    return stop === undefined ? [] : [stop];
  }

  #noteMended(mended: Extract<ExerciseDeed, { type: 'mended' }>, before: SimulatedUnit['left']): void {
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
