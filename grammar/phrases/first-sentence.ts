import type { Expression, Rules } from './expression.ts';

/** The shortest way through the first of each choice: what a phrase of a table says, in its plainest words. */
export function firstSentence(expression: Expression, rules: Rules): string {
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
      case 'tag':
      case 'dictation':
        return [];
    }
  };
  return words(expression).join(' ');
}
