import { alternative, type Expression, optional, type Rules, sequence, word } from '../phrases/expression.ts';

/**
 * "The compressor is …" as it is run together: every way to say `before` and then `after` with the last word of the
 * one and an "is" of the other made one word, "compressor's …". Undefined where no such "is" can begin `after`.
 */
export function contracted(before: Expression, after: Expression, rules: Rules = {}): Expression | undefined {
  const rest = behindIs(after);
  const owner = possessive(before, rules);
  return rest === undefined || owner === undefined ? undefined : sequence(owner, ...rest);
}

/** Words that do not run together with an "is": those that end in its sound, letters, and those that no name ends in. */
const UNCONTRACTED = /(s|x|z|^.|^the|^for|^of|^to|^and|^hot|^ground|^out|^in|^at|^unit|^cooling|^cool)$/;

/** An expression with its last word ending in 's; undefined where none can. `rules`: those whose names it may end in. */
export function possessive(expression: Expression, rules: Rules): Expression | undefined {
  switch (expression.kind) {
    case 'word':
      return UNCONTRACTED.test(expression.word) ? undefined : word(`${expression.word}'s`);
    case 'alternative':
      return anyOf(expression.items.map((item) => possessive(item, rules)));
    case 'optional':
      return possessive(expression.item, rules);
    case 'sequence': {
      const before = expression.items.slice(0, -1);
      const last = expression.items.at(-1);
      if (last === undefined) return undefined;
      const whole = possessive(last, rules);
      const ways = [whole && sequence(...before, whole)];
      if (last.kind === 'optional' && before.length > 0) ways.push(possessive(sequence(...before), rules));
      return anyOf(ways);
    }
    case 'rule':
      return rules[expression.name] && possessive(rules[expression.name]!, rules);
    default:
      return undefined;
  }
}

/** What may follow an "is" that begins an expression, as the items of a sequence; undefined where none does. */
function behindIs(expression: Expression): readonly Expression[] | undefined {
  switch (expression.kind) {
    case 'word':
      return expression.word === 'is' ? [] : undefined;
    case 'optional':
      return behindIs(expression.item);
    case 'alternative':
      return asItems(expression.items.map(behindIs));
    case 'sequence': {
      const [first, ...rest] = expression.items;
      if (first === undefined) return undefined;
      const taken = behindIs(first);
      const skipped = first.kind === 'optional' ? behindIs(sequence(...rest)) : undefined;
      return asItems([taken && [...taken, ...rest], skipped]);
    }
    default:
      return undefined;
  }
}

/** One of several runs; where one of them is empty the others are optional. */
function asItems(runs: readonly (readonly Expression[] | undefined)[]): readonly Expression[] | undefined {
  const known = runs.filter((run) => run !== undefined);
  if (known.length === 0) return undefined;
  const filled = known.filter((run) => run.length > 0).map((run) => sequence(...run));
  if (filled.length === 0) return [];
  const one = alternative(...filled);
  return [filled.length < known.length ? optional(one) : one];
}

function anyOf(ways: readonly (Expression | undefined)[]): Expression | undefined {
  const known = ways.filter((way) => way !== undefined);
  return known.length === 0 ? undefined : alternative(...known);
}

/** An expression together with its own contractions: "contactor is pulled in", "contactor's pulled in". */
export function withContractions(expression: Expression, rules: Rules): Expression {
  if (expression.kind === 'alternative') {
    return alternative(...expression.items.map((item) => withContractions(item, rules)));
  }
  if (expression.kind !== 'sequence') return expression;
  const ways: Expression[] = [expression];
  expression.items.forEach((_, at) => {
    if (at === 0) return;
    const run = contracted(sequence(...expression.items.slice(0, at)), sequence(...expression.items.slice(at)), rules);
    if (run !== undefined) ways.push(run);
  });
  return alternative(...ways);
}
