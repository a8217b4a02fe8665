import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise, mixed } from './noise.ts';
import { chosen, levelName, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { judged } from './spoken-set.ts';
import { outcomes, shareFigure, type Tried, times } from './tried.ts';
import { wordError } from './word-error.ts';

/** Any folder of sound (WAV or FLAC, 16 or 8 kHz) whose words stand beside each recording: `NAME.wav`, `NAME.txt`. */
export async function soundFolder(plan: Plan, folder: string): Promise<Figure[]> {
  const files = (await readdir(folder)).filter((file) => /\.(wav|flac)$/.test(file)).sort();
  const figures: Figure[] = [];
  for (const level of plan.levels ?? [undefined]) {
    const hearing = await loadHearing(plan.settings);
    const tried: Tried[] = [];
    for (const file of chosen(files, plan)) {
      const words = (await readFile(join(folder, file.replace(/\.\w+$/, '.txt')), 'utf8')).trim();
      const speech = await readSound(join(folder, file));
      const noise = (): Float32Array => condenserNoise(speech.length / 16_000, tried.length + 1);
      const sound = level === undefined ? speech : mixed(speech, noise(), level);
      tried.push(judged(words, hear(hearing, sound, speech), { readings: [] }));
      if (tried.length % 20 === 0) plan.progress(`folder ${levelName(level)}: ${tried.length} of ${files.length}`);
    }
    hearing.close();
    const name = `folder ${levelName(level)}`;
    const right = tried.filter((one) => one.wordsRight).length;
    const pairs = tried.map(({ name: said, text }) => ({ said, heard: text }));
    figures.push(shareFigure(`${name}: meaning right`, right, tried.length), ...outcomes(name, tried));
    figures.push(...times(name, tried), ...wordError(name, pairs));
  }
  return figures;
}
