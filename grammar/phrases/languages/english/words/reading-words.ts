import type { QuantityId } from '../../../../vocabulary/quantities.ts';

/** What is said before a value when the value comes first. `of`: only such readings are said so. */
export const LEADS: readonly { readonly say: string; readonly of?: readonly QuantityId[] }[] = [
  {
    say: "(i've | we've) [still] got | (i | we) [still] (have | got | get | read | see) | i am having | i'm having | got",
  },
  {
    say: "[i'm | i am | we're | we are] [still | only] (getting | reading | showing | seeing | measuring) | looks like",
  },
  { say: "there's | there is | i'm at | i am at | we're at | sitting at" },
  { say: "that's | it's [at] | it is [at] | [it] (shows | reads | says | measures) | call it | coming in [at]" },
  { say: '(tested | tests | measured) [good] at', of: ['capacitance', 'resistance', 'insulation'] },
  { say: '[the] (meter | gauge | clamp) (is | shows | says | reads | is (reading | showing | at))' },
  { say: '[the] [run | dual] (cap | capacitor) (is | reads | shows | tests)', of: ['capacitance'] },
  { say: "[is | it's | it is | she's] (drawing | pulling | taking) | it (draws | pulls)", of: ['current'] },
];

/** A value on its way or at its end, before it: without a place its unit tells what it is of. */
export const MOTIONS =
  "[it | it's | it is | we're] ([is | are] (holding [steady] | steady | sitting) | held | holds | stays | stayed | [is] down | [is] up | [pulled | came | went | got | dropped | fell] [back] down | (pulled | got) it down | [went | came | climbed | crept] [back] up | (rose | climbed | fell | dropped | settled | decayed | drifted | crept | came | got | goes | went | sagged | sags | sank | slid | slipped | jumped | shot | spiked | bled | drops | climbs | edged | creeps) [back] [up | down | off] | leveled (off | out) | topped out | stopped | settled (in | out)) (at | to)";

/** What stands between a place and its value. */
export const LINKS: readonly { readonly say: string; readonly of?: readonly QuantityId[] }[] = [
  {
    say: "is | are | is got | has got | it's | it is | is at | at | has | says | is good [at] | shows up as | good [at]",
  },
  {
    say: '[is] still [at] | [is] only [at] | was still [at] | is [a] [little | bit | way | really | real] (weak | low | high | down | up) at',
  },
  {
    say: "[it's | it is | is | are] [still | only] (reading [at] | showing | measuring | getting | seeing | giving [me]) | reads [at] | read | shows | measures | measured [at]",
  },
  {
    say: "(i've | we've) got | (i | we) (have | get | got | see) | (i'm | i am) [at | getting | reading | having | seeing | showing] [is] | gives [me] | gets | is of",
  },
  {
    say: "[is | it's] coming (in | out | up) [at] | (is | it's) coming | (came | comes) (in | up) [at] | (came | comes) out [at | to] | [is] out at",
  },
  {
    say: '[is | are] running [at] | [is | are] [still] (sitting [at] | hanging (at | around) | hovering (at | around)) | (tests | tested) [good] [at | out at] | testing [at] | checks [out] at',
  },
  {
    say: 'comes (to | out to) | came (to | out to) | works out (to | at) | worked out (to | at) | figures (to | out to) | is on | is right on',
  },
  { say: 'ohms out at | ohmed out at', of: ['resistance'] },
  { say: '[is] blowing [out] [at]', of: ['temperature'] },
  { say: '[is] putting out | puts out | [is] sending [out] | [is] dropping | drops', of: ['voltage'] },
  { say: '[is] (drawing | pulling | taking) | draws | pulls | takes', of: ['current'] },
];

/** Said right before a number and changing nothing of it. */
export const APPROXIMATELY =
  '[somewhere | right] around | roughly | approximately | [right] about | close to | right at | exactly | like | just | maybe | still | only | [a | an] (solid | steady | good | clean | flat | even)';

/** Around the value that it moved away from: what it came to counts. */
export const CAME_FROM =
  '[went | goes | dropped | drops | came | fell | climbed | rose | jumped | sagged | pulled] [down | up | back] from';
export const CAME_TO_WORDS = '[back] [down | up] to';

/** Before what the meter cannot show more of. */
export const MORE_THAN = '[is] (over | above | greater than | more than | better than | north of)';

/** Said right behind a value and its unit, and changing nothing of them. */
export const TRAILERS =
  'even | flat | exactly | still | and (steady | holding) | on it | on the money | or so | or thereabouts | steady | solid | only | on the nose | on the dot | on the (meter | gauge) | across it | running | right now | at the moment | today | i have | i get | i see';

/** How long a value was held: it stands in the words that are kept, and in the clock of the record. */
export const HELD_FOR = { before: 'after | for | in | over', after: 'minutes | minute' } as const;

/** Said before the place, and telling nothing of it: "the reading on leg one is …", "tested the fan side at …". */
export const READ_FROM = '[the | my] reading (of | on | at | from | across | between | for)';
export const VALUE_OF = '[the] (value | reading)';
export const MEASURED = "[i | i've | i have] (tested | measured | checked | clamped | metered)";

/** A finding that is a reading without a number; it is asked. */
export const SHORTED_TO_SHELL =
  '[the] compressor [winding | windings] [is | are] (shorted | grounded | a dead short) [[out] to (ground | [the] shell)]';

/** What a place is measured for, said before it: "voltage across …", "amps on …". */
export const QUANTITY_NAMES: readonly { readonly say: string; readonly of: readonly QuantityId[] }[] = [
  { say: 'voltage | volts', of: ['voltage', 'voltage-dc'] },
  { say: '[running] amps | amp draw | current | amperage', of: ['current'] },
  { say: 'resistance | ohms', of: ['resistance'] },
  { say: 'microfarads | capacitance', of: ['capacitance'] },
  { say: 'temperature | temp', of: ['temperature'] },
  { say: 'pressure', of: ['pressure'] },
  { say: 'megohms | insulation [resistance]', of: ['insulation'] },
];

/** Words that stand for a value. `withPlace`: a value only next to the place it was read at. */
export const VALUE_WORDS = [
  {
    is: 'open',
    say: 'open | o l | open line | over limit | over load | overload | infinite | infinity | no continuity | open circuit',
  },
  {
    is: 'nothing',
    say: "[absolutely] nothing [at all] | not a thing | zilch | nada | [i'm | i am | it's | it is | is] (not | isn't) (getting | reading | seeing | showing | measuring) (anything | a thing) | i (don't | do not | didn't) (have | get | got | see | read) (anything | a thing)",
  },
  {
    is: 'zero',
    say: 'no (voltage | volts | power | juice) [[getting | going | coming] to]',
    of: ['voltage', 'voltage-dc'],
  },
  { is: 'zero', say: 'no (amps | current | amperage | amp draw | draw)', of: ['current'] },
  {
    is: 'zero',
    say: "[is] (not | isn't) (drawing | pulling) (anything | a thing | any (amps | current))",
    of: ['current'],
  },
  { is: 'zero', say: 'no pressure', of: ['pressure'] },
  { is: 'zero', say: 'none', of: ['current', 'voltage', 'pressure'], withPlace: true },
  { is: 'nothing', say: 'no (microfarads | capacitance)', of: ['capacitance'] },
  { is: 'zero', say: 'goose egg | [a] big fat zero' },
  { is: 'tone', say: 'it beeps | beeps | (good | full) continuity | (has | i have) (good | full) continuity' },
  // One short word away from "no continuity".
  { is: 'shorted', say: '[has | i have | shows | got | there is] continuity' },
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
export const PLACE_PREPOSITIONS =
  "[coming] in at | on | at | from | for | in | of | [coming | blowing] (out of | off [of]) | [coming | blowing] out (at | on) | [is what] (i'm | i am) (getting | reading | seeing) (on | at | from) | is what i (have | get | got | see | read) (on | at | from)";
/** Those that speak of two tips. */
export const SPANNING = 'across | between';

/** Said by who begins again: what went before does not count. */
export const RESTARTS =
  '[no | uh no] (i mean | i meant | sorry | wait | rather | actually | correction | make (that | it) | (strike | scratch) that) | wait [a (second | minute)] [no] | or rather | let me see | sorry i mean';

/** Values that move while they are read. */
export const RANGE_WORDS =
  'bouncing [between | from] | jumping [between | from] | swinging [between | from] | between | anywhere from';
export const PEAK_WORDS = '[and] then (drops out | drops off | drops to nothing | drops away | drops | falls off)';

/** The part is out of the unit. */
export const BENCH_WORDS = '[out] on the bench | bench [test | reading] | out of the unit | off the unit | removed';

/** What is said of a value as it moves, behind a reading, or of a noise. It is kept as a note. */
export const REMARKS =
  "[there is | there's | i see | found | got] [a | some] (bug | bugs | ants | ant | dirt) in the (contactor | contacts) | [it | the unit | the compressor | the panel] smells ([like] (burnt | burned [up] | something (burnt | burned [up])) | hot | electrical) | [a] (burnt | burned) smell [in the panel | at the unit] | [the | a] ((spade | wire | quick) connector | terminal | spade) is (melted | burnt | burned | loose) | [the] (suction | liquid | big | small | vapor) line is ([not] (sweating | frosted | frosting | frosty | iced [up | over] | frozen [up | over | back to the compressor] | warm | cool) | beer can cold) | [the] fan is (spinning | turning | running) backwards | [the] fan has [a lot of | some] play in (the | its) (shaft | bearings) | [the] air flow is (weak | low | good | strong | fine) [at the (registers | vents | grilles)] | (weak | low | good | no) air flow [at the (registers | vents | grilles)] | [the] [control | green | red] (board | light) [light] is (blinking | flashing) | [the] transformer is (humming | buzzing | hot) | " +
  "[the] contactor ([is] chattering | chatters | [is] buzzing | buzzes) | [and] [it's | it is | that's | that is] [still | slowly] (climbing | rising | dropping | falling | going up | going down | coming up | coming down | steady | holding | holding steady | jumping around | noisy)";

/** Before what is to be set right in the latest reading. */
export const CORRECTIONS =
  "correction | make that | no make that | i meant | no i meant | that should be | [no] that was | that's wrong | wrong | change that to | not that";

/** Denies alone, too: before a place it may as well say that nothing is there ("no leg two"). */
export const DENIALS = 'no | nope';

/** The latest reading's value, on the other leg. */
export const SAME_ON_OTHER =
  "[it's | it is] [the] same (on | at) [the] (other | other one | other leg | other side) | ditto [on] [the] [other | other leg | other side]";

/** Two values in one breath: what says that they are of both legs, of both pressures, of both sections of a capacitor. */
export const BOTH_LEGS_AFTER =
  '[on | at | to ground on] (both [of the] (legs | sides | lines | hots) | each (leg | side | line)) [to ground]';
/** Both of what is asked in turn, of legs where nothing is: "both" alone only before its number. */
export const BOTH_AFTER = 'both ways | on both | [on] both sections | both of them';
export const BOTH_BEFORE = "[they're | they are] both [sections | of them] [are [at] | read | at | is | show]";
export const BOTH_LEGS_BEFORE =
  '(both [of the] (legs | sides | lines | hots) | each (leg | side)) [to ground] [are [at] | read | at | is | have | i have | [are] (reading | showing | getting | sitting at)] | $leg one and [$leg] two [to ground] (are both | both [read | are [at] | at])';
/** Without "both" it needs two numbers: of "legs one eighteen" a letter may be too many. */
export const LEGS_BEFORE = 'legs [to ground] [are | read | at]';
export const BOTH_PRESSURES =
  '[the] pressures [are [at] | read | at | show | running] | [the] gauges [are [at] | read | show | say] | suction over head [is | at]';
export const BOTH_SECTIONS = '[the] [dual] [run] (cap | capacitor)';
export const BOTH_SECTIONS_READ =
  '(reads | read | shows | tests | tested | checks | checked | measures | came in | comes in | came out) [out] [at] | [is] (at | out at) | is (reading | showing)';
export const SECTIONS_AFTER = '(on | at) [the | this] [dual] [run] (cap | capacitor)';
export const AND_BETWEEN = 'over | and | slash';
export const OVER_BETWEEN = 'over | slash';
export const ON_THE_GAUGES = '(on | at) (the | my) (gauges | manifold)';

/** Names of readings that tell by themselves what is measured. */
export const SELF_NAMED =
  /(^| )(amps|current|draw|volts|voltage|pressure|superheat|super heat|subcooling|subcool|sub cooling|sub cool|split|delta t|airflow|air flow)$/;
