import type { Jsgf, JsgfNode } from '../../../client/listening/recogniser/parse-jsgf.ts';

/** What a sentence of a grammar filled in: the words under each rule that was used. */
export type Slots = Readonly<Record<string, string>>;

/** @returns undefined where the words are no sentence of the grammar */
export function slotsOf({ rules, root }: Jsgf, text: string): Slots | undefined {
  const words = text.split(' ');

  /** Every way the node can take words from `at` on: where it ends, and the slots filled so far. */
  function* take(node: JsgfNode, at: number, slots: Slots): Generator<readonly [number, Slots]> {
    if (node.kind === 'word') {
      if (words[at] === node.word) yield [at + 1, slots];
    } else if (node.kind === 'rule') {
      for (const [end, inner] of take(rules.get(node.name) ?? { kind: 'void' }, at, slots)) {
        yield [end, { ...inner, [node.name]: words.slice(at, end).join(' ') }];
      }
    } else if (node.kind === 'choice') {
      for (const item of node.items) yield* take(item, at, slots);
    } else if (node.kind === 'sequence') {
      yield* takeAll(node.items, at, slots);
    } else if (node.kind === 'repeat') {
      for (const [end, inner] of take(node.item, at, slots)) {
        yield [end, inner];
        if (node.many && end > at) yield* take({ ...node, least: 1 }, end, inner);
      }
      if (node.least === 0) yield [at, slots];
    }
  }

  function* takeAll(items: readonly JsgfNode[], at: number, slots: Slots): Generator<readonly [number, Slots]> {
    const [first, ...rest] = items;
    if (first === undefined) yield [at, slots];
    else for (const [end, inner] of take(first, at, slots)) yield* takeAll(rest, end, inner);
  }

  for (const [end, slots] of take({ kind: 'rule', name: root }, 0, {})) if (end === words.length) return slots;
  return undefined;
}
