import { NAMEPLATE_FIELDS, type NameplateField, RATED_PAIR } from '../../vocabulary/nameplate.ts';
import { FITTED, FITTED_AFTER, FITTED_FOR, PART_RATINGS, PARTS } from '../../vocabulary/parts.ts';
import { POINTS, type Point } from '../../vocabulary/points.ts';
import { UNITS, type Unit } from '../../vocabulary/units.ts';
import {
  JUMPER_ACTIONS,
  JUMPER_GONE,
  PULLED,
  PUT,
  WIRE_ACTIONS,
  WIRE_COLOURS,
  WIRE_SIZES,
} from '../../vocabulary/wires.ts';
import { SAID_WORKS } from '../../vocabulary/works.ts';
import {
  alternative,
  type Expression,
  optional,
  type Rules,
  repeat,
  rule,
  sequence,
  tag,
  word,
} from '../expression.ts';
import { pattern } from '../pattern.ts';
import { phraseBook } from '../phrase-book.ts';
import { MARK_SIGN, PLATE_ANSWER, plateMark, VALUE_FIRST } from './plate-rules.ts';
import { NUMBER } from './reading-rules.ts';

const FIELDS: readonly (NameplateField & { readonly id: (typeof NAMEPLATE_FIELDS)[number]['id'] })[] = NAMEPLATE_FIELDS;

/** Fields that are understood without "nameplate" before them. */
const ALONE = FIELDS.flatMap((field) =>
  field.alone ? [field] : field.aloneAs === undefined ? [] : [{ ...field, say: field.aloneAs }],
);

const named = (field: (typeof FIELDS)[number]): Expression =>
  sequence(pattern(field.say), tag({ tag: 'field', field: field.id }));

/** Fields that hold a number share one number behind their names. */
const numberField = (fields: typeof FIELDS): Expression =>
  sequence(
    alternative(...fields.filter((field) => field.value.startsWith('number')).map(named)),
    optional(pattern('is | at | of')),
    NUMBER,
    optional(rule('unit-name')),
    optional(sequence(optional(pattern('over | slash | to | and')), NUMBER, optional(rule('unit-name')))),
  );

const choiceField = (fields: typeof FIELDS): Expression =>
  alternative(
    ...fields
      .filter((field) => field.value === 'choice')
      .map((field) =>
        sequence(
          named(field),
          optional(pattern('is')),
          alternative(
            ...(field.choices ?? []).map((choice) =>
              sequence(pattern(choice.say), tag({ tag: 'choice', value: choice.value })),
            ),
          ),
        ),
      ),
  );

const TONS = sequence(
  optional(pattern("it's [a] | it is [a] | unit is [a] | this is a")),
  NUMBER,
  pattern('ton | tons'),
  optional(pattern('unit | system')),
  tag({ tag: 'field', field: 'tons' }),
);

/** "R410A system". */
const REFRIGERANT_SYSTEM = sequence(
  optional(pattern("it's [a | an] | it is [a | an] | this is [a | an]")),
  alternative(
    ...FIELDS.filter((field) => field.id === 'refrigerant').flatMap((field) =>
      (field.choices ?? []).map((choice) =>
        sequence(
          pattern(choice.say),
          tag({ tag: 'choice', value: choice.value }),
          tag({ tag: 'field', field: field.id }),
        ),
      ),
    ),
  ),
  pattern('system | unit'),
);

/** "nameplate says forty five over five", "cap is rated forty five over five": both sections at once. */
const RATED_CAPACITOR = sequence(
  pattern(RATED_PAIR),
  NUMBER,
  pattern('over | slash'),
  NUMBER,
  optional(rule('unit-name')),
  tag({ tag: 'field', field: 'capacitor-herm' }),
  tag({ tag: 'field', field: 'capacitor-fan' }),
);

const points: readonly (Point & { readonly id: (typeof POINTS)[number]['id'] })[] = POINTS;
const wireEnd = phraseBook(
  points.map((point) => ({ row: point.id, say: point.say ?? point.name })),
  (ids) => ({ tag: 'tip', points: ids }),
);

const units: readonly Unit[] = UNITS;
const FLAME = tag({ tag: 'deed', deed: 'flame-lit' });

const WIRE = 'wire | lead | conductor | one';
const WIRE_SIZE = alternative(
  ...WIRE_SIZES.map((row) => sequence(pattern(row.say), tag({ tag: 'size', size: row.size }))),
);
const WIRE_COLOUR = alternative(
  ...WIRE_COLOURS.map((colour) => sequence(word(colour), tag({ tag: 'colour', colour }))),
);

const RATING = alternative(
  sequence(
    NUMBER,
    optional(sequence(pattern('over | slash'), NUMBER)),
    alternative(...PART_RATINGS.map((row) => sequence(pattern(row.say), tag({ tag: 'rating', rating: row.id })))),
  ),
  sequence(NUMBER, pattern('over | slash'), NUMBER, tag({ tag: 'rating', rating: 'uF' })),
);

const weighed = (unit: Unit['code']): Expression => tag({ tag: 'unit', unit, of: ['mass'] });
const POUNDS = weighed('[lb_av]');
const OUNCES = weighed('[oz_av]');
/** Ounces, kilograms, grams: nothing but a weight is said in them. */
const LIGHT_WEIGHT = alternative(
  ...units.flatMap((unit) =>
    unit.quantities.some((quantity) => quantity === 'mass') && unit.code !== '[lb_av]'
      ? [sequence(NUMBER, pattern(unit.say), weighed(unit.code))]
      : [],
  ),
);

export const RECORD_RULES: Rules = {
  nameplate: sequence(
    alternative(
      sequence(pattern('[the] $plate [says | reads]'), alternative(numberField(FIELDS), choiceField(FIELDS), TONS)),
      numberField(ALONE),
      choiceField(ALONE),
      TONS,
      REFRIGERANT_SYSTEM,
      RATED_CAPACITOR,
      VALUE_FIRST,
      plateMark(FIELDS.filter((field) => field.value === 'mark').map(named)),
    ),
    tag({ tag: 'frame', frame: 'nameplate' }),
  ),
  'mark-sign': MARK_SIGN,
  'plate-answer': PLATE_ANSWER,
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
  weight: alternative(
    sequence(
      NUMBER,
      pattern('[a] pound | pounds'),
      POUNDS,
      optional(sequence(optional(pattern('and')), NUMBER, pattern('ounce | ounces'), OUNCES)),
    ),
    LIGHT_WEIGHT,
  ),
  // Of pounds alone nothing says whether they are a weight or a pressure.
  'bare-weight': alternative(
    sequence(
      NUMBER,
      pattern('pound | pounds'),
      POUNDS,
      optional(word('and')),
      NUMBER,
      pattern('ounce | ounces'),
      OUNCES,
    ),
    LIGHT_WEIGHT,
  ),
  mass: sequence(
    alternative(
      sequence(
        alternative(
          sequence(pattern('added | charged [it] [in | with] | weighed [it] in | put in'), tag({ tag: 'into' })),
          sequence(pattern('recovered | removed | took out | pulled out | weighed out'), tag({ tag: 'out' })),
        ),
        rule('weight'),
      ),
      rule('bare-weight'),
    ),
    optional(alternative(pattern('[of] (refrigerant | gas | charge)'), rule('trailer'))),
    tag({ tag: 'frame', frame: 'mass' }),
  ),
};
