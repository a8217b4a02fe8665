import { alternative, optional, type Rules, repeat, rule, sequence, tag } from '../expression.ts';
import { NUMBER_RULES } from '../numbers/number-rules.ts';
import { pattern } from '../pattern.ts';
import { NUMBER, READING_RULES } from './reading-rules.ts';
import { RECORD_RULES } from './record-rules.ts';
import { SPEECH_RULES } from './speech-rules.ts';

const BOTH = alternative(
  sequence(
    NUMBER,
    optional(rule('unit-name')),
    pattern('[on] both [legs | sides | lines] | both ways'),
    tag({ tag: 'frame', frame: 'both' }),
  ),
  sequence(
    pattern('both legs [are | read | at]'),
    NUMBER,
    optional(rule('unit-name')),
    tag({ tag: 'frame', frame: 'both' }),
  ),
);

const CORRECTION = sequence(
  pattern(
    "correction | no | nope | make that | no make that | i meant | no i meant | that should be | that was | that's wrong | wrong | change that to | not that",
  ),
  tag({ tag: 'corrected' }),
  alternative(
    rule('value'),
    sequence(rule('probe'), optional(sequence(optional(rule('link')), rule('value')))),
    sequence(rule('tip'), optional(sequence(optional(rule('link')), rule('value')))),
    rule('at-place'),
  ),
  tag({ tag: 'frame', frame: 'correction' }),
);

/** Everything that may be said in one breath. */
export const RULES: Rules = {
  ...NUMBER_RULES,
  ...READING_RULES,
  ...SPEECH_RULES,
  ...RECORD_RULES,
  both: BOTH,
  correction: CORRECTION,
  segment: alternative(
    rule('reading'),
    rule('both'),
    rule('order'),
    rule('switch'),
    rule('observation'),
    rule('discharged'),
    rule('meter-proof'),
    rule('absence'),
    rule('nameplate'),
    rule('part'),
    rule('wire'),
    rule('mass'),
    rule('injury'),
    rule('correction'),
    rule('remark'),
    rule('note'),
  ),
  utterance: alternative(
    repeat(sequence(rule('segment'), optional(pattern('and | then'))), 1),
    rule('bare-value'),
    rule('placeless'),
    sequence(rule('at-place'), tag({ tag: 'frame', frame: 'place' })),
    sequence(rule('probe'), tag({ tag: 'frame', frame: 'place' })),
  ),
};
