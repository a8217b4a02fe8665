import type { Rules } from './expression.ts';
import type { CommonWords, Language } from './language.ts';
import { layOut } from './lay-out.ts';
import type { Tag } from './tag.ts';

/** What a way costs and says. */
interface Passage {
  readonly cost: number;
  /** Tags passed, in order. */
  readonly tags: readonly Tag[];
}

/** A step to a state of the same rule or of rules entered on the way; `back`: where each of these will return to. */
export interface Step extends Passage {
  readonly to: number;
  readonly back: readonly number[];
}

export interface WordStep extends Step {
  readonly word: string;
}

/** All that can follow a state of a rule without another word between, whatever rule it was entered from. */
export interface Follow {
  /** Steps over words; where there are many, those over one word stand together. */
  readonly words: readonly WordStep[];
  /** Where the steps over each word begin, if there are many. */
  readonly begins: ReadonlyMap<string, number> | undefined;
  readonly anyWord: readonly Step[];
  readonly joints: readonly Step[];
  /** Ways to the end of the state's own rule. */
  readonly ends: readonly Passage[];
  /** Steps over function words that are easily swallowed, with the price of supplying one in their cost. */
  readonly swallowed: readonly Step[];
}

/** Where a rule was entered from: the state to go on at, and the entry around that. */
interface Entry {
  readonly id: number;
  readonly back: number;
  readonly outer: Entry | undefined;
}

/** A state of a rule together with the way back out of it. */
export interface Place {
  readonly at: number;
  readonly entry: Entry;
}

/** What follows a place in its own rule, or in a rule around it once the inner ones have ended. */
export interface Layer extends Passage {
  readonly follow: Follow;
  readonly entry: Entry;
}

/**
 * The words of the grammar as a finite network, weighted. Every rule is laid out once, and what follows a state is found
 * once for the state, however many rules it is entered from; so the whole is small and costs little to build, and what
 * nobody says costs nothing.
 */
export class Network {
  readonly start: Place;
  readonly words: ReadonlySet<string>;
  readonly language: Language;
  private readonly layout: ReturnType<typeof layOut>;
  private readonly entries = new Map<number, Entry>();
  private readonly explored = new Map<number, Follow>();
  private readonly beginnings = new Map<number, ReadonlySet<string> | 'any'>();

  /**
   * @param language whose words the rules are made of
   * @throws Error for a rule that is named nowhere
   */
  constructor(rules: Rules, root: string, language: Language) {
    this.language = language;
    this.layout = layOut(rules, root);
    this.words = this.layout.words;
    this.start = { at: this.layout.laid.get(root)!.start, entry: { id: 0, back: -1, outer: undefined } };
  }

  /** The same number for the same place. */
  keyOf(place: Place): number {
    return place.entry.id * this.layout.arcs.states + place.at;
  }

  /** What can follow a place: within its rule, and in the rules around it as far as the inner ones can end here. */
  layersOf(place: Place): Layer[] {
    const layers: Layer[] = [{ follow: this.followOf(place.at), entry: place.entry, cost: 0, tags: [] }];
    for (const { follow, entry, cost, tags } of layers) {
      if (entry.outer === undefined) continue;
      for (const end of follow.ends) {
        layers.push({
          follow: this.followOf(entry.back),
          entry: entry.outer,
          cost: cost + end.cost,
          tags: joined(tags, end.tags),
        });
      }
    }
    return layers;
  }

  /** Where a step of a layer leads. */
  landing(step: Step, layer: Layer): Place {
    let { entry } = layer;
    for (const back of step.back) entry = this.enter(back, entry);
    return { at: step.to, entry };
  }

  /** The words that can follow a state; 'any' where every word can, or where its rule can end without one. */
  beginningsOf(at: number): ReadonlySet<string> | 'any' {
    let begins = this.beginnings.get(at);
    if (begins === undefined) {
      begins = this.findBeginnings(at);
      this.beginnings.set(at, begins);
    }
    return begins;
  }

  private findBeginnings(at: number): ReadonlySet<string> | 'any' {
    const { words: steps, anyWord, ends, joints } = this.followOf(at);
    if (anyWord.length > 0 || ends.length > 0) return 'any';
    const words = new Set(steps.map((step) => step.word));
    for (const joint of joints) {
      const inner = this.beginningsOf(joint.to);
      if (inner === 'any') return 'any';
      for (const word of inner) words.add(word);
    }
    return words;
  }

  private enter(back: number, outer: Entry): Entry {
    const key = outer.id * this.layout.arcs.states + back;
    let entry = this.entries.get(key);
    if (entry === undefined) {
      entry = { id: this.entries.size + 1, back, outer };
      this.entries.set(key, entry);
    }
    return entry;
  }

  private followOf(at: number): Follow {
    let follow = this.explored.get(at);
    if (follow === undefined) {
      // All are forgotten rather than the oldest: what is said in one visit never comes near.
      if (this.explored.size >= REMEMBERED) this.explored.clear();
      follow = this.explore(at);
      this.explored.set(at, follow);
    }
    return follow;
  }

  private explore(from: number): Follow {
    const { arcs, joints, ends, laid } = this.layout;
    const found = { words: [] as WordStep[], anyWord: [] as Step[], joints: [] as Step[], ends: [] as Passage[] };
    const walk = (at: number, back: readonly number[], cost: number, tags: readonly Tag[], first: boolean): void => {
      if (!first && joints.has(at)) {
        found.joints.push({ to: at, back, cost, tags });
        return;
      }
      if (ends.has(at)) {
        const behind = back.at(-1);
        if (behind === undefined) found.ends.push({ cost, tags });
        else walk(behind, back.slice(0, -1), cost, tags, false);
      }
      for (const { to, over } of arcs.leaving(at)) {
        if ('word' in over) found.words.push({ word: over.word, to, back, cost, tags });
        else if ('any' in over) found.anyWord.push({ to, back, cost, tags });
        else if ('call' in over) walk(laid.get(over.call)!.start, back.concat(to), cost, tags, false);
        else walk(to, back, cost + over.cost, over.tag === undefined ? tags : tags.concat(over.tag), false);
      }
    };
    walk(from, [], 0, [], true);
    const { words, anyWord } = found;
    const many = words.length > FEW;
    const grouped = many ? [...groupedByWord(words).values()].flat() : words;
    return {
      words: shared(grouped),
      begins: many ? beginnings(grouped) : undefined,
      anyWord: shared(anyWord),
      joints: shared(found.joints),
      ends: shared(found.ends),
      swallowed: shared(joints.has(from) ? [] : swallowedIn(words, this.language.words.swallowed)),
    };
  }
}

/** States whose followers are kept at most. */
const REMEMBERED = 4000;
/** More steps than this are looked up by their word, fewer one after the other. */
const FEW = 12;
/** One empty list for all: most states have nothing of most kinds. */
const NONE: readonly never[] = [];
/** A list that grew has room for more; its copy has not. */
const shared = <T>(list: readonly T[]): readonly T[] => (list.length === 0 ? NONE : list.slice());

function groupedByWord(steps: readonly WordStep[]): Map<string, WordStep[]> {
  const groups = new Map<string, WordStep[]>();
  for (const step of steps) {
    const group = groups.get(step.word);
    if (group === undefined) groups.set(step.word, [step]);
    else group.push(step);
  }
  return groups;
}

function beginnings(grouped: readonly WordStep[]): ReadonlyMap<string, number> {
  const begins = new Map<string, number>();
  grouped.forEach(({ word }, at) => {
    if (!begins.has(word)) begins.set(word, at);
  });
  return begins;
}

/** Calls `take` with each step of a state over one word. */
export function overWord({ words, begins }: Follow, word: string, take: (step: WordStep) => void): void {
  let at = begins === undefined ? 0 : begins.get(word);
  if (at === undefined) return;
  for (; at < words.length; at += 1) {
    const step = words[at]!;
    if (step.word === word) take(step);
    else if (begins !== undefined) return;
  }
}

/** Two lists of tags as one; most are empty. */
export const joined = (one: readonly Tag[], other: readonly Tag[]): readonly Tag[] =>
  one.length === 0 ? other : other.length === 0 ? one : one.concat(other);

const swallowedIn = (steps: readonly WordStep[], prices: CommonWords['swallowed']): Step[] =>
  steps.flatMap(({ word, to, back, cost, tags }) => {
    const price = prices.get(word);
    return price === undefined ? [] : [{ to, back, cost: cost + price, tags: tags.concat({ tag: 'supplied', word }) }];
  });
