import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { URGENT_PHRASES } from '../../../grammar/vocabulary/urgent-words.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise, mixed } from './noise.ts';
import { inHalf, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { FOREIGN } from './sentences.ts';
import { shareFigure } from './tried.ts';
import { benchVoices } from './voices.ts';

const SAID = ['stop', 'wait', URGENT_PHRASES[1], URGENT_PHRASES[0]] as const;
/** What the mouth says meanwhile, in a voice that is none of those that order. */
const PROMPT =
  'Leg one to ground. Black lead to ground, red lead to leg one, and say what the meter shows when it is steady.';
const AT = 24_000;

/**
 * The urgent words while the mouth speaks: under a fan, and over the mouth's own voice so many decibels down in the
 * microphone; and what is taken for one in other talk and in the mouth's own voice.
 */
export async function urgent(plan: Plan): Promise<Figure[]> {
  const [own, ...others] = benchVoices();
  const voices = inHalf(others, plan.half).filter((_, index) => index % 3 === 0);
  const prompt = own!.say(PROMPT);
  const hearing = await loadHearing(plan.settings);
  hearing.heed('urgent', PROMPT);
  const figures: Figure[] = [];
  const conditions: readonly (readonly [string, (said: Float32Array, turn: number) => Float32Array])[] = [
    ['in quiet', (said) => said],
    ['a fan at 0 dB', (said, turn) => mixed(said, condenserNoise(said.length / 16_000, turn + 1), 0)],
    ['own voice 20 dB down', (said, turn) => mixed(said, prompt, 20, 9_000 * turn)],
    ['own voice 12 dB down', (said, turn) => mixed(said, prompt, 12, 9_000 * turn)],
    ['own voice as loud', (said, turn) => mixed(said, prompt, 0, 9_000 * turn)],
  ];
  for (const [name, under] of conditions) {
    let heardRight = 0;
    let tries = 0;
    for (const [turn, voice] of voices.entries())
      for (const [index, words] of SAID.entries()) {
        const said = voice.say(words);
        const clean = new Float32Array(AT + said.length + 32_000);
        clean.set(said, AT);
        const heard = hear(hearing, under(clean, 4 * turn + index), clean).filter(({ accepted }) => accepted);
        tries += 1;
        if (heard.some(({ text }) => text === words)) heardRight += 1;
        else
          plan.progress(
            `  urgent ${name}: "${words}" by ${voice.name} → "${heard.map(({ text }) => text).join(' | ')}"`,
          );
      }
    figures.push(shareFigure(`urgent words, ${name}`, heardRight, tries, 'aim ≥ 95 %'));
  }
  figures.push(await falseOnes(plan, hearing, prompt));
  hearing.close();
  return figures;
}

async function falseOnes(plan: Plan, hearing: Parameters<typeof hear>[0], prompt: Float32Array): Promise<Figure> {
  const voices = benchVoices();
  const talk = [prompt, ...FOREIGN.map((words, index) => voices[(5 * index) % voices.length]!.say(words))];
  if (plan.people !== undefined) {
    const files = (await readdir(join(plan.people, 'commands'))).sort().filter((_, index) => index % plan.every === 0);
    for (const file of files) talk.push(await readSound(join(plan.people, 'commands', file)));
  }
  let taken = 0;
  let samples = 0;
  for (const sound of talk) {
    const heard = hear(hearing, sound).filter(({ accepted }) => accepted);
    for (const { text } of heard) plan.progress(`  urgent, other talk → "${text}"`);
    taken += heard.length;
    samples += sound.length;
  }
  const hours = samples / 16_000 / 3_600;
  const against = `aim ≤ 1; ${taken} in ${(60 * hours).toFixed(1)} min of talk`;
  return { name: 'urgent words in other talk: accepted an hour', value: taken / hours, unit: '/h', against };
}
