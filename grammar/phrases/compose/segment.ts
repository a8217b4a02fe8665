import type { Language, NumberWords, SpokenNumber } from '../language.ts';
import type { Path } from '../match.ts';
import type { FrameId, Tag } from '../tag.ts';
import type { Taken } from '../word-choices.ts';
import { NUMERAL } from '../words.ts';

/** Where a filler or a hesitation stood beside or in a number: a digit may have been lost there. */
export interface Gaps {
  readonly before: boolean;
  readonly inside: boolean;
  readonly after: boolean;
}

/** A number as it was said. */
export interface SaidNumber {
  readonly tag: 'said';
  readonly number: SpokenNumber;
  /** The number words of its language. */
  readonly spokenIn: NumberWords;
  /** The words of the grammar that made it up; empty where it was typed in digits. */
  readonly words: readonly string[];
  readonly gaps: Gaps;
  /** The word of the grammar right before it, if any: "leg one | eighteen". */
  readonly follows: string | undefined;
  /** The words of the number right before it, with an "and" between them: "one twenty | two". */
  readonly runsFrom?: readonly string[];
}
export type Item =
  | Exclude<Tag, { tag: 'number' | 'dictated' | 'frame' | 'supplied' | 'restart' | 'parts' }>
  | SaidNumber
  | { readonly tag: 'text'; readonly text: string };

/** A piece of an utterance that means one thing: what its tags and numbers said, in the order of the words. */
export interface Segment {
  readonly frame: FrameId;
  readonly items: readonly Item[];
  /** The speaker began again inside it, what was said first does not count: `marked` where words say so of a value. */
  readonly restarted: 'marked' | 'unmarked' | undefined;
  /** An "and" within it joined nothing, or it ends in one: a word was lost there ("is pulled and"). */
  readonly cut: boolean;
  /** A comma stood behind its first word: "no, leg two". */
  readonly paused: boolean;
  /** Behind its value a word ended it, or a comma, and a place came then: "zero now leg two". */
  readonly parted: 'word' | 'stop' | undefined;
  /** Its first word of the grammar. */
  readonly opens: string | undefined;
}

export const numbersOf = (items: readonly Item[]): SaidNumber[] => items.filter((item) => item.tag === 'said');

/** No filler or hesitation beside or in any number of these. */
export const unbroken = (numbers: readonly SaidNumber[]): boolean =>
  numbers.every(({ gaps }) => !gaps.before && !gaps.inside && !gaps.after);

/**
 * Cuts a path into its segments. Undefined where the number words of some segment are not one number.
 *
 * @param typed no filler stands where a digit was misheard
 */
export function segmentsOf(path: Path, { numbers, words }: Language, typed = false): Segment[] | undefined {
  const segments: Segment[] = [];
  let items: Item[] = [];
  let restarted: Segment['restarted'];
  let number: NumberSpan | undefined;
  let dictated: string[] | undefined;
  let follows: string | undefined;
  let filled = false;
  let echo: readonly string[] | undefined;
  let running: readonly string[] | undefined;
  let paused = false;
  let joining = false;
  let cut = false;
  let opens: string | undefined;
  let swallowed = false;
  let article = false;
  let past: Segment['parted'];
  let parted: Segment['parted'];

  for (const { tags, taken } of path.steps) {
    for (const tag of tags) {
      switch (tag.tag) {
        case 'number': {
          if (tag.edge === 'begin') {
            // "down two hundred": a digit that was heard is no "to" before a number.
            if (swallowed) return undefined;
            number = new NumberSpan(numbers, follows, filled, running);
            break;
          }
          const said = number?.close();
          if (said === undefined || (echo !== undefined && !echoes(echo, said.words))) return undefined;
          items.push(said);
          running = said.words.length === 0 ? undefined : said.words;
          number = undefined;
          echo = undefined;
          break;
        }
        case 'dictated':
          if (tag.edge === 'end') items.push({ tag: 'text', text: (dictated ?? []).join(' ') });
          dictated = tag.edge === 'begin' ? [] : undefined;
          break;
        case 'restart':
          if (tag.of === 'echo') echo = numbersOf(items).at(-1)?.words ?? [];
          items = items.filter((item) => tag.of !== 'all' && item.tag !== 'said' && item.tag !== 'unit');
          restarted = tag.of === 'value' && restarted !== 'unmarked' ? 'marked' : 'unmarked';
          break;
        case 'frame':
          segments.push({ frame: tag.frame, items, restarted, cut, paused, parted, opens });
          past = undefined;
          parted = undefined;
          opens = undefined;
          items = [];
          restarted = undefined;
          paused = false;
          joining = false;
          cut = false;
          break;
        case 'parts':
          if (isValueFirst(items)) past = 'word';
          break;
        case 'supplied':
          break;
        default:
          if ((tag.tag === 'tip' || tag.tag === 'named') && isValueFirst(items)) parted ??= past;
          items.push(tag);
      }
    }
    if (taken === undefined) continue;
    const isFirst = isValueFirst(items) || (number !== undefined && items.length === 0);
    if (isFirst && !('word' in taken) && words.parting?.has(taken.heard.text) === true) past = 'word';
    else if (isFirst && taken.heard.stop === true) past ??= 'stop';
    // "at the nothing": the place behind an article was lost.
    cut ||= article && 'word' in taken && words.placeless?.has(taken.word) === true;
    article = !('word' in taken) && words.articles?.has(taken.heard.text) === true;
    swallowed = taken.how === 'homophone' && numbers.all.has(taken.heard.text) && !numbers.all.has(taken.word);
    dictated?.push(taken.heard.text);
    if (number?.take(taken) === false) return undefined;
    paused ||= taken.heard.pause === true;
    if ('word' in taken) {
      cut ||= joining;
      joining = false;
      opens ??= taken.word;
    } else joining ||= opens !== undefined && words.joining.has(taken.heard.text);
    if (number === undefined && 'word' in taken)
      running = taken.word === numbers.and && running ? [...running, taken.word] : undefined;
    // "pole uh one | point two": the digit behind a filler may belong to the number, not to the place.
    // "a about two hundred": what a filler hid before an "about" it hides still.
    const open = 'word' in taken && (numbers.ofPlaces.has(taken.word) || words.about.has(taken.word));
    const isFiller = typed && (taken.how === 'filler' || (taken.how === 'hesitation' && follows === undefined));
    filled = (!('word' in taken) && !isFiller) || (filled && (open || isFiller));
    if ('word' in taken) follows = taken.word;
  }
  const ending = path.steps.findLast(({ taken }) => taken !== undefined)?.taken;
  const calls = ending !== undefined && !('word' in ending) && words.calling.has(ending.heard.text);
  return calls ? segments.with(-1, { ...segments.at(-1)!, cut: true }) : segments;
}

/** A value was said, and no place before it. */
const isValueFirst = (items: readonly Item[]): boolean =>
  items.some(({ tag }) => tag === 'said' || tag === 'value') &&
  !items.some(({ tag }) => tag === 'tip' || tag === 'named');

/** "one eight" before "one eighteen": a number broken off and begun again. */
function echoes(broken: readonly string[], again: readonly string[]): boolean {
  return broken.length > 0 && broken.length <= again.length && broken.every((word, at) => again[at]!.startsWith(word));
}

/** The words of one number while a path goes through it. */
class NumberSpan {
  private readonly words: string[] = [];
  private numeral: number | undefined;
  private inside = false;
  private trailing = false;
  private cut = false;
  private readonly spokenIn: NumberWords;
  private readonly follows: string | undefined;
  private readonly before: boolean;
  private readonly runsFrom: readonly string[] | undefined;

  constructor(
    spokenIn: NumberWords,
    follows: string | undefined,
    before: boolean,
    runsFrom: readonly string[] | undefined,
  ) {
    this.spokenIn = spokenIn;
    this.follows = follows;
    this.runsFrom = runsFrom;
    this.before = before;
  }

  /** False where a word was passed over within the number: what is on its two sides is not one number. */
  take(taken: Taken): boolean {
    if (!('word' in taken)) {
      this.trailing = true;
      this.cut ||= taken.how === 'skipped';
      return true;
    }
    if (this.trailing) this.inside = true;
    this.trailing = false;
    if (taken.word === NUMERAL) this.numeral = taken.heard.numeral;
    else this.words.push(taken.word);
    return !this.cut;
  }

  close(): SaidNumber | undefined {
    const number = this.numeral === undefined ? this.spokenIn.read(this.words) : this.typed(this.numeral);
    if (number === undefined) return undefined;
    return {
      tag: 'said',
      number,
      spokenIn: this.spokenIn,
      words: this.numeral === undefined ? this.words : [],
      // Even a closing "okay" behind a number may stand where a digit was.
      gaps: { before: this.before, inside: this.inside, after: this.trailing },
      follows: this.follows,
      ...(this.runsFrom && { runsFrom: this.runsFrom }),
    };
  }

  private typed(value: number): SpokenNumber {
    const minus = this.spokenIn.negates(this.words);
    return { value: minus && value !== 0 ? -value : value, form: 'numeral' };
  }
}
