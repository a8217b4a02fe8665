import type { Expression } from '../phrases/expression.ts';
import { NUMERAL } from '../phrases/words.ts';

const NOTHING: Expression = { kind: 'sequence', items: [] };
const isNothing = (item: Expression): boolean => item.kind === 'sequence' && item.items.length === 0;

/**
 * The words of an expression alone: tags, typed numerals and dictation taken out, and what is then left without words
 * with them. An alternative that may be empty becomes optional.
 */
export function plain(expression: Expression): Expression {
  switch (expression.kind) {
    case 'word':
      return expression.word === NUMERAL ? NOTHING : expression;
    case 'tag':
    case 'dictation':
      return NOTHING;
    case 'rule':
      return expression;
    case 'optional': {
      const item = plain(expression.item);
      return isNothing(item) ? NOTHING : item.kind === 'optional' ? item : { kind: 'optional', item };
    }
    case 'repeat': {
      const item = plain(expression.item);
      return isNothing(item) ? NOTHING : { ...expression, item };
    }
    case 'sequence': {
      const items = expression.items.map(plain).filter((item) => !isNothing(item));
      return items.length === 1 ? items[0]! : { kind: 'sequence', items };
    }
    case 'alternative': {
      const items = expression.items.filter((item) => !(item.kind === 'word' && item.word === NUMERAL)).map(plain);
      const said = items.filter((item) => !isNothing(item));
      const choice: Expression = said.length === 1 ? said[0]! : { kind: 'alternative', items: said };
      if (said.length === 0) return NOTHING;
      return said.length < items.length ? { kind: 'optional', item: choice } : choice;
    }
  }
}
