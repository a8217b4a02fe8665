import { NAMEPLATE_FIELDS_BY_ID } from '../../vocabulary/nameplate.ts';
import { UNIT_WORDS, ZERO_WORDS } from '../../vocabulary/number-words.ts';
import { alternative, type Expression, repeat, rule, sequence, tag, word } from '../expression.ts';
import { pattern } from '../pattern.ts';

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];

/** One letter or digit of a mark, as it is spelt out. */
export const MARK_SIGN: Expression = alternative(
  ...[...LETTERS, 'zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'dash'].map(word),
);

/** Letters and digits behind the name of what they mark: "model four t w b three". */
export function plateMark(names: readonly Expression[]): Expression {
  return sequence(
    alternative(...names),
    tag({ tag: 'dictated', edge: 'begin' }),
    repeat(rule('mark-sign'), LEAST_SIGNS, MOST_SIGNS),
    tag({ tag: 'dictated', edge: 'end' }),
  );
}

/** Of a model or serial number, as far as it is heard. Our choice. */
export const LEAST_SIGNS = 3;
const MOST_SIGNS = 20;

/** The refrigerant alone: it answers the question for it, and means nothing else. */
export const PLATE_ANSWER: Expression = sequence(
  alternative(
    ...(NAMEPLATE_FIELDS_BY_ID.refrigerant.choices ?? []).map(({ say, value }) =>
      sequence(pattern(say), tag({ tag: 'choice', value })),
    ),
  ),
  tag({ tag: 'frame', frame: 'plate-answer' }),
);

/** Words that stand for one sign of a mark. */
export const SIGN_WORDS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(ZERO_WORDS.map((zero) => [zero, '0'])),
  ...Object.fromEntries(Object.entries(UNIT_WORDS).map(([name, digit]) => [name, String(digit)])),
  dash: '-',
  hyphen: '-',
  slash: '/',
  dot: '.',
};
