import { alternative, optional, type Rules, repeat, rule, sequence, tag } from '../expression.ts';
import { NUMBER_RULES } from '../numbers/number-rules.ts';
import { pattern } from '../pattern.ts';
import { NUMBER, READING_RULES } from './reading-rules.ts';
import { RECORD_RULES } from './record-rules.ts';
import { SPEECH_RULES } from './speech-rules.ts';

/** Two readings that share their unit: "one twenty both legs", "one eighteen over three forty". */
const PAIR = alternative(
  sequence(
    NUMBER,
    optional(rule('unit-name')),
    pattern('[on | at] [both | each] (legs | sides | lines | leg) | both ways'),
    tag({ tag: 'pair', of: 'legs' }),
  ),
  sequence(
    pattern('[both] legs [are | read | at | is] | both sides [are | read]'),
    tag({ tag: 'pair', of: 'legs' }),
    NUMBER,
    optional(sequence(pattern('and'), NUMBER)),
    optional(rule('unit-name')),
  ),
  sequence(
    alternative(
      sequence(
        pattern('pressures [are | read | at] | gauges [are | read | show]'),
        tag({ tag: 'pair', of: 'pressures' }),
      ),
      tag({ tag: 'pair', of: 'over' }),
    ),
    NUMBER,
    pattern('over'),
    NUMBER,
    optional(rule('unit-name')),
  ),
);

const SAME = sequence(
  pattern(
    "[it's | it is] [the] same (on | at) [the] (other | other one | other leg | other side) | ditto [on] [the] [other | other leg | other side]",
  ),
  tag({ tag: 'frame', frame: 'same' }),
);

const CORRECTION = sequence(
  pattern(
    "correction | no | nope | make that | no make that | i meant | no i meant | that should be | that was | that's wrong | wrong | change that to | not that",
  ),
  tag({ tag: 'corrected' }),
  alternative(
    rule('plain-value'),
    sequence(rule('probe'), optional(sequence(optional(rule('link')), rule('plain-value')))),
    sequence(rule('tip'), optional(sequence(optional(rule('link')), rule('plain-value')))),
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
    rule('part'),
    rule('wire'),
    rule('mass'),
    rule('injury'),
    rule('correction'),
    rule('remark'),
    rule('note'),
  ),
  utterance: alternative(
    repeat(sequence(optional(pattern('and | then')), rule('segment')), 1),
    rule('order'),
    rule('bare-value'),
    rule('placeless'),
    sequence(rule('at-place'), tag({ tag: 'frame', frame: 'place' })),
    sequence(rule('probe'), tag({ tag: 'frame', frame: 'place' })),
  ),
};
