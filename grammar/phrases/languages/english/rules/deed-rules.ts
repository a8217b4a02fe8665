import {
  BUTTONED_UP,
  COVER_IS,
  COVER_NAMES,
  COVER_SAID,
  type CoverId,
  OFF_THE_TERMINALS,
  OFF_THE_UNIT,
} from '../../../../vocabulary/covers.ts';
import { DEEDS, SEEN_BEFORE } from '../../../../vocabulary/deeds.ts';
import {
  BACK_IN,
  DONE_BY,
  MOVED,
  OLD_PART,
  OUT_OF_THE_UNIT,
  PART_IS,
  PUTTING,
  TAKING,
  THE_ONE,
} from '../../../../vocabulary/moved-parts.ts';
import { PARTS } from '../../../../vocabulary/parts.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';

const named = (how: 'out' | 'taken'): Expression =>
  alternative(
    ...PARTS.filter((part) => MOVED[part.id] === how).map((part) =>
      sequence(pattern(part.say), tag({ tag: 'part', part: part.id })),
    ),
  );
const OUT = tag({ tag: 'moved', to: 'out' });
const IN = tag({ tag: 'moved', to: 'in' });
const cover = (id: CoverId): Expression => tag({ tag: 'cover', cover: id });
const UNIT_COVER = sequence(pattern(COVER_NAMES.unit), cover('unit'));
const COVER = alternative(
  UNIT_COVER,
  sequence(pattern(COVER_NAMES['compressor-terminals']), cover('compressor-terminals')),
);

/** What stands off behind a cover: the place it was on may still make it another cover. */
const COVER_OFF = alternative(
  pattern(OFF_THE_UNIT),
  sequence(pattern(OFF_THE_TERMINALS), cover('compressor-terminals')),
);

/** "took the capacitor out", "took off the panel": the one word that says where to. */
const WITH_PARTICLE = alternative(
  sequence(
    pattern(THE_ONE),
    alternative(
      sequence(rule('part-out'), pattern(OUT_OF_THE_UNIT)),
      // A capacitor is never "off": the cap of a valve is.
      sequence(rule('part-taken'), alternative(pattern(OUT_OF_THE_UNIT), pattern('off'))),
      sequence(rule('cover-name'), COVER_OFF),
    ),
  ),
  sequence(pattern('out'), pattern(THE_ONE), rule('moved-part')),
  sequence(pattern('off'), pattern(THE_ONE), rule('cover-name')),
);
const WITHOUT_PARTICLE = sequence(pattern(THE_ONE), alternative(rule('moved-part'), rule('cover-name')));

const TAKEN = sequence(
  alternative(
    sequence(pattern(TAKING.needs), rule('with-particle')),
    sequence(pattern(TAKING.may), alternative(rule('with-particle'), rule('without-particle'))),
    sequence(pattern(TAKING.has), rule('without-particle')),
  ),
  OUT,
);

const PUT_BACK = sequence(
  alternative(
    sequence(
      pattern(PUTTING.needs),
      alternative(
        sequence(
          pattern('back'),
          alternative(
            sequence(optional(pattern('in')), pattern(THE_ONE), rule('moved-part')),
            sequence(optional(pattern('on')), pattern(THE_ONE), rule('cover-name')),
          ),
        ),
        sequence(
          pattern(THE_ONE),
          alternative(sequence(rule('moved-part'), pattern(BACK_IN)), sequence(rule('cover-name'), pattern('back on'))),
        ),
      ),
    ),
    sequence(pattern(PUTTING.has), pattern(THE_ONE), rule('moved-part')),
    sequence(pattern(BUTTONED_UP), cover('unit')),
  ),
  IN,
);

const deed = (row: (typeof DEEDS)[number]): Expression => tag({ tag: 'deed', deed: row.id });

/** "capacitor is out", "contactor is back in", "terminal cover is off", "torch is lit". */
const IS_SO = alternative(
  sequence(rule('part-out'), pattern(PART_IS.out), OUT),
  sequence(rule('moved-part'), alternative(sequence(pattern(PART_IS.gone), OUT), sequence(pattern(PART_IS.back), IN))),
  sequence(pattern(OLD_PART.before), rule('moved-part'), pattern(OLD_PART.after), OUT),
  sequence(rule('cover-name'), alternative(sequence(pattern(COVER_IS.off), COVER_OFF), pattern(COVER_IS.gone)), OUT),
  sequence(
    pattern(COVER_NAMES['compressor-terminals']),
    cover('compressor-terminals'),
    alternative(sequence(pattern('off'), OUT), sequence(pattern(`${COVER_IS.on} | [back] on`), IN)),
  ),
  ...COVER_SAID.map((row) => sequence(pattern(row.say), cover(row.cover), tag({ tag: 'moved', to: row.to }))),
  ...DEEDS.map((row) => sequence(pattern(row.seen), deed(row))),
);

/** What was done at the unit: parts out and in, covers off and on, deeds by hand. What begins alike is laid out once. */
export const DEED_RULES: Rules = {
  'part-out': named('out'),
  'part-taken': named('taken'),
  'moved-part': alternative(rule('part-out'), rule('part-taken')),
  'cover-name': COVER,
  'with-particle': WITH_PARTICLE,
  'without-particle': WITHOUT_PARTICLE,
  deed: sequence(
    alternative(
      sequence(
        optional(pattern(DONE_BY)),
        alternative(TAKEN, PUT_BACK, ...DEEDS.map((row) => sequence(pattern(row.say), deed(row)))),
      ),
      sequence(optional(pattern(SEEN_BEFORE)), IS_SO),
    ),
    tag({ tag: 'frame', frame: 'deed' }),
  ),
};
