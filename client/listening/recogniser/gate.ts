/**
 * How well the words explain the sound: the score of the grammar's best path less that of the phone loop, for each
 * frame of speech. The loop may follow any sounds, so the difference is about the cost of having to keep to sentences:
 * small for speech within the grammar, large for anything else.
 */
export function marginOf(grammarScore: number, loopScore: number, speechFrames: number): number {
  return (grammarScore - loopScore) / Math.max(1, speechFrames);
}

/** Where a model's margins are cut. Calibrated on people, never on synthetic voices: those fit the loop too well. */
export interface Gate {
  /** Below this the sound is no sentence of the grammar, however long it is. */
  readonly reject: number;
  /**
   * How much more is asked of the shortest utterance, for each factor e by which the grammar has more words than the
   * ten digits; fades until `LONG`. A short foreign word fits something in a wide grammar, and nothing in a narrow one.
   */
  readonly short: number;
  /** Below this what is taken fits badly enough that a value in it is asked, not logged. */
  readonly doubt: number;
  /**
   * By how much of the score, in all, a sentence must fit better than it would with another number in the same place;
   * else both are asked.
   */
  readonly rival: number;
  /** From this on the expected grammar's words are taken without asking the whole grammar. */
  readonly sure: number;
  /** How many units of margin change the odds of being right by e. */
  readonly scale: number;
  /** Mean cepstrum of the speech it was calibrated on: what the first utterance of all is decoded under. */
  readonly mean: readonly number[];
}

/** What an utterance is held against besides its margin: its frames of speech, and the words of the grammar. */
export interface Trial {
  readonly speechFrames: number;
  readonly words: number;
}

/** Frames of speech from which on an utterance is not short: two seconds. */
const LONG = 200;
/** A grammar of so few words leaves nothing to chance. */
const FEW_WORDS = 10;

/** The margin that an utterance must have. */
export const cutOf = (gate: Gate, { speechFrames, words }: Trial): number =>
  gate.reject + gate.short * Math.log(Math.max(1, words / FEW_WORDS)) * Math.max(0, 1 - speechFrames / LONG);

/** Frames of speech that even a slow talker does not go beyond: one word said alone, and for each letter of the words. */
const SLOWEST = { alone: 60, letter: 9 } as const;

/**
 * Whether so much speech holds more than these words: a rattle that the noise gate takes for a voice goes on for seconds,
 * and the grammar makes one word of it. People's right orders stay below 7 frames a letter, quiet and in noise.
 */
export const saysTooLittle = (text: string, speechFrames: number): boolean =>
  speechFrames > SLOWEST.alone + SLOWEST.letter * text.length;

/** The same where a question is enough: three digits of which two were lost are longer than "two" (57 frames) is. */
const LONG_FOR = { alone: 30, letter: 9 } as const;

/** Whether so much speech may hold more than these words. */
export const maySayMore = (text: string, speechFrames: number): boolean =>
  speechFrames > LONG_FOR.alone + LONG_FOR.letter * text.length;

/** 0…1: an even chance at the cut. */
export function confidenceOf(margin: number, gate: Gate, trial: Trial): number {
  return 1 / (1 + Math.exp(-(margin - cutOf(gate, trial)) / gate.scale));
}
