import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Suspect } from '../diagnosis.ts';
import { mayBeReadAgain, type Standing, type Taken } from '../posterior/take-readings.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import { type Stance, stanceAfter, testCost } from './test-cost.ts';
import { worthOfReadingAgain } from './when-to-stop.ts';

/** Coming back must cost so many times what reading once more costs now. */
const DEARER = 1.5;

/** What is known when a second reading is thought of. */
export interface SecondLook {
  readonly posterior: Posterior;
  readonly standing: Standing;
  readonly stance: Stance;
  readonly leader: Suspect;
  /** Place of the leader among the faults of the table. */
  readonly place: number;
}

/** The same again, or another result of the same test. */
const isSecond = ({ all }: Standing, last: Taken) =>
  last.times > 1 || all.some((r) => r !== last && r.test === last.test);

/** By how much the leader would be less probable without the reading. */
const lossWithout = ({ posterior, leader, place }: SecondLook, reading: Taken): number =>
  leader.probability - posterior.without(reading, place);

/** Seen all the while by whoever stands there: nobody is sent to look once more at the end. */
const IN_SIGHT: ReadonlySet<TestId> = new Set(['look-outdoor-fan', 'look-compressor']);

/** The one reading, taken once, that is most worth a second look before a part is condemned; none if none is. */
export function readAgainAtLast(look: SecondLook): TestId[] {
  const { posterior, standing, stance, leader } = look;
  let pivot: TestId | undefined;
  let most = 0;
  for (const [reading, stray] of posterior.stray) {
    if (reading.times > 1 || !mayBeReadAgain(standing, reading.test) || IN_SIGHT.has(reading.test)) continue;
    const minutes = testCost(stance, reading.test);
    const worth = (loss: number) => worthOfReadingAgain(leader.fault, stray, loss, minutes);
    // Not even a leader that is nothing without it would be worth it.
    if (worth(1) <= most) continue;
    const gain = worth(lossWithout(look, reading));
    if (gain <= most) continue;
    most = gain;
    pivot = reading.test;
  }
  return pivot === undefined ? [] : [pivot];
}

/**
 * The reading just taken, where it would be read again at last anyway and the way back to it, from where the next test
 * leads, costs more than a moment now with the probes in place.
 */
export function readAgainBeforeLeaving(look: SecondLook, next: TestId | undefined): TestId[] {
  const { posterior, standing, stance, leader } = look;
  const last = standing.all.at(-1);
  const stray = last && posterior.stray.get(last);
  if (!last || stray === undefined || !next || next === last.test || isSecond(standing, last)) return [];
  const now = testCost(stance, last.test);
  const later = testCost(stanceAfter(stance, next), last.test);
  if (later < DEARER * now || leader.probability * later < now) return [];
  return worthOfReadingAgain(leader.fault, stray, lossWithout(look, last), later) > 0 ? [last.test] : [];
}
