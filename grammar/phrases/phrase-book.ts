import { alternative, type Expression, type Rules, sequence, tag, word } from './expression.ts';
import { pattern, sentences } from './pattern.ts';
import type { Tag } from './tag.ts';

interface Leaf {
  readonly branches: Map<string, Leaf>;
  tag?: Tag;
}

/**
 * One expression for a table of names: a tree by first word, so that names which begin alike share their beginning.
 * Names that several rows share are said once and carry all rows: `merge` makes their tag.
 */
export function phraseBook<Row>(
  rows: readonly { readonly row: Row; readonly say: string }[],
  merge: (rows: readonly Row[]) => Tag,
  names: Rules = {},
): Expression {
  const byPhrase = new Map<string, Row[]>();
  for (const { row, say } of rows) {
    const said = new Set(sentences(pattern(say), names).map((words) => words.join(' ')));
    for (const phrase of said) byPhrase.set(phrase, [...(byPhrase.get(phrase) ?? []), row]);
  }
  const root: Leaf = { branches: new Map() };
  for (const [phrase, meant] of byPhrase) {
    let at = root;
    for (const next of phrase.split(' ')) {
      let branch = at.branches.get(next);
      if (branch === undefined) {
        branch = { branches: new Map() };
        at.branches.set(next, branch);
      }
      at = branch;
    }
    at.tag = merge(meant);
  }
  return expressionOf(root);
}

function expressionOf(leaf: Leaf): Expression {
  const choices = [...leaf.branches].map(([next, branch]) =>
    branch.branches.size === 0 ? sequence(word(next), tag(branch.tag!)) : sequence(word(next), expressionOf(branch)),
  );
  if (leaf.tag !== undefined) choices.push(tag(leaf.tag));
  return alternative(...choices);
}
