import { POINTS, type Point } from '../../../../vocabulary/points.ts';
import {
  JUMPER_ACTIONS,
  JUMPER_GONE,
  PULLED,
  PUT,
  WIRE_ACTIONS,
  WIRE_COLOURS,
  WIRE_IS_OFF,
  WIRE_IS_ON,
  WIRE_SIZES,
} from '../../../../vocabulary/wires.ts';
import { alternative, optional, type Rules, rule, sequence, tag, word } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { phraseBook } from '../../../phrase-book.ts';

const points: readonly (Point & { readonly id: (typeof POINTS)[number]['id'] })[] = POINTS;
const wireEnd = phraseBook(
  points.map((point) => ({ row: point.id, say: point.say ?? point.name })),
  (ids) => ({ tag: 'tip', points: ids }),
);

const WIRE = 'wire | lead | conductor | one';
const WIRE_SIZE = alternative(
  ...WIRE_SIZES.map((row) => sequence(pattern(row.say), tag({ tag: 'size', size: row.size }))),
);
const WIRE_COLOUR = alternative(
  ...WIRE_COLOURS.map((colour) => sequence(word(colour), tag({ tag: 'colour', colour }))),
);

/** Wires lifted and landed, jumpers put on and taken off. */
export const WIRE_RULES: Rules = {
  'wire-end': wireEnd,
  'wire-name': sequence(optional(WIRE_SIZE), optional(WIRE_COLOUR), optional(WIRE_SIZE), optional(pattern(WIRE))),
  // By its colour: of "pulled the brown wire off" the colour may be lost, and a record without it helps nobody.
  'wire-named': sequence(optional(WIRE_SIZE), WIRE_COLOUR, optional(WIRE_SIZE), optional(pattern(WIRE))),
  wire: sequence(
    alternative(
      sequence(
        alternative(...WIRE_ACTIONS.map((row) => sequence(pattern(row.say), tag({ tag: 'wire', action: row.action })))),
        optional(pattern('the | a')),
        rule('wire-name'),
        alternative(
          sequence(
            pattern('from | off | off of | off from'),
            rule('wire-end'),
            optional(rule('at-place')),
            tag({ tag: 'end', end: 'from' }),
            optional(
              sequence(
                pattern('to | onto'),
                rule('wire-end'),
                optional(rule('at-place')),
                tag({ tag: 'end', end: 'to' }),
              ),
            ),
          ),
          sequence(
            pattern('on | onto | to | at | back (on | onto | to)'),
            rule('wire-end'),
            optional(rule('at-place')),
            tag({ tag: 'end', end: 'to' }),
          ),
        ),
      ),
      sequence(
        pattern(PULLED),
        tag({ tag: 'wire', action: 'lifted' }),
        optional(pattern('the | a')),
        rule('wire-named'),
        pattern('from | off | off of | off from'),
        rule('wire-end'),
        optional(rule('at-place')),
        tag({ tag: 'end', end: 'from' }),
      ),
      // "Brown's back on the fan terminal", "purple is off herm".
      sequence(
        optional(word('the')),
        rule('wire-named'),
        pattern(WIRE_IS_ON),
        rule('wire-end'),
        optional(rule('at-place')),
        tag({ tag: 'wire', action: 'landed' }),
        tag({ tag: 'end', end: 'to' }),
      ),
      sequence(
        optional(word('the')),
        rule('wire-named'),
        pattern(WIRE_IS_OFF),
        rule('wire-end'),
        optional(rule('at-place')),
        tag({ tag: 'wire', action: 'lifted' }),
        tag({ tag: 'end', end: 'from' }),
      ),
      sequence(
        pattern(PUT),
        tag({ tag: 'wire', action: 'landed' }),
        optional(pattern('the | a')),
        rule('wire-named'),
        pattern('on | onto | back (on | onto | to)'),
        rule('wire-end'),
        optional(rule('at-place')),
        tag({ tag: 'end', end: 'to' }),
      ),
      sequence(
        alternative(
          ...JUMPER_ACTIONS.map((row) => sequence(pattern(row.say), tag({ tag: 'wire', action: row.action }))),
        ),
        rule('wire-end'),
        tag({ tag: 'end', end: 'from' }),
        pattern('to | and'),
        rule('wire-end'),
        optional(rule('at-place')),
        tag({ tag: 'end', end: 'to' }),
      ),
      sequence(pattern(JUMPER_GONE), tag({ tag: 'wire', action: 'jumper-off' })),
    ),
    tag({ tag: 'frame', frame: 'wire' }),
  ),
};
