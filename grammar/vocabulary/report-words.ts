/** That a charge is gone: behind the part's name, before it, and around it. */
export const DISCHARGED = {
  after: '(is | are | has been | have been) (discharged | bled [down | off] | drained)',
  before: "[i | i've | i have] (discharged | bled [down | off] | bleeding down)",
  around: ["[i | i've | i have] bled", 'down | off'],
} as const;

/** Before the voltage on which a meter is proved. */
export const METER_PROVES =
  '(proved | tested | checked) (the | my) meter (at | on | to) | [the | my] meter (proves | proved | proven | reads | shows | is (proved | proven | good) | checks | tests | good) [out] [good] [at | on | to] [[a | the] [known] [live] source [at | of | on]]';

/** Behind it: where it was proved. */
export const PROVING_SOURCE = 'on a (known [live] | live) source | on the known source';

/** Somebody is hurt. */
export const INJURY =
  "i got (bit | shocked | zapped | hit | burned | burnt | hurt | lit up | cut) | (i am | i'm) (hurt | injured) | (it | that) (bit | shocked | zapped | got) me | got bit | i've been (shocked | hurt | burned) | (somebody | someone | he | she) (got | is | was | has been) (hurt | shocked | hit | burned | injured) | i got a shock";

/** Sounds like a report of energy, but names no device or no place: it is asked, never taken. */
export const PLACELESS =
  "(it | it's | it is | that | that's | everything | [the] power) [is] (dead | off | hot | out | killed | cold | de energized) | it's (dead | off | out | killed) | killed [the] power | locked it out | turned it [back] (on | off) | [the] unit is (locked | tagged | locked and tagged | off | dead) | verified (dead | zero [volts]) | [the] (main | electrical | house) panel (is | has been) (off | dead | out | shut off | turned off)";

/** Before a dictated note. */
export const NOTE = 'note | make a note | take a note';
