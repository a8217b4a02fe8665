import { alternative, type Expression, optional, rule, sequence, word } from './expression.ts';

/** A phrase of a table that cannot be read as a pattern. */
export class PatternError extends Error {}

/**
 * Reads the notation of the phrase tables, a small part of SRGS ABNF (W3C, Speech Recognition Grammar Specification
 * 1.0): words, `a | b`, `( )`, `[optional]`, `$rule`. Words are in small letters.
 *
 * @throws PatternError naming the phrase and the place, for brackets that do not close and empty choices.
 */
export function pattern(text: string): Expression {
  const parts = text.match(/[()[\]|]|\$[a-z][a-z0-9-]*|[^\s()[\]|$]+/g) ?? [];
  let next = 0;
  const fail = (why: string): never => {
    throw new PatternError(`${why} at part ${next + 1} of "${text}"`);
  };

  function choice(): Expression {
    const items = [run()];
    while (parts[next] === '|') {
      next += 1;
      items.push(run());
    }
    return alternative(...items);
  }

  function run(): Expression {
    const items: Expression[] = [];
    for (;;) {
      const part = parts[next];
      if (part === undefined || part === '|' || part === ')' || part === ']') break;
      items.push(single(part));
    }
    return items.length === 0 ? fail('nothing said') : sequence(...items);
  }

  function single(part: string): Expression {
    next += 1;
    if (part === '(' || part === '[') {
      const inner = choice();
      const close = part === '(' ? ')' : ']';
      if (parts[next] !== close) fail(`"${close}" missing`);
      next += 1;
      return part === '(' ? inner : optional(inner);
    }
    return part.startsWith('$') ? rule(part.slice(1)) : word(part);
  }

  const whole = choice();
  if (next < parts.length) fail(`"${parts[next]}" unexpected`);
  return whole;
}

/**
 * Every sentence of an expression without endless repeats, as lists of words; tags are dropped.
 *
 * @throws PatternError when there are more than `limit`.
 */
export function sentences(expression: Expression, rules: Record<string, Expression> = {}, limit = 20_000): string[][] {
  const grow = (starts: string[][], item: Expression): string[][] => {
    const ends: string[][] = [];
    for (const end of list(item)) for (const start of starts) ends.push([...start, ...end]);
    if (ends.length > limit) throw new PatternError(`more than ${limit} sentences`);
    return ends;
  };
  function list(item: Expression): string[][] {
    switch (item.kind) {
      case 'word':
        return [[item.word]];
      case 'sequence':
        return item.items.reduce(grow, [[]]);
      case 'alternative':
        return item.items.flatMap(list);
      case 'optional':
        return [[], ...list(item.item)];
      case 'repeat': {
        if (item.most === undefined) throw new PatternError('endless repeat');
        const all: string[][] = [];
        let row: string[][] = [[]];
        for (let count = 0; count <= item.most; count += 1) {
          if (count >= item.least) all.push(...row);
          row = grow(row, item.item);
        }
        return all;
      }
      case 'rule': {
        const named = rules[item.name];
        if (named === undefined) throw new PatternError(`no rule "${item.name}"`);
        return list(named);
      }
      case 'tag':
        return [[]];
      case 'dictation':
        throw new PatternError('dictation has no end of sentences');
    }
  }
  return list(expression);
}
