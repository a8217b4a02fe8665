import { ANSWERS } from '../../../../vocabulary/answers.ts';
import { COMMANDS, EXPECTED, RECALL } from '../../../../vocabulary/commands.ts';
import {
  CHARGED_PARTS,
  DEVICES,
  POWER_STATES,
  SWITCH_AROUND,
  SWITCH_STATES,
  SWITCHED_AT,
  SWITCHED_STATES,
} from '../../../../vocabulary/devices.ts';
import { FOCUSES, SKIP_TO } from '../../../../vocabulary/focuses.ts';
import { CHECK_ON_ME, DICTATIONS, JOB_ITEMS } from '../../../../vocabulary/job-items.ts';
import { OBSERVATIONS } from '../../../../vocabulary/observations.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, tag } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { NAMES } from '../words/names.ts';
import { REMARKS } from '../words/reading-words.ts';
import {
  DISCHARGED,
  INJURY,
  METER_ALONE,
  METER_PROVES,
  NOTE,
  PLACELESS,
  PROVING_SOURCE,
  SEEN,
  SWITCH_WHERE,
} from '../words/report-words.ts';
import { NUMBER } from './value-rules.ts';

const frame = (name: Extract<Parameters<typeof tag>[0], { tag: 'frame' }>['frame']): Expression =>
  tag({ tag: 'frame', frame: name });

const device = (say: 'say' | 'at'): Expression =>
  alternative(...DEVICES.map((row, index) => sequence(pattern(row[say]), tag({ tag: 'device', row: index }))));
const VOLTS_MAYBE = optional(pattern('volts | volt'));
const state = (of: 'after' | 'before'): Expression =>
  alternative(
    ...SWITCH_STATES.map((row) =>
      sequence(
        pattern(row[of]),
        tag({ tag: 'state', state: row.state }),
        ...('resets' in row ? [tag({ tag: 'work', work: 'breaker-reset' })] : []),
      ),
    ),
  );
const power = alternative(
  ...POWER_STATES.map((row) => sequence(pattern(row.say), tag({ tag: 'state', state: row.state }))),
);

/** The device of a report that names the place behind. */
const deviceAt = (row: (typeof SWITCHED_AT)[number]): Expression =>
  tag({
    tag: 'device',
    row: DEVICES.findIndex((one) => one.device === row.device && one.place === row.place && !('withoutPlace' in one)),
  });

const saidOrTyped = (row: (typeof COMMANDS)[number]): Expression => {
  if ('typed' in row) return alternative(pattern(row.say), pattern(row.typed));
  return 'moment' in row
    ? alternative(pattern(row.say), sequence(pattern(row.moment), tag({ tag: 'moment' })))
    : pattern(row.say);
};

/** Questions and orders that name a place. */
const PLACED_ORDERS = alternative(
  sequence(
    pattern(RECALL.before),
    rule('probe'),
    optional(pattern(RECALL.after)),
    tag({ tag: 'command', command: 'recall' }),
  ),
  sequence(
    pattern(EXPECTED.before),
    rule('probe'),
    pattern(EXPECTED.after),
    tag({ tag: 'command', command: 'what-expected' }),
  ),
  sequence(
    pattern(SKIP_TO),
    alternative(...FOCUSES.map(({ id, say }) => sequence(pattern(say), tag({ tag: 'focus', focus: id })))),
    optional(pattern('now | next | please | first')),
    tag({ tag: 'command', command: 'skip-to' }),
  ),
);

const orders = (
  rows: readonly (typeof COMMANDS)[number][],
  said: (row: (typeof COMMANDS)[number]) => Expression,
): Expression =>
  sequence(
    alternative(...rows.map((row) => sequence(said(row), tag({ tag: 'command', command: row.id })))),
    frame('command'),
  );

export const SPEECH_RULES: Rules = {
  ...Object.fromEntries(Object.entries(NAMES).map(([name, say]) => [name, pattern(say)])),
  order: orders(COMMANDS, saidOrTyped),
  'placed-order': sequence(PLACED_ORDERS, frame('command')),
  // Beside something else a letter may belong to that: "Y" is no "why" there.
  'joined-order': orders(
    COMMANDS.filter((row) => 'joins' in row),
    // "Hot" behind a place tells of that.
    (row) => pattern('joined' in row ? row.joined : row.say),
  ),
  'device-name': device('say'),
  'placed-device': alternative(
    ...DEVICES.flatMap((row, index) =>
      'withoutPlace' in row || row.device === 'thermostat-call'
        ? []
        : [sequence(pattern(row.say), tag({ tag: 'device', row: index }))],
    ),
  ),
  'device-at': device('at'),
  switch: sequence(
    alternative(
      sequence(rule('device-name'), state('after')),
      sequence(state('before'), optional(pattern('the')), rule('device-name')),
      // "Disconnect at the condenser pulled and locked": the place is named, so no verb is needed.
      sequence(
        rule('placed-device'),
        alternative(...SWITCHED_STATES.map(({ say, state }) => sequence(pattern(say), tag({ tag: 'state', state })))),
      ),
      sequence(power, pattern('(at | in | on) [the]'), rule('device-at')),
      ...SWITCHED_AT.map((row) =>
        sequence(
          pattern(row.name),
          deviceAt(row),
          alternative(...SWITCHED_STATES.map(({ say, state }) => sequence(pattern(say), tag({ tag: 'state', state })))),
          pattern(row.where),
        ),
      ),
      ...SWITCH_AROUND.map((row) =>
        sequence(pattern(row.before), rule('device-name'), pattern(row.after), tag({ tag: 'state', state: row.state })),
      ),
      // "shut the breaker off at the panel".
      ...SWITCHED_AT.flatMap((at) =>
        SWITCH_AROUND.map((row) =>
          sequence(
            pattern(row.before),
            pattern(at.name),
            deviceAt(at),
            pattern(row.after),
            tag({ tag: 'state', state: row.state }),
            pattern(at.where),
          ),
        ),
      ),
    ),
    frame('switch'),
  ),
  observed: alternative(
    ...OBSERVATIONS.map((row) => sequence(pattern(row.say), tag({ tag: 'observation', observation: row.id }))),
    ...OBSERVATIONS.flatMap((row) =>
      'saidAs' in row
        ? row.saidAs.map((as) =>
            sequence(
              pattern(as.say),
              tag({
                tag: 'observation',
                observation: row.id,
                as: as.words,
                ...('unsure' in as && { unsure: true as const }),
              }),
            ),
          )
        : [],
    ),
  ),
  observation: sequence(optional(pattern(SEEN)), rule('observed'), frame('observation')),
  // Beside a question alone: what it says there is told by who asked.
  answer: sequence(
    optional(pattern('$ay | no | nope')),
    alternative(...ANSWERS.map((row) => sequence(pattern(row.say), tag({ tag: 'answer', answer: row.id })))),
    frame('answer'),
  ),
  'charged-part': alternative(
    ...CHARGED_PARTS.map((row) => sequence(pattern(row.say), tag({ tag: 'zones', zones: row.zones }))),
  ),
  discharged: sequence(
    alternative(
      sequence(rule('charged-part'), pattern(DISCHARGED.after)),
      sequence(pattern(DISCHARGED.before), rule('charged-part')),
      sequence(pattern(DISCHARGED.around[0]), rule('charged-part'), pattern(DISCHARGED.around[1])),
    ),
    frame('discharged'),
  ),
  'meter-proof': sequence(
    pattern(METER_PROVES),
    NUMBER,
    VOLTS_MAYBE,
    optional(pattern(PROVING_SOURCE)),
    frame('meter-proof'),
  ),
  // Beside pairs and their values it is the beginning or the end of a proof.
  'meter-alone': sequence(
    alternative(
      sequence(pattern(METER_ALONE), NUMBER, VOLTS_MAYBE),
      sequence(NUMBER, VOLTS_MAYBE, pattern(PROVING_SOURCE)),
    ),
    frame('meter-proof'),
  ),
  injury: sequence(pattern(INJURY), frame('injury')),
  'job-item': sequence(
    alternative(...JOB_ITEMS.map((row) => sequence(pattern(row.say), tag({ tag: 'item', item: row.id })))),
    frame('job-item'),
  ),
  'check-on-me': sequence(
    alternative(sequence(pattern(CHECK_ON_ME.every), tag({ tag: 'every' })), pattern(CHECK_ON_ME.once)),
    NUMBER,
    optional(pattern('minutes | minute')),
    frame('check-on-me'),
  ),
  dictation: sequence(
    alternative(...DICTATIONS.map((row) => sequence(pattern(row.say), tag({ tag: 'dictated-as', as: row.as })))),
    tag({ tag: 'dictated', edge: 'begin' }),
    optional({ kind: 'dictation' }),
    tag({ tag: 'dictated', edge: 'end' }),
    frame('dictation'),
  ),
  note: sequence(
    pattern(NOTE),
    tag({ tag: 'dictated', edge: 'begin' }),
    optional({ kind: 'dictation' }),
    tag({ tag: 'dictated', edge: 'end' }),
    frame('note'),
  ),
  remark: sequence(
    tag({ tag: 'dictated', edge: 'begin' }),
    pattern(REMARKS),
    tag({ tag: 'dictated', edge: 'end' }),
    frame('remark'),
  ),
  placeless: sequence(
    alternative(
      ...PLACELESS.map(({ say, state }) =>
        state === undefined ? pattern(say) : sequence(pattern(say), tag({ tag: 'state', state })),
      ),
    ),
    frame('no-place'),
  ),
  'switch-place': sequence(
    alternative(
      ...SWITCH_WHERE.map(({ say, device, place }) =>
        sequence(
          pattern(say),
          tag({
            tag: 'device',
            row: DEVICES.findIndex((one) => one.device === device && one.place === place && !('withoutPlace' in one)),
          }),
        ),
      ),
    ),
    frame('switch-place'),
  ),
};
