import type { Expression, Rules } from './expression.ts';
import type { Tag } from './tag.ts';

export type Arc =
  | { readonly to: number; readonly word: string }
  | { readonly to: number; readonly any: true }
  | { readonly to: number; readonly call: string }
  | { readonly to: number; readonly cost: number; readonly tag?: Tag };

/** Rules as states and arcs between them, each rule once. */
export interface Layout {
  readonly arcs: readonly (readonly Arc[])[];
  /** States whose followers are many and shared: they are not copied to the states before them. */
  readonly joints: ReadonlySet<number>;
  readonly ends: ReadonlySet<number>;
  readonly words: ReadonlySet<string>;
  readonly laid: ReadonlyMap<string, { readonly start: number }>;
}

/** Lays out `root` and every rule that it leads to, each once. @throws Error for a rule that is named nowhere. */
export function layOut(rules: Rules, root: string): Layout {
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
  markJoints(arcs, laid, joints);
  // Lists that grew by one arc have room for many: their copies have not.
  return { arcs: arcs.map((list) => list.slice()), joints, ends, words, laid };
}

/** A rule that may begin with more words than this is a joint. */
const MANY = 32;

/** Makes joints of the rules that may begin with many words; words of rules that are joints themselves do not count. */
function markJoints(
  arcs: readonly (readonly Arc[])[],
  laid: ReadonlyMap<string, { readonly start: number }>,
  joints: Set<number>,
): void {
  const counts = new Map<number, number>();
  const count = (start: number): number => {
    const known = counts.get(start);
    if (known !== undefined) return known;
    let words = 0;
    const seen = new Set([start]);
    for (const at of seen) {
      for (const arc of arcs[at]!) {
        if ('word' in arc) words += 1;
        else if ('call' in arc) words += count(laid.get(arc.call)!.start);
        else if ('cost' in arc) seen.add(arc.to);
      }
    }
    if (words > MANY) joints.add(start);
    counts.set(start, words > MANY ? 0 : words);
    return counts.get(start)!;
  };
  for (const { start } of laid.values()) count(start);
}
