import { MEASURANDS } from '../../vocabulary/measurands.ts';
import { PLACES } from '../../vocabulary/places.ts';
import { POINTS, type Point, type PointId } from '../../vocabulary/points.ts';
import { UNITS } from '../../vocabulary/units.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag } from '../expression.ts';
import { pattern } from '../pattern.ts';
import { phraseBook } from '../phrase-book.ts';

const tips = new Set(MEASURANDS.flatMap((row) => (row.at.length === 2 && !row.onlyByName ? row.at : [])));
const POINT_ROWS: readonly (Point & { readonly id: PointId })[] = POINTS;

/** Spoken names of single probe tips. */
const TIP = phraseBook<PointId>(
  POINT_ROWS.filter((point) => tips.has(point.id)).map((point) => ({ row: point.id, say: point.say ?? point.name })),
  (points) => ({ tag: 'tip', points }),
);

/** Spoken names of whole measurands. */
const NAMED = phraseBook<number>(
  MEASURANDS.flatMap((row, index) => (row.say === undefined ? [] : [{ row: index, say: row.say }])),
  (rows) => ({ tag: 'named', rows }),
);

const UNIT = alternative(
  ...UNITS.map((unit) => sequence(pattern(unit.say), tag({ tag: 'unit', unit: unit.code, of: unit.quantities }))),
);

const PLACE = alternative(
  ...PLACES.map((place) =>
    sequence(
      pattern(`(at | in | on) [the] (${place.say})${'alone' in place ? ` | ${place.alone}` : ''}`),
      tag({ tag: 'place', place: place.id }),
    ),
  ),
);

/** Words that stand for a value. */
const OPEN = sequence(
  pattern(
    'open | o l | open line | over limit | over load | overload | infinite | infinity | no continuity | open circuit',
  ),
  tag({ tag: 'value', is: 'open' }),
);
const WORD_VALUE = alternative(
  OPEN,
  sequence(pattern('nothing | zilch | nada'), tag({ tag: 'value', is: 'nothing' })),
  sequence(pattern('goose egg | [a] big fat zero'), tag({ tag: 'value', is: 'zero' })),
  sequence(
    pattern('it beeps | beeps | continuity | good continuity | has continuity | i have continuity'),
    tag({ tag: 'value', is: 'tone' }),
  ),
  sequence(pattern('shorted | dead short | a dead short | short'), tag({ tag: 'value', is: 'shorted' })),
);

/** A number with the edges of its words marked. */
export const NUMBER: Expression = sequence(
  tag({ tag: 'number', edge: 'begin' }),
  rule('number'),
  tag({ tag: 'number', edge: 'end' }),
);
const UNIT_MAYBE = optional(rule('unit-name'));

const MOVING = alternative(
  sequence(
    pattern(
      'bouncing [between | from] | jumping [between | from] | swinging [between | from] | between | anywhere from',
    ),
    NUMBER,
    pattern('to | and'),
    NUMBER,
    tag({ tag: 'moving', how: 'range' }),
  ),
  sequence(
    NUMBER,
    UNIT_MAYBE,
    pattern('[and] then (drops out | drops off | drops to nothing | drops away | drops | falls off)'),
    tag({ tag: 'moving', how: 'peak' }),
  ),
);

/** "one eight, I mean one eighteen": what was said before it does not count. */
const RESTART = pattern(
  'i mean | sorry | no wait | wait no | rather | make that | no sorry | no i mean | let me see | strike that',
);
const NUMBER_AGAIN: Expression = {
  kind: 'alternative',
  items: [
    NUMBER,
    sequence(NUMBER, UNIT_MAYBE, rule('restart'), tag({ tag: 'restart', of: 'value' }), NUMBER),
    // "one eight one eighteen": taken only where the second number begins with the words of the first.
    sequence(NUMBER, tag({ tag: 'restart', of: 'echo' }), NUMBER),
  ],
  weights: [1, 1, 0.3],
};
const VALUE = alternative(sequence(NUMBER_AGAIN, UNIT_MAYBE), rule('word-value'), sequence(rule('moving'), UNIT_MAYBE));
const BENCH = sequence(
  pattern('[out] on the bench | bench [test | reading] | out of the unit | off the unit | removed'),
  tag({ tag: 'bench' }),
);
const LINK = pattern(
  "is | is reading | reads | read | reading | shows | showing | at | has | is at | i've got | i have | i get | i'm getting | i am getting | measures | measured | says | came in at | comes in at | still | is showing | gives [me] | is drawing | drawing | draws | is pulling | pulling | pulls",
);
const LEAD = pattern(
  "i've got | i have | i'm getting | i am getting | i got | getting | i read | i see | i'm seeing | seeing | that's | it's | it is | we have | we've got | looks like | there's | there is | reading",
);

const alternativeOf = (...choices: readonly (readonly [Expression, number])[]): Expression => ({
  kind: 'alternative',
  items: choices.map(([item]) => item),
  weights: choices.map(([, weight]) => weight),
});
const NOTHING_BETWEEN = sequence();

/** "leg one to ground", "coil", "across the fuse": what was measured. */
const PROBE = alternative(
  sequence(
    optional(pattern('across | between | from | on')),
    rule('tip'),
    optional(rule('at-place')),
    alternativeOf([pattern('to | and'), 1], [NOTHING_BETWEEN, 0.6]),
    rule('tip'),
    optional(rule('at-place')),
  ),
  sequence(rule('named'), optional(rule('at-place'))),
);

export const READING_RULES: Rules = {
  tip: TIP,
  named: NAMED,
  'unit-name': UNIT,
  'at-place': PLACE,
  'word-value': WORD_VALUE,
  moving: MOVING,
  value: VALUE,
  // After "no" the tone and "nothing" would say the contrary: "no continuity".
  'plain-value': alternative(sequence(NUMBER, UNIT_MAYBE), OPEN),
  bench: BENCH,
  link: LINK,
  lead: LEAD,
  restart: RESTART,
  probe: sequence(
    optional(sequence(rule('one-probe'), rule('restart'), tag({ tag: 'restart', of: 'all' }))),
    rule('one-probe'),
  ),
  'one-probe': PROBE,
  reading: alternative(
    sequence(
      optional(rule('bench')),
      rule('probe'),
      optional(rule('bench')),
      optional(rule('link')),
      rule('value'),
      optional(alternative(rule('bench'), rule('at-place'))),
      tag({ tag: 'frame', frame: 'reading' }),
    ),
    sequence(
      optional(rule('lead')),
      rule('value'),
      alternativeOf([pattern('on | at | across | from | for | on the | at the | in'), 1], [NOTHING_BETWEEN, 0.5]),
      rule('probe'),
      optional(rule('bench')),
      tag({ tag: 'frame', frame: 'reading' }),
    ),
  ),
  'bare-value': sequence(
    optional(rule('lead')),
    rule('value'),
    optional(rule('bench')),
    tag({ tag: 'frame', frame: 'value' }),
  ),
};
