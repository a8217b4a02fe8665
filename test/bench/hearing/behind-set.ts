import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { mixed } from './noise.ts';
import { inHalf, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { FOREIGN, sentencesOf } from './sentences.ts';
import { judged } from './spoken-set.ts';
import { outcomes, type Tried, times } from './tried.ts';
import { benchVoices } from './voices.ts';

/** Talk goes on before and behind the sentence for so long, in samples: two and four seconds. */
const BEFORE = 32_000;
const BEHIND = 64_000;

/** Every so many-th sentence: so many as can be heard in some minutes. */
const APART = 10;

/** Expected readings while others talk behind: people's recordings where they are given, else synthetic voices. */
export async function behind(plan: Plan): Promise<Figure[]> {
  const voices = inHalf(benchVoices(), plan.half);
  const talk = plan.people === undefined ? ofVoices() : await ofPeople(plan.people);
  const sentences = sentencesOf('reading').filter((_, index) => index % (APART * plan.every) === plan.from);
  const figures: Figure[] = [];
  for (const level of plan.levels ?? [undefined, 20, 10]) {
    const hearing = await loadHearing(plan.settings);
    const name = level === undefined ? 'nobody behind' : `others ${level} dB down`;
    const tried: Tried[] = [];
    for (const [index, words] of sentences.entries()) {
      const { meaning } = understand(words);
      if (meaning.kind !== 'reading') continue;
      const expectation = { readings: [{ quantity: meaning.reading.quantity, at: meaning.reading.at }] };
      const said = voices[index % voices.length]!.say(words);
      const clean = new Float32Array(BEFORE + said.length + BEHIND);
      clean.set(said, BEFORE);
      hearing.expect(expectation);
      const sound = level === undefined ? clean : mixed(clean, talk, level, index * 50_000);
      const one = judged(words, hear(hearing, sound, clean), expectation);
      if (one.outcome !== 'right') plan.progress(`  ${name} ${one.outcome}: "${words}" → "${one.text}"`);
      tried.push(one);
    }
    hearing.close();
    figures.push(...outcomes(name, tried), ...times(name, tried));
  }
  return figures;
}

async function ofPeople(folder: string): Promise<Float32Array> {
  const files = (await readdir(join(folder, 'commands'))).sort().filter((_, index) => index % 4 === 1);
  return together(await Promise.all(files.map((file) => readSound(join(folder, 'commands', file)))));
}

function ofVoices(): Float32Array {
  const voices = benchVoices();
  return together(FOREIGN.map((words, index) => voices[(5 * index) % voices.length]!.say(words)));
}

/** One after the other, each as loud as the next, without the silence around them. */
function together(sounds: readonly Float32Array[]): Float32Array {
  return Float32Array.from(
    sounds.flatMap((sound) => {
      const peak = sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
      const isLoud = (sample: number): boolean => Math.abs(sample) > peak / 20;
      return [...sound.subarray(sound.findIndex(isLoud), sound.findLastIndex(isLoud))].map((sample) => sample / peak);
    }),
  );
}
