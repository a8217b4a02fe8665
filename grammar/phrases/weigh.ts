import { LINKING_WORDS } from '../vocabulary/homophones.ts';
import { NUMBER_WORDS } from '../vocabulary/number-words.ts';
import { compose } from './compose/compose.ts';
import type { Draft } from './compose/draft.ts';
import { segmentsOf } from './compose/segment.ts';
import type { Path } from './match.ts';
import type { Expectation, Meaning, Understanding } from './meaning.ts';
import type { Taken } from './word-choices.ts';

/** Two meanings whose costs differ by less are both possible. */
export const MARGIN = 0.35;

/** A meaning with what it cost to get there. */
export interface Weighed {
  readonly draft: Draft;
  readonly cost: number;
  readonly repaired: NonNullable<Understanding['repaired']>;
}

/** The meanings of all paths, the best first, each once. */
export function weigh(paths: readonly Path[], expectation: Expectation | undefined): Weighed[] {
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
