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
} from '../../../expression.ts';
import { IN_A_WORD_COST } from '../../../in-a-word-cost.ts';
import { pattern } from '../../../pattern.ts';
import { NUMBER_RULES } from '../numbers/number-rules.ts';
import {
  AND_BETWEEN,
  BOTH_AFTER,
  BOTH_BEFORE,
  BOTH_LEGS_AFTER,
  BOTH_LEGS_BEFORE,
  BOTH_PRESSURES,
  BOTH_SECTIONS,
  BOTH_SECTIONS_READ,
  CORRECTIONS,
  DENIALS,
  LEGS_BEFORE,
  ON_THE_GAUGES,
  OVER_BETWEEN,
  SAME_ON_OTHER,
  SECTIONS_AFTER,
} from '../words/reading-words.ts';
import { DEED_RULES } from './deed-rules.ts';
import { PROOF_RULES } from './proof-rules.ts';
import { READING_RULES } from './reading-rules.ts';
import { RECORD_RULES } from './record-rules.ts';
import { SPEECH_RULES } from './speech-rules.ts';
import { NUMBER } from './value-rules.ts';

const of = (pair: 'both' | 'legs' | 'pressures' | 'over' | 'capacitor' | 'charges'): Expression =>
  tag({ tag: 'pair', of: pair });
const UNIT_MAYBE = optional(rule('unit-name'));
const LEAD_MAYBE = optional(rule('lead'));
/** Said of what was read, not of what is printed on the part. */
const MEASURED = tag({ tag: 'measures', of: ['capacitance'] });

/** Two readings that share their unit: "one twenty both legs", "one eighteen over three forty". */
const PAIR = alternative(
  sequence(LEAD_MAYBE, NUMBER, UNIT_MAYBE, pattern(BOTH_LEGS_AFTER), of('legs')),
  sequence(LEAD_MAYBE, NUMBER, UNIT_MAYBE, pattern(BOTH_AFTER), of('both')),
  sequence(pattern(BOTH_BEFORE), of('both'), NUMBER, UNIT_MAYBE),
  sequence(
    pattern(BOTH_LEGS_BEFORE),
    of('legs'),
    NUMBER,
    // "both legs one hundred and six" is one number before it is two.
    { kind: 'alternative', items: [sequence(), sequence(pattern('and'), NUMBER)], weights: [1, 0.6] },
    UNIT_MAYBE,
    optional(pattern('to ground')),
  ),
  sequence(pattern(LEGS_BEFORE), of('legs'), NUMBER, pattern('and'), NUMBER, UNIT_MAYBE),
  sequence(pattern(BOTH_PRESSURES), of('pressures'), NUMBER, pattern(AND_BETWEEN), NUMBER, UNIT_MAYBE),
  sequence(
    optional(rule('bench')),
    pattern(BOTH_SECTIONS),
    optional(alternative(word('is'), sequence(pattern(BOTH_SECTIONS_READ), MEASURED))),
    of('capacitor'),
    NUMBER,
    pattern(AND_BETWEEN),
    NUMBER,
    UNIT_MAYBE,
    optional(rule('bench')),
  ),
  sequence(
    optional(sequence(rule('lead'), MEASURED)),
    of('capacitor'),
    NUMBER,
    pattern(AND_BETWEEN),
    NUMBER,
    UNIT_MAYBE,
    pattern(SECTIONS_AFTER),
  ),
  sequence(LEAD_MAYBE, of('pressures'), NUMBER, pattern(AND_BETWEEN), NUMBER, UNIT_MAYBE, pattern(ON_THE_GAUGES)),
  sequence(LEAD_MAYBE, of('over'), NUMBER, pattern(OVER_BETWEEN), NUMBER, UNIT_MAYBE),
  // "Zero and zero", where both charges are asked for.
  { kind: 'alternative', items: [sequence(of('charges'), NUMBER, word('and'), NUMBER, UNIT_MAYBE)], weights: [0.3] },
);

const SAME = sequence(pattern(SAME_ON_OTHER), tag({ tag: 'frame', frame: 'same' }));

const CORRECTION = sequence(
  optional(word('actually')),
  alternative(
    sequence(pattern(CORRECTIONS), tag({ tag: 'corrected', by: 'mark' })),
    sequence(pattern(DENIALS), tag({ tag: 'corrected', by: 'denial' })),
  ),
  {
    kind: 'alternative',
    items: [
      rule('plain-value'),
      sequence(rule('probe'), optional(sequence(optional(rule('link')), rule('value')))),
      sequence(rule('tip'), optional(sequence(optional(rule('link')), rule('value')))),
      rule('at-place'),
    ],
    // "no voltage at the coil" is a reading before it is a correction.
    weights: [1, 0.3, 0.3, 1],
  },
  tag({ tag: 'frame', frame: 'correction' }),
);

/** Dear, so that it stands before nothing else; where it is expected, that is made good (`composeAnswer`). */
const IN_A_WORD: Expression = {
  kind: 'alternative',
  items: [sequence(rule('answer'), optional(rule('joined-order')))],
  weights: [Math.exp(-IN_A_WORD_COST)],
};

/** Everything that may be said in one breath. */
export const RULES: Rules = {
  ...NUMBER_RULES,
  ...READING_RULES,
  ...SPEECH_RULES,
  ...PROOF_RULES,
  ...DEED_RULES,
  ...RECORD_RULES,
  pair: sequence(PAIR, tag({ tag: 'frame', frame: 'pair' })),
  same: SAME,
  correction: CORRECTION,
  segment: alternative(
    rule('reading'),
    rule('pair'),
    rule('same'),
    rule('joined-order'),
    rule('switch'),
    rule('observation'),
    rule('discharged'),
    rule('meter-proof'),
    rule('absence'),
    rule('nameplate'),
    rule('plate-answer'),
    rule('part'),
    rule('wire'),
    rule('work'),
    rule('mass'),
    rule('deed'),
    alternative(rule('injury'), rule('job-item'), rule('check-on-me')),
    rule('correction'),
    rule('remark'),
    alternative(rule('note'), rule('dictation')),
  ),
  utterance: alternative(
    sequence(
      optional(pattern("(let's | let me) see")),
      repeat(sequence(optional(pattern('and | then')), rule('segment')), 1),
      // "leg one one twenty two, leg two": the next place is named, its value is still to come.
      optional(sequence(optional(pattern('and | then')), rule('probe'), tag({ tag: 'frame', frame: 'next-place' }))),
    ),
    rule('order'),
    rule('meter-alone'),
    IN_A_WORD,
    rule('placed-order'),
    sequence(rule('bare-value'), optional(rule('remark'))),
    rule('placeless'),
    rule('switch-place'),
    sequence(rule('at-place'), tag({ tag: 'frame', frame: 'place' })),
    sequence(rule('probe'), tag({ tag: 'frame', frame: 'place' })),
    // "leg one to ground hot": its number is still to come.
    sequence(rule('probe'), pattern('[is | are] [still] (hot | live)'), tag({ tag: 'frame', frame: 'next-place' })),
  ),
};
