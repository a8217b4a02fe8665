import {
  alternative,
  type Expression,
  optional,
  type Rules,
  repeat,
  rule,
  sequence,
  word,
} from '../phrases/expression.ts';
import { LETTERS_AND_DIGITS } from '../phrases/languages/english/rules/plate-rules.ts';
import { RULES } from '../phrases/languages/english/rules/utterance-rules.ts';
import { pattern } from '../phrases/pattern.ts';
import { COMMANDS } from '../vocabulary/commands.ts';
import { FOCUSES } from '../vocabulary/focuses.ts';
import { MEASURANDS, type Measurand } from '../vocabulary/measurands.ts';
import { NAMEPLATE_FIELDS, NAMEPLATE_FIELDS_BY_ID } from '../vocabulary/nameplate.ts';
import { PART_RATINGS, PARTS } from '../vocabulary/parts.ts';
import { UNITS } from '../vocabulary/units.ts';
import { WIRE_ACTIONS } from '../vocabulary/wires.ts';
import { withContractions } from './contract.ts';
import { namesOf, ownNamesOf, unitName } from './measurand-names.ts';
import { plain } from './plain.ts';

/** Readings that are gone back to: one number each, with a name of its own. */
const isOftenAskedAfter = ({ quantity, rare, at }: Measurand): boolean =>
  rare !== true && at.length === 1 && ['pressure', 'temperature', 'current', 'difference'].includes(quantity);

/** Words for an open circuit that the recogniser listens for. */
export const OPEN_WORDS = pattern('open | o l | open line | over limit | infinite | no continuity');

const fieldNames = (fields: readonly (typeof NAMEPLATE_FIELDS)[number][]): Expression =>
  alternative(...fields.flatMap((field) => (field.value.startsWith('number') ? [pattern(field.say)] : [])));

/** Two readings in one breath, whichever comes first: "suction is …, head's …". */
function sideBySide(one: readonly string[], ofOne: string, other: readonly string[], ofOther: string): Expression {
  const reads = (names: readonly string[], shape: string) =>
    `(${names.map((name) => `${name} [is] | ${name}'s`).join(' | ')}) $${shape}`;
  const [first, second] = [reads(one, ofOne), reads(other, ofOther)];
  return pattern(`${first} [and] ${second} | ${second} [and] ${first}`);
}

/**
 * The rules of the language as the recogniser takes them over: tags dropped, numbers of ordinary size, what is rarely
 * said left out. Every sentence of these is one of the wide rules too.
 */
export const NARROWED_RULES: Rules = {
  ...Object.fromEntries(Object.entries(RULES).map(([name, expression]) => [name, plain(expression, 'drop')])),
  order: alternative(
    ...COMMANDS.flatMap((row) => ('moment' in row ? [pattern(row.say), pattern(row.moment)] : [pattern(row.say)])),
  ),
  'skip-to': sequence(pattern("[let's] (skip | go | jump) to"), alternative(...FOCUSES.map(({ say }) => pattern(say)))),
  recall: sequence(
    pattern('what was [the] | what did i (get | read) (on | for) [the]'),
    alternative(namesOf(MEASURANDS.slice(0, 2)), ownNamesOf(MEASURANDS.filter(isOftenAskedAfter))),
  ),
  pair: alternative(
    pattern(
      '$number [volts] (both (legs | hots | sides) | on both (legs | hots | sides)) [to ground] | both (legs | hots) [are | showing] [to ground] $number [volts] [to ground] | legs $number and $number [volts]',
    ),
    pattern(
      '[dual] [run] (cap | capacitor) [is | reads | tests | tested | checks | checks at | is reading] $to-99 (over | and | slash) $to-99 [microfarads] | [the] (pressures | gauges) (are [at] | read | show) $to-699 (over | and) $to-699',
    ),
    pattern('[pressures] $to-699 over $to-699 [p s i | pounds] [on the gauges]'),
  ),
  number: rule('to-299'),
  'proof-number': pattern('zero | nothing | [zero] point $n-digit | $n-under'),
  // The voltages of sources on which a meter is proved: 24, 120, 208 and 240 V, each 10 % up and down.
  'n-source': pattern(
    'twenty [$n-unit] | one (twenty | thirty) [$n-unit] | one (ten | eleven | twelve | thirteen | fourteen | fifteen | sixteen | seventeen | eighteen | nineteen) | one oh $n-unit | two (twenty | thirty | forty | fifty) [$n-unit] | two ten | two oh $n-unit | two one $n-unit',
  ),
  'meter-proof': pattern(
    "[the] (meter [proves [at] | proved | reads | is good [on a (known | live) source] | checks good at | (checks | reads) [good] on a (known | live) source [at]] | meter's good [on a (known | live) source] [at]) $n-source [volts] [on a (known | live) source]",
  ),
  absence: sequence(
    optional(sequence(pattern('at [the]'), rule('proof-place'))),
    pattern('meter $n-source [volts]'),
    repeat(rule('proof-step'), 1),
    pattern('meter $n-source [volts]'),
  ),
  'proof-step': pattern(
    '[(leg one | leg two | t one | t two) [to ground] | leg (one to leg two | to leg) | t one to t two] $proof-number [volts]',
  ),
  correction: sequence(
    pattern('correction | no | [actually] make that | i meant | that was'),
    alternative(sequence(rule('to-699'), optional(rule('unit-name'))), namesOf(MEASURANDS.slice(0, 2))),
  ),
  // One or two ratings before a part and behind it, of the sizes that parts come in.
  rated: pattern(
    '[a | one] (quarter | third) | half | three quarters | $n-under [point $n-digit] | $n-unit $n-two | $n-unit oh $n-unit | $n-unit hundred',
  ),
  part: sequence(
    pattern('[i] (fitted | installed | put in | replaced [with] | changed [out] | swapped [out] | new)'),
    optional(pattern('a | an | the | both [the]')),
    optional(word('new')),
    optional(sequence(rule('rating'), optional(rule('rating')))),
    alternative(...PARTS.map((row) => pattern(row.say))),
    optional(pattern('(for | with) (a | an)')),
    optional(sequence(rule('rating'), optional(rule('rating')))),
    optional(pattern('installed | fitted | is in')),
  ),
  rating: alternative(
    pattern('$rated over $n-unit'),
    sequence(rule('rated'), alternative(...PART_RATINGS.map((row) => pattern(row.say)))),
  ),
  nameplate: sequence(
    alternative(
      sequence(word('nameplate'), optional(pattern('says | reads')), fieldNames(NAMEPLATE_FIELDS)),
      fieldNames(NAMEPLATE_FIELDS.filter((field) => 'alone' in field)),
    ),
    optional(word('is')),
    rule('n-plate'),
    optional(rule('unit-name')),
  ),
  'target-read': pattern(
    '(target | design) (subcooling | subcool) [is] $n-under | factory charge [is] $n-under (pounds [$n-under ounces] | ounces)',
  ),
  'n-plate': pattern('$n-under [point $n-digit] | $up-to-699'),
  // Nothing of a quantity, at the places where one looks for it.
  none: pattern(
    'no (amps | current) on the (compressor | fan | [outdoor | condenser] fan [motor] | blower) | no (volts | voltage | power | juice) (on | at | to | across) [the] (load side | line side | coil | secondary | leg one | leg two | t one [(to | and)] t two) | no (volts | voltage) between (yellow | red) and common at the (outdoor unit | condenser | air handler) | no (pressure on the (low side | high side) | suction pressure | head pressure) | no (superheat | subcooling | airflow)',
  ),
  // Readings that are taken side by side, in one breath.
  together: alternative(
    sideBySide(
      ['suction', 'suction pressure', 'low side', 'blue gauge'],
      'to-699',
      ['head', 'head pressure', 'high side', 'red gauge'],
      'to-699',
    ),
    sideBySide(['superheat'], 'to-99', ['subcooling', 'subcool'], 'to-99'),
    sideBySide(['suction line'], 'to-99', ['liquid line'], 'to-299'),
    sideBySide(['return', 'return air'], 'to-99', ['supply', 'supply air'], 'to-99'),
    pattern('return air [is] $to-99 [and] wet bulb [is] $to-99'),
    pattern('compressor $to-99 [amps] [and] fan $to-99 [amps]'),
    pattern(
      'leg one [to ground] [is] $to-299 [and] leg two [to ground] [is] $to-299 [leg to leg $to-299] | left leg [is] $to-299 [and] right leg [is] $to-299',
    ),
  ),
  mass: pattern(
    '(added | charged [in | it with] | weighed in | put in | recovered | removed | took out | pulled out) ($n-under [point $n-digit] ((pound | pounds) [[and] $n-under (ounce | ounces)] | ounce | ounces | kilograms | kilos | grams) [of refrigerant] | half a pound | $n-under and a half pounds | ($up-to-699 | (seven | eight | nine) hundred) grams)',
  ),
  vacuum: pattern(
    "[it's | it is | we're] ([is] (holding [steady] | steady) at | held at | [[pulled | dropped | came | went] [it] [back]] down to | (rose | climbed | decayed | crept | came) [back] [up] to | [is] up to | at) $to-9999 (micron | microns) [(after | for | in) $n-under minutes] | $to-9999 microns",
  ),
  tons: pattern(
    "[it's [a] | it is [a] | this is a | unit is a] $n-under [point five | and a half] (ton | tons) [unit | system]",
  ),
  'nameplate-pair': pattern('nameplate (supply volts | volts | supply voltage) $n-source [over] $n-source'),
  'refrigerant-system': alternative(
    sequence(optional(pattern("it's (a | an) | this is (a | an)")), rule('refrigerant-name'), pattern('system | unit')),
    sequence(pattern("(unit is | unit's) a"), rule('refrigerant-name')),
  ),
  'refrigerant-name': alternative(...(NAMEPLATE_FIELDS_BY_ID.refrigerant.choices ?? []).map(({ say }) => pattern(say))),
  'nameplate-choice': sequence(
    optional(word('nameplate')),
    alternative(
      ...NAMEPLATE_FIELDS.flatMap((field) =>
        field.value === 'choice' && 'alone' in field
          ? [sequence(pattern(field.say), alternative(...field.choices.map((choice) => pattern(choice.say))))]
          : [],
      ),
    ),
  ),
  wire: alternative(
    sequence(
      alternative(
        sequence(alternative(...WIRE_ACTIONS.map((row) => pattern(row.say))), optional(word('the')), rule('wire-name')),
        sequence(pattern('(pulled | took) [the]'), rule('wire-named')),
      ),
      pattern('from | off [of] | on | onto'),
      rule('wire-end'),
    ),
    sequence(pattern('put [the]'), rule('wire-named'), pattern('back on'), rule('wire-end')),
    pattern(
      'jumper [is] [from | on | off] $letter to $letter [at the board] | (jumped out | jumped | jumpered) $letter (to | and) $letter | (jumper is | took the jumper) off | jumped $letter to $letter [at the (thermostat | stat | air handler | board | condenser)]',
    ),
  ),
  'moved-narrow': alternative(
    sequence(pattern('(took out | pulled | removed | put back) the'), rule('moved-part')),
    sequence(pattern('took the'), rule('moved-part'), word('out')),
    sequence(pattern('put the'), rule('moved-part'), pattern('back in')),
    sequence(optional(pattern('the')), rule('moved-part'), pattern('is (back in | out of the unit)')),
    sequence(optional(pattern('the')), rule('part-out'), pattern('is out')),
  ),
  'cover-narrow': pattern(
    '[the] (cover | panel) is off | [the] (covers | panels) are off | took the (cover | covers | panel) off | put the (cover | covers | panel) back on | [the] [compressor] terminal cover is (off | [back] on) | took the terminal cover off | put the terminal cover back on',
  ),
  deed: pattern(
    '(pressed | pushed | held) the (contactor | armature) in | pressed the contactor [by hand] | (bypassed | jumped out) the (((high | low) pressure | float | door) switch) | [i am] brazing [the joint | the line] | torch is lit | [the] system is in a vacuum | pulling a vacuum | [the] vacuum pump is (on | running) | broke the vacuum [with nitrogen] | [the] vacuum is broken | touched the compressor [shell] | hand on the compressor | [the] (compressor | fan) leads are (off | back on)',
  ),
  'check-on-me': pattern('check on me (every | in) $n-under minutes'),
  'mark-letter': alternative(...LETTERS_AND_DIGITS.map(word)),
  discharged: withContractions(plain(RULES['discharged']!, 'drop'), RULES),
  letter: pattern('r | c | y | g | o | b | w'),
  'unit-name': alternative(...UNITS.map(unitName)),
  'note-opening': pattern('note | make a note | recommend | technician signs'),
  observation: withContractions(plain(RULES['observed']!, 'drop'), RULES),
  switch: withContractions(plain(RULES['switch']!, 'drop'), {
    ...RULES,
    'device-name': plain(RULES['device-name']!, 'drop'),
  }),
  'word-value': alternative(OPEN_WORDS, pattern('nothing')),
};
