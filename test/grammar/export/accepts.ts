import type { Expression, Rules } from '../../../grammar/phrases/expression.ts';

/**
 * Whether `rules[root]` takes the words whole: plain backtracking over positions, apart from the project's own
 * network, so that one may check the other. Dictation takes one word or more.
 */
export function accepts(rules: Rules, root: string, words: readonly string[]): boolean {
  const known = new Map<string, ReadonlySet<number>>();

  function ruleFrom(name: string, from: number): ReadonlySet<number> {
    const key = `${name} ${from}`;
    let reached = known.get(key);
    if (reached === undefined) {
      const expression = rules[name];
      if (expression === undefined) throw new Error(`no rule ${name}`);
      reached = ends(expression, new Set([from]));
      known.set(key, reached);
    }
    return reached;
  }

  function ends(item: Expression, starts: ReadonlySet<number>): ReadonlySet<number> {
    switch (item.kind) {
      case 'word':
        return new Set([...starts].filter((at) => words[at] === item.word).map((at) => at + 1));
      case 'sequence':
        return item.items.reduce((at: ReadonlySet<number>, next) => ends(next, at), starts);
      case 'alternative':
        return new Set(item.items.flatMap((choice) => [...ends(choice, starts)]));
      case 'optional':
        return new Set([...starts, ...ends(item.item, starts)]);
      case 'repeat': {
        let row = starts;
        const all = new Set<number>();
        for (let count = 0; count <= (item.most ?? words.length); count += 1) {
          if (count >= item.least) for (const at of row) all.add(at);
          row = ends(item.item, row);
          if (row.size === 0) break;
        }
        return all;
      }
      case 'rule':
        return new Set([...starts].flatMap((at) => [...ruleFrom(item.name, at)]));
      case 'tag':
        return starts;
      case 'dictation':
        return new Set([...starts].flatMap((at) => words.slice(at).map((_, index) => at + index + 1)));
    }
  }
  return ruleFrom(root, 0).has(words.length);
}
