import type { Expression, Rules } from './expression.ts';
import type { Tag } from './tag.ts';

/** A step over one word: the tags passed on the way to it, in order, and what it cost. */
export interface Step {
  readonly to: number;
  readonly cost: number;
  readonly tags: readonly Tag[];
}

/** All that can follow a state without another word between. */
export interface Follow {
  readonly byWord: ReadonlyMap<string, readonly Step[]>;
  readonly anyWord: readonly Step[];
  /** Joints: states whose own followers are shared by many and therefore not copied here. */
  readonly joints: readonly Step[];
  readonly ends: readonly Omit<Step, 'to'>[];
  /** Steps over function words that are easily swallowed, with the price of supplying one in their cost. */
  readonly swallowed: readonly Step[];
}

/**
 * The words of the grammar as a finite network, weighted. Every rule is laid out once; a state is a place in a rule
 * together with the way back out of it, and is made when it is first reached. So the whole costs little to build, and
 * what nobody says costs nothing.
 */
export interface Network {
  readonly start: number;
  readonly words: ReadonlySet<string>;
  follow(state: number): Follow;
}

type Arc =
  | { readonly to: number; readonly word: string }
  | { readonly to: number; readonly any: true }
  | { readonly to: number; readonly call: string }
  | { readonly to: number; readonly cost: number; readonly tag?: Tag };

/** Where a rule was entered from: the place to go on at, and the entry around that. */
interface Entry {
  readonly id: number;
  readonly back: number;
  readonly outer: Entry | undefined;
}

/** Builds the network of `rules[root]`. @throws Error for a rule that is named nowhere. */
export function buildNetwork(rules: Rules, root: string): Network {
  const layout = layOut(rules, root);
  const { arcs, joints, laid } = layout;

  const entries = new Map<number, Entry>();
  const outermost: Entry = { id: 0, back: -1, outer: undefined };
  const enter = (back: number, outer: Entry): Entry => {
    const key = outer.id * arcs.length + back;
    let entry = entries.get(key);
    if (entry === undefined) {
      entry = { id: entries.size + 1, back, outer };
      entries.set(key, entry);
    }
    return entry;
  };

  const known = new Map<number, number>();
  const states: { readonly at: number; readonly entry: Entry }[] = [];
  const stateOf = (at: number, entry: Entry): number => {
    const key = entry.id * arcs.length + at;
    let state = known.get(key);
    if (state === undefined) {
      state = states.push({ at, entry }) - 1;
      known.set(key, state);
    }
    return state;
  };

  function explore(from: number): Follow {
    const byWord = new Map<string, Step[]>();
    const anyWord: Step[] = [];
    const joined: Step[] = [];
    const ends: Omit<Step, 'to'>[] = [];
    const walk = (at: number, entry: Entry, cost: number, tags: readonly Tag[], first: boolean): void => {
      if (!first && joints.has(at)) {
        joined.push({ to: stateOf(at, entry), cost, tags });
        return;
      }
      if (layout.ends.has(at)) {
        if (entry.outer === undefined) ends.push({ cost, tags });
        else walk(entry.back, entry.outer, cost, tags, false);
      }
      for (const arc of arcs[at]!) {
        if ('word' in arc) {
          const step = { to: stateOf(arc.to, entry), cost, tags };
          const steps = byWord.get(arc.word);
          if (steps === undefined) byWord.set(arc.word, [step]);
          else steps.push(step);
        } else if ('any' in arc) anyWord.push({ to: stateOf(arc.to, entry), cost, tags });
        else if ('call' in arc) walk(laid.get(arc.call)!.start, enter(arc.to, entry), cost, tags, false);
        else walk(arc.to, entry, cost + arc.cost, arc.tag === undefined ? tags : [...tags, arc.tag], false);
      }
    };
    const { at, entry } = states[from]!;
    walk(at, entry, 0, [], true);
    return { byWord, anyWord, joints: joined, ends, swallowed: joints.has(at) ? [] : swallowedIn(byWord) };
  }

  const explored = new Map<number, Follow>();
  return {
    start: stateOf(laid.get(root)!.start, outermost),
    words: layout.words,
    follow(from) {
      let follow = explored.get(from);
      if (follow === undefined) {
        follow = explore(from);
        explored.set(from, follow);
      }
      return follow;
    },
  };
}

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
      to: step.to,
      cost: step.cost + price,
      tags: [...step.tags, { tag: 'supplied', word } as const],
    })),
  );

interface Layout {
  readonly arcs: readonly (readonly Arc[])[];
  readonly joints: ReadonlySet<number>;
  readonly ends: ReadonlySet<number>;
  readonly words: ReadonlySet<string>;
  readonly laid: ReadonlyMap<string, { readonly start: number }>;
}

/** Lays out `root` and every rule that it leads to, each once. */
function layOut(rules: Rules, root: string): Layout {
  const arcs: Arc[][] = [];
  const joints = new Set<number>();
  const ends = new Set<number>();
  const words = new Set<string>();
  const laid = new Map<string, { start: number }>();
  const waiting: string[] = [];
  const state = (): number => arcs.push([]) - 1;
  const pass = (from: number, to: number, cost = 0): void => {
    arcs[from]!.push({ to, cost });
  };
  const want = (name: string): void => {
    if (laid.has(name)) return;
    laid.set(name, { start: state() });
    waiting.push(name);
  };

  /** Lays `item` out from state `from`; returns the state behind it. */
  function lay(item: Expression, from: number): number {
    switch (item.kind) {
      case 'word': {
        const to = state();
        words.add(item.word);
        arcs[from]!.push({ to, word: item.word });
        return to;
      }
      case 'sequence':
        return item.items.reduce((at, next) => lay(next, at), from);
      case 'alternative':
        return layAlternative(item, from);
      case 'optional': {
        const to = lay(item.item, from);
        pass(from, to);
        return to;
      }
      case 'repeat':
        return layRepeat(item, from);
      case 'rule': {
        const to = state();
        want(item.name);
        arcs[from]!.push({ to, call: item.name });
        return to;
      }
      case 'tag': {
        const to = state();
        arcs[from]!.push({ to, cost: 0, tag: item.tag });
        return to;
      }
      case 'dictation': {
        const to = state();
        arcs[from]!.push({ to, any: true });
        arcs[to]!.push({ to, any: true });
        return to;
      }
    }
  }

  function layAlternative(item: Extract<Expression, { kind: 'alternative' }>, from: number): number {
    const to = state();
    item.items.forEach((choice, index) => {
      const weight = item.weights?.[index] ?? 1;
      let at = from;
      if (weight !== 1) {
        at = state();
        pass(from, at, -Math.log(weight));
      }
      pass(lay(choice, at), to);
    });
    return to;
  }

  function layRepeat(item: Extract<Expression, { kind: 'repeat' }>, from: number): number {
    let at = from;
    if (item.most === undefined) {
      for (let count = 1; count < item.least; count += 1) at = lay(item.item, at);
      const joint = state();
      joints.add(joint);
      pass(at, joint);
      const behind = lay(item.item, joint);
      pass(behind, joint);
      if (item.least > 0) return behind;
      const to = state();
      pass(joint, to);
      return to;
    }
    for (let count = 0; count < item.least; count += 1) at = lay(item.item, at);
    const to = state();
    for (let count = item.least; count < item.most; count += 1) {
      pass(at, to);
      at = lay(item.item, at);
    }
    pass(at, to);
    return to;
  }

  want(root);
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    const named = rules[name];
    if (named === undefined) throw new Error(`no rule "${name}"`);
    const end = state();
    pass(lay(named, laid.get(name)!.start), end);
    ends.add(end);
  }
  return { arcs, joints, ends, words, laid };
}
