import { LINKING_WORDS } from '../vocabulary/homophones.ts';
import { NUMBER_WORDS } from '../vocabulary/number-words.ts';
import { compose } from './compose/compose.ts';
import type { Draft } from './compose/draft.ts';
import { segmentsOf } from './compose/segment.ts';
import { confidenceOf, type MatchSigns } from './confidence.ts';
import { match, type Near, type Path, type Taken } from './match.ts';
import type { Expectation, Meaning, UnclearReason, Understanding } from './meaning.ts';
import { makeNear } from './near.ts';
import { Network } from './network.ts';
import { RULES } from './rules/utterance-rules.ts';
import { suggest } from './suggest.ts';
import { type HeardWord, tokenise } from './tokenise.ts';

/** Longer utterances than this many words are not taken apart; a note may be as long as it likes. */
const LONGEST = 60;
/** In characters: beyond it a text is not even split into words. */
const LONGEST_TEXT = 2000;
/** Longer ones than this are not repaired. */
const LONGEST_REPAIRED = 24;
/** Of how many of its words an utterance may be mended. */
const MENDABLE = 0.4;
/** Two meanings whose costs differ by less are both possible. */
const MARGIN = 0.35;

export interface UnderstandOptions {
  /** Other hypotheses of the recogniser, best first. */
  readonly alternatives?: readonly string[];
  /** Digits were typed by hand: 115 cannot be a misheard 150. */
  readonly typed?: boolean;
}

export type Understand = (text: string, expectation?: Expectation, options?: UnderstandOptions) => Understanding;

/** A meaning with what it cost to get there. */
interface Weighed {
  readonly draft: Draft;
  readonly cost: number;
  readonly repaired: NonNullable<Understanding['repaired']>;
}

/**
 * Builds the network once from the tables and gives the function that understands by it.
 *
 * @param watch is told the signs from which each confidence was set; for fitting its weights
 */
export function makeUnderstand(watch?: (signs: MatchSigns) => void): Understand {
  const network = new Network(RULES, 'utterance');
  const near = makeNear(network.words);
  return (text, expectation, options) => {
    const one = (heard: string): Understanding => understandOne(network, near, heard, expectation, watch);
    const best = one(text);
    const settled = options?.typed ? withoutTwin(best) : best;
    return weighAlternatives(settled, (options?.alternatives ?? []).slice(0, 5).map(one));
  };
}

let ready: Understand | undefined;
/**
 * What a sentence means and whether it may be logged. The network is built at the first call.
 *
 * @param text what was heard, in words or with digits
 * @param expectation what the visit waits for: binds bare values and prefers its own readings
 * @param options other hypotheses of the recogniser; whether the digits were typed
 * @returns never throws; `unclear` with a reason where the text is no sentence of the grammar
 */
export const understand: Understand = (text, expectation, options) => {
  ready ??= makeUnderstand();
  return ready(text, expectation, options);
};

/**
 * The recogniser's other hypotheses weigh in: where the first makes no sense, the first other that would be logged is
 * asked; where two make sense and differ in a value, the first is asked instead of logged.
 */
function weighAlternatives(best: Understanding, others: readonly Understanding[]): Understanding {
  const sensible = others.filter((other) => other.verdict === 'logged');
  const [other] = sensible;
  if (other === undefined) return best;
  if (best.meaning.kind === 'unclear' || best.verdict === 'rejected') {
    return { ...other, verdict: 'asked', reason: 'needed-repair', confidence: other.confidence * 0.7 };
  }
  const key = JSON.stringify(best.meaning);
  const rivals = sensible.filter((one) => JSON.stringify(one.meaning) !== key).map((one) => one.meaning);
  if (best.verdict !== 'logged' || rivals.length === 0) return best;
  return {
    ...best,
    verdict: 'asked',
    reason: 'several-values-fit',
    confidence: best.confidence * 0.7,
    others: [...rivals, ...(best.others ?? [])].slice(0, 4),
  };
}

/** A doubt between teen and ty falls away where the digits were typed. */
function withoutTwin(understood: Understanding): Understanding {
  const { reason, twin, ...rest } = understood;
  if (reason !== 'teen-or-ty' || twin === undefined || !/\d/.test(understood.heard)) return understood;
  return { ...rest, verdict: 'logged', confidence: 1 };
}

function understandOne(
  network: Network,
  near: (heard: string) => readonly Near[],
  text: string,
  expectation: Expectation | undefined,
  watch: ((signs: MatchSigns) => void) | undefined,
): Understanding {
  const note = /^\s*note\b/i.test(text);
  if (text.length > LONGEST_TEXT && !note) return unclear(text, 'too-long', []);
  const heard = tokenise(text);
  if (heard.length === 0) return unclear(text, 'empty', []);
  if (heard.length > LONGEST) {
    return note ? longNote(text, heard) : unclear(text, 'too-long', []);
  }
  let weighed = weigh(match(network, heard), expectation);
  if (weighed.length === 0 && heard.length <= LONGEST_REPAIRED) {
    const mostRepairs = Math.max(1, Math.floor(heard.length * MENDABLE));
    weighed = weigh(match(network, heard, { near, mostRepairs }), expectation);
  }
  const words = (): string[] => heard.map((word) => word.text);
  const [best] = weighed;
  if (best === undefined) {
    return unclear(text, foreign(text) ? 'not-english' : 'outside-grammar', suggest(words(), near));
  }
  const judged = judge(text, best, weighed.slice(1), watch);
  if (judged.meaning.kind !== 'unclear' || judged.meaning.alternatives.length > 0) return judged;
  return { ...judged, meaning: { ...judged.meaning, alternatives: suggest(words(), near) } };
}

/** Mostly letters that English does not write. */
function foreign(text: string): boolean {
  const letters = text.match(/\p{L}/gu) ?? [];
  return letters.filter((letter) => !/[a-zµ]/i.test(letter)).length * 4 > letters.length;
}

const longNote = (heard: string, words: readonly HeardWord[]): Understanding => ({
  heard,
  verdict: 'logged',
  meaning: {
    kind: 'note',
    text: words
      .slice(1)
      .map((word) => word.text)
      .join(' '),
  },
  confidence: 0.95,
});

const unclear = (heard: string, reason: UnclearReason, alternatives: readonly string[]): Understanding => ({
  heard,
  verdict: 'rejected',
  meaning: { kind: 'unclear', reason, alternatives },
  confidence: 0,
  reason,
});

/** The meanings of all paths, the best first, each once. */
function weigh(paths: readonly Path[], expectation: Expectation | undefined): Weighed[] {
  const byMeaning = new Map<string, Weighed>();
  for (const path of paths) {
    const segments = segmentsOf(path);
    if (segments === undefined) continue;
    const drafts = segments.map((segment) => compose(segment, expectation));
    for (const draft of together(drafts)) {
      const weighed = { draft, cost: path.cost + draft.cost, repaired: repairsOf(path) };
      const key = JSON.stringify(draft.meaning);
      const known = byMeaning.get(key);
      if (known === undefined || known.cost > weighed.cost) byMeaning.set(key, weighed);
    }
  }
  return [...byMeaning.values()].sort((a, b) => a.cost - b.cost);
}

/** One draft for the whole: the only segment's own, or all of them side by side. */
function together(drafts: readonly (readonly Draft[])[]): readonly Draft[] {
  const [only] = drafts;
  if (drafts.length === 1 && only !== undefined) return only;
  const parts: Meaning[] = [];
  let cost = 0;
  let doubt: Draft | undefined;
  for (const choices of drafts) {
    const [best, next] = [...choices].sort((a, b) => a.cost - b.cost);
    if (best === undefined) return [];
    parts.push(...(best.meaning.kind === 'several' ? best.meaning.parts : [best.meaning]));
    cost += best.cost;
    if (best.doubt !== undefined) doubt ??= best;
    else if (next !== undefined && next.cost < best.cost + MARGIN) doubt ??= { ...best, doubt: 'several-places-fit' };
  }
  return [
    {
      meaning: { kind: 'several', parts },
      cost: cost + 0.9 * (drafts.length - 1),
      ...(doubt?.doubt && { doubt: doubt.doubt }),
      ...(doubt?.twin !== undefined && { twin: doubt.twin }),
    },
  ];
}

/** "leg to ground": a word that links more often than it counts was taken for a digit. Not without asking. */
const countsLink = (taken: Taken | undefined): taken is Taken & { readonly how: 'homophone' } =>
  taken?.how === 'homophone' && LINKING_WORDS.includes(taken.heard.text) && NUMBER_WORDS.includes(taken.word);

function repairsOf(path: Path): Weighed['repaired'] {
  const repaired: { heard: string; taken: string }[] = [];
  for (const { tags, taken } of path.steps) {
    for (const tag of tags) if (tag.tag === 'supplied') repaired.push({ heard: '', taken: tag.word });
    if (taken?.how === 'skipped') repaired.push({ heard: taken.heard.text, taken: '' });
    if (taken?.how === 'near' || countsLink(taken)) repaired.push({ heard: taken.heard.text, taken: taken.word });
  }
  return repaired;
}

/** Logged as it stands, or asked and why. */
function judge(
  heard: string,
  best: Weighed,
  rest: readonly Weighed[],
  watch: ((signs: MatchSigns) => void) | undefined,
): Understanding {
  const { draft, cost, repaired } = best;
  const rival = rest.find((other) => other.cost < cost + MARGIN);
  const reason =
    draft.doubt ?? (repaired.length > 0 ? 'needed-repair' : rival === undefined ? undefined : rivalry(best, rival));
  const nobody = draft.meaning.kind === 'value' && reason === 'no-place';
  const signs = { cost, margin: (rest[0]?.cost ?? cost + 4) - cost, repairs: repaired.length, reason };
  watch?.(signs);
  const others = rest.slice(0, 4).map((other) => other.draft.meaning);
  return {
    heard,
    verdict: reason === undefined ? 'logged' : nobody ? 'rejected' : 'asked',
    meaning: draft.meaning,
    confidence: confidenceOf(signs),
    ...(repaired.length > 0 && { repaired }),
    ...(reason && { reason }),
    ...(draft.twin !== undefined && { twin: draft.twin }),
    ...(others.length > 0 && { others }),
  };
}

/** Why two meanings cannot be told apart: another place, or another value. */
function rivalry(best: Weighed, rival: Weighed): UnclearReason {
  const [one, other] = [best.draft.meaning, rival.draft.meaning];
  const sameValue = one.kind === 'reading' && other.kind === 'reading' && one.reading.value === other.reading.value;
  return sameValue ? 'several-places-fit' : 'several-values-fit';
}
