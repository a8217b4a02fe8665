import type { AskedTest } from '../../client/practice/plant/answer-test.ts';
import { Dice } from '../../client/practice/plant/dice.ts';
import { type ForeignCase, unitOf } from '../../client/practice/plant/hidden-case.ts';
import { type Job, type Spending, WorkClock } from '../simulator/work-clock.ts';
import { type Conduct, ForeignTechnician } from './foreign-technician.ts';

/** One talk in lines of JSON: what is said to it is answered. Whatever speaks the protocol can stand behind it. */
export interface Talk {
  /** What it says before anything was said to it. */
  readonly first: string;
  readonly hear: (line: string) => string;
}

/** What the lines say, as far as an outsider reads them. */
interface Said {
  readonly next?: (AskedTest & { readonly id: string }) | null;
  readonly suspects?: readonly { readonly fault: string; readonly probability: number }[];
  readonly done?: boolean;
  readonly error?: { readonly code: string; readonly message: string };
}

export interface ForeignOutcome {
  readonly causes: readonly string[];
  readonly severities: readonly number[];
  readonly named: readonly string[];
  /** Of the last one named. */
  readonly probability: number;
  readonly right: boolean;
  readonly tests: number;
  readonly skips: number;
  readonly minutes: number;
  /** What the minutes went to. */
  readonly spent: ReadonlyMap<Spending, number>;
  /** Minutes until the truth led and was not left again; all of them where it was not found. */
  readonly searching: number;
  readonly asked: readonly string[];
  /** Each step's leader: its probability, and whether it was the truth. */
  readonly claims: readonly (readonly [number, boolean])[];
  readonly refused: readonly string[];
  /** Milliseconds of each answer. */
  readonly steps: readonly number[];
}

const MOST_LINES = 60;

/** Lets a talk find what is hidden in a case, one fault after the other. */
export function interview(talk: Talk, kase: ForeignCase, conduct: Conduct): ForeignOutcome {
  const clock = new WorkClock();
  const dice = new Dice(kase.seed + 29);
  let left = [...kase.hidden];
  let technician = new ForeignTechnician(unitOf(kase.build, kase.seed, left), conduct, dice);
  let said = JSON.parse(talk.first) as Said;
  const steps: number[] = [];
  const tell = (line: object): Said => {
    const before = performance.now();
    const answer = JSON.parse(talk.hear(JSON.stringify(line))) as Said;
    steps.push(performance.now() - before);
    return answer;
  };
  const named: string[] = [];
  const asked: string[] = [];
  const refused: string[] = [];
  const claims: [number, boolean][] = [];
  let skips = 0;
  let searching = 0;
  let probability = 0;
  for (let line = 0; line < MOST_LINES; line += 1) {
    const leader = said.suspects![0]!;
    const true_ = left.filter((h) => (h.cause.called as readonly string[]).includes(leader.fault));
    claims.push([leader.probability, true_.length > 0]);
    if (true_.length === 0) searching = Number.NaN;
    else if (Number.isNaN(searching)) searching = clock.minutes;
    if (said.done || !said.next) {
      named.push(leader.fault);
      probability = leader.probability;
      left = left.filter((h) => h !== true_[0]);
      if (true_.length === 0 || left.length === 0 || leader.fault === 'something-else') break;
      technician = new ForeignTechnician(unitOf(kase.build, kase.seed, left), conduct, dice);
      said = tell({ repaired: leader.fault });
      continue;
    }
    const { next } = said;
    const does = technician.does(next);
    if ('skip' in does) skips += 1;
    else clock.count(next as unknown as Job);
    const answer = tell(does);
    asked.push(`${next.id}=${'skip' in does ? 'skip' : does.reading}`);
    if (!answer.error) {
      said = answer;
      continue;
    }
    // What is refused is taken again; refused twice, it is passed over.
    refused.push(`${next.id}=${JSON.stringify(does)}: ${answer.error.code}`);
    const again = tell(technician.does(next));
    said = again.error ? tell({ skip: true }) : again;
  }
  return {
    causes: kase.hidden.map((h) => h.cause.id),
    severities: kase.hidden.map((h) => h.severity),
    named,
    probability,
    right: left.length === 0,
    tests: clock.tests,
    skips,
    minutes: clock.minutes,
    spent: clock.spent,
    searching: Number.isNaN(searching) ? clock.minutes : searching,
    asked,
    claims,
    refused,
    steps,
  };
}
