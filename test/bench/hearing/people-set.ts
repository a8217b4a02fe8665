import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Hearing } from '../../../client/listening/hearing.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';
import { hear } from './hear-sound.ts';
import { mixed } from './noise.ts';
import { readSound } from './read-sound.ts';
import { slotsOf } from './slots.ts';

export type Labels = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** One recording, and what became of it. */
export interface Tried {
  readonly file: string;
  readonly text: string;
  readonly right: boolean;
  readonly accepted: boolean;
  /** Score against the phone loop: what the gate is calibrated on. */
  readonly margin: number;
  readonly verdictMs: number;
  readonly realTimeFactor: number;
}

export interface PeopleOptions {
  readonly folder: string;
  readonly grammar: string;
  /** Decibels over the noise; undefined: as recorded. */
  readonly over?: number;
  readonly noise?: Float32Array;
  /** Takes every so many-th recording, from the `from`-th on. */
  readonly every: number;
  readonly from: number;
  progress(done: number, of: number): void;
}

/** Recordings of people with their slots (`labels.json` beside `commands/`): right when every labelled slot is. */
export async function tryOrders(hearing: Hearing, options: PeopleOptions): Promise<Tried[]> {
  const labels = JSON.parse(await readFile(join(options.folder, 'labels.json'), 'utf8')) as Labels;
  const grammar = parseJsgf(options.grammar);
  const chosen = Object.entries(labels).filter((_, index) => index % options.every === options.from);
  const tried: Tried[] = [];
  let noiseAt = 0;
  for (const [file, slots] of chosen) {
    const speech = await readSound(join(options.folder, 'commands', file));
    const { noise, over } = options;
    const sound = noise === undefined || over === undefined ? speech : mixed(speech, noise, over, noiseAt);
    noiseAt += speech.length;
    tried.push(
      judged(file, hear(hearing, sound), (text) => {
        const found = slotsOf(grammar, text);
        return found !== undefined && Object.entries(slots).every(([slot, value]) => found[slot] === value);
      }),
    );
    options.progress(tried.length, chosen.length);
  }
  return tried;
}

/** Recordings that hold no sentence of the grammar: each accepted utterance is one too many. */
export async function tryForeign(
  hearing: Hearing,
  folder: string,
  every: number,
  progress: PeopleOptions['progress'],
): Promise<Tried[]> {
  const files = (await readdir(folder)).sort().filter((_, index) => index % every === 0);
  const tried: Tried[] = [];
  for (const file of files) {
    tried.push(judged(file, hear(hearing, await readSound(join(folder, file))), () => false));
    progress(tried.length, files.length);
  }
  return tried;
}

/** Of several utterances in one recording the one that counts: a right one, else the first that was accepted. */
function judged(file: string, heard: ReturnType<typeof hear>, isRight: (text: string) => boolean): Tried {
  const best = heard.find(({ text }) => isRight(text)) ?? heard.find(({ accepted }) => accepted) ?? heard[0];
  return {
    file,
    text: best?.text ?? '',
    right: best !== undefined && isRight(best.text),
    accepted: best?.accepted ?? false,
    margin: best?.margin ?? Number.NEGATIVE_INFINITY,
    verdictMs: best?.verdictMs ?? Number.NaN,
    realTimeFactor: best?.realTimeFactor ?? Number.NaN,
  };
}
