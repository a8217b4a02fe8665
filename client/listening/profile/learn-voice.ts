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

/** A word must have been said so often for its sounds to be learnt from. */
const OFTEN = 3;
/** How many ways of saying a word are learnt, and how much of the score each must bring where it was not taken from. */
const MOST_FORMS = 2;
const WORTH = 100;

/**
 * Learns how a person says the words of some sentences: the mean of the voice, and for each word what sounds were heard
 * in its place. A form is kept only where it fits the person's other tries of the word better than the dictionary does.
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
    const learner = new FormLearner(decoder, mean);
    const learnt = [...placesOf(said)].flatMap(([word, places]) => {
      const forms = places.length < OFTEN ? [] : learner.learn(word, places);
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

/** Sounds that may be how somebody says a word, and how well they fit each of the tries. */
interface Form {
  readonly sounds: string;
  readonly fits: readonly number[];
}

class FormLearner {
  readonly #decoder: GrammarDecoder;
  readonly #mean: readonly number[];
  #count = 0;

  constructor(decoder: GrammarDecoder, mean: readonly number[]) {
    this.#decoder = decoder;
    this.#mean = mean;
  }

  /** The forms that fit a person's tries of a word better than what the dictionary has, best first. */
  learn(word: string, places: readonly Place[]): readonly string[] {
    const heard = new Set(places.map((place) => this.#soundsAt(place)).filter((sounds) => sounds !== ''));
    const forms = [...heard].map((sounds): Form => ({ sounds, fits: this.#fits(this.#name(sounds), places) }));
    let fits = this.#fits(word, places);
    const chosen: string[] = [];
    while (chosen.length < MOST_FORMS) {
      const [best] = forms
        .map((form) => ({ form, gain: gainElsewhere(form.fits, fits) }))
        .sort((a, b) => b.gain - a.gain);
      if (best === undefined || best.gain < WORTH) break;
      chosen.push(best.form.sounds);
      fits = fits.map((fit, index) => Math.max(fit, best.form.fits[index]!));
    }
    return chosen;
  }

  #decode(network: Automaton, sound: Float32Array): { readonly text: string; readonly score: number } {
    this.#decoder.setNetwork(network);
    this.#decoder.begin(this.#mean);
    this.#decoder.feed(sound);
    return this.#decoder.end();
  }

  /** The sounds in the place of one word of a sentence; empty where it did not come out. */
  #soundsAt({ words, at, sound }: Place): string {
    const { text } = this.#decode(anySoundsAt(words, at), sound);
    const heard = text.split(' ').slice(at, text.split(' ').length - (words.length - at - 1));
    return heard.map(phoneOf).join(' ');
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
