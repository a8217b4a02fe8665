import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Hearing } from '../../../client/listening/hearing.ts';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { levelOf } from '../../../client/listening/sound/level.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise, mixed, randomFrom } from './noise.ts';
import { inHalf, levelName, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { judged } from './spoken-set.ts';
import { loadFigure, outcomes, shareFigure, type Tried, times } from './tried.ts';
import { benchVoices } from './voices.ts';

const NAMES = 'zero one two three four five six seven eight nine'.split(' ');
/** Where numbers of three digits are read, and the hundreds that are read there. */
const PLACES: readonly (readonly [Expectation['readings'][number], readonly number[]])[] = [
  [{ quantity: 'voltage', at: ['L1', 'L2'] }, [1, 2]],
  [{ quantity: 'pressure', at: ['liquid-port'] }, [2, 3, 4]],
];
/** Numbers that a pause parts into smaller ones, as they are said; | is where the pause may be. */
const IN_PARTS: readonly (readonly [string, Expectation['readings'][number]])[] = [
  ['two | forty | one', { quantity: 'voltage', at: ['L1', 'L2'] }],
  ['two | hundred | thirty | eight', { quantity: 'voltage', at: ['L1', 'L2'] }],
  ['one | nineteen | point | four', { quantity: 'voltage', at: ['L1', 'ground'] }],
  ['two | point | seven', { quantity: 'resistance', at: ['comp-C', 'comp-R'] }],
  ['forty | four | point | one', { quantity: 'capacitance', at: ['cap-HERM', 'cap-C'] }],
  ['twenty | five | and a half', { quantity: 'voltage', at: ['R@thermostat', 'C@thermostat'] }],
  ['seventy | six | degrees', { quantity: 'temperature', at: ['return-air'] }],
  ['fourteen | point | two | amps', { quantity: 'current', at: ['compressor'] }],
];
/** Pauses in milliseconds: within a number said haltingly, and so long that its first part was given already. */
const HALTING = [100, 400] as const;
const CONTINUED = [700, 1_300] as const;
/** The pauses of somebody who says a number without stopping. */
const FLUENT = [10, 60] as const;

/** Numbers said with pauses to 400 ms in them: how many come out in pieces, and what the pieces come to. */
export const spliced = (plan: Plan): Promise<Figure[]> => withPausesOf(plan, 'pauses to 400 ms', HALTING);

/** Numbers whose first part was given when their second came, 0.7 to 1.3 s later. */
export const continued = (plan: Plan): Promise<Figure[]> => withPausesOf(plan, 'pauses of 0.7 to 1.3 s', CONTINUED);

/** Numbers made of single digits of people, said without stopping, under a fan. */
export async function fluent(plan: Plan, folder: string): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const level of plan.levels ?? [undefined, 10, 5])
    figures.push(
      ...(await ofPeople(plan, folder, `numbers of people, ${levelName(level)}`, {
        range: FLUENT,
        numbers: 22,
        level,
      })),
    );
  return figures;
}

async function withPausesOf(plan: Plan, name: string, range: Range): Promise<Figure[]> {
  // One of the two: each takes minutes.
  if (plan.digits !== undefined)
    return await ofPeople(plan, plan.digits, `digits of people, ${name}`, { range, numbers: 67 });
  return await ofVoices(plan, `numbers of voices, ${name}`, range);
}

type Range = readonly [number, number];

/** @param numbers of each speaker @param level decibels over a fan */
async function ofPeople(
  plan: Plan,
  folder: string,
  name: string,
  { range, numbers, level }: { readonly range: Range; readonly numbers: number; readonly level?: number | undefined },
): Promise<Figure[]> {
  const speakers = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory());
  const hearing = await loadHearing(plan.settings);
  const own = Math.ceil(numbers / plan.every);
  const random = chanceFrom(11);
  const tried: Pieces[] = [];
  const figures: Figure[] = [];
  for (const speaker of inHalf(speakers.map((one) => one.name).sort(), plan.half)) {
    for (let count = 0; count < own; count += 1) {
      const [place, hundreds] = PLACES[count % PLACES.length]!;
      const digits = [
        hundreds[Math.floor(random() * hundreds.length)]!,
        Math.floor(random() * 10),
        Math.floor(random() * 10),
      ];
      const parts = [];
      for (const digit of digits) {
        const take = Math.floor(random() * 50);
        parts.push(trimmed(await readSound(join(folder, speaker, `${digit}_${speaker}_${take}.wav`))));
      }
      const words = digits.map((digit) => NAMES[digit]).join(' ');
      tried.push(tryParts(hearing, words, place, parted(parts, range, random), range, random, level));
    }
    const theirs = tried.slice(-own);
    const right = theirs.filter(({ outcome }) => outcome === 'right').length;
    const wrong = theirs.filter(({ outcome }) => outcome === 'wrong').length;
    figures.push(shareFigure(`${name}, ${speaker}: taken and right`, right, theirs.length, `${wrong} wrong`));
    plan.progress(`${name}: ${tried.length}`);
  }
  figures.push(loadFigure(name, hearing));
  hearing.close();
  return [...figuresOf(plan, name, tried), ...figures];
}

async function ofVoices(plan: Plan, name: string, range: Range): Promise<Figure[]> {
  const hearing = await loadHearing(plan.settings);
  const random = chanceFrom(12);
  const tried = inHalf(benchVoices(), plan.half).flatMap((voice, turn) =>
    IN_PARTS.filter((_, index) => (index + turn) % plan.every === 0).map(([words, place]) => {
      const parts = words.split(' | ').map((part) => trimmed(voice.say(part)));
      return tryParts(hearing, words.replaceAll(' | ', ' '), place, parted(parts, range, random), range, random);
    }),
  );
  hearing.close();
  return figuresOf(plan, name, tried);
}

interface Pieces extends Tried {
  readonly pieces: number;
  readonly wentOn: boolean;
  readonly heard: string;
}

function tryParts(
  hearing: Hearing,
  words: string,
  place: Expectation['readings'][number],
  parts: readonly Float32Array[],
  [least, most]: Range,
  random: () => number,
  level?: number,
): Pieces {
  const expectation = { readings: [place] };
  hearing.expect(expectation);
  const clean = withPauses(parts, () => least + random() * (most - least));
  const seed = Math.floor(1_000 * random());
  const sound = level === undefined ? clean : mixed(clean, condenserNoise(clean.length / 16_000, seed), level);
  const heard = hear(hearing, sound, clean);
  const left = heard.filter((_, index) => heard[index + 1]?.continues !== true);
  return {
    ...judged(words, left, expectation),
    pieces: left.length,
    wentOn: left.length < heard.length,
    heard: heard.map((one) => `${one.accepted ? '' : '?'}${one.text}`).join(' | '),
  };
}

function figuresOf(plan: Plan, name: string, tried: readonly Pieces[]): Figure[] {
  const cut = tried.filter(({ pieces }) => pieces > 1);
  for (const one of tried)
    if (one.pieces > 1 || one.outcome === 'wrong') plan.progress(`  ${one.outcome}: "${one.name}" → ${one.heard}`);
  return [
    shareFigure(`${name}: in pieces`, cut.length, tried.length, 'aim 0 to 400 ms'),
    shareFigure(`${name}: set right behind its first part`, tried.filter(({ wentOn }) => wentOn).length, tried.length),
    ...outcomes(name, tried),
    ...times(name, tried),
  ];
}

/** Half a second of silence before, a second behind. */
function withPauses(parts: readonly Float32Array[], pauseMs: () => number): Float32Array {
  const blocks = parts.flatMap((part, index) => (index === 0 ? [part] : [silence(pauseMs()), part]));
  return joined([silence(500), ...blocks, silence(1_000)]);
}

const silence = (ms: number): Float32Array => new Float32Array(Math.round(16 * ms));

function joined(blocks: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    whole.set(block, at);
    at += block.length;
  }
  return whole;
}

/** A long pause stands in one place only. */
const parted = (parts: readonly Float32Array[], [least]: Range, random: () => number): readonly Float32Array[] =>
  least < 500 ? parts : joinedBut(parts, 1 + Math.floor(random() * (parts.length - 1)));

const joinedBut = (parts: readonly Float32Array[], at: number): readonly Float32Array[] => [
  joined(parts.slice(0, at).flatMap((part) => [part, silence(30)])),
  joined(parts.slice(at).flatMap((part) => [part, silence(30)])),
];

/** Without the quiet around it. */
function trimmed(sound: Float32Array): Float32Array {
  const levels = Array.from({ length: Math.floor(sound.length / 160) }, (_, index) =>
    levelOf(sound.subarray(160 * index, 160 * (index + 1))),
  );
  const limit = Math.max(...levels) - 35;
  return sound.slice(
    160 * levels.findIndex((level) => level > limit),
    160 * (1 + levels.findLastIndex((level) => level > limit)),
  );
}

function chanceFrom(seed: number): () => number {
  const random = randomFrom(seed);
  return () => (random() + 1) / 2.000_001;
}
