import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { URGENT_PHRASES } from '../../../grammar/vocabulary/urgent-words.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise, mixed } from './noise.ts';
import { inHalf, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { inRoom } from './room.ts';
import { FOREIGN } from './sentences.ts';
import { shareFigure } from './tried.ts';
import { type BenchVoice, benchVoices } from './voices.ts';

const SAID = ['stop', 'wait', URGENT_PHRASES[1], URGENT_PHRASES[0], URGENT_PHRASES[2]] as const;
/** What the mouth says meanwhile, in a voice that is none of those that order. */
const PROMPT =
  'Leg one to ground. Black lead to ground, red lead to leg one, and say what the meter shows when it is steady.';
const AT = 24_000;
const FRAME = 320;
/** Six voices say each of them, each time over another part of the prompt. */
const VOICES = 6;
const TIMES = 2;

interface Condition {
  readonly name: string;
  /** How far below the order the mouth's own voice is in the microphone, in dB; none: it is quiet. */
  readonly ownBelow?: number;
  /** Whether the ear is given what the mouth plays. */
  readonly known?: true;
  readonly fan?: true;
}
const CONDITIONS: readonly Condition[] = [
  { name: 'in quiet' },
  { name: 'a fan at 0 dB', fan: true },
  { name: 'own voice 12 dB down', ownBelow: 12, known: true },
  { name: 'own voice as loud', ownBelow: 0, known: true },
  { name: 'own voice 12 dB down, its samples not known', ownBelow: 12 },
  { name: 'own voice as loud, its samples not known', ownBelow: 0 },
];

/**
 * The urgent words while the mouth speaks: under a fan, and over the mouth's own voice as a made-up room gives it back;
 * and what is taken for one in other talk and in the mouth's own voice. `at`: only over the own voice, so far down.
 */
export async function urgent(plan: Plan): Promise<Figure[]> {
  const [own, ...others] = benchVoices();
  const voices = spread(inHalf(others, plan.half), VOICES);
  const said = own!.say(PROMPT);
  const prompt = said.subarray(0, said.length - (said.length % FRAME));
  const figures: Figure[] = [];
  const { levels } = plan;
  const conditions =
    levels === undefined ? CONDITIONS : CONDITIONS.filter(({ known, ownBelow }) => known && levels.includes(ownBelow));
  for (const condition of conditions) figures.push(await tried(plan, condition, voices, prompt));
  if (levels !== undefined) return figures;
  const hearing = await loadHearing(plan.settings);
  hearing.heed('urgent', PROMPT);
  figures.push(await falseOnes(plan, hearing, prompt));
  hearing.close();
  return figures;
}

async function tried(plan: Plan, condition: Condition, voices: readonly BenchVoice[], prompt: Float32Array) {
  const hearing = await loadHearing(plan.settings);
  hearing.heed('urgent', PROMPT);
  // The mouth has spoken before, as it has in any visit.
  if (condition.known) {
    hearing.plays(prompt);
    hear(hearing, inRoom(prompt));
  }
  let right = 0;
  const orders = Array.from({ length: TIMES }, () => voices).flatMap((all, time) =>
    all.flatMap((voice) => SAID.map((words) => ({ time, voice, words }))),
  );
  const part = orders.filter((_, index) => index % plan.every === plan.from);
  for (const [turn, { voice, words, time }] of part.entries()) {
    const said = voice.say(words);
    // In whole frames, or the next would begin with what is left of this.
    const clean = new Float32Array(FRAME * Math.ceil((AT + said.length + 32_000) / FRAME));
    clean.set(said, AT);
    const played = clean.map((_, index) => prompt[(9_000 * turn + index) % prompt.length]!);
    const { ownBelow } = condition;
    let sound: Float32Array = clean;
    if (condition.fan) sound = mixed(clean, condenserNoise(clean.length / 16_000, turn + 1 + 100 * time), 0);
    if (ownBelow !== undefined) sound = mixed(clean, inRoom(played), ownBelow);
    if (condition.known) hearing.plays(told(played, turn));
    const heard = hear(hearing, sound, clean).filter(({ accepted }) => accepted);
    if (heard.some(({ text }) => text === words)) right += 1;
    else
      plan.progress(
        `  urgent ${condition.name}: "${words}" by ${voice.name} → "${heard.map(({ text }) => text).join(' | ')}"`,
      );
  }
  hearing.close();
  return shareFigure(`urgent words, ${condition.name}`, right, part.length, 'aim ≥ 95 %');
}

/** Nobody can tell to the millisecond when it begins: up to 20 ms earlier or later than it does. */
function told(played: Float32Array, turn: number): Float32Array {
  const wrong = 16 * (((7 * turn) % 41) - 20);
  return played.map((_, index) => played[index + wrong] ?? 0);
}

/** So many of them, from all along the list. */
const spread = <Item>(items: readonly Item[], count: number): readonly Item[] =>
  Array.from({ length: count }, (_, index) => items[Math.floor((index * items.length) / count)]!);

async function falseOnes(plan: Plan, hearing: Parameters<typeof hear>[0], prompt: Float32Array): Promise<Figure> {
  const voices = benchVoices();
  const talk = [prompt, ...FOREIGN.flatMap((words) => voices.map((voice) => voice.say(words)))].filter(
    (_, index) => index % plan.every === 0,
  );
  if (plan.people !== undefined)
    for (const part of ['commands', 'other-speech']) {
      const files = (await readdir(join(plan.people, part))).sort().filter((_, index) => index % plan.every === 0);
      for (const file of files) talk.push(await readSound(join(plan.people, part, file)));
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
