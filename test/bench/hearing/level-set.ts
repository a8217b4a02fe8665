import { readFile } from 'node:fs/promises';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { levelOf } from '../../../client/listening/sound/level.ts';
import { readWav } from '../../../client/listening/wav.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import type { Plan } from './plan.ts';
import { projectFolder } from './project-folder.ts';
import { shareFigure } from './tried.ts';

const FRAME = 160;
/** What the other levels are held against, in dBFS of the loud tenth of the sentence. */
const USUAL_DB = -20;

type Change = (sound: Float32Array) => Float32Array;
const CHANGES: Readonly<Record<string, Change>> = {
  '-60 dBFS': (sound) => atLevel(sound, -60),
  '-50 dBFS': (sound) => atLevel(sound, -50),
  '-40 dBFS': (sound) => atLevel(sound, -40),
  '-30 dBFS': (sound) => atLevel(sound, -30),
  '-10 dBFS': (sound) => atLevel(sound, -10),
  '-6 dBFS': (sound) => atLevel(sound, -6),
  'clipped by 6 dB': (sound) => scaled(sound, 2 / peakOf(sound)),
  'rising by 30 dB': (sound) => rising(atLevel(sound, -15)),
};

/** The sentences of a recorded visit at other levels, in steps of 16 bits: whether they come to the same. */
export async function levels(plan: Plan): Promise<Figure[]> {
  const lines = (await readFile(new URL('library/spoken.txt', projectFolder('fixtures/visits')), 'utf8'))
    .split('\n')
    .map((line) => line.split('|').map((part) => part.trim()))
    .filter(([id, , words]) => words !== undefined && !id!.startsWith('#'))
    .filter((_, index) => index % plan.every === plan.from);
  const sounds = await Promise.all(
    lines.map(async ([id]) =>
      readWav(await readFile(new URL(`library/${id}.wav`, projectFolder('fixtures/audio'))), id!),
    ),
  );
  const hearing = await loadHearing(plan.settings);
  const come = (change: Change): readonly string[] =>
    sounds.map((sound, index) => {
      hearing.expect(expectationFor(lines[index]![2]!));
      return hear(hearing, inSteps(change(sound)), sound)
        .filter(({ accepted }) => accepted)
        .map(({ text }) => meantBy(text))
        .join(' | ');
    });
  const usual = come((sound) => atLevel(sound, USUAL_DB));
  const figures = [
    shareFigure(
      'level: right at -20 dBFS',
      usual.filter((text, index) => text === meantBy(lines[index]![2]!)).length,
      lines.length,
    ),
  ];
  for (const [name, change] of Object.entries(CHANGES)) {
    plan.progress(`level ${name}`);
    const now = come(change);
    const same = now.filter((text, index) => text === usual[index]);
    now.forEach((text, index) => {
      if (text !== usual[index]) plan.progress(`  ${name}: "${usual[index]}" → "${text}"`);
    });
    figures.push(shareFigure(`level ${name}: as at -20 dBFS`, same.length, lines.length, 'aim ≥ 95 %'));
  }
  hearing.close();
  return figures;
}

const meantBy = (words: string): string => JSON.stringify(understand(words).meaning);

function expectationFor(words: string) {
  const { meaning } = understand(words);
  if (meaning.kind !== 'reading') return { readings: [] };
  const { quantity, at } = meaning.reading;
  return { readings: [{ quantity, at }] };
}

const scaled = (sound: Float32Array, by: number): Float32Array => sound.map((sample) => sample * by);
const peakOf = (sound: Float32Array): number => sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);

/** Brings the level that a tenth of the frames reach to so many dBFS. */
function atLevel(sound: Float32Array, db: number): Float32Array {
  const found = Array.from({ length: Math.floor(sound.length / FRAME) }, (_, index) =>
    levelOf(sound.subarray(FRAME * index, FRAME * (index + 1))),
  ).sort((a, b) => b - a);
  return scaled(sound, 10 ** ((db - found[Math.floor(found.length / 10)]!) / 20));
}

/** From 30 dB below up to its own level. */
const rising = (sound: Float32Array): Float32Array =>
  sound.map((sample, index) => sample * 10 ** ((-30 * (1 - index / sound.length)) / 20));

/** As a converter of 16 bits gives it, clipped at its ends. */
const inSteps = (sound: Float32Array): Float32Array =>
  sound.map((sample) => Math.round(Math.max(-1, Math.min(32_767 / 32_768, sample)) * 32_768) / 32_768);
