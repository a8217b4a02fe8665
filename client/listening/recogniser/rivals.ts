import type { Automaton } from './automaton.ts';

/** What a word stands for. Words of one kind are tried in each other's place, unless they stand for the same. */
export interface Standing {
  /** A number may also be left out, or slip in; a name may not. */
  readonly kind: 'number' | 'name';
  readonly value: string;
}

/** Of a word that is never exchanged: undefined. */
export type StandsFor = (word: string) => Standing | undefined;

/** Part of the way along a sentence: how many of its words are behind, and whether one was exchanged yet. */
interface Place {
  readonly behind: number;
  readonly changed: boolean;
}

/**
 * The sentences of a network that differ from one of its sentences in a single word that counts: another in its place,
 * none, or one more. To be decoded over the same sound: the best of them is what the sentence is most easily taken for.
 * No way is likelier than another: scores compare with that of the sentence alone.
 *
 * @param text a sentence of the network
 * @returns undefined where it has no such sentence
 */
export function rivalsOf(network: Automaton, text: string, standsFor: StandsFor): Automaton | undefined {
  const words = text.split(' ');
  const steps = (place: Place, word: string): Place[] => stepsBy(words, place, word, standsFor);
  const made = new Map<string, number>();
  const arcs: Map<string, number>[] = [];
  const final: boolean[] = [];
  // Where it stands in the network is told by the words alone; where in the sentence may be told in several ways.
  const add = (at: number, places: readonly Place[]): number => {
    const key = `${at} ${[...new Set(places.map(({ behind, changed }) => `${behind}${changed ? '*' : ''}`))].sort().join()}`;
    const known = made.get(key);
    if (known !== undefined) return known;
    const state = arcs.length;
    made.set(key, state);
    const own = new Map<string, number>();
    arcs.push(own);
    const ends = network.final[at] === true;
    final.push(ends && places.some((place) => isRival(words, place, standsFor)));
    for (const [word, to] of network.arcs[at]!) {
      const next = places.flatMap((place) => steps(place, word));
      if (next.length > 0) own.set(word, add(to, next));
    }
    return state;
  };
  add(0, [{ behind: 0, changed: false }]);
  return withoutDeadEnds({ arcs, final });
}

/** Whether one of the sentences is the other with one word more. */
export function differByOneMore(one: string, other: string): boolean {
  const [fewer, more] = [one.split(' '), other.split(' ')].sort((a, b) => a.length - b.length) as [string[], string[]];
  const at = fewer.findIndex((word, index) => word !== more[index]);
  const behind = at < 0 ? fewer.length : at;
  return more.length === fewer.length + 1 && fewer.slice(behind).join(' ') === more.slice(behind + 1).join(' ');
}

/** Where a word may lead: along the sentence, or, once only, in a word's stead, before one, or past one left out. */
function stepsBy(words: readonly string[], { behind, changed }: Place, word: string, standsFor: StandsFor): Place[] {
  const next = words[behind];
  const places: Place[] = next === word ? [{ behind: behind + 1, changed }] : [];
  if (changed) return places;
  const one = standsFor(word);
  const other = next === undefined ? undefined : standsFor(next);
  if (one !== undefined && one.kind === other?.kind && one.value !== other.value)
    places.push({ behind: behind + 1, changed: true });
  const isBesideOne = other?.kind === 'number' || isNumber(words[behind - 1], standsFor);
  if (one?.kind === 'number' && next !== word && isBesideOne) places.push({ behind, changed: true });
  if (other?.kind === 'number' && words[behind + 1] === word) places.push({ behind: behind + 2, changed: true });
  return places;
}

/** At the end of the sentence with a change behind it, or before a last number that is left out. */
const isRival = (words: readonly string[], { behind, changed }: Place, standsFor: StandsFor): boolean =>
  changed ? behind === words.length : behind === words.length - 1 && isNumber(words[behind], standsFor);

const isNumber = (word: string | undefined, standsFor: StandsFor): boolean =>
  word !== undefined && standsFor(word)?.kind === 'number';

/** The sentences of a network that hold a number, each word of it as likely; undefined where it has none. */
export function numberedOf(network: Automaton, standsFor: StandsFor): Automaton | undefined {
  const count = network.arcs.length;
  // Each state once as it is before a number was said, and once, so many places on, as it is behind one.
  const arcs = [0, count].flatMap((behind) =>
    network.arcs.map(
      (own) => new Map([...own].map(([word, to]) => [word, behind > 0 || isNumber(word, standsFor) ? count + to : to])),
    ),
  );
  return withoutDeadEnds({ arcs, final: [...network.final.map(() => false), ...network.final] });
}

function withoutDeadEnds({ arcs, final }: Automaton): Automaton | undefined {
  const into: number[][] = arcs.map(() => []);
  arcs.forEach((own, from) => {
    for (const to of own.values()) into[to]!.push(from);
  });
  const alive = new Set(final.flatMap((ends, at) => (ends ? [at] : [])));
  for (const at of alive) for (const from of into[at]!) alive.add(from);
  if (!alive.has(0)) return undefined;
  const kept = [...alive].sort((a, b) => a - b);
  const numbers = new Map(kept.map((at, index) => [at, index]));
  return {
    arcs: kept.map(
      (at) => new Map([...arcs[at]!].flatMap(([word, to]) => (alive.has(to) ? [[word, numbers.get(to)!]] : []))),
    ),
    final: kept.map((at) => final[at]!),
    ways: kept.map(() => 1),
  };
}
