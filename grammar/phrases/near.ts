import { NEGATIONS, UNREAL_WORDS } from '../vocabulary/fillers.ts';
import { NUMBER_WORDS } from '../vocabulary/number-words.ts';
import { UNIT_NAMES } from '../vocabulary/units.ts';
import nearWords from './near-words/near-words.json' with { type: 'json' };
import type { Near } from './word-choices.ts';

/** For each word of the grammar, the words that sound near it with their distance in hundredths; one line a word. */
export const NEAR_WORDS = Object.entries(nearWords).reduce((text, [word, near]) => `${text}${word} ${near}\n`, '\n');

/** Words that repair leaves alone. */
const kept = new Set([...NUMBER_WORDS, ...NEGATIONS, ...UNREAL_WORDS, ...UNIT_NAMES]);

/** A changed word costs this much besides its distance. */
const CHANGED = 1;
const MISSPELT = 1.3;
/** Heard words whose neighbours are kept. */
const REMEMBERED = 1000;

/** The table's lines that name `heard`, read where it is asked for: the whole is never taken apart. */
function soundingLike(heard: string): Near[] {
  const near: Near[] = [];
  for (let at = NEAR_WORDS.indexOf(` ${heard}:`); at >= 0; at = NEAR_WORDS.indexOf(` ${heard}:`, at + 1)) {
    const line = NEAR_WORDS.lastIndexOf('\n', at) + 1;
    const word = NEAR_WORDS.slice(line, NEAR_WORDS.indexOf(' ', line));
    near.push({ word, cost: CHANGED + Number.parseInt(NEAR_WORDS.slice(at + heard.length + 2), 10) / 100 });
  }
  return near;
}

/**
 * Words of the grammar that a heard word may have been: those that sound near it by the CMU dictionary or, for a word
 * that no dictionary has, those spelt near it. Never for a number word or a negation, and never one of these.
 */
export function makeNear(words: ReadonlySet<string>): (heard: string) => readonly Near[] {
  const known = new Map<string, readonly Near[]>();
  const long = [...words].filter((word) => word.length >= 4 && !kept.has(word));
  return (heard) => {
    let near = known.get(heard);
    if (near === undefined) {
      near = kept.has(heard) ? [] : soundingLike(heard);
      const strange = near.length === 0 && heard.length >= 4 && heard.length <= 20 && !words.has(heard);
      if (strange && !kept.has(heard)) near = spelling(heard, long);
      if (known.size < REMEMBERED) known.set(heard, near);
    }
    return near;
  };
}

function spelling(heard: string, words: readonly string[]): Near[] {
  return words.flatMap((word) => {
    const allowed = word.length >= 8 ? 2 : 1;
    const edits = editsWithin(heard, word, allowed);
    return edits === undefined ? [] : [{ word, cost: MISSPELT + 0.3 * (edits - 1) }];
  });
}

/** Letters changed, added or left out between two spellings; undefined for more than `allowed`. */
function editsWithin(one: string, other: string, allowed: number): number | undefined {
  if (Math.abs(one.length - other.length) > allowed) return undefined;
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (let i = 0; i < one.length; i += 1) {
    const next = [i + 1];
    for (let j = 0; j < other.length; j += 1) {
      const change = one[i] === other[j] ? 0 : 1;
      next.push(Math.min(row[j]! + change, row[j + 1]! + 1, next[j]! + 1));
    }
    row = next;
    if (Math.min(...row) > allowed) return undefined;
  }
  const edits = row.at(-1)!;
  return edits <= allowed ? edits : undefined;
}
