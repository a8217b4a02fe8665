import { NAMEPLATE_FIELDS, type NameplateField, RATED_PAIR } from '../../../../vocabulary/nameplate.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { HORSEPOWER, MARK_SIGN, PLATE_ANSWER, plateMark, VALUE_FIRST, VOLTS_OF_TWO } from './plate-rules.ts';
import { NUMBER, spokenAs } from './value-rules.ts';

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
  optional(pattern('unit | system | heat pump | split [system] | package unit')),
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
  alternative(
    sequence(NUMBER, pattern('over | slash | plus'), NUMBER),
    // "Forty five five".
    sequence(spokenAs('$tens $unit'), spokenAs('$unit')),
  ),
  optional(rule('unit-name')),
  tag({ tag: 'field', field: 'capacitor-herm' }),
  tag({ tag: 'field', field: 'capacitor-fan' }),
);

/** Lines of a nameplate, with the word before them or by names that stand alone. */
export const NAMEPLATE_RULES: Rules = {
  nameplate: sequence(
    alternative(
      sequence(pattern('[the] $plate [says | reads]'), alternative(numberField(FIELDS), choiceField(FIELDS), TONS)),
      sequence(pattern('[the] $plate [says | reads]'), VOLTS_OF_TWO, tag({ tag: 'field', field: 'supply-volts' })),
      sequence(optional(pattern('[the] $plate [says | reads]')), HORSEPOWER),
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
};
