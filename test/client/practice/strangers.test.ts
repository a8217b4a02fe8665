import { describe, expect, it } from 'vitest';
import { type Counts, lookBack } from '../../../client/practice/debrief.ts';
import { drawExercise, FAMILIES } from '../../../client/practice/exercise-plan.ts';
import { SimulatedUnit } from '../../../client/practice/simulated-unit.ts';
import { FULL_LEG_VOLTS } from '../../../client/visit/rules/proof-plan.ts';
import { LONG, tries } from '../../how-much.ts';
import { practiseAs, STRANGERS, type Stranger, WAYS } from './strangers.ts';

/** Who it was, by counts alone: what marks each of them as a trainer would say it. */
function whoWas(counts: Counts): Stranger {
  if (counts.probesElsewhere > 0) return 'swapper';
  if (counts.unfounded > 0) return 'guesser';
  if (counts.leftOpen > 0) return 'hurrier';
  if (counts.skippedProofs > 0) return 'careless';
  return counts.untested > 0 ? 'quitter' : 'careful';
}

/** Units whose leg one is live: these lines read no other, and without a live leg no ground is proven and no proof ends. */
function fed(count: number): readonly { readonly name: string; readonly way: number }[] {
  const found = [];
  for (let seed = 1; found.length < count; seed += 1) {
    const plan = { family: FAMILIES[seed % 4]!, seed: 500 + 7 * seed };
    const isFed = new SimulatedUnit(drawExercise(plan).kase).voltsBetween(['L1', 'ground']) >= FULL_LEG_VOLTS;
    if (isFed) found.push({ name: `${plan.family}-${plan.seed}`, way: seed % WAYS });
  }
  return found;
}

describe('six strangers', () => {
  it(
    'are told apart by their counts, and no two of them have the same',
    async () => {
      const wrong: string[] = [];
      for (const { name, way } of fed(tries(2, 12))) {
        const seen = new Set<string>();
        for (const stranger of STRANGERS) {
          const p = await practiseAs(stranger, way, name);
          const { counts } = lookBack(p.exercise);
          const { minutes: _minutes, ...acts } = counts;
          seen.add(JSON.stringify(acts));
          if (whoWas(counts) !== stranger) wrong.push(`${name} ${way} ${stranger}: ${JSON.stringify(counts)}`);
        }
        expect(seen.size, name).toBe(STRANGERS.length);
      }
      expect(wrong).toEqual([]);
    },
    LONG ? 3_600_000 : 300_000,
  );
});
