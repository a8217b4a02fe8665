import type { ZoneId } from './zones.ts';

/** A device that opens or closes a circuit. An energy report needs both a device and a place. */
export type SwitchingDevice = 'disconnect' | 'breaker' | 'thermostat-call' | 'service-switch';
export type SwitchPlace = 'outdoor' | 'panel' | 'air-handler' | 'thermostat';

/**
 * Devices with their places. `withoutPlace` marks names that leave the place open: opening is then asked about,
 * closing is believed, since believing in power is the careful side.
 */
export const DEVICES = [
  {
    device: 'disconnect',
    place: 'outdoor',
    say: '(outdoor | condenser | outside | outdoor unit | condensing unit) (disconnect | pull out) | (disconnect | pull out) (at | on | for | by) the (condenser | outdoor unit | outside unit) | (disconnect | pull out) (outside | outdoors)',
    at: '(outdoor | condenser | outside | outdoor unit) disconnect',
  },
  {
    device: 'disconnect',
    place: 'outdoor',
    withoutPlace: true,
    say: '(disconnect | pull out) [at the unit]',
    at: 'disconnect',
  },
  {
    device: 'disconnect',
    place: 'air-handler',
    say: '(air handler | indoor | indoor unit | handler) (disconnect | pull out) | (disconnect | pull out) (at | on | for) the (air handler | indoor unit)',
    at: '(air handler | indoor | indoor unit) disconnect',
  },
  {
    device: 'breaker',
    place: 'panel',
    say: '(panel | main panel | condenser | outdoor unit | a c) breaker | breaker (at | in) the panel | breaker for the (condenser | outdoor unit | a c)',
    at: '(panel | breaker panel | panel breaker | breaker in the panel)',
  },
  { device: 'breaker', place: 'panel', withoutPlace: true, say: 'breaker', at: 'breaker' },
  {
    device: 'breaker',
    place: 'air-handler',
    say: '(air handler | indoor | handler | indoor unit) breaker | breaker (at | on | for) the (air handler | indoor unit)',
    at: '(air handler | indoor) breaker',
  },
  {
    device: 'thermostat-call',
    place: 'thermostat',
    say: '[the] call | call for (cool | cooling) | cooling call | call (at | from) the $stat | $stat call | $stat',
    at: '$stat',
  },
  {
    device: 'service-switch',
    place: 'air-handler',
    say: '(service switch | furnace switch | air handler switch | switch at the air handler)',
    at: '(service switch | furnace switch)',
  },
] as const satisfies readonly {
  device: SwitchingDevice;
  place: SwitchPlace;
  withoutPlace?: true;
  say: string;
  at: string;
}[];

/** What can be reported of a device: after its name ("… is pulled") and before it ("I pulled the …"). */
export const SWITCH_STATES = [
  {
    state: 'open',
    after:
      '(is | has been | are | is now) ([been] pulled [out] | out | open | opened | off | switched off | turned off | set to off | killed | [in the] off [position])',
    before:
      "[i | i've | i have] (pulled | opened | killed | switched off | turned off | shut off | flipped off | threw off | cut)",
  },
  {
    state: 'locked',
    after:
      '(is | has been) ([pulled | out | open | off | switched off | turned off | shut off] [and] locked [out] [and] [tagged] | pulled [out] [and] (locked [out] | tagged) [and] [tagged] | locked and tagged | [pulled] (out | off) and [my | the] (lock | tag) is on [it]) | [is] off [and] [my] lock [is] on [it]',
    before:
      "[i | i've | i have] (locked out | locked | pulled and locked | locked and tagged | (put | hung) (my | a | the) (lock | tag | lock and tag) on) | [the | my] (lock | tag | lock and tag) is on",
  },
  {
    state: 'unlocked',
    after:
      '(is | has been) unlocked | lock is off | (is | has been) (left unlocked) | lock has been (removed | taken off)',
    before: "[i | i've | i have] (unlocked | took the lock off | taken the lock off | removed the lock from)",
  },
  {
    state: 'closed',
    after:
      '(is | has been | are) (back in | in | back on | on | closed | restored | plugged [back] in | pushed [back] in | switched [back] on | turned [back] on)',
    before:
      "[i | i've | i have] (closed | put back | plugged in | pushed in | switched on | turned on | (threw | flipped | switched | turned) back on | restored [power at])",
  },
  // Of a breaker that tripped it is the repair, too.
  { state: 'closed', resets: true, after: '(is | has been) reset | reset', before: "[i | i've | i have] reset" },
] as const satisfies readonly {
  state: 'open' | 'closed' | 'locked' | 'unlocked';
  after: string;
  before: string;
  resets?: true;
}[];

/** What can be reported with a device's name in the middle: "turned the thermostat off". */
export const SWITCH_AROUND = [
  {
    state: 'open',
    before: "[i | i've | i have] (turned | switched | shut | pulled | flipped) [the]",
    after: 'off | out',
  },
  {
    state: 'closed',
    before: "[i | i've | i have] (turned | switched | put | plugged | pushed | threw | flipped) [the]",
    after: 'on | back on | in | back in',
  },
  {
    state: 'locked',
    before: "[i | i've | i have] (pulled | opened | killed | cut | turned off | switched off | shut off) [the]",
    after: '[and] (locked it [out] | [i] (hung | put) (my | a | the) lock [on [it]])',
  },
] as const satisfies readonly { state: 'open' | 'closed' | 'locked'; before: string; after: string }[];

/** Reports without a verb, that must name the place behind: "breaker off at the panel". */
export const SWITCHED_AT = [
  {
    device: 'breaker',
    place: 'panel',
    name: '[the] breaker',
    where: '(at | in) the [main | breaker | electrical] panel',
  },
  {
    device: 'breaker',
    place: 'air-handler',
    name: '[the] breaker',
    where: '(at | in) the (air handler | indoor unit)',
  },
  {
    device: 'disconnect',
    place: 'outdoor',
    name: '[the] (disconnect | pull out)',
    where: 'outside | outdoors | at the (condenser | outdoor unit | outside unit)',
  },
  { device: 'disconnect', place: 'air-handler', name: '[the] disconnect', where: 'at the (air handler | indoor unit)' },
] as const satisfies readonly { device: SwitchingDevice; place: SwitchPlace; name: string; where: string }[];
export const SWITCHED_STATES = [
  {
    state: 'open',
    say: '(is | has been) [shut | turned | switched] off | [shut | turned | switched] off | [is] pulled [out]',
  },
  { state: 'locked', say: '[is | has been] [pulled | off | out | open] [and] (locked [out] [and tagged] | tagged)' },
  { state: 'closed', say: '(is | has been) [turned | switched] [back] on | [turned | switched] [back] on' },
] as const;

/** Reports of power with a device named after it: "power is off at the outdoor disconnect". */
export const POWER_STATES = [
  { state: 'open', say: '[the] power is (off | out | killed | cut | dead)' },
  { state: 'closed', say: '[the] power is (on | back on | restored | back) | (restored | turned on) [the] power' },
  { state: 'locked', say: '[the] power is (locked out | off and locked [out])' },
] as const satisfies readonly { state: 'open' | 'closed' | 'locked'; say: string }[];

/** Sections of a capacitor that hold a charge of their own, as said of discharging. */
export const CHARGED_PARTS = [
  {
    zones: ['capacitor-herm', 'capacitor-fan'],
    say: '[the] [run | dual] (capacitor | cap) | both [capacitor] sections | both (caps | capacitors)',
  },
  {
    zones: ['capacitor-herm'],
    say: '[the] [cap | capacitor] (herm | compressor) (section | side)| [cap | capacitor] herm',
  },
  { zones: ['capacitor-fan'], say: '[the] [cap | capacitor] fan (section | side) | fan (cap | capacitor)' },
  { zones: ['capacitor-start'], say: '[the] [hard] start (capacitor | cap)' },
] as const satisfies readonly { zones: readonly ZoneId[]; say: string }[];

/** Points of work at which absence of voltage is proved, as said. The first is meant where nothing is said. */
export const PROOF_PLACES = [
  { zone: 'outdoor-load', say: '(condenser | outdoor unit | contactor | load side | outdoor load side)' },
  { zone: 'disconnect-line', say: '(line side [of the disconnect] | disconnect line side)' },
  { zone: 'air-handler', say: '(air handler | indoor unit | handler | blower)' },
  { zone: 'control', say: '(control | control circuit | twenty four volt side | transformer secondary)' },
] as const satisfies readonly { zone: ZoneId; say: string }[];
