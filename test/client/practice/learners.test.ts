import { describe, expect, it } from 'vitest';
import { lookBack, type RunLookedBack } from '../../../client/practice/debrief.ts';
import { drawExercise, FAMILIES } from '../../../client/practice/exercise-plan.ts';
import { runPlanner } from '../../../client/practice/planner-run.ts';
import { SimulatedUnit } from '../../../client/practice/simulated-unit.ts';
import { DEAD_BELOW_VOLTS } from '../../../client/visit/rules/dead-threshold.ts';
import { FULL_LEG_VOLTS } from '../../../client/visit/rules/proof-plan.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { LONG, tries } from '../../how-much.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';
import { LEARNERS, learn, tellApart } from './learners.ts';

/**
 * Exercises that the planner itself mends, where there is a repair that somebody could leave unproven: at units that are
 * fed by a full leg, or by none at all. What a sick supply leaves on the legs proves no ground, and nobody gets to fit a
 * part there.
 */
async function mendable(count: number) {
  const found = [];
  // The first is at a unit whose breaker has tripped: no leg of it is live.
  for (const seed of seedsFrom(410)) {
    if (found.length === count) break;
    const drawn = drawExercise({ family: FAMILIES[seed % 4]!, seed });
    const edges = { diagnosis: diagnosisOf(drawn.profile), understand, software: 'test' };
    const planner = lookBack((await runPlanner(drawn, edges)).exercise);
    const legs = (['L1', 'L2'] as const).map((leg) => new SimulatedUnit(drawn.kase).voltsBetween([leg, 'ground']));
    const isSick = Math.max(...legs) >= DEAD_BELOW_VOLTS && Math.max(...legs) < FULL_LEG_VOLTS;
    if (planner.mended && !isSick) found.push({ drawn, edges, planner });
  }
  return found;
}

function* seedsFrom(first: number) {
  yield 528;
  for (let seed = first; ; seed += 1) yield seed;
}

const TOLD_BY = [
  ...(['tests', 'redundant', 'harmful', 'nearMisses', 'skippedProofs', 'probesElsewhere', 'leftOpen'] as const),
  ...(['unfounded', 'needlessParts', 'notProven', 'minutes'] as const),
];

/** The least and the most of each count, a line a learner, for whoever reads the run. */
function printTable(backs: ReadonlyMap<string, readonly RunLookedBack[]>): void {
  const rows = [...backs].map(([learner, runs]) => {
    const span = (name: (typeof TOLD_BY)[number]) => {
      const values = runs.map(({ counts }) => Math.round(counts[name]));
      const [least, most] = [Math.min(...values), Math.max(...values)];
      return least === most ? String(least) : `${least}-${most}`;
    };
    return [learner, ...TOLD_BY.map(span), ...[...new Set(runs.map(({ ending }) => ending))]];
  });
  const lines = [['', ...TOLD_BY, 'ended'], ...rows].map((row) => row.map((cell) => cell.padEnd(16)).join(''));
  console.log(lines.join('\n'));
}

describe('the debrief', () => {
  it(
    'tells six learners apart by its counts alone',
    async () => {
      const wrong: string[] = [];
      const backs = new Map<string, RunLookedBack[]>();
      for (const { drawn, edges, planner } of await mendable(tries(3, 14))) {
        for (const learner of LEARNERS) {
          const back = lookBack((await learn(learner, drawn, edges)).exercise);
          backs.set(learner, [...(backs.get(learner) ?? []), back]);
          const told = tellApart(back);
          if (told !== learner)
            wrong.push(
              `${drawn.plan.family}-${drawn.plan.seed} ${learner}: ${told} ${JSON.stringify(back.counts)} ${back.ending}`,
            );
          // Who does as the planner does needs as long and does no harm.
          if (learner === 'right') expect(back.counts).toEqual(planner.counts);
        }
      }
      printTable(backs);
      expect(wrong).toEqual([]);
    },
    LONG ? 3_600_000 : 600_000,
  );
});
