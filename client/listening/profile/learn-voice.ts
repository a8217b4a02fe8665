import { type Automaton, sentenceAlone } from '../recogniser/automaton.ts';
import type { Gate } from '../recogniser/gate.ts';
import { GrammarDecoder, type Pronunciations } from '../recogniser/grammar-decoder.ts';
import { PHONE_WORDS, phoneOf } from '../recogniser/phone-loop.ts';
import type { SpeechModel, SpeechModule } from '../recogniser/speech-module.ts';
import type { HeardAloud } from './as-heard.ts';
import { sureOf, triedBy } from './learn-sure.ts';
import type { VoiceProfile } from './voice-profile.ts';

export interface LearningParts {
  readonly speech: SpeechModule;
  readonly model: SpeechModel;
  readonly pronunciations: Pronunciations;
  readonly gate: Gate;
  /** JSGF that some of the sentences are expected by: from which margin on they are sure is learnt by it. */
  readonly expected: string;
}

/** What was learnt of a voice, and what that brings on what it was not learnt from. */
export interface Learnt {
  readonly profile: VoiceProfile;
  /** Words heard right in the half of the tries that was not learnt from, before and after, of so many. */
  readonly before: number;
  readonly after: number;
  readonly of: number;
}

/** A word must have been said so often for its sounds to be learnt. */
const OFTEN = 3;
/** How many ways of saying a word are learnt, and how much of the score each must bring where it was not taken from. */
const MOST_FORMS = 2;
const WORTH = 100;
/** What is learnt from one half must bring so much more right in the other: tries, and their share of all. */
const MORE_RIGHT = { tries: 2, share: 0.05 } as const;
/** Of the work; the rest is learning from all. */
const HELD_BACK_SHARE = 0.6;

/**
 * Learns how a person says the words of some sentences: the mean of the voice, how loud it is, from which margin on it is
 * sure, and for each word what sounds were heard in its place. Forms are kept only where those learnt from each half of the tries bring more right in the other half:
 * who says the words as the dictionary has them would only be heard the worse for it.
 *
 * @throws ListeningError `model-missing`, `grammar-unknown-word`
 */
export async function learnVoice(parts: LearningParts, said: readonly HeardAloud[]): Promise<VoiceProfile> {
  return (await learnAndMeasure(parts, said)).profile;
}

/**
 * The same, with what it brings.
 * @param tell how much of it is done, 0…1
 * @throws ListeningError `model-missing`, `grammar-unknown-word`
 */
export async function learnAndMeasure(
  parts: LearningParts,
  said: readonly HeardAloud[],
  tell: (share: number) => void = () => undefined,
): Promise<Learnt> {
  const { speech, model, pronunciations, gate, expected } = parts;
  const decoder = await GrammarDecoder.open(speech, model, { ...pronunciations, ...PHONE_WORDS });
  try {
    const means = said.map(({ sound }) => decoder.meanOf(sound));
    const mean = gate.mean.map((value, at) =>
      means.length === 0 ? value : means.reduce((sum, own) => sum + own[at]! / means.length, 0),
    );
    const learner = new FormLearner(decoder, mean);
    const places = placesOf(said);
    const held = learner.heldBack(places, (share) => tell(share * HELD_BACK_SHARE));
    const isWorthIt = held.after - held.before >= Math.max(MORE_RIGHT.tries, MORE_RIGHT.share * held.of);
    const forms = isWorthIt ? learner.learn(places) : [];
    if (said.length === 0)
      return { ...held, after: held.before, profile: { model: model.id, mean, pronunciations: {} } };
    const words = new Set(forms.map(({ word }) => word));
    const soundsOf = (word: string) => forms.filter((form) => form.word === word).map(({ sounds }) => sounds);
    const learnt = Object.fromEntries([...words].map((word) => [word, soundsOf(word)]));
    decoder.teach(learnt);
    const sure = sureOf(gate, triedBy(decoder, expected, mean, said));
    const levels = said.map(({ loudestDb }) => loudestDb).sort((a, b) => a - b);
    const voiceDb = levels[levels.length >> 1]!;
    tell(1);
    // Forms that are not kept bring nothing.
    const after = isWorthIt ? held.after : held.before;
    return { ...held, after, profile: { model: model.id, mean, pronunciations: learnt, sure, voiceDb } };
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

function placesOf(said: readonly HeardAloud[]): ReadonlyMap<string, readonly Place[]> {
  const places = new Map<string, Place[]>();
  for (const { words: text, sound } of said) {
    const words = text.split(' ');
    words.forEach((word, at) => {
      const before = words.indexOf(word) === at ? (places.get(word) ?? []) : undefined;
      if (before !== undefined) places.set(word, [...before, { words, at, sound }]);
    });
  }
  // What is too seldom for each half to learn from teaches nothing, and only takes its time.
  return new Map([...places].filter(([, own]) => own.length >= 2 * OFTEN));
}

type Places = ReadonlyMap<string, readonly Place[]>;

/** One way of saying a word, under a name of its own. */
interface Form {
  readonly word: string;
  readonly name: string;
  readonly sounds: string;
}

class FormLearner {
  readonly #decoder: GrammarDecoder;
  readonly #mean: readonly number[];
  #count = 0;

  constructor(decoder: GrammarDecoder, mean: readonly number[]) {
    this.#decoder = decoder;
    this.#mean = mean;
  }

  /** What each half of the tries teaches brings in the other. */
  heldBack(places: Places, tell: (share: number) => void): Pick<Learnt, 'before' | 'after' | 'of'> {
    const halves = [0, 1].map(
      (odd) => new Map([...places].map(([word, own]) => [word, own.filter((_, index) => index % 2 === odd)])),
    );
    const [one = places, other = places] = halves;
    let [before, after, done] = [0, 0, 0];
    for (const [from, to] of [
      [one, other],
      [other, one],
    ] as const) {
      after += this.#right(to, this.learn(from));
      before += this.#right(to, []);
      done += 1;
      tell(done / halves.length);
    }
    return { before, after, of: [...places.values()].flat().length };
  }

  learn(places: Places): readonly Form[] {
    return [...places].flatMap(([word, own]) => (own.length < OFTEN ? [] : this.#formsOf(word, own)));
  }

  /** The forms that fit a person's tries of a word better than what the dictionary has, best first. */
  #formsOf(word: string, places: readonly Place[]): readonly Form[] {
    const heard = new Set(places.map((place) => this.#soundsAt(place)).filter((sounds) => sounds !== ''));
    const forms = [...heard].map((sounds) => {
      const name = this.#name(sounds);
      return { form: { word, name, sounds }, fits: this.#fits(name, places) };
    });
    let fits = this.#fits(word, places);
    const chosen: Form[] = [];
    while (chosen.length < MOST_FORMS) {
      const [best] = forms
        .map((one) => ({ ...one, gain: gainElsewhere(one.fits, fits) }))
        .sort((a, b) => b.gain - a.gain);
      if (best === undefined || best.gain < WORTH) break;
      chosen.push(best.form);
      fits = fits.map((fit, index) => Math.max(fit, best.fits[index]!));
    }
    return chosen;
  }

  /** How many words are heard as themselves, where any of the words may stand in their place. */
  #right(places: Places, forms: readonly Form[]): number {
    const standsFor = new Map([...places.keys()].map((word) => [word, word]));
    for (const { name, word } of forms) standsFor.set(name, word);
    return [...places.values()].flat().filter(({ words, at, sound }) => {
      const { text } = this.#decode(anyOfThemAt([...standsFor.keys()], words, at), sound);
      return standsFor.get(text.split(' ')[at] ?? '') === words[at];
    }).length;
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
