import type { Expression, Rules } from '../phrases/expression.ts';

/**
 * The rules that `root` leads to, each once, `root` first.
 *
 * @throws Error for a rule that is named nowhere
 */
export function reachedRules(rules: Rules, root: string): readonly (readonly [string, Expression])[] {
  const wanted = [root];
  const reached: (readonly [string, Expression])[] = [];
  for (let at = 0; at < wanted.length; at += 1) {
    const name = wanted[at]!;
    const expression = rules[name];
    if (expression === undefined) throw new Error(`no rule "${name}"`);
    reached.push([name, expression]);
    for (const used of namesIn(expression)) if (!wanted.includes(used)) wanted.push(used);
  }
  return reached;
}

function namesIn(expression: Expression): readonly string[] {
  switch (expression.kind) {
    case 'rule':
      return [expression.name];
    case 'sequence':
    case 'alternative':
      return expression.items.flatMap(namesIn);
    case 'optional':
    case 'repeat':
      return namesIn(expression.item);
    default:
      return [];
  }
}
