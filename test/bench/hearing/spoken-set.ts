import { readdirSync, readFileSync } from 'node:fs';
import type { Hearing } from '../../../client/listening/hearing.ts';
import { follow, toAutomaton } from '../../../client/listening/recogniser/automaton.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { speak, type Voice } from '../../../fixtures/speak.ts';
import type { Expectation, Meaning } from '../../../grammar/phrases/meaning.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise, mixed } from './noise.ts';

/** Twelve voices: four of flite's, each plain, quicker and higher, slower and lower. */
export const VOICES: readonly Voice[] = ['slt', 'rms', 'awb', 'kal16'].flatMap((name) => {
  const pitch = name === 'slt' ? 170 : 105;
  return [{ name }, { name, stretch: 0.88, pitch: pitch * 1.15 }, { name, stretch: 1.15, pitch: pitch * 0.88 }];
});

/** Talk at work that is no sentence of the grammar. */
export const FOREIGN = [
  'did you see the game last night',
  'my truck needs new tires before winter',
  'the customer says her dog likes you',
  'we should get lunch after this one',
  'tell him i will call back tomorrow',
  'where did you park the van',
  'it is going to rain this afternoon',
  'could you hand me that ladder please',
  'i think the office sent the wrong invoice',
  'she wants to know how long this takes',
  'my phone is almost out of battery',
  'they are painting the hallway upstairs',
] as const;

export type Outcome = 'right' | 'asked' | 'wrong' | 'rejected';

export interface SpokenResult {
  readonly words: string;
  readonly text: string;
  readonly outcome: Outcome;
  readonly verdictMs: number;
  readonly pass: string;
  readonly realTimeFactor: number;
}

/** Readings from the utterance fixtures that the recogniser's grammar can hear, every `every`-th. */
export function readingSentences(every: number): readonly string[] {
  const network = toAutomaton(parseJsgf(visitGrammar('all') ?? ''));
  const folder = new URL('../../../../fixtures/utterances/', import.meta.url);
  const sentences = readdirSync(folder).flatMap((file) =>
    readFileSync(new URL(file, folder), 'utf8')
      .split('\n')
      .map((line) => line.split('=>')[0]!.trim())
      .filter((line) => /^[a-z' ]+$/.test(line) && line.split(' ').length > 1 && follow(network, line).whole)
      .filter((line) => {
        const { meaning, verdict } = understand(line);
        return verdict === 'logged' && meaning.kind === 'reading';
      }),
  );
  return sentences.filter((_, index) => index % every === 0);
}

const NOTHING: Expectation = { readings: [] };

function expectationOf(meaning: Meaning): Expectation {
  if (meaning.kind !== 'reading') return NOTHING;
  const { quantity, at } = meaning.reading;
  return { readings: [{ quantity, at }] };
}

/**
 * Says each sentence with one of the voices, under condenser noise, and looks at what would become of it.
 * @param expected whether the visit waits for this very reading, or for nothing
 */
export function trySentence(
  hearing: Hearing,
  words: string,
  voice: Voice,
  { over, expected }: { readonly over?: number; readonly expected: boolean },
): SpokenResult {
  const wanted = understand(words).meaning;
  const expectation = expected ? expectationOf(wanted) : NOTHING;
  hearing.expect(expectation);
  const said = speak(voice, words);
  const padded = new Float32Array(said.length + 16_000);
  padded.set(said, 8_000);
  const sound = over === undefined ? padded : mixed(padded, condenserNoise(padded.length / 16_000, words.length), over);
  const [heard] = hear(hearing, sound);
  if (heard === undefined) {
    return { words, text: '', outcome: 'rejected', verdictMs: Number.NaN, pass: 'none', realTimeFactor: Number.NaN };
  }
  const { text, accepted, alternatives, verdictMs, pass, realTimeFactor } = heard;
  const understood = understand(text, expectation, { alternatives });
  const same = JSON.stringify(understood.meaning) === JSON.stringify(wanted);
  const logged = accepted && understood.verdict === 'logged';
  const outcome = logged
    ? same
      ? 'right'
      : 'wrong'
    : accepted && understood.verdict === 'asked'
      ? 'asked'
      : 'rejected';
  return { words, text, outcome, verdictMs, pass, realTimeFactor };
}
