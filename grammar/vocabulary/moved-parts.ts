import type { PartId } from './parts.ts';

/**
 * Whether "… is out" tells of a part that it was taken out. `taken`: of the others it tells how they work ("contactor is
 * out" has dropped out, a motor that is out has failed), so the taking itself has to be said, or that it is the old one.
 * `never`: switches of the supply and of the call, whose words report energy.
 */
export const MOVED: Readonly<Record<PartId, 'out' | 'taken' | 'never'>> = {
  'dual-capacitor': 'out',
  capacitor: 'out',
  'hard-start': 'out',
  contactor: 'taken',
  'fan-motor': 'taken',
  'blower-motor': 'taken',
  fuse: 'taken',
  'control-fuse': 'taken',
  breaker: 'never',
  transformer: 'taken',
  thermostat: 'never',
  'float-switch': 'taken',
  'pressure-switch': 'taken',
  disconnect: 'never',
  filter: 'out',
  'filter-drier': 'out',
  compressor: 'taken',
  'defrost-board': 'taken',
  'control-board': 'taken',
  'blower-relay': 'taken',
  'reversing-valve': 'taken',
  'unloader-solenoid': 'taken',
  'crankcase-heater': 'taken',
  'door-switch': 'taken',
  'expansion-valve': 'taken',
  'valve-core': 'out',
};

/** Who did it, before what was done. */
export const DONE_BY = "i | i've | i have | i'm | i am | we | we've | we're | we are";

/** Taking: what needs "out" or "off" beside it, what may have it, what has none. */
export const TAKING = {
  needs: 'took | taken | taking | got',
  may: 'pulled | pulling | popped',
  has: 'removed | removing | yanked',
} as const;
/** Putting: what needs "back" beside it, and what says it all. */
export const PUTTING = { needs: 'put | set | putting', has: 'reinstalled | refitted' } as const;

/** Between the taking and what was taken. */
export const THE_ONE = '[the | both | all] [the] [old | bad | same]';
export const OUT_OF_THE_UNIT = 'out [of the unit]';
export const BACK_IN = 'back [in [the unit] | in place]';

/** Behind the name of a part: that it is out or back, whatever part it is; and where "out" can mean nothing else. */
export const PART_IS = {
  gone: '(is | are | has been | have been | was) (removed | taken out | pulled out | out of the unit)',
  back: '(is | are | has been | have been | was) (back (in [the unit] | in place) | put back [in] | reinstalled)',
  out: '(is | are) out',
} as const;
/** Around the name: a part that is not needed any more. */
export const OLD_PART = { before: '(old | bad)', after: '(is | are) (out | off | gone)' } as const;
