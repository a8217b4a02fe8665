import type { Diagnosis } from '../../client/diagnosis/diagnosis.ts';
import { type Job, type Spending, WorkClock } from '../../client/practice/work-clock.ts';
import { DiagnoseSession, type StatusLine } from '../../client/terminal/diagnose-session.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import { followChart, type Plate } from './branching-chart.ts';
import type { Case } from './draw-case.ts';
import { followOrder } from './fixed-order.ts';
import { type Answer, Instrument } from './instrument.ts';

export interface Outcome {
  readonly faults: readonly FaultId[];
  readonly named: readonly FaultId[];
  readonly probability: number;
  /** The last ranking, for reading a failure. */
  readonly last: readonly { readonly fault: FaultId; readonly probability: number }[];
  readonly right: boolean;
  /** Named with P above 0.95, and wrong. */
  readonly confidentlyWrong: boolean;
  readonly tests: number;
  readonly minutes: number;
  /** What the minutes went to. */
  readonly spent: ReadonlyMap<Spending, number>;
  /** Minutes until the truth led and was not left again; all of them where it was not found. */
  readonly searching: number;
  readonly asked: readonly string[];
  /** For calibration: the probability of each step's leader, and whether it was the truth. */
  readonly claims: readonly (readonly [number, boolean])[];
  /** Milliseconds of each step. */
  readonly steps: readonly number[];
}

const MOST_TESTS = 40;

function say(session: DiagnoseSession, message: object): StatusLine {
  const answer = session.hear(JSON.stringify(message));
  if ('error' in answer) throw new Error(answer.error.message);
  return answer;
}

/** What a misread gauge or thermometer is refused with. */
const MISREAD: ReadonlySet<string> = new Set(['saturation-out-of-range', 'bad-reading']);

/** A reading is given, and taken again where it is refused: a misread gauge may lie outside what saturation covers. */
function give(session: DiagnoseSession, take: () => Answer): { reading: Answer; status: StatusLine } {
  for (;;) {
    const reading = take();
    const status = session.hear(JSON.stringify({ reading }));
    if (!('error' in status)) return { reading, status };
    if (!MISREAD.has(status.error.code)) throw new Error(status.error.message);
  }
}

/** The diagnosis at work on a case, through the lines of the tool, until it names a fault; then the next fault. */
export function runDiagnosis(diagnosis: Diagnosis, kase: Case, misread: number): Outcome {
  const session = new DiagnoseSession(diagnosis);
  const clock = new WorkClock();
  let instrument = new Instrument(kase.unit, kase.dice, misread);
  let left = [...kase.faults];
  const named: FaultId[] = [];
  const asked: string[] = [];
  const claims: [number, boolean][] = [];
  const steps: number[] = [];
  let status = session.status();
  let probability = 0;
  let sure = true;
  let searching = 0;
  while (clock.tests < MOST_TESTS) {
    const leader = status.suspects[0]!;
    claims.push([leader.probability, left.includes(leader.fault)]);
    if (!left.includes(leader.fault)) searching = Number.NaN;
    else if (Number.isNaN(searching)) searching = clock.minutes;
    if (status.done || !status.next) {
      named.push(leader.fault);
      probability = leader.probability;
      sure &&= leader.probability > 0.95;
      if (!left.includes(leader.fault)) break;
      left = left.filter((f) => f !== leader.fault);
      if (left.length === 0) break;
      instrument = new Instrument(kase.rebuild(left), kase.dice, misread);
      status = say(session, { repaired: leader.fault });
      continue;
    }
    const { next } = status;
    let before = 0;
    const given = give(session, () => {
      clock.count(next as Job);
      const reading = instrument.answer(next);
      before = performance.now();
      return reading;
    });
    steps.push(performance.now() - before);
    asked.push(`${next.id}=${given.reading}`);
    status = given.status;
  }
  const right = left.length === 0;
  const { tests, minutes } = clock;
  const confidentlyWrong = !right && named.length > 0 && sure;
  const last = status.suspects.slice(0, 4);
  return {
    faults: kase.faults,
    named,
    probability,
    last,
    right,
    confidentlyWrong,
    tests,
    minutes,
    spent: clock.spent,
    searching: Number.isNaN(searching) ? minutes : searching,
    asked,
    claims,
    steps,
  };
}

/**
 * A chart at work on the same case, begun anew after each right repair until nothing is left. `jobs` are the tests of
 * the tool's own list.
 */
export function runChart(
  which: 'chart' | 'order',
  kase: Case,
  plate: Plate,
  jobs: ReadonlyMap<TestId, Job>,
  misread: number,
) {
  const clock = new WorkClock();
  let instrument = new Instrument(kase.unit, kase.dice, misread);
  let left = [...kase.faults];
  const known = new Map<TestId, Answer>();
  const measure = (test: TestId, again?: true): Answer | undefined => {
    const job = jobs.get(test);
    if (!job) return undefined;
    if (known.has(test) && !again) return known.get(test);
    clock.count(job);
    const answer = instrument.answer(job);
    known.set(test, answer);
    return answer;
  };
  while (left.length > 0) {
    const named = which === 'chart' ? followChart(measure, plate) : followOrder(measure, plate);
    if (!left.includes(named)) break;
    left = left.filter((fault) => fault !== named);
    instrument = new Instrument(kase.rebuild(left), kase.dice, misread);
    known.clear();
  }
  return { right: left.length === 0, tests: clock.tests, minutes: clock.minutes };
}
