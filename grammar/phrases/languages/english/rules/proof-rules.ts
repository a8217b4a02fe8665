import { PROOF_PLACES } from '../../../../vocabulary/devices.ts';
import { PROOF_ENDS, PROOF_GROUND, PROOF_PAIRS } from '../../../../vocabulary/proof-pairs.ts';
import {
  alternative,
  type Expression,
  optional,
  type Rules,
  repeat,
  rule,
  sequence,
  tag,
} from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { NUMBER } from './value-rules.ts';

const VOLTS_MAYBE = optional(pattern('volts | volt'));
const PLACE_MAYBE = optional(sequence(pattern('at [the]'), rule('proof-place')));

/** A value in a proof of absence of voltage: each is a number of its own. */
const PROOF_VALUE = sequence(
  optional(pattern('and')),
  alternative(
    sequence(tag({ tag: 'number', edge: 'begin' }), rule('proof-number'), tag({ tag: 'number', edge: 'end' })),
    sequence(pattern('nothing'), tag({ tag: 'value', is: 'zero' })),
  ),
  VOLTS_MAYBE,
);

const LEG = alternative(...PROOF_ENDS.map((row) => sequence(pattern(row.say), tag({ tag: 'proof-end', end: row.id }))));
const GROUND = sequence(pattern(PROOF_GROUND), tag({ tag: 'proof-end', end: 'ground' }));

/**
 * "leg one", "leg one to ground", "ground to leg one", "leg to leg". The word between two ends is needed: of "leg one,
 * leg two zero" a value may have been lost.
 */
const PAIR: Expression = alternative(
  sequence(rule('proof-leg'), optional(sequence(pattern('to'), alternative(rule('proof-leg'), GROUND)))),
  sequence(GROUND, pattern('to'), rule('proof-leg')),
  ...PROOF_PAIRS.map((row) =>
    sequence(pattern(row.say), ...row.ends.map((end) => tag({ tag: 'proof-end', end } as const))),
  ),
);

/** Meter on a known live source, the values with or without their places, the same source again. */
export const PROOF_RULES: Rules = {
  'proof-number': alternative(
    pattern('$zero [$point-word $digit [$digit]] | $point-word $digit [$digit]'),
    pattern('$unit [$point-word $digit [$digit]] | $two | $unit $two | $unit oh $unit | #'),
  ),
  'proof-place': alternative(
    ...PROOF_PLACES.map((row) => sequence(pattern(row.say), tag({ tag: 'zones', zones: [row.zone] }))),
  ),
  'proof-leg': LEG,
  'proof-pair': PAIR,
  'proof-step': sequence(
    optional(
      sequence(
        optional(pattern('and | then')),
        rule('proof-pair'),
        tag({ tag: 'proof-pair', of: 'next' }),
        optional(pattern('is | reads | at')),
      ),
    ),
    PROOF_VALUE,
  ),
  // Places behind their values are told from places before them by the last one, which no value follows.
  'proof-step-behind': sequence(
    PROOF_VALUE,
    optional(pattern('(on | at | from | across | for) [the]')),
    rule('proof-pair'),
    tag({ tag: 'proof-pair', of: 'last' }),
  ),
  absence: sequence(
    optional(sequence(optional(pattern('at [the]')), rule('proof-place'))),
    pattern('meter [reads | proves | proved | good]'),
    NUMBER,
    VOLTS_MAYBE,
    PLACE_MAYBE,
    alternative(repeat(rule('proof-step'), 1), repeat(rule('proof-step-behind'), 1)),
    pattern('meter [again] [still] [reads | proves | proved | good]'),
    NUMBER,
    VOLTS_MAYBE,
    PLACE_MAYBE,
    tag({ tag: 'frame', frame: 'absence' }),
  ),
};
