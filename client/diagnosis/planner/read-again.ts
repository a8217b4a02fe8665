import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Suspect } from '../diagnosis.ts';
import { mayBeReadAgain, type Standing, type Taken } from '../posterior/take-readings.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import { mayBeNothing, type Proof } from '../proof/weigh-proof.ts';
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

/**
 * The one reading, taken once, that is most worth a second look before a part is condemned; none if none is, nor for
 * what is found by exclusion: no reading taken twice makes more of it.
 */
export function readAgainAtLast(look: SecondLook, proof: Proof | undefined): TestId[] {
  if (proof && proof.unproved.length > 0) return [];
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

/** Of a finding, a reading decides it whose loss would leave it less than this share of what it has (ours). */
const DECIDES = 0.8;

/**
 * The reading that decides the finding, where it was taken once and a probe beside its metal, or an eye that did not
 * look, would have given it as well.
 * @param said what the finding is said with
 */
export function decidedByNothing(look: SecondLook, { shown }: Proof, said: number): TestId[] {
  const { posterior, standing, place } = look;
  const left = (reading: Taken) => posterior.without(reading, place) / said;
  const once = shown.filter(
    (r) => r.times === 1 && mayBeNothing(r) && mayBeReadAgain(standing, r.test) && !IN_SIGHT.has(r.test),
  );
  const deciding = once.filter((r) => posterior.stray.has(r) && left(r) < DECIDES);
  return deciding
    .sort((a, b) => left(a) - left(b))
    .map(({ test }) => test)
    .slice(0, 1);
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
