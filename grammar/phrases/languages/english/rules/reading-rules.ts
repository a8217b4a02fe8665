import { MEASURANDS } from '../../../../vocabulary/measurands.ts';
import { PLACES } from '../../../../vocabulary/places.ts';
import { POINTS, type Point, type PointId } from '../../../../vocabulary/points.ts';
import type { QuantityId } from '../../../../vocabulary/quantities.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag, word } from '../../../expression.ts';
import { pattern, sentences } from '../../../pattern.ts';
import { phraseBook } from '../../../phrase-book.ts';
import {
  BENCH_WORDS,
  DENIALS,
  HELD_FOR,
  LEADS,
  LINKS,
  MEASURED,
  MOTIONS,
  PLACE_PREPOSITIONS,
  QUANTITY_NAMES,
  READ_FROM,
  SELF_NAMED,
  SHORTED_TO_SHELL,
  SPANNING,
  VALUE_OF,
} from '../words/reading-words.ts';
import { NUMBER, VALUE_RULES } from './value-rules.ts';

const phrases = (say: string): string[] => sentences(pattern(say)).map((words) => words.join(' '));
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

const PLACE = alternative(
  ...PLACES.map((place) =>
    sequence(
      pattern(`(at | in | on) [the] (${place.say})${'alone' in place ? ` | ${place.alone}` : ''}`),
      tag({ tag: 'place', place: place.id }),
    ),
  ),
);

/** Phrases of a table, some of which say what is measured. */
const measuring = (rows: readonly { readonly say: string; readonly of?: readonly QuantityId[] }[]): Expression =>
  alternative(
    ...rows.map((row) =>
      row.of === undefined ? pattern(row.say) : sequence(pattern(row.say), tag({ tag: 'measures', of: row.of })),
    ),
  );

const alternativeOf = (...choices: readonly (readonly [Expression, number])[]): Expression => ({
  kind: 'alternative',
  items: choices.map(([item]) => item),
  weights: choices.map(([, weight]) => weight),
});
const NOTHING_BETWEEN = sequence();
const SPANS = sequence(pattern(SPANNING), tag({ tag: 'spans' }));

/** "to ground" behind the value: "leg one, one twenty to ground". */
const GROUNDS: readonly PointId[] = ['ground', 'neutral', 'shell', 'fan-frame'];
const TIP_BEHIND = phraseBook<PointId>(
  POINT_ROWS.filter((point) => GROUNDS.includes(point.id)).map((point) => ({
    row: point.id,
    say: point.say ?? point.name,
  })),
  (points) => ({ tag: 'tip', points }),
);

/** Names that tell by themselves what is measured: "no subcooling" is a reading of nothing. */
const TELLING = phraseBook<number>(
  MEASURANDS.flatMap((row, index) => {
    const telling = row.say === undefined ? [] : phrases(row.say).filter((name) => SELF_NAMED.test(name));
    return telling.length === 0 ? [] : [{ row: index, say: telling.join(' | ') }];
  }),
  (rows) => ({ tag: 'named', rows }),
);

/** "leg one to ground", "coil", "across the fuse": what was measured. */
const PROBE = alternative(
  sequence(
    optional(rule('quantity-name')),
    optional(pattern('across | between | from | on | in | at | of')),
    rule('tip'),
    optional(rule('at-place')),
    alternativeOf([pattern('to | and | with'), 1], [NOTHING_BETWEEN, 0.6]),
    rule('tip'),
    optional(rule('at-place')),
  ),
  sequence(
    optional(sequence(rule('quantity-name'), optional(pattern('on | at | of | across | between | from | in | for')))),
    rule('named'),
    optional(rule('at-place')),
  ),
);

/** The compressor's windings to its shell, on ohms. */
const TO_SHELL = MEASURANDS.flatMap((row, index) =>
  row.quantity === 'resistance' && row.at.join() === 'comp-C,shell' ? [index] : [],
);

/** "is one eighteen", "one eighteen is at": a place with its value behind it, before it or within it. */
const READING = alternative(
  sequence(
    optional(rule('bench')),
    optional(alternative(pattern(`in | at | on | for | of | ${READ_FROM}`), pattern(MEASURED), rule('lead'))),
    rule('probe'),
    optional(alternative(rule('bench'), pattern(VALUE_OF), sequence(optional(word('the')), rule('quantity-name')))),
    optional(alternative(rule('link'), rule('motion'))),
    rule('value'),
    optional(alternative(rule('bench'), rule('at-place'))),
    optional(rule('held-for')),
  ),
  sequence(rule('tip'), optional(rule('link')), rule('value'), word('to'), TIP_BEHIND),
  sequence(
    optional(alternative(rule('lead'), rule('motion'))),
    rule('value'),
    alternativeOf([pattern(PLACE_PREPOSITIONS), 1], [SPANS, 1], [NOTHING_BETWEEN, 0.5]),
    rule('probe'),
    optional(rule('bench')),
  ),
  // "a twenty degree split": the unit and the name say that nothing stood before the number.
  sequence(optional(rule('lead')), pattern('a | an'), NUMBER, rule('unit-name'), TELLING),
  sequence(word('no'), tag({ tag: 'value', is: 'zero' }), TELLING, optional(pattern('at all'))),
  sequence(pattern(SHORTED_TO_SHELL), tag({ tag: 'value', is: 'shorted' }), tag({ tag: 'named', rows: TO_SHELL })),
);

/** Readings: what was measured where, with its value behind it, before it or within it. */
export const READING_RULES: Rules = {
  ...VALUE_RULES,
  tip: TIP,
  named: NAMED,
  'at-place': PLACE,
  bench: sequence(pattern(BENCH_WORDS), tag({ tag: 'bench' })),
  link: measuring(LINKS),
  lead: measuring(LEADS),
  'quantity-name': measuring(QUANTITY_NAMES),
  probe: sequence(
    optional(
      sequence(rule('one-probe'), alternative(rule('restart'), pattern(DENIALS)), tag({ tag: 'restart', of: 'all' })),
    ),
    rule('one-probe'),
  ),
  'one-probe': PROBE,
  motion: pattern(MOTIONS),
  'held-for': sequence(pattern(HELD_FOR.before), rule('number'), pattern(HELD_FOR.after)),
  reading: sequence(READING, tag({ tag: 'frame', frame: 'reading' })),
};
