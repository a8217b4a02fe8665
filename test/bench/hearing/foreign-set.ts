import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { ORDERS } from './orders-set.ts';
import { chosen, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { judged } from './spoken-set.ts';
import { margins, shareFigure, type Tried, triedFrom } from './tried.ts';

const NOTHING: Expectation = { readings: [] };

/** A number of volts is waited for. */
const NUMBER: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };

/**
 * Recordings of people that hold no sentence of the grammar they are held against: each one taken is one too many, and
 * each one asked about is a needless question.
 */
export async function foreign(plan: Plan, folder: string): Promise<Figure[]> {
  return [
    ...(await held(plan, folder, ['other-speech', 'commands'], 'the visit', NOTHING)),
    ...(await held(plan, folder, ['other-speech'], 'the orders')),
  ];
}

/** The same against a visit that waits for a number, which asks about what nearly fits. */
export const waited = (plan: Plan, folder: string): Promise<Figure[]> =>
  held(plan, folder, ['other-speech', 'commands'], 'the visit while a number is expected', NUMBER);

/** @param expectation of a visit; none: against the orders */
async function held(
  plan: Plan,
  folder: string,
  parts: readonly string[],
  grammar: string,
  expectation?: Expectation,
): Promise<Figure[]> {
  const hearing = await loadHearing({ ...plan.settings, ...(expectation === undefined && { grammar: ORDERS }) });
  if (expectation !== undefined) hearing.expect(expectation);
  const figures: Figure[] = [];
  for (const part of parts) {
    const name = `${part} against ${grammar}`;
    const files = chosen((await readdir(join(folder, part))).sort(), plan);
    const tried: Tried[] = [];
    let samples = 0;
    for (const file of files) {
      const sound = await readSound(join(folder, part, file));
      samples += sound.length;
      const heard = hear(hearing, sound);
      // No name of a file is what was said.
      const one = expectation === undefined ? triedFrom(file, heard, () => false) : judged(file, heard, expectation);
      tried.push(one);
      if (one.outcome !== 'rejected')
        plan.progress(`  ${one.outcome}: ${one.name} "${one.text}" ${one.margin.toFixed(1)}`);
      if (tried.length % 20 === 0) plan.progress(`${name}: ${tried.length} of ${files.length}`);
    }
    const hours = samples / 16_000 / 3_600;
    const taken = tried.filter(({ outcome }) => outcome === 'wrong' || outcome === 'right').length;
    const asked = tried.filter(({ outcome }) => outcome === 'asked').length;
    const against = `${asked} in ${(60 * hours).toFixed(1)} min of nothing but talk`;
    figures.push(
      shareFigure(`${name}: taken`, taken, tried.length, 'aim ≤ 1 %'),
      shareFigure(`${name}: asked`, asked, tried.length),
      { name: `${name}: needless questions an hour`, value: asked / hours, unit: '/h', against },
      ...margins(name, tried),
    );
  }
  hearing.close();
  return figures;
}
