import type { Expression } from '../phrases/expression.ts';
import { NUMERAL } from '../phrases/words.ts';

const NOTHING: Expression = { kind: 'sequence', items: [] };
const isNothing = (item: Expression): boolean => item.kind === 'sequence' && item.items.length === 0;
const isNumeral = (item: Expression): boolean => item.kind === 'word' && item.word === NUMERAL;

/**
 * The words of an expression alone: tags and typed numerals taken out, and what is then left without words with them.
 * An alternative that may be empty becomes optional. `dictation: 'drop'` takes free speech out too.
 */
export function plain(expression: Expression, dictation: 'keep' | 'drop'): Expression {
  const inner = (item: Expression): Expression => plain(item, dictation);
  switch (expression.kind) {
    case 'word':
      return isNumeral(expression) ? NOTHING : expression;
    case 'tag':
      return NOTHING;
    case 'dictation':
      return dictation === 'keep' ? expression : NOTHING;
    case 'rule':
      return expression;
    case 'optional': {
      const item = inner(expression.item);
      return isNothing(item) || item.kind === 'optional' ? item : { kind: 'optional', item };
    }
    case 'repeat': {
      const item = inner(expression.item);
      return isNothing(item) ? NOTHING : { ...expression, item };
    }
    case 'sequence': {
      const items = expression.items.map(inner).filter((item) => !isNothing(item));
      return items.length === 1 ? items[0]! : { kind: 'sequence', items };
    }
    case 'alternative':
      return plainAlternative(expression, inner);
  }
}

function plainAlternative(
  expression: Extract<Expression, { kind: 'alternative' }>,
  inner: (item: Expression) => Expression,
): Expression {
  const kept: { item: Expression; weight: number }[] = [];
  let empty = false;
  expression.items.forEach((choice, index) => {
    if (isNumeral(choice)) return;
    const item = inner(choice);
    if (isNothing(item)) empty = true;
    else kept.push({ item, weight: expression.weights?.[index] ?? 1 });
  });
  if (kept.length === 0) return NOTHING;
  const items = kept.map(({ item }) => item);
  const weights = kept.map(({ weight }) => weight);
  const weighted = weights.some((weight) => weight !== 1) ? { weights } : {};
  const choice: Expression = items.length === 1 ? items[0]! : { kind: 'alternative', items, ...weighted };
  return empty ? { kind: 'optional', item: choice } : choice;
}
