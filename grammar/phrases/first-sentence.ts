import type { Expression, Rules } from './expression.ts';

/**
 * The way through the first of each choice: what a phrase of a table says, in its plainest words.
 *
 * @param whole with the words that may be left out, which tell a name from a like one
 */
export function firstSentence(expression: Expression, rules: Rules, whole = false): string {
  const words = (item: Expression): readonly string[] => {
    switch (item.kind) {
      case 'word':
        return [item.word];
      case 'sequence':
        return item.items.flatMap(words);
      case 'alternative':
        return item.items[0] === undefined ? [] : words(item.items[0]);
      case 'repeat':
        return Array.from({ length: item.least }, () => words(item.item)).flat();
      case 'rule':
        return rules[item.name] === undefined ? [] : words(rules[item.name]!);
      case 'optional':
        return whole ? words(item.item) : [];
      case 'tag':
      case 'dictation':
        return [];
    }
  };
  return words(expression).join(' ');
}
