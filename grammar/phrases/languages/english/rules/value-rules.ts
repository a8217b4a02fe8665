import { UNITS, type Unit } from '../../../../vocabulary/units.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag, word } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import {
  APPROXIMATELY,
  CAME_FROM,
  CAME_TO_WORDS,
  DENIALS,
  MORE_THAN,
  PEAK_WORDS,
  RANGE_WORDS,
  RESTARTS,
  TRAILERS,
  VALUE_WORDS,
} from '../words/reading-words.ts';

const unitsNamed = (units: readonly Unit[]): Expression =>
  alternative(
    ...units.map(({ say, code, quantities, asChosen }) =>
      sequence(pattern(say), tag({ tag: 'unit', unit: code, of: quantities, ...(asChosen && { asChosen }) })),
    ),
  );
const UNIT = unitsNamed(UNITS);

/** A word that stands for a value. */
const valueWord = (row: (typeof VALUE_WORDS)[number]): Expression =>
  sequence(
    pattern(row.say),
    tag({ tag: 'value', is: row.is }),
    ...('of' in row ? [tag({ tag: 'measures', of: row.of })] : []),
  );

/** Number words with their edges marked. */
export function spokenAs(words: string): Expression {
  return sequence(tag({ tag: 'number', edge: 'begin' }), pattern(words), tag({ tag: 'number', edge: 'end' }));
}

/** Any number. */
export const NUMBER: Expression = spokenAs('$number');
/** "Twenty seven two": its point was left out. */
const POINTLESS = spokenAs('$pointless');
/** "Eight tenths of an amp". */
const UNIT_MAYBE = optional(sequence(optional(pattern('of (a | an)')), rule('unit-name')));
/** "Half an ohm". */
const HALF_A_UNIT = sequence(spokenAs('half (a | an)'), rule('unit-name'));

const MOVING = alternative(
  sequence(pattern(RANGE_WORDS), NUMBER, pattern('to | and'), NUMBER, tag({ tag: 'moving', how: 'range' })),
  sequence(NUMBER, UNIT_MAYBE, pattern(PEAK_WORDS), tag({ tag: 'moving', how: 'peak' })),
);

/** "one eight, I mean one eighteen": what was said before it does not count. */
const NUMBER_AGAIN: Expression = {
  kind: 'alternative',
  items: [
    NUMBER,
    POINTLESS,
    sequence(
      NUMBER,
      UNIT_MAYBE,
      alternative(rule('restart'), pattern(DENIALS)),
      tag({ tag: 'restart', of: 'value' }),
      NUMBER,
    ),
    // "one eight one eighteen": taken only where the second number begins with the words of the first.
    sequence(NUMBER, tag({ tag: 'restart', of: 'echo' }), NUMBER),
  ],
  weights: [1, 0.5, 1, 0.3],
};
/** "Went from one twenty to one eighteen": where it came to rest counts. */
const CAME_TO = sequence(
  pattern(CAME_FROM),
  NUMBER,
  UNIT_MAYBE,
  pattern(CAME_TO_WORDS),
  tag({ tag: 'restart', of: 'value' }),
  NUMBER,
  UNIT_MAYBE,
);
/** "Over five hundred megohms": a meter's limit, and of insulation the value that can be vouched for. */
const AT_LEAST = sequence(pattern(MORE_THAN), NUMBER, rule('meg-unit'));

const value = (words: 'word-value' | 'bare-word'): Expression =>
  alternative(
    sequence(optional(pattern(APPROXIMATELY)), HALF_A_UNIT, optional(rule('trailer'))),
    sequence(optional(pattern(APPROXIMATELY)), NUMBER_AGAIN, UNIT_MAYBE, optional(rule('trailer'))),
    rule(words),
    sequence(rule('moving'), UNIT_MAYBE),
    CAME_TO,
    AT_LEAST,
  );

/** Values with their units: numbers, what stands for one, values that move, a value alone. */
export const VALUE_RULES: Rules = {
  'unit-name': UNIT,
  'meg-unit': unitsNamed(UNITS.filter(({ code }) => code === 'MOhm' || code === 'GOhm')),
  'word-value': alternative(...VALUE_WORDS.map(valueWord)),
  'bare-word': alternative(...VALUE_WORDS.filter((row) => !('withPlace' in row)).map(valueWord)),
  moving: MOVING,
  value: value('word-value'),
  // After "no" the tone and "nothing" would say the contrary: "no continuity".
  'plain-value': alternative(
    sequence(NUMBER, UNIT_MAYBE),
    ...VALUE_WORDS.filter((row) => row.is === 'open').map(valueWord),
  ),
  restart: pattern(RESTARTS),
  // Behind a "now" the next place may come.
  trailer: alternative(pattern(TRAILERS), sequence(word('now'), tag({ tag: 'parts' }))),
  'bare-value': sequence(
    optional(alternative(rule('lead'), rule('motion'))),
    value('bare-word'),
    optional(rule('bench')),
    optional(rule('held-for')),
    tag({ tag: 'frame', frame: 'value' }),
  ),
};
