import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { inHalf, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { outcomes, shareFigure, type Tried, times, triedFrom } from './tried.ts';
import { wordError } from './word-error.ts';

/** A single digit. */
export const DIGITS =
  '#JSGF V1.0;\ngrammar digits;\npublic <d> = zero | oh | one | two | three | four | five | six | seven | eight | nine;\n';
export const DIGIT_NAMES = 'zero one two three four five six seven eight nine'.split(' ');

/** Single digits of people, `SPEAKER/DIGIT_SPEAKER_TAKE.wav`, in half a second of silence; parted by speaker. */
export async function digits(plan: Plan, folder: string): Promise<Figure[]> {
  const hearing = await loadHearing({ ...plan.settings, grammar: DIGITS });
  const figures: Figure[] = [];
  const all: Tried[] = [];
  const said: string[] = [];
  const speakers = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory());
  for (const speaker of inHalf(speakers.map(({ name }) => name).sort(), plan.half)) {
    const files = (await readdir(join(folder, speaker))).filter((file) => file.endsWith('.wav')).sort();
    const part = files.filter((_, index) => index % plan.every === plan.from);
    const tried: Tried[] = [];
    for (const file of part) {
      const sound = await readSound(join(folder, speaker, file));
      const padded = new Float32Array(sound.length + 16_000);
      padded.set(sound, 8_000);
      const wanted = DIGIT_NAMES[Number(file[0])]!;
      tried.push(triedFrom(file, hear(hearing, padded), (text) => (text === 'oh' ? 'zero' : text) === wanted));
      said.push(wanted);
      if (tried.length % 50 === 0) plan.progress(`digits of ${speaker}: ${tried.length} of ${part.length}`);
    }
    const right = tried.filter((one) => one.wordsRight).length;
    figures.push(shareFigure(`digits of ${speaker}: words right`, right, tried.length, 'aim ≥ 80 %'));
    all.push(...tried);
  }
  hearing.close();
  const right = all.filter((one) => one.wordsRight).length;
  figures.push(
    shareFigure('digits: words right', right, all.length, 'aim ≥ 80 %'),
    ...outcomes('digits', all),
    ...times('digits', all),
  );
  const pairs = all.map(({ text }, index) => ({ said: said[index]!, heard: text === 'oh' ? 'zero' : text }));
  return [...figures, ...wordError('digits', pairs)];
}
