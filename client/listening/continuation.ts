import type { Expectation } from '../../grammar/phrases/meaning.ts';
import type { Recognition } from './recogniser/recognition.ts';

/** All was said; or all but a fraction of the number at the end; or more is to come, as another digit may. */
export type Ending = 'whole' | 'fraction' | 'open';

/** What was heard, and whether it goes on from the utterance before it. */
export type Heard = Recognition & {
  /**
   * Goes on from the utterance before it, which was given when it was taken for the whole, and holds its words too.
   * Where it is not accepted, that one was cut short by something that nobody understood.
   */
  readonly continues?: true;
};

/** An utterance that is over, and may still turn out to have been only the first part of what was said. */
export interface Said {
  readonly text: string;
  readonly accepted: boolean;
  /** In milliseconds of sound since the start. */
  readonly startedMs: number;
  readonly endedMs: number;
  readonly sound: readonly Float32Array[];
  readonly speechFrames: number;
  readonly ending: Ending;
  readonly grammar: string | undefined;
  readonly expectation: Expectation;
  /** In dBFS. */
  readonly loudestDb: number;
}

/** The utterance that has just ended, heard by itself. */
export interface Rest {
  readonly alone: Heard;
  readonly speechFrames: number;
  readonly loudestDb: number;
}

/** A number that goes on so soon after its end is one number. */
const GOES_ON_MS = 1_500;
/** So many frames of speech, no quieter than this below the first part, may be the rest of it, understood or not. */
const REST_FRAMES = 15;
const REST_BELOW_DB = 10;
/** Half a number takes no longer: what went on for more frames of speech, and was not understood, was talk. */
const HALF_FRAMES = 300;

/** Whether this may be the rest of that. */
export const maySoonGoOn = (last: Said | undefined, startedMs: number): last is Said =>
  last !== undefined && startedMs - last.endedMs <= GOES_ON_MS;

/**
 * What followed so soon that it may be the rest of a number, whose first part was given already.
 *
 * @param goesOn whether these words behind the first part make another number of its own
 * @param decodedAsOne the sound of both parts, under the grammar of the first
 * @returns what was heard, and whether it is of the sound of both
 */
export function heardAsRest(
  last: Said,
  { alone, speechFrames, loudestDb }: Rest,
  goesOn: (rest: string) => boolean,
  decodedAsOne: () => Heard,
): { readonly heard: Heard; readonly ofBoth: boolean } {
  const asItIs = { heard: alone, ofBoth: false };
  if (last.ending === 'whole' || (alone.accepted && last.accepted && !goesOn(alone.text))) return asItIs;
  if (!last.accepted && last.speechFrames > HALF_FRAMES) return asItIs;
  const whole = decodedAsOne();
  // What was not understood may have been the first part of this.
  if (!last.accepted) {
    const isLonger = whole.text !== alone.text && (!alone.accepted || whole.text.endsWith(` ${alone.text}`));
    if (whole.accepted && isLonger) return { heard: { ...whole, doubtful: true }, ofBoth: true };
    // As loud as this, and nobody knows what it was: the first half of a number may be lost.
    return isVoice(last, loudestDb) ? { heard: { ...alone, doubtful: true }, ofBoth: false } : asItIs;
  }
  const rest = whole.text.slice(last.text.length);
  if (whole.accepted && whole.text.startsWith(`${last.text} `) && goesOn(rest.trim()))
    return { heard: { ...whole, continues: true }, ofBoth: true };
  if (alone.accepted)
    return { heard: { ...alone, text: `${last.text} ${alone.text}`, doubtful: true, continues: true }, ofBoth: false };
  const isOpen = last.ending === 'open' && isVoice({ speechFrames, loudestDb }, last.loudestDb);
  return isOpen ? { heard: { ...alone, continues: true }, ofBoth: false } : asItIs;
}

/** Whether it is long and loud enough to be of the voice that is as loud as that. */
const isVoice = ({ speechFrames, loudestDb }: Pick<Said, 'speechFrames' | 'loudestDb'>, besideDb: number): boolean =>
  speechFrames >= REST_FRAMES && loudestDb > besideDb - REST_BELOW_DB;
