import { TEST_MODELS } from '../../client/diagnosis/measuring/test-models.ts';
import { ON_ARRIVAL, stanceAfter } from '../../client/diagnosis/planner/test-cost.ts';
import type { Taken } from '../../client/diagnosis/posterior/take-readings.ts';
import { nextOfProof } from '../../client/diagnosis/proof/next-proof.ts';
import { PROOF_ROWS } from '../../client/diagnosis/proof/proof-rows.ts';
import { proveRow } from '../../client/diagnosis/proof/weigh-proof.ts';
import { testsFor } from '../../client/diagnosis/table/build-table.ts';
import { OPEN_OHMS } from '../../client/diagnosis/table/predict.ts';
import { type Job, WorkClock } from '../../client/practice/work-clock.ts';
import { listLines } from '../../client/terminal/diagnose-session.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Answer } from './instrument.ts';

/** What everybody looks at first. */
const LOOKS: readonly TestId[] = ['look-outdoor-fan', 'look-compressor'];

function taken(test: TestId, answer: Answer): Taken {
  const { measure } = TEST_MODELS[test];
  if (measure.kind === 'look')
    return { seq: 1, test, value: Number.NaN, observation: answer as ObservationId, times: 2 };
  return { seq: 1, test, value: answer === 'open' ? OPEN_OHMS : (answer as number), times: 2 };
}

const EVERY = new Map(
  (listLines() as { list: string; id: TestId }[])
    .filter((l) => l.list === 'test')
    .map((l) => [l.id, l as unknown as Job]),
);

/** The tests that a unit of this plate has. */
export function jobsFor(profile: UnitProfile): ReadonlyMap<TestId, Job> {
  const has = new Set(testsFor(profile));
  return new Map([...EVERY].filter(([id]) => has.has(id)));
}

/** Who knows what is wrong: its name, the unit's plate, what can be asked there, and what each test shows. */
export interface Knowing {
  readonly fault: FaultId;
  readonly profile: UnitProfile;
  readonly jobs: ReadonlyMap<TestId, Job>;
  /** @returns nothing where the test cannot be done */
  readonly answer: (job: Job) => Answer | undefined;
}

/**
 * Whoever knows the fault beforehand and only proves it: two looks, then each reading of the fault's row of proof,
 * twice, the nearest first. Nobody is faster who proves what he names. @returns minutes and tests of the visit
 */
export function proveKnown({ fault, profile, jobs, answer }: Knowing) {
  const clock = new WorkClock();
  const all = new Map<TestId, Taken>();
  const cannot = new Set<TestId>();
  let stance = ON_ARRIVAL;
  const read = (test: TestId, times: number) => {
    const job = jobs.get(test)!;
    const shown = answer(job);
    if (shown === undefined) {
      cannot.add(test);
      return;
    }
    for (let n = 0; n < times; n += 1) clock.count(job);
    all.set(test, taken(test, shown));
    stance = stanceAfter(stance, test);
  };
  for (const look of LOOKS) read(look, 1);
  const isThere = (test: TestId) => jobs.has(test);
  const canBeDone = (test: TestId) => isThere(test) && !cannot.has(test);
  for (;;) {
    const standing = { all: [...all.values()], taken: all, repaired: [] };
    const proof = proveRow(PROOF_ROWS[fault], { standing, profile, canBeDone, isThere });
    const [next] = nextOfProof(stance, proof);
    if (next === undefined) return { tests: clock.tests, minutes: clock.minutes };
    read(next, 2);
  }
}
