import { describe, expect, it } from 'vitest';
import { type Counts, lookBack } from '../../../client/practice/debrief.ts';
import { FAMILIES } from '../../../client/practice/exercise-plan.ts';
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

describe('six strangers', () => {
  it(
    'are told apart by their counts, and no two of them have the same',
    async () => {
      const wrong: string[] = [];
      for (let seed = 1; seed <= tries(2, 12); seed += 1) {
        const name = `${FAMILIES[seed % 4]}-${500 + 7 * seed}`;
        const way = seed % WAYS;
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
