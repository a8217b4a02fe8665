import { COMMANDS } from '../../vocabulary/commands.ts';
import { CHARGED_PARTS, DEVICES, POWER_STATES, PROOF_PLACES, SWITCH_STATES } from '../../vocabulary/devices.ts';
import { NAMES } from '../../vocabulary/names.ts';
import { OBSERVATIONS } from '../../vocabulary/observations.ts';
import { alternative, type Expression, optional, type Rules, repeat, rule, sequence, tag } from '../expression.ts';
import { pattern } from '../pattern.ts';
import { NUMBER } from './reading-rules.ts';

const frame = (name: Extract<Parameters<typeof tag>[0], { tag: 'frame' }>['frame']): Expression =>
  tag({ tag: 'frame', frame: name });

const device = (say: 'say' | 'at'): Expression =>
  alternative(...DEVICES.map((row, index) => sequence(pattern(row[say]), tag({ tag: 'device', row: index }))));
const state = (of: 'after' | 'before'): Expression =>
  alternative(...SWITCH_STATES.map((row) => sequence(pattern(row[of]), tag({ tag: 'state', state: row.state }))));
const power = alternative(
  ...POWER_STATES.map((row) => sequence(pattern(row.say), tag({ tag: 'state', state: row.state }))),
);

const orders = (rows: readonly (typeof COMMANDS)[number][]): Expression =>
  sequence(
    alternative(...rows.map((row) => sequence(pattern(row.say), tag({ tag: 'command', command: row.id })))),
    frame('command'),
  );

/** A value in a proof of absence of voltage: each is a number of its own. */
const PROOF_VALUE = sequence(
  optional(pattern('and')),
  alternative(
    sequence(tag({ tag: 'number', edge: 'begin' }), rule('proof-number'), tag({ tag: 'number', edge: 'end' })),
    sequence(pattern('nothing'), tag({ tag: 'value', is: 'zero' })),
  ),
  optional(pattern('volts | volt')),
);

export const SPEECH_RULES: Rules = {
  ...Object.fromEntries(Object.entries(NAMES).map(([name, say]) => [name, pattern(say)])),
  order: orders(COMMANDS),
  'joined-order': orders(COMMANDS.filter((row) => 'joins' in row)),
  'device-name': device('say'),
  'device-at': device('at'),
  switch: sequence(
    alternative(
      sequence(rule('device-name'), state('after')),
      sequence(state('before'), optional(pattern('the')), rule('device-name')),
      sequence(power, pattern('(at | in | on) [the]'), rule('device-at')),
    ),
    frame('switch'),
  ),
  observation: sequence(
    alternative(
      ...OBSERVATIONS.map((row) => sequence(pattern(row.say), tag({ tag: 'observation', observation: row.id }))),
    ),
    frame('observation'),
  ),
  discharged: sequence(
    alternative(
      sequence(
        alternative(...CHARGED_PARTS.map((row) => sequence(pattern(row.say), tag({ tag: 'zones', zones: row.zones })))),
        pattern('(is | are | has been | have been) (discharged | bled [down | off] | drained)'),
      ),
      sequence(
        pattern("[i | i've | i have] (discharged | bled [down | off] | bleeding down)"),
        alternative(...CHARGED_PARTS.map((row) => sequence(pattern(row.say), tag({ tag: 'zones', zones: row.zones })))),
      ),
    ),
    frame('discharged'),
  ),
  'meter-proof': sequence(
    pattern(
      '[the] meter (proves | proved | proven | reads | shows | is proved | is proven | checks | tests) [out] [good] [at | on | to]',
    ),
    NUMBER,
    optional(pattern('volts | volt')),
    optional(pattern('on a (known [live] | live) source | on the known source')),
    frame('meter-proof'),
  ),
  'proof-number': alternative(
    pattern('$zero [$point-word $digit [$digit]] | $point-word $digit [$digit]'),
    pattern('$unit [$point-word $digit [$digit]] | $two | $unit $two | $unit oh $unit | #'),
  ),
  'proof-place': alternative(
    ...PROOF_PLACES.map((row) => sequence(pattern(row.say), tag({ tag: 'zones', zones: [row.zone] }))),
  ),
  absence: sequence(
    optional(sequence(optional(pattern('at [the]')), rule('proof-place'))),
    pattern('meter [reads | proves | proved | good]'),
    NUMBER,
    optional(pattern('volts | volt')),
    optional(sequence(pattern('at [the]'), rule('proof-place'))),
    repeat(rule('proof-step'), 1),
    pattern('meter [again] [still] [reads | proves | proved | good]'),
    NUMBER,
    optional(pattern('volts | volt')),
    optional(sequence(pattern('at [the]'), rule('proof-place'))),
    frame('absence'),
  ),
  'proof-step': sequence(optional(pattern('$proof-probe [is | reads]')), PROOF_VALUE),
  'proof-probe': pattern(
    '(leg | line | l) (one | two) [to (ground | leg two | line two | l two)] | leg to leg | line to line | ground to ground | t one [to (ground | t two)] | t two [to ground]',
  ),
  injury: sequence(
    pattern(
      "i got (bit | shocked | zapped | hit | burned | burnt | hurt | lit up | cut) | (i am | i'm) (hurt | injured) | (it | that) (bit | shocked | zapped | got) me | got bit | i've been (shocked | hurt | burned) | somebody got (hurt | shocked | hit) | he got (hurt | shocked | hit)",
    ),
    frame('injury'),
  ),
  note: sequence(
    pattern('note | make a note | take a note'),
    tag({ tag: 'dictated', edge: 'begin' }),
    optional({ kind: 'dictation' }),
    tag({ tag: 'dictated', edge: 'end' }),
    frame('note'),
  ),
  remark: sequence(
    tag({ tag: 'dictated', edge: 'begin' }),
    pattern(
      "[and] [it's | it is | that's | that is] [still | slowly] (climbing | rising | dropping | falling | going up | going down | coming up | coming down | steady | holding | holding steady | jumping around | noisy)",
    ),
    tag({ tag: 'dictated', edge: 'end' }),
    frame('remark'),
  ),
  placeless: sequence(
    pattern(
      "(it | it's | it is | that | that's | everything) [is] (dead | off | hot | out | killed | cold | de energized) | it's (dead | off | out | killed)",
    ),
    frame('no-place'),
  ),
};
