import type { Path } from '../match.ts';
import { readNumber, type SpokenNumber } from '../numbers/read-number.ts';
import type { FrameId, Tag } from '../tag.ts';

/** A number as it was said. */
export interface SaidNumber {
  readonly tag: 'said';
  readonly number: SpokenNumber;
  /** The words of the grammar that made it up; empty where it was typed in digits. */
  readonly words: readonly string[];
  /** False where a filler or a hesitation stood inside it or a hesitation behind it: digits may be missing. */
  readonly clean: boolean;
  /** The word right before it, if any: "leg one | eighteen". */
  readonly after: string | undefined;
}
export type Item =
  | Exclude<Tag, { tag: 'number' | 'dictated' | 'frame' | 'supplied' }>
  | SaidNumber
  | { tag: 'text'; text: string };

/** A piece of an utterance that means one thing: what its tags and numbers said, in the order of the words. */
export interface Segment {
  readonly frame: FrameId;
  readonly items: readonly Item[];
}

/** Cuts a path into its segments. Undefined where the number words of some segment are not one number. */
export function segmentsOf(path: Path): Segment[] | undefined {
  const segments: Segment[] = [];
  let items: Item[] = [];
  let open:
    | { words: string[]; numeral?: number; clean: boolean; filler: boolean; after: string | undefined }
    | undefined;
  let dictated: string[] | undefined;
  let before: string | undefined;

  for (const { tags, taken } of path.steps) {
    for (const tag of tags) {
      if (tag.tag === 'number' && tag.edge === 'begin') open = { words: [], clean: true, filler: false, after: before };
      else if (tag.tag === 'number') {
        const number = open?.numeral === undefined ? readNumber(open?.words ?? []) : numeral(open.numeral);
        if (open === undefined || number === undefined) return undefined;
        items.push({ tag: 'said', number, words: open.words, clean: open.clean, after: open.after });
        open = undefined;
      } else if (tag.tag === 'dictated' && tag.edge === 'begin') dictated = [];
      else if (tag.tag === 'dictated') {
        items.push({ tag: 'text', text: (dictated ?? []).join(' ') });
        dictated = undefined;
      } else if (tag.tag === 'frame') {
        segments.push({ frame: tag.frame, items });
        items = [];
      } else if (tag.tag !== 'supplied') items.push(tag);
    }
    if (taken === undefined) continue;
    dictated?.push(taken.heard.text);
    const word = 'word' in taken ? taken.word : undefined;
    if (word !== undefined) before = word;
    if (open === undefined) continue;
    if (word === undefined) {
      open.filler = true;
      if (taken.how === 'hesitation' && open.words.length + (open.numeral === undefined ? 0 : 1) > 0)
        open.clean = false;
    } else {
      if (open.filler && open.words.length > 0) open.clean = false;
      if (word === '#')
        open.numeral =
          (open.words.includes('minus') || open.words.includes('negative') ? -1 : 1) * taken.heard.numeral!;
      else open.words.push(word);
      open.filler = false;
    }
  }
  return segments;
}

function numeral(value: number): SpokenNumber {
  return { value, form: 'numeral' };
}
