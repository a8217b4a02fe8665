import type { QuantityId } from './quantities.ts';

/** What is said before a value when the value comes first. `of`: only such readings are said so. */
export const LEADS: readonly { readonly say: string; readonly of?: readonly QuantityId[] }[] = [
  { say: "i've got | i have | i got | i get | got | we have | we've got" },
  { say: "i'm getting | i am getting | getting | i'm reading | i am reading | i read | reading" },
  { say: "i see | i'm seeing | i am seeing | seeing | looks like | there's | there is" },
  { say: "that's | it's | it is" },
  { say: 'drawing | pulling', of: ['current'] },
];

/** What stands between a place and its value. */
export const LINKS: readonly { readonly say: string; readonly of?: readonly QuantityId[] }[] = [
  { say: "is | it's | it is | is at | at | has | still | says | tests | is still" },
  { say: 'reads | read | reading | is reading | shows | showing | is showing | measures | measured' },
  { say: "i've got | i have | i get | i'm getting | i am getting | gives [me] | came in at | comes in at" },
  { say: '[is] putting out | puts out', of: ['voltage'] },
  { say: 'is drawing | drawing | draws | is pulling | pulling | pulls', of: ['current'] },
];

/** What a place is measured for, said before it: "voltage across …", "amps on …". */
export const QUANTITY_NAMES: readonly { readonly say: string; readonly of: readonly QuantityId[] }[] = [
  { say: 'voltage | volts', of: ['voltage', 'voltage-dc'] },
  { say: 'amps | amp draw | current | amperage', of: ['current'] },
  { say: 'resistance | ohms', of: ['resistance'] },
  { say: 'microfarads | capacitance', of: ['capacitance'] },
  { say: 'temperature | temp', of: ['temperature'] },
  { say: 'pressure', of: ['pressure'] },
];

/** Words that stand for a value. `withPlace`: a value only next to the place it was read at. */
export const VALUE_WORDS = [
  {
    is: 'open',
    say: 'open | o l | open line | over limit | over load | overload | infinite | infinity | no continuity | open circuit',
  },
  { is: 'nothing', say: 'nothing | zilch | nada' },
  { is: 'zero', say: 'no (voltage | volts | power | juice)', of: ['voltage', 'voltage-dc'] },
  { is: 'zero', say: 'goose egg | [a] big fat zero' },
  { is: 'tone', say: 'it beeps | beeps | continuity | good continuity | has continuity | i have continuity' },
  { is: 'tone', say: 'closed', withPlace: true },
  { is: 'shorted', say: 'shorted | dead short | a dead short | short' },
  { is: 'dead', say: 'dead', withPlace: true },
] as const satisfies readonly {
  is: 'zero' | 'open' | 'tone' | 'shorted' | 'nothing' | 'dead';
  say: string;
  of?: readonly QuantityId[];
  withPlace?: true;
}[];

/** Words between a value and the place behind it. */
export const PLACE_PREPOSITIONS = 'on | at | across | from | for | in | of | between';

/** Said by who begins again: what went before does not count. */
export const RESTARTS =
  'i mean | sorry | no wait | wait no | rather | make that | no sorry | no i mean | let me see | strike that';

/** Values that move while they are read. */
export const RANGE_WORDS =
  'bouncing [between | from] | jumping [between | from] | swinging [between | from] | between | anywhere from';
export const PEAK_WORDS = '[and] then (drops out | drops off | drops to nothing | drops away | drops | falls off)';

/** The part is out of the unit. */
export const BENCH_WORDS = '[out] on the bench | bench [test | reading] | out of the unit | off the unit | removed';

/** What is said of a value as it moves, behind a reading, or of a noise. It is kept as a note. */
export const REMARKS =
  "[the] contactor ([is] chattering | chatters | [is] buzzing | buzzes) | [and] [it's | it is | that's | that is] [still | slowly] (climbing | rising | dropping | falling | going up | going down | coming up | coming down | steady | holding | holding steady | jumping around | noisy)";

/** Before what is to be set right in the latest reading. */
export const CORRECTIONS =
  "correction | no | nope | make that | no make that | i meant | no i meant | that should be | that was | that's wrong | wrong | change that to | not that";

/** The latest reading's value, on the other leg. */
export const SAME_ON_OTHER =
  "[it's | it is] [the] same (on | at) [the] (other | other one | other leg | other side) | ditto [on] [the] [other | other leg | other side]";

/** Two values in one breath: what says that they are of both legs, of both pressures, of both sections of a capacitor. */
export const BOTH_LEGS_AFTER = '[on | at] [both | each] (legs | sides | lines | leg) | both ways';
export const BOTH_LEGS_BEFORE = '[both] legs [are | read | at | is] | both sides [are | read]';
export const BOTH_PRESSURES = 'pressures [are | read | at] | gauges [are | read | show]';
export const BOTH_SECTIONS = '[the] [run | dual] (cap | capacitor) [is | reads | tests | at | read | shows]';
export const AND_BETWEEN = 'over | and | slash';
export const OVER_BETWEEN = 'over | slash';
