import { NAMEPLATE_FIELDS_BY_ID } from '../../../../vocabulary/nameplate.ts';
import { alternative, type Expression, optional, repeat, rule, sequence, tag, word } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { UNIT_WORDS, ZERO_WORDS } from '../words/number-words.ts';
import { NUMBER } from './value-rules.ts';

const VOLTS = tag({ tag: 'unit', unit: 'V', of: ['voltage'] });
const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
export const LETTERS_AND_DIGITS: readonly string[] = [...'abcdefghijklmnopqrstuvwxyz', ...DIGITS];

/** One letter or digit of a mark, as it is spelt out. */
export const MARK_SIGN: Expression = alternative(...[...LETTERS_AND_DIGITS, 'dash'].map(word));

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
export const MOST_SIGNS = 20;

/** Two voltages in one breath without a word between them, as plates have them (common practice). */
const VOLT_PAIRS = [
  [
    '208/230',
    '(two (oh | zero) eight | two hundred [and] eight) [to | dash | slash | over] (two thirty | two hundred [and] thirty)',
  ],
  [
    '208/240',
    '(two (oh | zero) eight | two hundred [and] eight) [to | dash | slash | over] (two forty | two hundred [and] forty)',
  ],
] as const;

export const VOLTS_OF_TWO: Expression = sequence(
  alternative(...VOLT_PAIRS.map(([value, say]) => sequence(pattern(say), tag({ tag: 'choice', value })))),
  optional(pattern('volt | volts')),
  optional(pattern('(single | one) phase')),
);

/** What is read off a plate without the names of its lines: it means that only while the plate is read. */
export const PLATE_ANSWER: Expression = sequence(
  alternative(
    sequence(NUMBER, optional(sequence(pattern('over | slash'), NUMBER)), pattern('volt | volts'), VOLTS),
    sequence(NUMBER, pattern('over | slash'), NUMBER, optional(rule('unit-name'))),
    // "Fourteen point one and seventy seven": the two of a line that is asked in one breath.
    {
      kind: 'alternative',
      items: [
        sequence(NUMBER, pattern('and | plus'), NUMBER, optional(rule('unit-name')), tag({ tag: 'pair', of: 'line' })),
      ],
      // "twenty seven and a half volts" is one number first.
      weights: [0.3],
    },
    VOLTS_OF_TWO,
    ...(NAMEPLATE_FIELDS_BY_ID.refrigerant.choices ?? []).map(({ say, value }) =>
      sequence(pattern(say), tag({ tag: 'choice', value })),
    ),
  ),
  tag({ tag: 'frame', frame: 'plate-answer' }),
);

/** "Fourteen point one r l a": the abbreviation behind its number. */
export const VALUE_FIRST: Expression = sequence(
  NUMBER,
  optional(pattern('amp | amps')),
  alternative(
    ...(
      [
        ['rla', 'r l a'],
        ['lra', 'l r a'],
        ['fan-fla', 'f l a'],
        ['min-circuit-amps', 'm c a'],
      ] as const
    ).map(([field, say]) => sequence(pattern(say), tag({ tag: 'field', field }))),
  ),
);

/** "Fan motor one quarter horse". */
export const HORSEPOWER: Expression = sequence(
  pattern('[the] fan motor [is] [a]'),
  NUMBER,
  pattern('horse | horsepower | h p'),
  tag({ tag: 'field', field: 'fan-horsepower' }),
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
