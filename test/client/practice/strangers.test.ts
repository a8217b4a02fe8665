import { describe, expect, it } from 'vitest';
import { type Counts, lookBack } from '../../../client/practice/debrief.ts';
import { FAMILIES } from '../../../client/practice/exercise-plan.ts';
import { LONG, tries } from '../../how-much.ts';
import { HONEST, type Honest, practiseAs, practiseLines, STRANGERS, type Stranger, WAYS } from './strangers.ts';

/** Who it was, by counts alone: what marks each of them as a trainer would say it. */
function whoWas(counts: Counts): Stranger {
  if (counts.probesElsewhere > 0) return 'swapper';
  if (counts.unfounded > 0) return 'guesser';
  if (counts.leftOpen > 0) return 'hurrier';
  if (counts.skippedProofs > 0) return 'careless';
  return counts.untested > 0 ? 'quitter' : 'careful';
}

/** Units whatever of them is live; the first two have no live leg one. */
function someUnits(count: number): readonly { readonly name: string; readonly way: number }[] {
  const seeds = Array.from({ length: count }, (_, at) => 507 + 7 * at);
  const units = seeds.map((seed) => ({ name: `${FAMILIES[seed % 4]!}-${seed}`, way: seed % WAYS }));
  return [{ name: 'power-528', way: 0 }, { name: 'power-412', way: 1 }, ...units].slice(0, count);
}

describe('six strangers', () => {
  it(
    'are told apart by their counts, and no two of them have the same',
    async () => {
      const wrong: string[] = [];
      for (const { name, way } of someUnits(tries(3, 14))) {
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

describe('an honest trainee of another style', () => {
  it.each(Object.keys(HONEST) as Honest[])(
    'who %s is accused of nothing',
    async (honest) => {
      for (const { name } of someUnits(tries(3, 14))) {
        const { exercise } = await practiseLines(HONEST[honest], name);
        const { counts } = lookBack(exercise);
        expect(counts, name).toMatchObject({
          ...{ harmful: 0, skippedProofs: 0, probesElsewhere: 0, leftOpen: 0 },
          ...{ unfounded: 0, needlessParts: 0, notProven: 0, untested: 0, nearMisses: 0 },
        });
      }
    },
    600_000,
  );
});
