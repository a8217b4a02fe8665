import { type Arc, Arcs, type Over } from './arcs.ts';
import type { Expression, Rules } from './expression.ts';
/** Rules as states and arcs between them, each rule once. */
export interface Layout {
  readonly arcs: Arcs;
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
  const overs = new Map<string, Over>();
  /** One object for all arcs that pass over the same. */
  const same = (name: string, over: Over): Over => {
    const known = overs.get(name) ?? over;
    overs.set(name, known);
    return known;
  };
  const state = (): number => arcs.push([]) - 1;
  const join = (from: number, to: number, over: Over): number => {
    arcs[from]!.push({ to, over });
    return to;
  };
  const pass = (from: number, to: number, cost = 0): number => join(from, to, same(`at ${cost}`, { cost }));
  const want = (name: string): void => {
    if (laid.has(name)) return;
    laid.set(name, { start: state() });
    waiting.push(name);
  };

  /** Lays `item` out from state `from`; returns the state behind it. */
  function lay(item: Expression, from: number): number {
    switch (item.kind) {
      case 'word':
        words.add(item.word);
        return join(from, state(), same(`word ${item.word}`, { word: item.word }));
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
        return join(from, to, same(`call ${item.name}`, { call: item.name }));
      }
      case 'tag':
        return join(from, state(), { cost: 0, tag: item.tag });
      case 'dictation': {
        const to = join(from, state(), same('any', { any: true }));
        return join(to, to, same('any', { any: true }));
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
  return { arcs: new Arcs(arcs), joints, ends, words, laid };
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
      for (const { to, over } of arcs[at]!) {
        if ('word' in over) words += 1;
        else if ('call' in over) words += count(laid.get(over.call)!.start);
        else if ('cost' in over) seen.add(to);
      }
    }
    if (words > MANY) joints.add(start);
    counts.set(start, words > MANY ? 0 : words);
    return counts.get(start)!;
  };
  for (const { start } of laid.values()) count(start);
}
