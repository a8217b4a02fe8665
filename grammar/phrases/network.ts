import type { Rules } from './expression.ts';
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

/** All that can follow a state of a rule without another word between, whatever rule it was entered from. */
export interface Follow {
  readonly byWord: ReadonlyMap<string, readonly Step[]>;
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
  private readonly layout: ReturnType<typeof layOut>;
  private readonly entries = new Map<number, Entry>();
  private readonly explored = new Map<number, Follow>();

  /** @throws Error for a rule that is named nowhere */
  constructor(rules: Rules, root: string) {
    this.layout = layOut(rules, root);
    this.words = this.layout.words;
    this.start = { at: this.layout.laid.get(root)!.start, entry: { id: 0, back: -1, outer: undefined } };
  }

  /** The same number for the same place. */
  keyOf(place: Place): number {
    return place.entry.id * this.layout.arcs.length + place.at;
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

  private enter(back: number, outer: Entry): Entry {
    const key = outer.id * this.layout.arcs.length + back;
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
      follow = this.explore(at);
      this.explored.set(at, follow);
    }
    return follow;
  }

  private explore(from: number): Follow {
    const { arcs, joints, ends, laid } = this.layout;
    const byWord = new Map<string, Step[]>();
    const found = { anyWord: [] as Step[], joints: [] as Step[], ends: [] as Passage[] };
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
      for (const arc of arcs[at]!) {
        if ('word' in arc) {
          const step = { to: arc.to, back, cost, tags };
          const steps = byWord.get(arc.word);
          if (steps === undefined) byWord.set(arc.word, [step]);
          else steps.push(step);
        } else if ('any' in arc) found.anyWord.push({ to: arc.to, back, cost, tags });
        else if ('call' in arc) walk(laid.get(arc.call)!.start, [...back, arc.to], cost, tags, false);
        else walk(arc.to, back, cost + arc.cost, arc.tag === undefined ? tags : [...tags, arc.tag], false);
      }
    };
    walk(from, [], 0, [], true);
    return { byWord, ...found, swallowed: joints.has(from) ? [] : swallowedIn(byWord) };
  }
}

/** Two lists of tags as one; most are empty. */
export const joined = (one: readonly Tag[], other: readonly Tag[]): readonly Tag[] =>
  one.length === 0 ? other : other.length === 0 ? one : [...one, ...other];

/** Function words that are easily swallowed, and what it costs to supply one. */
const SWALLOWED: readonly (readonly [string, number])[] = [
  ['to', 1.5],
  ['is', 1],
  ['at', 1],
  ['of', 0.7],
  ['on', 1],
];

const swallowedIn = (byWord: ReadonlyMap<string, readonly Step[]>): Step[] =>
  SWALLOWED.flatMap(([word, price]) =>
    (byWord.get(word) ?? []).map((step) => ({
      ...step,
      cost: step.cost + price,
      tags: [...step.tags, { tag: 'supplied', word } as const],
    })),
  );
