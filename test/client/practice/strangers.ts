import { isGroundProved } from '../../../client/visit/rules/proof-ground.ts';
import { Practised } from './practise-lines.ts';

/**
 * Six learners as somebody else would write them: lines that they type, whatever is asked, and nothing of the planner's.
 * Each ends its exercise by itself or is stopped.
 */
export const STRANGERS = ['careful', 'guesser', 'hurrier', 'careless', 'swapper', 'quitter'] as const;
export type Stranger = (typeof STRANGERS)[number];

const AGREED = ['yes', 'outdoor air', 'return air', 'thermostat is calling', 'look at the fan'] as const;
/** Whichever leg is live vouches for the ground. */
const LEGS = ['leg one to ground', 'none yet', 'live', 'leg two to ground', 'none yet'] as const;
const OFF = ['thermostat is not calling', 'outdoor disconnect is pulled and locked'] as const;
const PAIRS = [
  'leg one to ground',
  'leg two to ground',
  'leg one to leg two',
  'T1 to ground',
  'T2 to ground',
  'T1 to T2',
];
/** Said where no leg was live: what stands before the switch, which keeps to itself that there is none. */
const VOUCHING = ['disconnect line one to ground', 'disconnect line two to ground', 'disconnect line side'] as const;
const VOUCH = 'the line side, where no leg was live';
/** Told that the probes stay elsewhere, and said all the same. */
const SAID_AGAIN = ['leg one to ground', 'leg one to ground'] as const;
const PROOF = [
  VOUCH,
  'prove the meter',
  ...PAIRS,
  'prove the meter',
  'discharged',
  'herm section',
  'fan section',
  'start capacitor',
];

const LINES: Readonly<Record<Stranger, readonly (readonly string[])[]>> = {
  // Everything in its order, each test for a suspect, and the unit left as it is.
  careful: [
    [...AGREED, 'look at the compressor', 'one', ...LEGS, ...OFF, ...PROOF, 'fan section microfarads', 'one'],
    [...AGREED, 'look at the contactor', 'one', ...LEGS, ...OFF, ...PROOF, 'herm section microfarads', 'one'],
  ],
  // A part at once, and another.
  guesser: [
    [...AGREED, 'fitted a contactor'],
    [...AGREED, 'it is the capacitor', 'fitted a dual capacitor'],
  ],
  // No look at anything, not even what is asked.
  hurrier: [
    ['leg one to ground', 'leg two to ground', 'ohms compressor common to run'],
    ['look at the compressor', 'look at the contactor', 'ohms T1 to T2'],
  ],
  // Tests well, opens the switch, and believes it.
  careless: [
    [...AGREED, 'look at the compressor', 'one', ...LEGS, ...OFF, 'ohms compressor common to run', 'go on'],
    [...AGREED, 'look at the contactor', 'one', ...OFF, 'I pulled the brown wire', 'go on'],
  ],
  // Reads from one side of the contactor to the other where a proof asks for one of them.
  swapper: [
    [...AGREED, ...LEGS, ...OFF, VOUCH, 'prove the meter', 'T1 to L2', 'none yet', 'L1 to T2', 'none yet'],
    [...AGREED, ...LEGS, ...OFF, VOUCH, 'prove the meter', 'probes on T1 to ground', ...SAID_AGAIN],
  ],
  // Names whoever comes to mind, tests nothing more, and is gone.
  quitter: [
    [...AGREED, 'look at the compressor', 'one', 'suspect two', 'suspect three', 'give up'],
    [...AGREED, ...LEGS, 'suspect one', 'hint', 'suspect two', 'give up'],
  ],
};
export const WAYS = 2;

/** Somebody who does nothing amiss and does it in a way of their own: nothing is to be held against them. */
export const HONEST = {
  // Looks at everything, suspects nobody, and has the test told by hints.
  asks: [
    ...AGREED,
    ...['hint', 'look at the compressor', 'none yet', 'hint', 'look at the contactor', 'none yet'],
    ...['look at the filter', 'none yet', 'look at the blower', 'none yet', 'why', 'what next', 'give up'],
  ],
  // Proves dead before anything else is measured, and says after a pause that nothing came back.
  'proves first': [
    ...AGREED,
    ...LEGS,
    ...OFF,
    ...PROOF,
    'fan section microfarads',
    'two',
    'wait 15 minutes',
    'still off and locked',
    'herm section microfarads',
    'one',
  ],
  // Says where the probes are and then reads them, twice where it matters, and says again what was not heard.
  'reads twice': [
    ...AGREED,
    ...['probes on leg one to ground', 'read', 'none yet', 'live', 'leg one to ground', 'none yet'],
    ...['probes on leg two to ground', 'leg two to ground', 'leg two to ground', 'none yet'],
    ...['thermostat is not calling', 'breaker at the panel is off and locked', 'finish the visit'],
    ...['note that it could not be done today for want of time', 'note that it could not be done today'],
  ],
  // Goes by temperatures and leaves the circuit to who knows it.
  'measures air': [
    ...AGREED,
    ...['supply air', 'none yet', 'wet bulb return air', 'look at the indoor coil', 'none yet'],
    ...['look at the outdoor coil', 'one', 'finish the visit', 'note that a colleague with gauges comes tomorrow'],
  ],
} as const satisfies Readonly<Record<string, readonly string[]>>;
export type Honest = keyof typeof HONEST;

/** Lets a stranger do an exercise. @param way which of a stranger's ways */
export function practiseAs(stranger: Stranger, way: number, name: string): Promise<Practised> {
  return practiseLines(LINES[stranger][way]!, name, stranger !== 'careless');
}

/** Says lines one after another until the exercise is over. @param heeds whether what holds is gone on from */
export async function practiseLines(lines: readonly string[], name: string, heeds = true): Promise<Practised> {
  const p = await Practised.begin(name);
  for (const line of lines) {
    if (p.exercise.ended !== undefined) break;
    // Who is held and does not heed it goes on.
    if (p.exercise.halted && heeds) await p.type('go on');
    if (line !== VOUCH) await p.type(line);
    else if (!isGroundProved('outdoor-load', p.exercise.context)) await p.type(...VOUCHING);
  }
  if (p.exercise.ended === undefined) await p.type('give up');
  return p;
}
