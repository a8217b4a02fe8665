import { FILLERS, HESITATIONS } from '../vocabulary/fillers.ts';
import { HOMOPHONES } from '../vocabulary/homophones.ts';
import { NUMBER_WORDS, TEEN_WORDS, UNIT_WORDS } from '../vocabulary/number-words.ts';
import type { Follow, Network, Step } from './network.ts';
import type { Tag } from './tag.ts';
import type { HeardWord } from './tokenise.ts';
import { NUMERAL, POSSESSIVE } from './words.ts';

/** How one heard word was taken. */
export type Taken =
  | { readonly how: 'word' | 'homophone' | 'near'; readonly heard: HeardWord; readonly word: string }
  | { readonly how: 'filler' | 'hesitation' | 'skipped'; readonly heard: HeardWord };

/** One way through the network: every heard word with how it was taken, and the tags passed before each and at the end. */
export interface Path {
  readonly cost: number;
  readonly steps: readonly { readonly tags: readonly Tag[]; readonly taken?: Taken }[];
}

/** A word of the grammar that a heard word may have been, and what the change costs. */
export interface Near {
  readonly word: string;
  readonly cost: number;
}

export interface MatchOptions {
  /** Words that sound near a heard one. Given: the matcher repairs; left out: only what was heard counts. */
  readonly near?: (heard: string) => readonly Near[];
  /** How many paths to keep in one state, and to give back. */
  readonly keep?: number;
}

interface Token {
  readonly state: number;
  readonly cost: number;
  readonly back: Token | undefined;
  readonly tags: readonly Tag[];
  readonly taken: Taken | undefined;
  /** Function words supplied so far. */
  readonly supplied: number;
}

const COST = { homophone: 0.4, filler: 0.4, hesitation: 0.4, skipped: 3 } as const;
const MOST_SUPPLIED = 2;
/** Tokens alive at once; beyond it only the cheapest go on. */
const BEAM = 200;
/** Tokens dearer than the cheapest by more are given up. */
const WIDTH = 5;

const fillers = new Set(FILLERS);
const hesitations = new Set(HESITATIONS);
const numberWords = new Map<number, string[]>();
for (const [word, value] of [...Object.entries(UNIT_WORDS), ...Object.entries(TEEN_WORDS)]) {
  numberWords.set(value, [...(numberWords.get(value) ?? []), word]);
}
const numberNames = new Set(NUMBER_WORDS);
const isNumber = (word: HeardWord): boolean => word.numeral !== undefined || numberNames.has(word.text);

/**
 * The cheapest ways through the network for the heard words, best first; empty where there is none. Without
 * `options.near` only heard words, homophones and fillers are taken; with it, words may be repaired or passed over,
 * never number words.
 */
export function match(network: Network, words: readonly HeardWord[], options: MatchOptions = {}): Path[] {
  const forgiving = options.near !== undefined;
  const keep = options.keep ?? (forgiving ? 4 : 12);
  const follow = (state: number): Follow => network.follow(state);
  let alive = expand(
    [{ state: network.start, cost: 0, back: undefined, tags: [], taken: undefined, supplied: 0 }],
    follow,
    keep,
    forgiving,
  );

  for (const word of words.flatMap((heard) => apart(heard, network))) {
    const choices = choicesFor(word, network, options.near);
    const next: Token[] = [];
    for (const token of alive) {
      const after = follow(token.state);
      for (const choice of choices) {
        for (const step of after.byWord.get(choice.word) ?? []) {
          next.push({
            state: step.to,
            cost: token.cost + step.cost + choice.cost,
            back: token,
            tags: step.tags,
            taken: { how: choice.how, heard: word, word: choice.word },
            supplied: token.supplied,
          });
        }
      }
      for (const step of after.anyWord) {
        next.push({
          state: step.to,
          cost: token.cost + step.cost,
          back: token,
          tags: step.tags,
          taken: { how: 'word', heard: word, word: word.text },
          supplied: token.supplied,
        });
      }
      const passed = passOver(word, forgiving);
      if (passed !== undefined) {
        next.push({
          state: token.state,
          cost: token.cost + COST[passed],
          back: token,
          tags: [],
          taken: { how: passed, heard: word },
          supplied: token.supplied,
        });
      }
    }
    alive = expand(next, follow, keep, forgiving);
    if (alive.length === 0) return [];
  }
  return finish(alive, follow, keep);
}

/** "compressor's" → compressor, 's: short for "is", or nothing. */
function apart(word: HeardWord, network: Network): HeardWord[] {
  const stem = /^(.+)'s$/.exec(word.text)?.[1];
  if (stem === undefined || network.words.has(word.text) || !network.words.has(stem)) return [word];
  return [{ text: stem }, { text: POSSESSIVE }];
}

function passOver(word: HeardWord, forgiving: boolean): 'filler' | 'hesitation' | 'skipped' | undefined {
  if (fillers.has(word.text) || word.text === POSSESSIVE) return 'filler';
  if (hesitations.has(word.text)) return 'hesitation';
  return forgiving && !isNumber(word) ? 'skipped' : undefined;
}

interface Choice extends Near {
  readonly how: 'word' | 'homophone' | 'near';
}

function choicesFor(word: HeardWord, network: Network, near: MatchOptions['near']): Choice[] {
  if (word.numeral !== undefined) {
    const spoken = numberWords.get(word.numeral) ?? (word.numeral === 0 ? ['zero'] : []);
    return [NUMERAL, ...spoken].map((text) => ({ word: text, cost: 0, how: 'word' }));
  }
  const choices: Choice[] = [{ word: word.text, cost: 0, how: 'word' }];
  for (const other of HOMOPHONES[word.text] ?? []) {
    choices.push({ word: other, cost: COST.homophone, how: 'homophone' });
  }
  if (!network.words.has(word.text)) {
    const one = word.text.endsWith('s') ? word.text.slice(0, -1) : `${word.text}s`;
    if (one.length >= 4) choices.push({ word: one, cost: COST.homophone, how: 'homophone' });
  }
  if (near !== undefined) {
    for (const other of near(word.text)) choices.push({ ...other, how: 'near' });
  }
  return choices.filter((choice) => network.words.has(choice.word));
}

/**
 * Adds what can be reached without another word (joints; in a forgiving match, swallowed function words), keeps the best
 * few of each state and the best `BEAM` of all.
 */
function expand(
  tokens: readonly Token[],
  follow: (state: number) => Follow,
  keep: number,
  forgiving: boolean,
): Token[] {
  const byState = new Map<number, Token[]>();
  let dearest = Number.POSITIVE_INFINITY;
  for (const token of tokens) dearest = Math.min(dearest, token.cost + WIDTH);
  const pass = (from: Token, step: Step, supplied: number): void => {
    add({ state: step.to, cost: from.cost + step.cost, back: from, tags: step.tags, taken: undefined, supplied });
  };
  const add = (token: Token): void => {
    if (token.cost > dearest || !insert(byState, token, keep)) return;
    const after = follow(token.state);
    for (const joint of after.joints) pass(token, joint, token.supplied);
    if (!forgiving || token.supplied >= MOST_SUPPLIED) return;
    for (const step of after.swallowed) pass(token, step, token.supplied + 1);
  };
  for (const token of tokens) add(token);
  const all = [...byState.values()].flat();
  return all.length <= BEAM ? all : all.sort((a, b) => a.cost - b.cost).slice(0, BEAM);
}

/** Puts a token among the best `keep` of its state, cheapest first; false where it is too dear. */
function insert(byState: Map<number, Token[]>, token: Token, keep: number): boolean {
  const here = byState.get(token.state);
  if (here === undefined) {
    byState.set(token.state, [token]);
    return true;
  }
  if (here.length >= keep && here.at(-1)!.cost <= token.cost) return false;
  let at = here.length;
  while (at > 0 && here[at - 1]!.cost > token.cost) at -= 1;
  here.splice(at, 0, token);
  if (here.length > keep) here.pop();
  return true;
}

function finish(alive: readonly Token[], follow: (state: number) => Follow, keep: number): Path[] {
  const ended: { token: Token; cost: number; tags: readonly Tag[] }[] = [];
  for (const token of alive) {
    for (const end of follow(token.state).ends) {
      ended.push({ token, cost: token.cost + end.cost, tags: end.tags });
    }
  }
  ended.sort((a, b) => a.cost - b.cost);
  return ended.slice(0, keep).map(({ token, cost, tags }) => {
    const steps: Path['steps'][number][] = [{ tags }];
    for (let at: Token | undefined = token; at?.back !== undefined; at = at.back) {
      steps.unshift(at.taken === undefined ? { tags: at.tags } : { tags: at.tags, taken: at.taken });
    }
    return { cost, steps };
  });
}
