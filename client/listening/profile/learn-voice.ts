import { type Automaton, sentenceAlone } from '../recogniser/automaton.ts';
import type { Gate } from '../recogniser/gate.ts';
import { GrammarDecoder, type Pronunciations } from '../recogniser/grammar-decoder.ts';
import { PHONE_WORDS, phoneOf } from '../recogniser/phone-loop.ts';
import type { SpeechModel, SpeechModule } from '../recogniser/speech-module.ts';
import type { VoiceProfile } from './voice-profile.ts';

/** What somebody was asked to say, and how it sounded: 16 kHz, -1…1, with some hiss under it. */
export interface SaidAloud {
  readonly words: string;
  readonly sound: Float32Array;
}

export interface LearningParts {
  readonly speech: SpeechModule;
  readonly model: SpeechModel;
  readonly pronunciations: Pronunciations;
  readonly gate: Gate;
}

/** A word must have been said so often, and taken for another so often, for its sounds to be learnt. */
const OFTEN = 3;
const MISHEARD = 2;
/** How many ways of saying a word are learnt. */
const MOST_FORMS = 2;
/** How many more of all tries must come out right with a form than without: its own try is one of them. */
const MORE_RIGHT = 2;

/**
 * Learns how a person says the words of some sentences: the mean of the voice, and for each word what sounds were heard
 * in its place. That is done for words that were taken for others, and a form is kept only where more of all that was
 * said comes out right with it.
 *
 * @throws ListeningError `model-missing`, `grammar-unknown-word`
 */
export async function learnVoice(parts: LearningParts, said: readonly SaidAloud[]): Promise<VoiceProfile> {
  const { speech, model, pronunciations, gate } = parts;
  const decoder = await GrammarDecoder.open(speech, model, { ...pronunciations, ...PHONE_WORDS });
  try {
    const means = said.map(({ sound }) => decoder.meanOf(sound));
    const mean = gate.mean.map((value, at) =>
      means.length === 0 ? value : means.reduce((sum, own) => sum + own[at]! / means.length, 0),
    );
    const places = placesOf(said);
    const learner = new FormLearner(decoder, mean, places);
    const learnt = [...places].flatMap(([word, own]) => {
      const forms = own.length < OFTEN ? [] : learner.learn(word, own);
      return forms.length === 0 ? [] : [[word, forms] as const];
    });
    return { model: model.id, mean, pronunciations: Object.fromEntries(learnt) };
  } finally {
    decoder.close();
  }
}

/** One try of a word: the words of its sentence, where among them it stands, and the sound. */
interface Place {
  readonly words: readonly string[];
  readonly at: number;
  readonly sound: Float32Array;
}

function placesOf(said: readonly SaidAloud[]): ReadonlyMap<string, readonly Place[]> {
  const places = new Map<string, Place[]>();
  for (const { words: text, sound } of said) {
    const words = text.split(' ');
    words.forEach((word, at) => {
      const before = words.indexOf(word) === at ? (places.get(word) ?? []) : undefined;
      if (before !== undefined) places.set(word, [...before, { words, at, sound }]);
    });
  }
  return places;
}

class FormLearner {
  readonly #decoder: GrammarDecoder;
  readonly #mean: readonly number[];
  readonly #places: readonly Place[];
  /** Each word that was said, and each form learnt, by the word it stands for. */
  readonly #standsFor: Map<string, string>;
  #right: number;
  #count = 0;

  constructor(decoder: GrammarDecoder, mean: readonly number[], places: ReadonlyMap<string, readonly Place[]>) {
    this.#decoder = decoder;
    this.#mean = mean;
    this.#places = [...places.values()].flat();
    this.#standsFor = new Map([...places.keys()].map((word) => [word, word]));
    this.#right = this.#places.filter((place) => this.#isRight(place)).length;
  }

  /** The forms of a word with which more of all that was said is heard as it was meant, best first. */
  learn(word: string, own: readonly Place[]): readonly string[] {
    if (own.filter((place) => !this.#isRight(place)).length < MISHEARD) return [];
    const now = this.#fits(word, own);
    const heard = [...new Set(own.map((place) => this.#soundsAt(place)))].filter((sounds) => sounds !== '');
    const forms = heard
      .map((sounds) => ({ sounds, name: this.#name(sounds) }))
      .map((form) => ({ ...form, gain: gainElsewhere(this.#fits(form.name, own), now) }))
      .sort((a, b) => b.gain - a.gain);
    const chosen: string[] = [];
    for (const { sounds, name } of forms) {
      if (chosen.length < MOST_FORMS && this.#brings(name, word)) chosen.push(sounds);
    }
    return chosen;
  }

  /** Takes a form in, if more comes out right with it. */
  #brings(name: string, word: string): boolean {
    this.#standsFor.set(name, word);
    const right = this.#places.filter((place) => this.#isRight(place)).length;
    const brings = right >= this.#right + MORE_RIGHT;
    if (brings) this.#right = right;
    else this.#standsFor.delete(name);
    return brings;
  }

  /** Whether the word in this place is heard as itself, where any of the words may stand there. */
  #isRight({ words, at, sound }: Place): boolean {
    const { text } = this.#decode(anyOfThemAt([...this.#standsFor.keys()], words, at), sound);
    return this.#standsFor.get(text.split(' ')[at] ?? '') === words[at];
  }

  #decode(network: Automaton, sound: Float32Array): { readonly text: string; readonly score: number } {
    this.#decoder.setNetwork(network);
    this.#decoder.begin(this.#mean);
    this.#decoder.feed(sound);
    return this.#decoder.end();
  }

  /** The sounds in the place of one word of a sentence; empty where it did not come out. */
  #soundsAt({ words, at, sound }: Place): string {
    const heard = this.#decode(anySoundsAt(words, at), sound).text.split(' ');
    return heard
      .slice(at, heard.length - (words.length - at - 1))
      .map(phoneOf)
      .join(' ');
  }

  #fits(word: string, places: readonly Place[]): readonly number[] {
    return places.map(({ words, at, sound }) => {
      const sentence = words.map((one, index) => (index === at ? word : one)).join(' ');
      return this.#decode(sentenceAlone(sentence), sound).score;
    });
  }

  /** A word of its own for these sounds. */
  #name(sounds: string): string {
    this.#count += 1;
    const name = `_form${this.#count}`;
    this.#decoder.teach({ [name]: [sounds] });
    return name;
  }
}

/** By how much the form fits better than what there is, the try left out that it gains most by: its own. */
function gainElsewhere(form: readonly number[], now: readonly number[]): number {
  const gains = form.map((fit, index) => Math.max(0, fit - now[index]!));
  return gains.reduce((sum, gain) => sum + gain, 0) - Math.max(...gains);
}

/** A sentence in which any of some words may stand in the place of one. */
function anyOfThemAt(choices: readonly string[], words: readonly string[], at: number): Automaton {
  const { arcs, final } = sentenceAlone(words.join(' '));
  const any = new Map(choices.map((word) => [word, at + 1]));
  return { arcs: arcs.map((own, state) => (state === at ? any : own)), final };
}

/** A sentence in which any sounds may stand in the place of one word. */
function anySoundsAt(words: readonly string[], at: number): Automaton {
  const loop = at + 1;
  const sounds = Object.keys(PHONE_WORDS).map((phone) => [phone, loop] as const);
  const last = words.length;
  const arcs = Array.from({ length: last + 1 }, (_, state) => {
    const onward = state < last ? [[words[state]!, state + 1] as const] : [];
    if (state === at) return new Map(sounds);
    return new Map(state === loop ? [...sounds, ...onward] : onward);
  });
  return { arcs, final: arcs.map((_, state) => state === last) };
}
