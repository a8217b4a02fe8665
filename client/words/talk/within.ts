import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import { capital } from '../capital.ts';

/** So many words may a prompt have: about ten seconds beside a fan. Our choice. */
export const MOST_WORDS = 25;

export const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;

/**
 * As many sentences as leave a prompt short enough, the first always; how many more there are is said, and they stand on
 * the screen. @param besides the words that stand around them
 */
export function within(sentences: readonly string[], besides: string): string {
  const room = MOST_WORDS - wordsIn(besides);
  const [first = '', ...others] = sentences;
  const told = [clipped(first, others.length === 0 ? room : room - MORE)];
  for (const [at, one] of others.entries()) {
    const left = others.length - at - 1;
    if (wordsIn([...told, one].join(' ')) > room - (left === 0 ? 0 : MORE)) break;
    told.push(one);
  }
  const more = sentences.length - told.length;
  return more <= 0 ? told.join(' ') : `${told.join(' ')} ${capital(sayNumber(more))} more.`;
}

/** Words of "two more". */
const MORE = 2;

/** A list that is too long for its sentence ends behind what fits. */
function clipped(sentence: string, room: number): string {
  if (wordsIn(sentence) <= room) return sentence;
  const pieces = sentence.split(/(?<=[,;:]) /);
  const kept: string[] = [];
  for (const piece of pieces) {
    if (kept.length > 0 && wordsIn([...kept, piece].join(' ')) > room - MORE) break;
    kept.push(piece);
  }
  return `${kept.join(' ').replace(/[,;:]$/, '')} and more.`;
}
