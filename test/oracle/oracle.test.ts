import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tries } from '../how-much.ts';
import { type Disagreement, heldAgainst, keyOf, shortest } from './held-against.ts';
import { KNOWN } from './known.ts';
import { history } from './walks.ts';

const STEPS = tries(2_000, 100_000);
const LENGTH = 40;
/** One seed for all runs while the table of what is known is not empty: other seeds may meet rarer kinds. */
const SEED = Number(process.env['READBACK_WALKS'] ?? 20_260_615);
/** A walk costs a millisecond or two a step; the long run's are slow together. */
const LONGEST_MS = 1_800_000;

describe('the machine held against the oracle', () => {
  it.each(KNOWN.map((row) => [keyOf(row), row] as const))('is known to disagree: %s', async (key, { lines }) => {
    expect((await heldAgainst(lines)).map(keyOf), 'mended: take the row out of the table').toContain(key);
  });

  it('disagrees in no other way on any walk', { timeout: LONGEST_MS }, async () => {
    const known = new Set(KNOWN.map(keyOf));
    const others = new Map<string, Disagreement>();
    let steps = 0;
    const walks = fc.sample(history(LENGTH), { numRuns: Math.ceil(STEPS / LENGTH) + 1, seed: SEED });
    for (const lines of walks) {
      steps += lines.length;
      for (const found of await heldAgainst(lines)) {
        if (!known.has(keyOf(found)) && !others.has(keyOf(found))) others.set(keyOf(found), found);
      }
    }
    const shown: string[] = [];
    for (const found of others.values()) {
      const { lines, said } = await shortest(found);
      shown.push(`${keyOf(found)}\n  ${lines.join('\n  ')}\n  the machine: ${said}`);
    }
    expect(shown.join('\n'), `seed ${SEED}`).toBe('');
    expect(steps).toBeGreaterThanOrEqual(STEPS);
  });
});
