import { upperSwing } from '../sound/upper-band.ts';
import { joined, type Recogniser } from './recogniser.ts';
import { type Recognition, type Rival, type SoFar, textsOf } from './recognition.ts';
import { differByOneMore } from './rivals.ts';

/** What hearing needs of a recogniser, be it one model or two. */
export type Recognising = Pick<
  Recogniser,
  'setEverything' | 'setExpected' | 'begin' | 'feed' | 'partial' | 'drop' | 'end' | 'close'
>;

interface Expected {
  readonly jsgf: string | undefined;
  readonly alone: boolean;
}

/** Share of its confidence that is left to a sentence which may as well be another. */
const DOUBTED = 0.5;
/** A rival that is so far behind by the first model's score is not put to the second; nor asked where that heard it. */
const CLEAR = 500;
/** By how much of the score both together must put a sentence before a rival; else both are asked. */
const CLEAR_TO_BOTH = 300;
/**
 * The same for a rival with a word more or less: squeezed between two others a word leaves its mark in few frames, and is
 * no rival for fitting nearly as well there ("one point one" and "one point two one").
 */
const CLEAR_OF_SLIP = 50;
/** Margins of the first model between which a sentence that nobody waits for is heard by the second too. */
const UNCLEAR = { least: -12, most: 6 } as const;
/**
 * Below this swing of its upper band in dB a sound is of 8 kHz, above that other it is of 16. Measured: 8 kHz of
 * people 2.4 to 3.1, and to 4.8 with a fan at 10 dB; 16 kHz of voices 6 and more for 98 in 100, at 10 dB 4 and more for 95.
 */
const SWING = { narrow: 4, wide: 6 } as const;
/** How much the latest utterance counts in what the sound is taken for. */
const LATEST = 0.5;

/**
 * Two acoustic models, of 16 and of 8 kHz. The one that the sound has the band for hears: a telephone line or a narrow
 * headset has nothing above 4 kHz, and the 16 kHz model is the worse for it. Where it is the 16 kHz one and a rival comes
 * near to what it heard, the other says which of them fits the sound better; what is not clear to both together is given
 * with its rival, so that it is asked and not logged. Besides that only one of them works.
 */
export class TwoModels implements Recognising {
  readonly #wide: Recogniser;
  readonly #narrow: Recogniser;
  #hears: Recogniser;
  #everything: string | undefined;
  #expected: Expected | undefined;
  /** What each was given to hear by; the one that does not hear is given nothing until it does. */
  readonly #given = new Map<
    Recogniser,
    { readonly everything: string | undefined; readonly expected: Expected | undefined }
  >();
  #swing: number | undefined;
  #kept: Float32Array[] = [];

  constructor(wide: Recogniser, narrow: Recogniser) {
    this.#wide = wide;
    this.#narrow = narrow;
    this.#hears = wide;
  }

  setEverything(jsgf: string): void {
    this.#everything = jsgf;
    this.#give(this.#hears);
  }

  setExpected(jsgf: string | undefined, alone = false): void {
    this.#expected = { jsgf, alone };
    this.#give(this.#hears);
  }

  begin(): void {
    this.#kept = [];
    this.#hears.begin();
  }

  feed(samples: Float32Array): void {
    this.#kept.push(samples);
    this.#hears.feed(samples);
  }

  partial(speechFrames: number): SoFar {
    return this.#hears.partial(speechFrames);
  }

  end(speechFrames: number): Recognition {
    const sound = joined(this.#kept);
    const before = this.#hears;
    this.#choose(sound);
    const heard = before.end(speechFrames);
    if (this.#hears !== before) return this.#heardBy(this.#hears, sound, speechFrames);
    return this.#hears === this.#wide ? this.#settled(this.#heardByBoth(heard, sound, speechFrames), sound) : heard;
  }

  drop(): void {
    this.#kept = [];
    this.#hears.drop();
  }

  close(): void {
    for (const model of [this.#wide, this.#narrow]) model.close();
  }

  /** Which of the two hears from now on. */
  #choose(sound: Float32Array): void {
    const swing = upperSwing(sound);
    this.#swing = this.#swing === undefined ? swing : this.#swing + LATEST * (swing - this.#swing);
    if (this.#swing < SWING.narrow) this.#hears = this.#narrow;
    if (this.#swing > SWING.wide) this.#hears = this.#wide;
  }

  #give(model: Recogniser): void {
    const given = this.#given.get(model);
    const [everything, expected] = [this.#everything, this.#expected];
    if (everything !== undefined && everything !== given?.everything) model.setEverything(everything);
    if (expected !== undefined && expected !== given?.expected) model.setExpected(expected.jsgf, expected.alone);
    this.#given.set(model, { everything, expected });
  }

  #heardBy(model: Recogniser, sound: Float32Array, speechFrames: number): Recognition {
    this.#give(model);
    model.begin();
    model.feed(sound);
    return model.end(speechFrames);
  }

  /**
   * An order that is not clear is heard by both. What both hear alike is taken where it fits one of them; of two sentences
   * that one is taken which fits better by both together, and the other is its rival.
   */
  #heardByBoth(heard: Recognition, sound: Float32Array, speechFrames: number): Recognition {
    const isUnclear = heard.margin >= UNCLEAR.least && heard.margin < UNCLEAR.most;
    if (heard.pass === 'expected' || !isUnclear) return heard;
    const other = this.#heardBy(this.#narrow, sound, speechFrames);
    if (other.text === '') return heard;
    const accepted = heard.accepted || other.accepted;
    if (other.text === heard.text) return { ...heard, accepted };
    const sentences = [heard.text, other.text];
    const [wide, narrow] = [this.#wide, this.#narrow].map((model) => model.fitsOf(sound, sentences));
    const ahead = (fits: readonly number[] | undefined): number => (fits?.[0] ?? 0) - (fits?.[1] ?? 0);
    if (ahead(wide) + ahead(narrow) >= 0)
      return { ...heard, rivals: [...heard.rivals, { text: other.text, behind: ahead(wide), contested: true }] };
    const contested: Rival = { text: heard.text, behind: 0, contested: true };
    const rivals = [contested, ...heard.rivals]
      .filter(({ text }) => text !== other.text)
      .map((rival) => ({ ...rival, behind: rival.behind - ahead(wide) }));
    return { ...heard, text: other.text, accepted, doubtful: true, rivals };
  }

  /** What both together leave of the rivals. */
  #settled(heard: Recognition, sound: Float32Array): Recognition {
    const near = heard.accepted ? heard.rivals.filter(({ behind, contested }) => contested || behind < CLEAR) : [];
    const left = this.#weighed(heard.text, near, sound).filter((rival) => rival.behind < clearOf(heard.text, rival));
    if (left.length === 0) return { ...heard, alternatives: [] };
    return { ...heard, confidence: DOUBTED * heard.confidence, alternatives: textsOf(left) };
  }

  /** How far behind each is by both scores together. */
  #weighed(text: string, rivals: readonly Rival[], sound: Float32Array): readonly Rival[] {
    if (rivals.length === 0) return rivals;
    const [own = 0, ...fits] = this.#narrow.fitsOf(sound, [text, ...rivals.map((rival) => rival.text)]);
    return rivals.map((rival, index) => ({ ...rival, behind: rival.behind + own - (fits[index] ?? own) }));
  }
}

/** By how much of the score both together must put this before its rival. */
function clearOf(text: string, rival: Rival): number {
  if (rival.contested) return CLEAR;
  return differByOneMore(text, rival.text) ? CLEAR_OF_SLIP : CLEAR_TO_BOTH;
}
