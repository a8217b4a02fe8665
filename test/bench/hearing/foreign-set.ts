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

/** A number of volts is waited for. */
const NUMBER: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };

/** Recordings of people that hold no sentence of the grammar they are held against: each one accepted is one too many. */
export async function foreign(plan: Plan, folder: string): Promise<Figure[]> {
  const visit = await loadHearing(plan.settings);
  const waiting = await loadHearing(plan.settings);
  waiting.expect(NUMBER);
  const coffee = await loadHearing({ ...plan.settings, grammar: ORDERS });
  const figures: Figure[] = [];
  for (const [part, grammar, hearing] of [
    ['other-speech', 'the visit', visit],
    ['other-speech', 'the visit while a number is expected', waiting],
    ['commands', 'the visit', visit],
    ['commands', 'the visit while a number is expected', waiting],
    ['other-speech', 'the orders', coffee],
  ] as const) {
    const name = `${part} against ${grammar}`;
    const files = chosen((await readdir(join(folder, part))).sort(), plan);
    const tried: Tried[] = [];
    for (const file of files) {
      const heard = hear(hearing, await readSound(join(folder, part, file)));
      // A visit asks what is doubtful: no name of a file is what was said.
      tried.push(hearing === waiting ? judged(file, heard, NUMBER) : triedFrom(file, heard, () => false));
      if (tried.length % 20 === 0) plan.progress(`${name}: ${tried.length} of ${files.length}`);
    }
    const accepted = tried.filter(({ outcome }) => outcome !== 'rejected');
    const asked = tried.filter(({ outcome }) => outcome === 'asked');
    figures.push(
      shareFigure(`${name}: accepted`, accepted.length, tried.length, 'aim ≤ 1 %'),
      shareFigure(`${name}: of it asked`, asked.length, tried.length),
      ...margins(name, tried),
    );
    for (const one of accepted) plan.progress(`  ${one.name} "${one.text}" ${one.margin.toFixed(1)}`);
  }
  visit.close();
  waiting.close();
  coffee.close();
  return figures;
}
