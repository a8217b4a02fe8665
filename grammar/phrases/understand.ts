import { compose } from './compose/compose.ts';
import type { Draft } from './compose/draft.ts';
import { segmentsOf } from './compose/segment.ts';
import { match, type Path } from './match.ts';
import type { Expectation, Meaning, UnclearReason, Understanding } from './meaning.ts';
import { buildNetwork, type Network } from './network.ts';
import { RULES } from './rules/utterance-rules.ts';
import { type HeardWord, tokenise } from './tokenise.ts';

/** Longer utterances than this many words are not taken apart; a note may be as long as it likes. */
const LONGEST = 60;
/** Two meanings whose costs differ by less are both possible. */
const MARGIN = 0.35;

export interface UnderstandOptions {
  /** Other hypotheses of the recogniser, best first. */
  readonly alternatives?: readonly string[];
}

export type Understand = (text: string, expectation?: Expectation, options?: UnderstandOptions) => Understanding;

interface Weighed {
  readonly draft: Draft;
  readonly cost: number;
  readonly repaired: NonNullable<Understanding['repaired']>;
}

/** Builds the network once from the tables and gives the function that understands by it. Pure and without state. */
export function makeUnderstand(): Understand {
  const network = buildNetwork(RULES, 'utterance');
  return (text, expectation) => understandWith(network, text, expectation);
}

let ready: Understand | undefined;
/**
 * What a sentence means and whether it may be logged. The network is built at the first call.
 *
 * @param text what was heard, in words or typed with digits
 * @param expectation what the visit waits for: binds bare values and prefers its own readings
 * @returns never throws; `unclear` with a reason where the text is no sentence of the grammar
 */
export const understand: Understand = (text, expectation, options) => {
  ready ??= makeUnderstand();
  return ready(text, expectation, options);
};

function understandWith(network: Network, text: string, expectation: Expectation | undefined): Understanding {
  const heard = tokenise(text);
  if (heard.length === 0) return unclear(text, 'empty');
  const note = heard[0]?.text === 'note';
  if (heard.length > LONGEST && !note) return unclear(text, 'too-long');
  if (heard.length > LONGEST) {
    return { heard: text, verdict: 'logged', meaning: { kind: 'note', text: textAfter(heard, 1) }, confidence: 0.95 };
  }
  let weighed = weigh(match(network, heard), expectation);
  if (weighed.length === 0) weighed = weigh(match(network, heard, { near: () => [] }), expectation);
  const [best] = weighed;
  if (best === undefined) return unclear(text, 'outside-grammar');
  return judge(text, best, weighed.slice(1));
}

const textAfter = (heard: readonly HeardWord[], from: number): string =>
  heard
    .slice(from)
    .map((word) => word.text)
    .join(' ');

const unclear = (heard: string, reason: UnclearReason): Understanding => ({
  heard,
  verdict: 'rejected',
  meaning: { kind: 'unclear', reason, alternatives: [] },
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
    const ranked = [...choices].sort((a, b) => a.cost - b.cost);
    const [best, next] = ranked;
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

function repairsOf(path: Path): Weighed['repaired'] {
  const repaired: { heard: string; taken: string }[] = [];
  for (const { tags, taken } of path.steps) {
    for (const tag of tags) if (tag.tag === 'supplied') repaired.push({ heard: '', taken: tag.word });
    if (taken?.how === 'skipped') repaired.push({ heard: taken.heard.text, taken: '' });
    if (taken?.how === 'near') repaired.push({ heard: taken.heard.text, taken: taken.word });
  }
  return repaired;
}

/** Logged as it stands, or asked and why. */
function judge(heard: string, best: Weighed, rest: readonly Weighed[]): Understanding {
  const rivals = rest.filter((other) => other.cost < best.cost + MARGIN);
  const reason =
    best.draft.doubt ??
    (best.repaired.length > 0 ? 'needed-repair' : rivals.length > 0 ? rivalry(best, rivals[0]!) : undefined);
  const nobody = best.draft.meaning.kind === 'value' && reason === 'no-place';
  const others = rest.slice(0, 4).map((other) => other.draft.meaning);
  return {
    heard,
    verdict: reason === undefined ? 'logged' : nobody ? 'rejected' : 'asked',
    meaning: best.draft.meaning,
    confidence: Math.max(0.05, (reason === undefined ? 0.98 : 0.6) - 0.1 * Math.min(best.cost, 4)),
    ...(best.repaired.length > 0 && { repaired: best.repaired }),
    ...(reason && { reason }),
    ...(best.draft.twin !== undefined && { twin: best.draft.twin }),
    ...(others.length > 0 && { others }),
  };
}

/** Why two meanings cannot be told apart: another place, or another value. */
function rivalry(best: Weighed, rival: Weighed): UnclearReason {
  const [one, other] = [best.draft.meaning, rival.draft.meaning];
  const sameValue = one.kind === 'reading' && other.kind === 'reading' && one.reading.value === other.reading.value;
  return sameValue ? 'several-places-fit' : 'several-values-fit';
}
