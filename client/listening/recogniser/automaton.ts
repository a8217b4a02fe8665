import { ListeningError } from '../listening-error.ts';
import type { Jsgf, JsgfNode } from './parse-jsgf.ts';

/** A deterministic network of words. State 0 is the start. */
export interface Automaton {
  /** For each state, which word leads where. */
  readonly arcs: readonly ReadonlyMap<string, number>[];
  readonly final: readonly boolean[];
  /** Among how many ways on each state shares its likelihood; among its own where left out. */
  readonly ways?: readonly number[];
}

/** Whether the words, apart by spaces, are a whole sentence of the network; and whether more words may follow them. */
export function follow({ arcs, final }: Automaton, text: string): { readonly whole: boolean; readonly more: boolean } {
  let at: number | undefined = 0;
  for (const word of text.split(' ')) {
    at = arcs[at]?.get(word);
    if (at === undefined) return { whole: false, more: false };
  }
  return { whole: final[at] === true, more: (arcs[at]?.size ?? 0) > 0 };
}

/** The network of one sentence, as if there were no other way. */
export function sentenceAlone(text: string): Automaton {
  const words = text.split(' ');
  const states = [...words.keys(), words.length];
  return {
    arcs: states.map((at) => new Map(at < words.length ? [[words[at]!, at + 1]] : [])),
    final: states.map((at) => at === words.length),
  };
}

/** A network under construction: words and empty moves, one start, one end. */
interface Loose {
  readonly words: [word: string, to: number][][];
  readonly empty: number[][];
}

/**
 * The smallest deterministic network for a grammar. JSGF names its parts as often as it likes; the recogniser would
 * follow every copy in parallel. Here copies that begin alike share their beginning and copies that end alike their
 * end, which makes the search many times faster. Each rule is made small once and then used where it is named.
 *
 * @throws ListeningError `grammar-broken` for a rule that is missing or names itself
 */
export function toAutomaton({ rules, root }: Jsgf): Automaton {
  const made = new Map<string, Automaton | 'open'>();
  const ruleOf = (name: string): Automaton => {
    const known = made.get(name);
    if (known === 'open') throw new ListeningError('grammar-broken', { detail: `the rule <${name}> names itself` });
    if (known !== undefined) return known;
    const node = rules.get(name);
    if (node === undefined) throw new ListeningError('grammar-broken', { detail: `there is no rule <${name}>` });
    made.set(name, 'open');
    const small = minimal(deterministic(loose(node, ruleOf)));
    made.set(name, small);
    return small;
  };
  return ruleOf(root);
}

function loose(node: JsgfNode, ruleOf: (name: string) => Automaton): Loose {
  const net: Loose = { words: [], empty: [] };
  const state = (): number => {
    net.words.push([]);
    net.empty.push([]);
    return net.words.length - 1;
  };
  const start = state();
  const end = state();

  const lay = (part: JsgfNode, from: number, to: number): void => {
    switch (part.kind) {
      case 'word':
        net.words[from]!.push([part.word, to]);
        return;
      case 'rule':
        layRule(ruleOf(part.name), from, to);
        return;
      case 'choice':
        for (const item of part.items) lay(item, from, to);
        return;
      case 'sequence':
        laySequence(part.items, from, to);
        return;
      case 'repeat': {
        const before = state();
        const after = state();
        net.empty[from]!.push(before);
        net.empty[after]!.push(to);
        lay(part.item, before, after);
        if (part.many) net.empty[after]!.push(before);
        if (part.least === 0) net.empty[before]!.push(to);
        return;
      }
      case 'void':
    }
  };
  const laySequence = (items: readonly JsgfNode[], from: number, to: number): void => {
    let at = from;
    for (const item of items) {
      const next = state();
      lay(item, at, next);
      at = next;
    }
    net.empty[at]!.push(to);
  };
  const layRule = (rule: Automaton, from: number, to: number): void => {
    const own = rule.arcs.map(() => state());
    net.empty[from]!.push(own[0]!);
    rule.arcs.forEach((arcs, index) => {
      for (const [word, target] of arcs) net.words[own[index]!]!.push([word, own[target]!]);
      if (rule.final[index]) net.empty[own[index]!]!.push(to);
    });
  };

  lay(node, start, end);
  return net;
}

/** Subset construction (Rabin and Scott, 1959). The end of a loose network is its state 1. */
function deterministic(net: Loose): Automaton {
  const closed = (states: Iterable<number>): number[] => {
    const reached = new Set(states);
    for (const at of reached) for (const next of net.empty[at]!) reached.add(next);
    // Only states with words or the end tell two sets apart.
    return [...reached].filter((at) => at === 1 || net.words[at]!.length > 0).sort((a, b) => a - b);
  };
  const numbers = new Map<string, number>();
  const sets: number[][] = [];
  const numberOf = (set: number[]): number => {
    const key = set.join();
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, sets.length);
    sets.push(set);
    return sets.length - 1;
  };
  numberOf(closed([0]));
  const arcs: Map<string, number>[] = [];
  for (let index = 0; index < sets.length; index += 1) {
    const targets = new Map<string, number[]>();
    for (const at of sets[index]!) {
      for (const [word, to] of net.words[at]!) {
        const list = targets.get(word);
        if (list === undefined) targets.set(word, [to]);
        else list.push(to);
      }
    }
    arcs.push(new Map([...targets].map(([word, list]) => [word, numberOf(closed(list))])));
  }
  return { arcs, final: sets.map((set) => set.includes(1)) };
}

/** Joins states that nothing can tell apart, refining by their arcs until nothing changes (Moore, 1956). */
function minimal({ arcs, final }: Automaton): Automaton {
  let classes = final.map(Number);
  for (let count = 0; ; ) {
    const numbers = new Map<string, number>();
    classes = arcs.map((own, index) => {
      const moves = [...own].map(([word, to]) => `${word} ${classes[to]}`).sort();
      const key = `${classes[index]}|${moves.join('|')}`;
      const known = numbers.get(key) ?? numbers.size;
      numbers.set(key, known);
      return known;
    });
    if (numbers.size === count) break;
    count = numbers.size;
  }
  // State 0 is met first, so that its class is 0 too.
  const small: Map<string, number>[] = [];
  const ends: boolean[] = [];
  arcs.forEach((own, index) => {
    small[classes[index]!] ??= new Map([...own].map(([word, to]) => [word, classes[to]!]));
    ends[classes[index]!] = final[index]!;
  });
  return { arcs: small, final: ends };
}
