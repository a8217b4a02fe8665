import { UNITS, type Unit } from '../../../../vocabulary/units.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag, word } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { NUMBER } from './value-rules.ts';

const units: readonly Unit[] = UNITS;
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

/** Refrigerant by weight: put in, taken out, or a weight alone. */
export const WEIGHT_RULES: Rules = {
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
      sequence(rule('weight'), pattern('recovered | removed | came out | weighed out'), tag({ tag: 'out' })),
      sequence(rule('weight'), pattern('added | went in | weighed in'), tag({ tag: 'into' })),
      rule('bare-weight'),
    ),
    optional(alternative(pattern('[of] (refrigerant | gas | charge)'), rule('trailer'))),
    tag({ tag: 'frame', frame: 'mass' }),
  ),
};
