import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Utterance } from '../../listening/ear.ts';
import type { SaidAloud } from '../../listening/profile/as-heard.ts';
import type { ReadAloud } from '../../words/talk/read-aloud-words.ts';

/** What reading aloud needs of the running visit. */
export interface ReadAloudParts {
  readonly expect: (expectation: Expectation) => void;
  /** What was said and nobody took yet, kept from the visit; it grows meanwhile. */
  readonly said: Utterance[];
}

/** What the page is told, and tells. */
export interface ReadAloudTalk {
  /** This one is to be read now. */
  readonly ask: (index: number) => void;
  /** What was pressed since the last sentence: the last one anew, or no more of them. */
  readonly pressed: () => 'repeat' | 'enough' | undefined;
}

const SAID_WITHIN_MS = 30_000;
const LOOK_MS = 50;
/** So long what goes on is waited for: a breath inside of a number makes two of it, the second with the words of both. */
const GOES_ON_MS = 900;
/** A breath or a knock is no sentence: samples at 16 kHz. */
const SHORTEST = 16_000 * 0.7;

/** Asks for one sentence after another, and takes the sound of each; undefined where nothing was heard any more. */
export async function readAloud(
  { expect, said }: ReadAloudParts,
  sentences: readonly ReadAloud[],
  { ask, pressed }: ReadAloudTalk,
): Promise<readonly SaidAloud[] | undefined> {
  const read: SaidAloud[] = [];
  while (read.length < sentences.length) {
    const sentence = sentences[read.length] as ReadAloud;
    expect(sentence.expects);
    ask(read.length);
    const until = performance.now() + SAID_WITHIN_MS;
    let press = pressed();
    while (said.length === 0 && press === undefined && performance.now() < until) {
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
      press = pressed();
    }
    if (press === 'enough') break;
    if (press === 'repeat') read.pop();
    if (press !== undefined) continue;
    if (said.length === 0) return undefined;
    await new Promise((resolve) => setTimeout(resolve, GOES_ON_MS));
    const samples = said.splice(0).at(-1)?.samples;
    if (samples !== undefined && samples.length >= SHORTEST) read.push({ words: sentence.words, sound: samples });
  }
  return read;
}
