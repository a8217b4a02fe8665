import type { Language } from './language.ts';
import type { Near } from './word-choices.ts';

/** A changed word costs this much besides its distance. */
const CHANGED = 1;
const MISSPELT = 1.3;
/** Heard words whose neighbours are kept. */
const REMEMBERED = 1000;

/** The table's lines that name `heard`, read where it is asked for: the whole is never taken apart. */
function soundingLike(lines: string, heard: string): Near[] {
  const near: Near[] = [];
  for (let at = lines.indexOf(` ${heard}:`); at >= 0; at = lines.indexOf(` ${heard}:`, at + 1)) {
    const line = lines.lastIndexOf('\n', at) + 1;
    const word = lines.slice(line, lines.indexOf(' ', line));
    near.push({ word, cost: CHANGED + Number.parseInt(lines.slice(at + heard.length + 2), 10) / 100 });
  }
  return near;
}

/**
 * Words of the grammar that a heard word may have been: those that sound near it by the language's list or, for a word
 * that no dictionary has, those spelt near it. Never for a number word or a negation, and never one of these.
 */
export function makeNear(words: ReadonlySet<string>, language: Language): (heard: string) => readonly Near[] {
  const { numbers, words: said } = language;
  /** Repair leaves these alone. */
  const isKept = (word: string): boolean => numbers.all.has(word) || said.turning.has(word);
  const known = new Map<string, readonly Near[]>();
  const long = [...words].filter((word) => word.length >= 4 && !isKept(word));
  return (heard) => {
    let near = known.get(heard);
    if (near === undefined) {
      near = isKept(heard) ? [] : soundingLike(language.near, heard);
      const strange = near.length === 0 && heard.length >= 4 && heard.length <= 20 && !words.has(heard);
      if (strange && !isKept(heard)) near = spelling(heard, long);
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
