import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { mixed } from './noise.ts';
import { levelName, type Plan } from './plan.ts';
import { projectFolder } from './project-folder.ts';
import { readSound } from './read-sound.ts';
import { slotsOf } from './slots.ts';
import { groupedByVoice } from './speakers.ts';
import { margins, outcomes, shareFigure, type Tried, times, triedFrom } from './tried.ts';

export const ORDERS = readFileSync(new URL('coffee-orders.jsgf', projectFolder('fixtures/grammars')), 'utf8');

type Labels = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** Published acceptance in the benchmark's kitchen noise: its own engine, and the range of four cloud services. */
const PUBLISHED: Readonly<Record<number, string>> = {
  24: 'published 99, cloud 83–96',
  18: 'published 99, cloud 81–95',
  12: 'published 98, cloud 78–90',
  6: 'published 96, cloud 70–86',
};

/** More than 50 people spoke the public set, of which a third is measured: our guess of how many of them are in it. */
const SPEAKERS = 40;

/**
 * The part of the recordings that the plan takes: halves are parted by the voice that a recording seems to be of, so that
 * nobody is in both, as far as that can be told.
 */
async function chosen(folder: string, labels: Labels, { half, every, from, progress }: Plan) {
  const all = Object.entries(labels);
  const own = half === 'all' ? all : await ofHalf(folder, all, half === 'tune' ? 0 : 1);
  progress(`orders: ${own.length} of ${all.length} recordings are of this half of the voices`);
  return own.filter((_, index) => index % every === from);
}

async function ofHalf<Entry extends readonly [file: string, ...unknown[]]>(
  folder: string,
  all: readonly Entry[],
  rest: number,
): Promise<readonly Entry[]> {
  const sounds = await Promise.all(all.map(([file]) => readSound(join(folder, 'commands', file))));
  const groups = groupedByVoice(sounds, SPEAKERS);
  const sizes = Array.from({ length: SPEAKERS }, (_, group) => groups.filter((one) => one === group).length);
  // By size in turn, so that the halves are of one size.
  const bySize = [...sizes.keys()].sort((a, b) => sizes[b]! - sizes[a]! || a - b);
  return all.filter((_, index) => bySize.indexOf(groups[index]!) % 2 === rest);
}

/** Orders of people (`labels.json` beside `commands/`), right when every labelled slot is; noise by the benchmark's rule. */
export async function orders(plan: Plan, folder: string): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const level of plan.levels ?? [undefined, 24, 18, 12, 6]) {
    const name = `orders ${levelName(level)}`;
    const tried = await tryOrders(plan, folder, level);
    const right = tried.filter((one) => one.wordsRight);
    figures.push(
      shareFigure(`${name}: every slot right`, right.length, tried.length, PUBLISHED[level ?? 0] ?? ''),
      ...outcomes(name, tried),
      ...times(name, tried),
      ...margins(`${name}, right`, right),
    );
    for (const one of tried)
      if (!one.wordsRight) plan.progress(`  ${name} ${one.name} "${one.text}" ${one.margin.toFixed(1)}`);
  }
  return figures;
}

async function tryOrders(plan: Plan, folder: string, level: number | undefined): Promise<Tried[]> {
  const labels = JSON.parse(await readFile(join(folder, 'labels.json'), 'utf8')) as Labels;
  const noise = await readSound(join(folder, 'kitchen-noise.flac'));
  const hearing = await loadHearing({ ...plan.settings, grammar: ORDERS });
  const grammar = parseJsgf(ORDERS);
  const part = await chosen(folder, labels, plan);
  const tried: Tried[] = [];
  let noiseAt = 0;
  for (const [file, slots] of part) {
    const speech = await readSound(join(folder, 'commands', file));
    const sound = level === undefined ? speech : mixed(speech, noise, level, noiseAt);
    noiseAt += speech.length;
    const named = (text: string): string =>
      JSON.stringify(Object.keys(slots).map((slot) => slotsOf(grammar, text)?.[slot]));
    // Another way to say the same order is no other order.
    const heard = hear(hearing, sound, speech).map((one) => ({
      ...one,
      alternatives: one.alternatives.filter((text) => named(text) !== named(one.text)),
    }));
    const wanted = JSON.stringify(Object.values(slots));
    tried.push(triedFrom(file, heard, (text) => named(text) === wanted));
    if (tried.length % 20 === 0) plan.progress(`orders ${levelName(level)}: ${tried.length} of ${part.length}`);
  }
  hearing.close();
  return tried;
}
