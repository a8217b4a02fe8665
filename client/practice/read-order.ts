import type { Expression } from '../../grammar/phrases/expression.ts';
import { WRITTEN_ENGLISH } from '../../grammar/phrases/languages/english/written-english.ts';
import { pattern } from '../../grammar/phrases/pattern.ts';
import { tokenise } from '../../grammar/phrases/tokenise.ts';
import { FAULTS, type FaultId } from '../../grammar/vocabulary/faults.ts';
import {
  DIAL_TO,
  DIALS,
  DISCHARGED_SAID,
  type DialId,
  GIVE_UP,
  HINT,
  LOOK_AT,
  LOOKS_SAID,
  METER_ON_SOURCE,
  MINUTES,
  NONE_YET,
  ON_THE_BENCH,
  PROBES_ON,
  READ_IT,
  SUSPECT_IS,
  WAIT,
} from '../../grammar/vocabulary/practice-orders.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import { isAmong, numberOf } from './spoken-count.ts';

/** What is said in an exercise alone. */
export type Order =
  | { readonly order: 'dial'; readonly dial: DialId }
  | { readonly order: 'look'; readonly look: TestId }
  | { readonly order: 'suspect'; readonly suspect: FaultId | 'none-yet' | number }
  /** Minutes, 1 to 60. */
  | { readonly order: 'wait'; readonly minutes: number }
  | { readonly order: 'meter-on-source' | 'read' | 'discharged' | 'hint' | 'give-up' };

const parsed = new Map<string, Expression>();
function expressionOf(text: string): Expression {
  const known = parsed.get(text) ?? pattern(text);
  parsed.set(text, known);
  return known;
}

/** Where the words of an expression can end when they begin at a place; tables of orders hold no rules and no repeats. */
function endsOf(expression: Expression, words: readonly string[], at: number): readonly number[] {
  switch (expression.kind) {
    case 'word':
      return words[at] === expression.word ? [at + 1] : [];
    case 'sequence':
      return expression.items.reduce<readonly number[]>(
        (starts, item) => [...new Set(starts.flatMap((start) => endsOf(item, words, start)))],
        [at],
      );
    case 'alternative':
      return [...new Set(expression.items.flatMap((item) => endsOf(item, words, at)))];
    case 'optional':
      return [at, ...endsOf(expression.item, words, at)];
    default:
      return [];
  }
}

/** Minutes that are let pass at once. */
const MOST_MINUTES = 60;

const isWhole = (say: string, words: readonly string[], from: number): boolean =>
  endsOf(expressionOf(say), words, from).includes(words.length);

/** The words behind a beginning, each way it can be read. */
const behind = (before: string, words: readonly string[]): readonly number[] =>
  endsOf(expressionOf(before), words, 0).filter((end) => end < words.length);

const wordsOf = (text: string): readonly string[] => tokenise(text, WRITTEN_ENGLISH).map((word) => word.text);

/** An order of an exercise; undefined where the words are of the visit. */
export function readOrder(text: string): Order | undefined {
  const words = wordsOf(text);
  if (isWhole(HINT, words, 0)) return { order: 'hint' };
  if (isWhole(GIVE_UP, words, 0)) return { order: 'give-up' };
  if (isWhole(READ_IT, words, 0)) return { order: 'read' };
  if (isWhole(DISCHARGED_SAID, words, 0)) return { order: 'discharged' };
  if (isWhole(METER_ON_SOURCE, words, 0)) return { order: 'meter-on-source' };
  if (isWhole(NONE_YET, words, 0)) return { order: 'suspect', suspect: 'none-yet' };
  for (const at of behind(DIAL_TO, words)) {
    const dial = DIALS.find(({ say }) => isWhole(say, words, at));
    if (dial !== undefined) return { order: 'dial', dial: dial.id };
  }
  const minutes = minutesIn(words);
  if (minutes !== undefined) return { order: 'wait', minutes };
  for (const at of behind(LOOK_AT, words)) {
    const look = LOOKS_SAID.find(({ say }) => isWhole(say, words, at));
    if (look !== undefined) return { order: 'look', look: look.test };
  }
  for (const at of behind(SUSPECT_IS, words)) {
    const suspect = suspectIn(words.slice(at).join(' '));
    if (suspect !== undefined) return { order: 'suspect', suspect };
  }
  return undefined;
}

/** "Wait five minutes", "let 15 minutes pass". */
function minutesIn(words: readonly string[]): number | undefined {
  for (const at of behind(WAIT, words))
    for (let end = at + 1; end < words.length; end += 1) {
      const minutes = numberOf(words.slice(at, end));
      if (minutes !== undefined && minutes <= MOST_MINUTES && isWhole(MINUTES, words, end)) return minutes;
    }
  return undefined;
}

/** A suspect by its number in the list or by its name. */
export function suspectIn(text: string): FaultId | 'none-yet' | number | undefined {
  const words = wordsOf(text);
  if (isWhole(NONE_YET, words, 0)) return 'none-yet';
  return numberOf(words) ?? FAULTS.find(({ name }) => isAmong(wordsOf(name), words))?.id;
}

/** A place as it was said, with what was said beside it. */
export interface SaidPlace {
  readonly place: string;
  /** The part is taken out for it. */
  readonly bench: boolean;
  /** What the meter is to be set to, where that was said. */
  readonly dial?: DialId;
}

/** The place behind "probes on"; undefined where the words are others. */
export function probesPut(text: string): string | undefined {
  const words = wordsOf(text);
  const at = Math.max(0, ...behind(PROBES_ON, words));
  return at === 0 ? undefined : words.slice(at).join(' ');
}

/** Takes off what is said of the meter and of the part beside a place: "ohms common to run", "fan section microfarads on the bench". */
export function splitPlace(text: string): SaidPlace {
  const words = wordsOf(text);
  let [from, to, bench] = [0, words.length, false];
  for (let at = 1; at < to; at += 1) {
    if (!isWhole(ON_THE_BENCH, words, at)) continue;
    [to, bench] = [at, true];
  }
  const said = words.slice(0, to);
  const before = DIALS.flatMap(({ id, say }) => behind(say, said).map((end) => ({ id, end })));
  const ahead = before.sort((a, b) => b.end - a.end)[0];
  if (ahead !== undefined) from = ahead.end;
  for (let at = from + 1; ahead === undefined && at < said.length; at += 1) {
    const dial = DIALS.find(({ say }) => isWhole(say, said, at));
    if (dial !== undefined) return { place: said.slice(0, at).join(' '), bench, dial: dial.id };
  }
  if (ahead === undefined) return bench ? { place: said.join(' '), bench } : { place: text, bench };
  return { place: said.slice(from).join(' '), bench, dial: ahead.id };
}
