import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { TEST_MODELS } from '../tests/test-models.ts';
import { alive, informationOf } from './information.ts';
import { type Stance, stanceAfter, testCost } from './test-cost.ts';

/** A test tells something from this much on, nats. */
const LEAST_INFORMATION = 1e-3;

export interface Ranked {
  readonly test: TestId;
  /** Information for each minute, nats. */
  readonly worth: number;
}

/** Readings that must come first, in order, then the test itself. */
function chain(id: TestId, answered: ReadonlySet<TestId>): TestId[] {
  const { measure } = TEST_MODELS[id];
  const before = measure.kind === 'residual' ? measure.requires.filter((r) => !answered.has(r)) : [];
  return [...before.flatMap((r) => chain(r, answered)), id];
}

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

/**
 * Tests that may follow, best first: information for each minute, danger counted as minutes. A test that needs other
 * readings first stands behind them, and lends them its worth.
 */
export function chooseNext(
  table: FaultTable,
  posterior: Posterior,
  stance: Stance,
  answered: ReadonlySet<TestId>,
  parked: ReadonlySet<TestId>,
): Ranked[] {
  const live = alive(table, posterior);
  const worth = new Map<TestId, number>();
  for (let t = 0; t < table.tests.length; t += 1) {
    const id = table.tests[t]!;
    const column = table.columns[t];
    if (!column || answered.has(id) || TEST_MODELS[id].onlyVolunteered) continue;
    const steps = chain(id, answered);
    if (steps.some((step) => parked.has(step) || !table.tests.includes(step))) continue;
    const information = informationOf(table, posterior, live, column);
    if (information < LEAST_INFORMATION) continue;
    const first = steps[0]!;
    worth.set(first, Math.max(worth.get(first) ?? 0, information / chainCost(stance, steps)));
  }
  return [...worth].map(([test, value]) => ({ test, worth: value })).sort((a, b) => b.worth - a.worth);
}
