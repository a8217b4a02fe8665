import type { TestId } from './tests.ts';

/**
 * What is said in an exercise beside what is said on a visit: a simulated unit has to be told what is looked at, and a
 * trainee what they think. Written as all phrases are.
 */

/** What the dial of the meter stands on. */
export const DIALS = [
  { id: 'volts', name: 'volts AC', say: 'volts [a c] | a c volts | voltage' },
  { id: 'volts-dc', name: 'volts DC', say: 'volts d c | d c volts | d c' },
  { id: 'ohms', name: 'ohms', say: 'ohms | continuity | resistance' },
  { id: 'microfarads', name: 'microfarads', say: 'microfarads | capacitance | capacitor [test]' },
] as const;
export type DialId = (typeof DIALS)[number]['id'];

/** Before what the dial is set to. */
export const DIAL_TO = '[set | put | turn] [the] (meter | dial) [is] (on | to)';

/** The meter on a source that is known to be live, before and after a proof. */
export const METER_ON_SOURCE =
  '(prove | check | test) [the | my] meter [on [the | a] known [live] source] | meter on [the | a] known [live] source';

/** Before what is looked at, felt or turned by hand. */
export const LOOK_AT = '([take a] look (at | for) | check [on] | watch | see [to] | listen to | feel) [the]';

/** What can be looked at, as it is called. */
export const LOOKS_SAID = [
  { test: 'look-outdoor-fan', say: '[outdoor | condenser] fan' },
  { test: 'look-compressor', say: 'compressor' },
  { test: 'look-contactor', say: 'contactor | armature' },
  { test: 'look-contacts', say: '[contactor] contacts | points' },
  { test: 'look-capacitor', say: 'capacitor | cap' },
  { test: 'look-blower', say: '[indoor] blower' },
  { test: 'look-filter', say: '[air] filter' },
  { test: 'look-indoor-coil', say: '(indoor | evaporator) coil' },
  { test: 'look-outdoor-coil', say: '(outdoor | condenser) coil' },
  { test: 'look-drain-pan', say: 'drain [pan] | drain pan | pan' },
  { test: 'look-oil', say: 'oil [stains | spots | trace | traces]' },
  { test: 'look-thermostat', say: 'thermostat | stat' },
  { test: 'look-breaker', say: 'breaker' },
  { test: 'look-disconnect', say: 'disconnect' },
  { test: 'look-fan-by-hand', say: '[outdoor | condenser] fan by hand' },
  { test: 'look-blower-by-hand', say: '[indoor] blower by hand' },
  { test: 'look-compressor-heat', say: 'compressor (heat | shell | temperature)' },
] as const satisfies readonly { readonly test: TestId; readonly say: string }[];

/** Before a suspect, by its number in the list or its name. */
export const SUSPECT_IS = '[i] (suspect | think [it is | it is the] | bet on | go for) [number] [the]';
export const NONE_YET = 'none [yet] | no suspect [yet] | no idea yet | [i have] nothing yet';

/** The charge of every section led off, in the word that the visit asks for. */
export const DISCHARGED_SAID = "[all | it is | it's | they are | both are | everything is] discharged";

/** Before where the probes stand, whatever is said of it afterwards. */
export const PROBES_ON = '[put | move] [the | my] probes [are | go] (on | to | at)';

/** Reads where the probes stand on the drawing. */
export const READ_IT = '(read | take) [it | the meter | the reading] | measure [it | there | here]';
export const HINT = '[give me] [a] hint | i need a hint';
/** Before and behind a number of minutes that are let pass: a unit has to run before some of it is measured. */
export const WAIT = 'wait | let';
export const MINUTES = '(minute | minutes) [pass | go by]';
export const GIVE_UP = '[i] give up | end the exercise | stop the exercise';
/** Behind a place: with the part taken out for it. */
export const ON_THE_BENCH = '[with] [the] (part | leads) (out | off) | on the bench | out of the unit';
