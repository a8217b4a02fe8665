import type { Letter } from './facts.ts';

/** A disagreement that stands open: the paper's rule, what shows it in the fewest lines, and what the paper wants. */
export interface KnownDisagreement {
  readonly rule: Letter;
  readonly kind: string;
  readonly lines: readonly string[];
  readonly wants: string;
}

const UNIT_DEAD = [
  'leg one to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'meter two forty zero zero zero zero zero zero meter two forty',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;

/** The most dangerous first. Rows leave this table as the machine is mended; none is added without a word why. */
export const KNOWN: readonly KnownDisagreement[] = [
  {
    rule: 'g',
    kind: 'voltage where it was reported off',
    lines: [
      'thermostat is not calling',
      'service switch is off and locked',
      'contactor is pulled in',
      'coil twenty four volts',
    ],
    wants: 'hands off, voltage present: a contactor that is in tells nothing of the switch, which is locked still',
  },
  {
    rule: 'f',
    kind: 'proven dead, though its power or lock came back',
    lines: [
      'line side one to ground one eighteen',
      'thermostat is not calling',
      'outdoor disconnect is pulled and locked',
      'meter two forty zero zero zero zero zero zero meter two forty',
      'outdoor disconnect is back in',
      'outdoor disconnect is pulled and locked',
      'meter proves two forty',
      'T one to ground zero volts',
      'T two to ground zero volts',
      'T one to T two zero volts',
      'meter proves two forty',
      'herm section zero volts d c',
    ],
    wants: 'a proof after power came back begins with every pair',
  },
  {
    rule: 'e',
    kind: 'proven dead, though nobody was there for 30 minutes',
    lines: [
      'thermostat is not calling',
      'outdoor disconnect is pulled and locked',
      'meter two forty zero zero zero zero zero zero meter two forty',
      '@wait 31',
      'leg one to ground one eighteen',
      'outdoor disconnect is pulled and locked',
      'meter proves two forty',
      'leg one to ground zero volts',
      'leg two to ground zero volts',
      'leg one to leg two zero volts',
      'meter proves two forty',
      'herm section zero volts d c',
    ],
    wants: 'a proof after a lapse begins with every pair, a section by itself too',
  },
  {
    rule: 'e',
    kind: 'proven dead, though the clocks went apart',
    lines: [
      'leg one to ground one eighteen, thermostat is not calling',
      'outdoor disconnect is pulled and locked',
      'meter two forty zero zero zero zero zero zero meter two forty',
      'herm section zero volts d c',
      '@clock 5',
      'correction zero',
      'meter proves two forty',
      'leg one to ground zero volts',
      'leg two to ground zero volts',
      'leg one to leg two zero volts',
      'meter proves two forty',
      'herm section zero volts d c',
    ],
    wants: 'the same after the clocks went apart',
  },
  {
    rule: 'c',
    kind: 'proven dead, though a part of the proof was taken back',
    lines: [
      'air handler leg one to ground one eighteen',
      'thermostat is not calling',
      'service switch is off and locked',
      'control meter twenty four zero zero zero meter twenty four',
      'leg one to ground zero volts',
      'I hear the compressor',
      'control meter twenty four zero zero zero meter twenty four',
      'take that back',
    ],
    wants: 'what is taken back is the latest thing said, a proof too',
  },
  {
    rule: 'f',
    kind: 'power back where it was proven dead',
    lines: [
      'leg one to ground one eighteen, thermostat is not calling',
      'outdoor disconnect is pulled and locked',
      'leg one to ground one eighteen',
      'meter two forty zero zero zero zero zero zero meter two forty',
      'herm section zero volts d c',
      'lock is off',
    ],
    wants: 'said aloud wherever a proof stands, of a section by itself too',
  },
  {
    rule: 'f',
    kind: 'proven dead, though a part runs',
    lines: [
      'thermostat is not calling',
      'air handler leg one to ground one eighteen, service switch is off and locked',
      'control meter twenty four zero zero zero meter twenty four',
      'thermostat is calling',
    ],
    wants: 'a call with the control circuit proven dead ends its proof: something feeds it',
  },
  {
    rule: 'c',
    kind: 'proven dead, though a pair of the proof was corrected',
    lines: [
      'fan section one point one microfarads on the bench',
      'leg one to ground one eighteen, panel breaker is off and locked',
      'line side meter two forty zero zero zero meter two forty',
      'correction zero',
    ],
    wants: 'a correction behind a proof reopens its pair, whatever was read before',
  },
  {
    rule: 'f',
    kind: 'proven dead, though the words can mean that power is back',
    lines: [
      'air handler leg one to ground one eighteen, thermostat is not calling',
      'service switch is off and locked',
      'control meter twenty four zero zero zero meter twenty four',
      'I hear the compressor',
    ],
    wants: 'a compressor that is heard tells of the control circuit too',
  },
  {
    rule: 'g',
    kind: 'proven dead, though there is live evidence',
    lines: [
      'leg one to ground one eighteen, thermostat is not calling',
      'outdoor disconnect is pulled and locked',
      'meter two forty zero zero zero zero zero zero meter two forty',
      'herm section zero volts d c',
      'meter two forty zero zero one eighteen meter two forty',
    ],
    wants: 'a proof that reads voltage ends proven dead at once',
  },
  {
    rule: 'c',
    kind: 'proven dead, though its proof was not begun in order',
    lines: ['service switch is off and locked', 'control meter twenty four zero zero zero meter twenty four'],
    wants: 'call off, open, lock, then the meter',
  },
  {
    rule: 'e',
    kind: 'proof lapsed',
    lines: [
      'service switch is off and locked',
      'air handler meter one eighteen zero zero zero meter one eighteen',
      '@sleep 40',
      'outdoor fan is turning',
    ],
    wants: 'clocks apart are told of aloud, however the words were taken',
  },
  {
    rule: 'c',
    kind: 'proven dead, though not every pair was read',
    lines: [
      ...UNIT_DEAD.slice(0, 3),
      'meter two forty zero zero zero meter two forty',
      'herm section zero volts d c',
      'fan section zero volts d c',
    ],
    wants: 'L1, L2 and T1, T2, each to ground and to each other: six values, not three',
  },
  {
    rule: 'c',
    kind: 'proven dead, though not every pair was read',
    lines: [
      ...UNIT_DEAD.slice(0, 3),
      'meter two forty leg one zero leg one zero leg one zero meter two forty',
      'herm section zero volts d c',
      'fan section zero volts d c',
    ],
    wants: 'one value counts once, for the pair that was named',
  },
  {
    rule: 'd',
    kind: 'proven dead, though its proof took longer than 10 minutes',
    lines: [
      ...UNIT_DEAD.slice(0, 3),
      'meter proves two forty',
      'leg one to ground zero volts',
      'leg two to ground zero volts',
      'leg one to leg two zero volts',
      '@wait 11',
      'meter proves two forty',
      'herm section zero volts d c',
      'fan section zero volts d c',
    ],
    wants: 'half a proof is too old after 10 minutes and starts again',
  },
  {
    rule: 'c',
    kind: 'proven dead, though its ground never read a full leg',
    lines: [
      'thermostat is not calling',
      'service switch is off and locked',
      'control meter twenty four zero zero zero meter twenty four',
    ],
    wants: 'the ground of the proof has read a full leg, there, before isolation',
  },
  {
    rule: 'n',
    kind: 'proven dead, though a charged section is not read',
    lines: ['@unit hard-start', ...UNIT_DEAD],
    wants: 'a start capacitor is a section of its own',
  },
  {
    rule: 'n',
    kind: 'proven dead, though a charged section is not read',
    lines: [...UNIT_DEAD, 'correction zero'],
    wants: 'a corrected section is read again',
  },
  {
    rule: 'g',
    kind: 'voltage within a proof',
    lines: ['outdoor disconnect is pulled and locked', 'meter two forty zero zero one eighteen meter two forty'],
    wants: 'hands off, voltage present, whatever else the proof lacks',
  },
  {
    rule: 'h',
    kind: 'd.c. of what is live',
    lines: ['fan section zero volts d c'],
    wants: 'd.c. from a zone that is live or unknown is asked, not taken',
  },
];
