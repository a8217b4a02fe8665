import { describe, expect, it } from 'vitest';
import { lookBack } from '../../../client/practice/debrief.ts';
import { drawExercise, FAMILIES } from '../../../client/practice/exercise-plan.ts';
import { runPlanner } from '../../../client/practice/planner-run.ts';
import { SimulatedUnit } from '../../../client/practice/simulated-unit.ts';
import { FULL_LEG_VOLTS } from '../../../client/visit/rules/proof-plan.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { LONG, tries } from '../../how-much.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';
import { LEARNERS, learn, tellApart } from './learners.ts';

/**
 * Exercises that the planner itself mends, where there is a repair that somebody could leave unproven, at units that are
 * fed: where no leg is live there is none to prove a ground with, and nobody gets to fit a part.
 */
async function mendable(count: number) {
  const found = [];
  for (let seed = 410; found.length < count; seed += 1) {
    const drawn = drawExercise({ family: FAMILIES[seed % 4]!, seed });
    const edges = { diagnosis: diagnosisOf(drawn.profile), understand, software: 'test' };
    const planner = lookBack((await runPlanner(drawn, edges)).exercise);
    const unit = new SimulatedUnit(drawn.kase);
    const isFed = Math.max(unit.voltsAt(['L1']), unit.voltsAt(['L2'])) >= FULL_LEG_VOLTS;
    if (planner.mended && isFed) found.push({ drawn, edges, planner });
  }
  return found;
}

describe('the debrief', () => {
  it(
    'tells six learners apart by its counts alone',
    async () => {
      const wrong: string[] = [];
      for (const { drawn, edges, planner } of await mendable(tries(3, 24))) {
        for (const learner of LEARNERS) {
          const back = lookBack((await learn(learner, drawn, edges)).exercise);
          const told = tellApart(back);
          if (told !== learner)
            wrong.push(
              `${drawn.plan.family}-${drawn.plan.seed} ${learner}: ${told} ${JSON.stringify(back.counts)} ${back.ending}`,
            );
          // Who does as the planner does needs as long and does no harm.
          if (learner === 'right') expect(back.counts).toEqual(planner.counts);
        }
      }
      expect(wrong).toEqual([]);
    },
    LONG ? 3_600_000 : 600_000,
  );
});
