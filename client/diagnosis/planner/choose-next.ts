import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { mayBeReadAgain, type Standing, type Taken } from '../posterior/take-readings.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { type Alive, alive, informationOf } from './information.ts';
import { type Stance, stanceAfter, testCost } from './test-cost.ts';

/** A test tells something from this much on: nats, and share of what is not known. */
const LEAST_INFORMATION = 4e-3;
const LEAST_SHARE = 0.025;
/** A reading that is more probably a stray one than this is worth taking again. */
const DOUBTFUL = 0.25;

export interface Ranked {
  readonly test: TestId;
  /** Information for each minute, nats. */
  readonly worth: number;
  /** Minutes from here, danger counted in. */
  readonly cost: number;
}

/** Readings that must come first or had better, in order, then the test itself; undefined when one cannot be had. */
function chain(id: TestId, answered: ReadonlySet<TestId>, reachable: (id: TestId) => boolean): TestId[] | undefined {
  if (!reachable(id)) return undefined;
  const { measure } = TEST_MODELS[id];
  if (measure.kind !== 'residual') return [id];
  const missing = (ids: readonly TestId[]) => ids.filter((r) => !answered.has(r));
  const needed = missing(measure.requires).map((r) => chain(r, answered, reachable));
  if (needed.includes(undefined)) return undefined;
  const helpful = missing(measure.sharpenedBy).filter(reachable);
  return [...new Set([...needed.flatMap((steps) => steps!), ...helpful, id])];
}

/** A doubtful reading, or a condition that its figure rests on, unless that was read twice already. */
function takeAgain({ test }: Taken, standing: Standing): TestId[] {
  const { measure } = TEST_MODELS[test];
  const conditions = measure.kind === 'residual' ? measure.requires : [];
  return [test, ...conditions].filter((id) => standing.taken.has(id) && mayBeReadAgain(standing, id));
}

/** What taking a doubtful reading again would settle, nats. */
const doubt = (chance: number) => -chance * Math.log(chance) - (1 - chance) * Math.log(Math.max(1 - chance, 1e-12));

/** Minutes of doing several tests one after the other. */
function chainCost(stance: Stance, tests: readonly TestId[]): number {
  let at = stance;
  let minutes = 0;
  for (const id of tests) {
    minutes += testCost(at, id);
    at = stanceAfter(at, id);
  }
  return minutes;
}

/** A test that may follow, with what it tells and the readings that come before it. */
interface Candidate {
  readonly information: number;
  readonly steps: readonly TestId[];
}

/** Each further test of one session tells about half of what it would alone: they overlap. */
const OVERLAP = 0.5;

/** Tests that share a place, a state of power and call, and the gauges. */
function sessionOf({ steps }: Candidate): string {
  const { place, needs, function: fn } = TEST_MODELS[steps.at(-1)!];
  return `${place} ${needs.power} ${needs.call} ${fn === 'pressure' || needsGauges(steps)}`;
}

const needsGauges = (steps: readonly TestId[]) => {
  const { measure } = TEST_MODELS[steps.at(-1)!];
  return measure.kind === 'residual' && measure.requires.some((r) => TEST_MODELS[r].function === 'pressure');
};

/**
 * The best information for each minute of a session begun here: its tests by their worth once there, one after the
 * other, as long as one more raises the average. Going somewhere is worth what can be done there.
 */
function worthOfSession(stance: Stance, session: readonly Candidate[]): Ranked {
  const entry = stanceAfter(stance, session[0]!.steps.at(-1)!);
  const there = ({ information, steps }: Candidate) => information / chainCost(entry, steps);
  const order = [...session].sort((a, b) => there(b) - there(a));
  const done = new Set<TestId>();
  let at = stance;
  let minutes = 0;
  let information = 0;
  let worth = 0;
  order.forEach((candidate, i) => {
    const steps = candidate.steps.filter((step) => !done.has(step));
    minutes += chainCost(at, steps);
    information += candidate.information * OVERLAP ** i;
    worth = Math.max(worth, information / minutes);
    for (const step of steps) {
      done.add(step);
      at = stanceAfter(at, step);
    }
  });
  const test = order[0]!.steps[0]!;
  return { test, worth, cost: testCost(stance, test) };
}

function candidates(
  table: FaultTable,
  live: Alive,
  answered: ReadonlySet<TestId>,
  reachable: (id: TestId) => boolean,
): Candidate[] {
  const least = Math.max(LEAST_INFORMATION, LEAST_SHARE * live.entropy);
  const found: Candidate[] = [];
  for (let t = 0; t < table.tests.length; t += 1) {
    const id = table.tests[t]!;
    const entry = table.columns[t];
    if (!entry || answered.has(id) || TEST_MODELS[id].onlyVolunteered) continue;
    const steps = chain(id, answered, reachable);
    if (!steps) continue;
    const information = informationOf(table, live, entry, least);
    if (information >= least) found.push({ information, steps });
  }
  const others = found.filter(({ steps }) => !TEST_MODELS[steps.at(-1)!].lastResort);
  return others.length > 0 ? others : found;
}

/** A test that is worth less than this share of the best is not named: whoever stands before a dead unit would do it. */
const WORTH_NAMING = 0.2;

/** A test costs this share of its minutes at the least, however much of the proof it saves. */
const LEAST_COST = 0.5;

/**
 * Tests that may follow, best first: information for each minute, danger counted as minutes, what a test saves of the
 * proof (`toProve`, minutes that it takes from a stance once a test is done) taken off. A test that needs other
 * readings first stands behind them, and lends them its worth. A doubtful reading may be asked for again.
 */
export function chooseNext(
  table: FaultTable,
  posterior: Posterior,
  stance: Stance,
  standing: Standing,
  parked: ReadonlySet<TestId>,
  toProve: (stance: Stance, done?: TestId) => number,
): Ranked[] {
  const live = alive(table, posterior);
  const known = new Set(table.tests);
  const reachable = (id: TestId) => !parked.has(id) && known.has(id);
  const ranked = new Map<TestId, Ranked>();
  const offer = (item: Ranked) => {
    if (item.worth > (ranked.get(item.test)?.worth ?? 0)) ranked.set(item.test, item);
  };
  const proofNow = toProve(stance);
  const sessions = new Map<string, Candidate[]>();
  for (const candidate of candidates(table, live, new Set(standing.taken.keys()), reachable)) {
    const { information, steps } = candidate;
    const test = steps[0]!;
    const cost = chainCost(stance, steps);
    const after = steps.reduce(stanceAfter, stance);
    const saved = proofNow - toProve(after, steps.at(-1));
    offer({ test, worth: information / Math.max(LEAST_COST * cost, cost - saved), cost: testCost(stance, test) });
    const session = sessionOf(candidate);
    sessions.set(session, [...(sessions.get(session) ?? []), candidate]);
  }
  for (const session of sessions.values()) offer(worthOfSession(stance, session));
  for (const [reading, chance] of posterior.stray) {
    if (chance < DOUBTFUL) continue;
    for (const test of takeAgain(reading, standing)) {
      const cost = testCost(stance, test);
      if (reachable(test)) offer({ test, worth: (0.7 * doubt(chance)) / cost, cost });
    }
  }
  const order = [...ranked.values()].sort((a, b) => b.worth - a.worth);
  // A reading that is taken again is no measure: whoever was asked before may not be asked for it.
  const best = order.find(({ test }) => !standing.taken.has(test))?.worth ?? 0;
  return order.filter(({ worth }) => worth >= WORTH_NAMING * best);
}
