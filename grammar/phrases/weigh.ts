import { compose } from './compose/compose.ts';
import type { Draft } from './compose/draft.ts';
import { numbersOf, type Segment, segmentsOf } from './compose/segment.ts';
import type { Language } from './language.ts';
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
export function weigh(paths: readonly Path[], expectation: Expectation | undefined, language: Language): Weighed[] {
  const byMeaning = new Map<string, Weighed>();
  for (const path of paths) {
    const segments = segmentsOf(path, language, expectation?.typed === true);
    if (segments === undefined || !isWhole(segments, language)) continue;
    const drafts = segments.map((segment) => compose(segment, expectation, language.words));
    for (const draft of together(drafts)) {
      const weighed = { draft, cost: path.cost + draft.cost, repaired: repairsOf(path, language) };
      const key = JSON.stringify(draft.meaning);
      const known = byMeaning.get(key);
      if (known === undefined || known.cost > weighed.cost) byMeaning.set(key, weighed);
    }
  }
  return [...byMeaning.values()].sort((a, b) => a.cost - b.cost);
}

/** Whether it is a reading with its place first: only then the place behind it is another. */
function endsInValue({ frame, items }: Segment): boolean {
  if (frame !== 'reading' && frame !== 'pair') return false;
  const value = items.findLastIndex(({ tag }) => tag === 'said' || tag === 'value');
  return value > items.findLastIndex(({ tag }) => tag === 'tip' || tag === 'named');
}

/**
 * Whether each number stays whole: of "leg one one twenty two leg two" no second reading may take the end of the first
 * number. A place that comes next follows a reading alone.
 */
function isWhole(segments: readonly Segment[], { numbers, words }: Language): boolean {
  const { and, read } = numbers;
  return segments.every((segment, index) => {
    const before = segments[index - 1];
    if (segment.frame === 'next-place' && segments.length > 1) {
      return before !== undefined && endsInValue(before) && !words.belonging.has(segment.opens ?? '');
    }
    const [first] = numbersOf(segment.items);
    const runs = before === undefined ? undefined : first?.runsFrom;
    // Two numbers with nothing between them are one; with an "and" they are where that makes one.
    return runs === undefined || (runs.at(-1) === and && read([...runs, ...first!.words]) === undefined);
  });
}

/** A meaning of the same quantity as the reading before it is so much likelier: "compressor twelve amps, fan one point one". */
const SAME_QUANTITY = 0.9;

/** One draft for the whole: the only segment's own, or all of them side by side. */
function together(drafts: readonly (readonly Draft[])[]): readonly Draft[] {
  const [only] = drafts;
  if (drafts.length === 1 && only !== undefined) return only;
  const parts: Meaning[] = [];
  let cost = 0;
  let doubt: Draft | undefined;
  for (const choices of drafts) {
    const latest = parts.at(-1);
    const [best, next] = [...choices].sort((a, b) => nearTo(latest, a) - nearTo(latest, b));
    if (best === undefined) return [];
    const set = setRight(latest, best.meaning);
    if (set !== undefined) parts.pop();
    const meaning = set ?? best.meaning;
    parts.push(...(meaning.kind === 'several' ? meaning.parts : [meaning]));
    cost += best.cost;
    if (set !== undefined) doubt ??= { ...best, doubt: 'several-values-fit' };
    else if (best.doubt !== undefined) doubt ??= best;
    else if (next !== undefined && nearTo(latest, next) < nearTo(latest, best) + MARGIN)
      doubt ??= { ...best, doubt: 'several-places-fit' };
  }
  const [sole] = parts;
  return [
    {
      meaning: parts.length === 1 && sole !== undefined ? sole : { kind: 'several', parts },
      cost: cost + 0.9 * (drafts.length - 1),
      ...(doubt?.doubt && { doubt: doubt.doubt }),
      ...(doubt?.twin !== undefined && { twin: doubt.twin }),
    },
  ];
}

/** What a meaning costs behind the one before it. */
function nearTo(latest: Meaning | undefined, { meaning, cost }: Draft): number {
  const same =
    latest?.kind === 'reading' && meaning.kind === 'reading' && latest.reading.quantity === meaning.reading.quantity;
  return same ? cost - SAME_QUANTITY : cost;
}

/** "leg one one eighteen, correction, leg two": a reading that was set right in the same breath. It is asked. */
function setRight(latest: Meaning | undefined, meaning: Meaning): Meaning | undefined {
  if (latest?.kind !== 'reading' || meaning.kind !== 'command' || meaning.correction === undefined) return undefined;
  return { kind: 'reading', reading: { ...latest.reading, ...meaning.correction } };
}

/** "leg to ground": a word that links more often than it counts was taken for a digit. Not without asking. */
const countsLink = (
  taken: Taken | undefined,
  { numbers, words }: Language,
): taken is Taken & { readonly how: 'homophone' } =>
  taken?.how === 'homophone' && words.linking.has(taken.heard.text) && numbers.all.has(taken.word);

function repairsOf(path: Path, language: Language): Weighed['repaired'] {
  const repaired: { heard: string; taken: string }[] = [];
  for (const { tags, taken } of path.steps) {
    for (const tag of tags) if (tag.tag === 'supplied') repaired.push({ heard: '', taken: tag.word });
    if (taken?.how === 'skipped') repaired.push({ heard: taken.heard.text, taken: '' });
    if (taken?.how === 'near' || countsLink(taken, language))
      repaired.push({ heard: taken.heard.text, taken: taken.word });
  }
  return repaired;
}
