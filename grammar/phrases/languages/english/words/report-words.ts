/** That a charge is gone: behind the part's name, before it, and around it. */
export const DISCHARGED = {
  after:
    '[is | are | has been | have been] discharged | (is | are | has been | have been) (bled [down | off] | drained)',
  before: "[i | i've | i have] (discharged | drained | bled [down | off] | bleeding down)",
  around: ["[i | i've | i have] bled", 'down | off'],
} as const;

/** Before the voltage on which a meter is proved. */
export const METER_PROVES =
  '(proved | tested | checked) (the | my) meter (at | on | to) | [the | my] meter (proves | proved | proven | reads | shows | is (proved | proven | good) | checks | tests | good) [out] [good] [at | on | to] [[a | the] [known] [live] source [at | of | on]]';

/** The meter's number alone, where nothing else is said with it. */
export const METER_ALONE = '[the | my] meter [is] [again | still] [at | on]';

/** Behind it: where it was proved. */
export const PROVING_SOURCE = 'again | on a (known [live] | live) source | on the known source';

/** Somebody is hurt. */
export const INJURY =
  "i got (bit | shocked | zapped | hit | burned | burnt | hurt | lit up | cut) | (i am | i'm) (hurt | injured) | (it | that) (bit | shocked | zapped | got) me | got bit | i've been (shocked | hurt | burned) | (somebody | someone | he | she) (got | is | was | has been) (hurt | shocked | hit | burned | injured) | i got a shock";

/** Sounds like a report of energy, but names no device or no place: it is asked, never taken. */
export const PLACELESS: readonly { readonly say: string; readonly state?: 'open' | 'locked' }[] = [
  {
    say: "(it | it's | it is | that | that's | everything | [the] power) [is] (dead | hot | cold | de energized) | it's dead | turned it [back] on | [the] unit is dead | verified (dead | zero [volts]) | [the] (main | electrical | house) panel (is | has been) (dead | out)",
  },
  {
    say: "(it | it's | it is | that | that's | everything | [the] power) [is] (off | out | killed) | it's (off | out | killed) | killed [the] power | turned it off | [the] unit is off | [the] (main | electrical | house) panel (is | has been) (off | shut off | turned off)",
    state: 'open',
  },
  { say: 'locked it out | [the] unit is (locked | tagged | locked and tagged)', state: 'locked' },
];

/** Where a switch is, said alone: it answers which one was meant. */
export const SWITCH_WHERE = [
  {
    place: 'outdoor',
    device: 'disconnect',
    say: '[at | in] [the] (outdoor | outside | outdoors | condenser | condensing) [unit | one] | [the] one (outside | outdoors | at the (condenser | unit)) | [the] [outdoor | outside] (disconnect | pull out) [outside]',
  },
  {
    place: 'panel',
    device: 'breaker',
    say: '[at | in] [the] [breaker | main | panel] (panel | breaker) [(at | in) the panel | one] | [the] one (at | in) the panel',
  },
  {
    place: 'air-handler',
    device: 'service-switch',
    say: '[at | in] [the] (indoor | indoors | inside) [unit | one] | [the] one (inside | indoors | at the air handler) | [at] [the] air handler [switch] | [the] service switch [inside | at the air handler]',
  },
] as const;

/** Before a dictated note. */
export const NOTE = 'note | make a note | take a note';

/** Before what was seen at the unit: it says nothing of it. Not before a switch, of which "looks like" is no report. */
export const SEEN = "[it] looks like [the] | i (see | can see) [that] | i'm seeing [that] | turns out";
