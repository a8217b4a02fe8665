import { TEST_MODELS } from '../../client/diagnosis/measuring/test-models.ts';
import { ON_ARRIVAL, stanceAfter } from '../../client/diagnosis/planner/test-cost.ts';
import type { Taken } from '../../client/diagnosis/posterior/take-readings.ts';
import { nextOfProof } from '../../client/diagnosis/proof/next-proof.ts';
import { PROOF_ROWS } from '../../client/diagnosis/proof/proof-rows.ts';
import { proveRow } from '../../client/diagnosis/proof/weigh-proof.ts';
import { OPEN_OHMS } from '../../client/diagnosis/table/predict.ts';
import { type Job, WorkClock } from '../../client/practice/work-clock.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Case } from './draw-case.ts';
import { type Answer, Instrument } from './instrument.ts';

/** What everybody looks at first. */
const LOOKS: readonly TestId[] = ['look-outdoor-fan', 'look-compressor'];

function taken(test: TestId, answer: Answer): Taken {
  const { measure } = TEST_MODELS[test];
  if (measure.kind === 'look')
    return { seq: 1, test, value: Number.NaN, observation: answer as ObservationId, times: 2 };
  return { seq: 1, test, value: answer === 'open' ? OPEN_OHMS : (answer as number), times: 2 };
}

/**
 * Whoever knows the fault beforehand and only proves it: two looks, then each reading of the fault's row of proof,
 * twice, the nearest first. Nobody is faster who proves what he names. @returns minutes and tests of the visit
 */
export function proveKnown(kase: Case, profile: UnitProfile, jobs: ReadonlyMap<TestId, Job>) {
  const clock = new WorkClock();
  const instrument = new Instrument(kase.unit, kase.dice, 0);
  const all = new Map<TestId, Taken>();
  let stance = ON_ARRIVAL;
  const read = (test: TestId, times: number) => {
    const job = jobs.get(test)!;
    for (let n = 0; n < times; n += 1) clock.count(job);
    all.set(test, taken(test, instrument.answer(job)));
    stance = stanceAfter(stance, test);
  };
  for (const look of LOOKS) read(look, 1);
  const isThere = (test: TestId) => jobs.has(test);
  for (;;) {
    const standing = { all: [...all.values()], taken: all, repaired: [] };
    const proof = proveRow(PROOF_ROWS[kase.faults[0]!], { standing, profile, canBeDone: isThere, isThere });
    const [next] = nextOfProof(stance, proof);
    if (next === undefined) return { tests: clock.tests, minutes: clock.minutes };
    read(next, 2);
  }
}
