import { Practised } from './practise-lines.ts';

/**
 * Six learners as somebody else would write them: lines that they type, whatever is asked, and nothing of the planner's.
 * Each ends its exercise by itself or is stopped.
 */
export const STRANGERS = ['careful', 'guesser', 'hurrier', 'careless', 'swapper', 'quitter'] as const;
export type Stranger = (typeof STRANGERS)[number];

const AGREED = ['yes', 'outdoor air', 'return air', 'thermostat is calling', 'look at the fan'] as const;
const LEGS = ['leg one to ground', 'none yet', 'live'] as const;
const OFF = ['thermostat is not calling', 'outdoor disconnect is pulled and locked'] as const;
const PAIRS = [
  'leg one to ground',
  'leg two to ground',
  'leg one to leg two',
  'T1 to ground',
  'T2 to ground',
  'T1 to T2',
];
const PROOF = [
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
    [...AGREED, ...LEGS, ...OFF, 'prove the meter', 'T1 to L2', 'none yet', 'L1 to T2', 'none yet'],
    [...AGREED, ...LEGS, ...OFF, 'prove the meter', 'probes on T1 to ground', 'leg one to ground'],
  ],
  // Names whoever comes to mind, tests nothing more, and is gone.
  quitter: [
    [...AGREED, 'look at the compressor', 'one', 'suspect two', 'suspect three', 'give up'],
    [...AGREED, ...LEGS, 'suspect one', 'hint', 'suspect two', 'give up'],
  ],
};
export const WAYS = 2;

/** Lets a stranger do an exercise. @param way which of a stranger's ways */
export async function practiseAs(stranger: Stranger, way: number, name: string): Promise<Practised> {
  const p = await Practised.begin(name);
  for (const line of LINES[stranger][way]!) {
    if (p.exercise.ended !== undefined) break;
    // Who is held and does not heed it goes on.
    if (p.exercise.halted && stranger !== 'careless') await p.type('go on');
    await p.type(line);
  }
  if (p.exercise.ended === undefined) await p.type('give up');
  return p;
}
