import type { CommonWords } from '../language.ts';
import { type Draft, sure } from './draft.ts';
import type { Segment } from './segment.ts';

/** Words under a heading of their own. */
export function composeDictation(segment: Segment, { headings }: CommonWords): Draft[] {
  const heading = segment.items.find((item) => item.tag === 'dictated-as');
  const text = textOf(segment);
  if (heading === undefined || text === undefined) return [];
  const isHeading = [...headings].some((word) => text.startsWith(`${word} `));
  return isHeading ? [] : sure({ kind: 'dictated', as: heading.as, text });
}

/** A note, or what is said of a value as it moves: without the word that joins it to what was said before. */
export function composeNote(segment: Segment, words: CommonWords): Draft[] {
  const text = textOf(segment);
  if (text === undefined) return [];
  const [first = ''] = text.split(' ', 1);
  const own = words.remarks.has(first) && text !== first ? text.slice(first.length + 1) : text;
  return sure({
    kind: 'note',
    text: words.ending === undefined ? own : own.replaceAll(` ${words.ending}`, words.ending),
  });
}

const textOf = ({ items }: Segment): string | undefined => items.find((item) => item.tag === 'text')?.text;
