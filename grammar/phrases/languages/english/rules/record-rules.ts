import { FITTED, FITTED_AFTER, FITTED_FOR, PART_RATINGS, PARTS } from '../../../../vocabulary/parts.ts';
import { SAID_WORKS } from '../../../../vocabulary/works.ts';
import { alternative, optional, type Rules, repeat, rule, sequence, tag } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { NAMEPLATE_RULES } from './nameplate-rules.ts';
import { NUMBER, spokenAs } from './value-rules.ts';
import { WEIGHT_RULES } from './weight-rules.ts';
import { WIRE_RULES } from './wire-rules.ts';

const FLAME = tag({ tag: 'deed', deed: 'flame-lit' });

const RATING = alternative(
  sequence(
    NUMBER,
    optional(sequence(pattern('over | slash | plus'), NUMBER)),
    alternative(...PART_RATINGS.map((row) => sequence(pattern(row.say), tag({ tag: 'rating', rating: row.id })))),
  ),
  sequence(NUMBER, pattern('over | slash | plus'), NUMBER, tag({ tag: 'rating', rating: 'uF' })),
  // "Forty five five": both sections of a capacitor.
  sequence(spokenAs('$tens $unit'), spokenAs('$unit'), tag({ tag: 'rating', rating: 'uF' })),
);

/** What goes on record beside readings: the nameplate, parts and works, wires, refrigerant by weight. */
export const RECORD_RULES: Rules = {
  ...NAMEPLATE_RULES,
  ...WIRE_RULES,
  ...WEIGHT_RULES,
  rating: RATING,
  part: sequence(
    pattern(FITTED),
    repeat(rule('rating'), 0, 3),
    alternative(...PARTS.map((part) => sequence(pattern(part.say), tag({ tag: 'part', part: part.id })))),
    optional(pattern(FITTED_FOR)),
    repeat(rule('rating'), 0, 3),
    optional(pattern(FITTED_AFTER)),
    tag({ tag: 'frame', frame: 'part' }),
  ),
  work: sequence(
    optional(pattern("i | i've | i have")),
    alternative(
      ...SAID_WORKS.flatMap((row) => {
        const done = tag({ tag: 'work', work: row.id });
        const said = sequence(pattern(row.say), done);
        return 'withFlame' in row ? [said, sequence(pattern(row.withFlame), done, FLAME)] : [said];
      }),
    ),
    tag({ tag: 'frame', frame: 'work' }),
  ),
};
