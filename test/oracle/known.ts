import type { Letter } from './facts.ts';

/** A disagreement that stands open: the paper's rule, what shows it in the fewest lines, and what the paper wants. */
export interface KnownDisagreement {
  readonly rule: Letter;
  readonly kind: string;
  readonly lines: readonly string[];
  readonly wants: string;
}

const LINE_SIDE_DEAD = [
  'leg one to ground one eighteen',
  'panel breaker is off and locked',
  'line side meter two forty zero zero zero meter two forty',
] as const;

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
    rule: 'f',
    kind: 'proven dead, though the words can mean that power is back',
    lines: [...LINE_SIDE_DEAD, 'power is back on'],
    wants: 'the proof of every zone that the words can touch ends at once, though the sentence was not understood',
  },
  {
    rule: 'f',
    kind: 'power back where it was proven dead',
    lines: [...LINE_SIDE_DEAD, 'power is back on'],
    wants: 'a warning in the same turn, before any question',
  },
  {
    rule: 'f',
    kind: 'proven dead, though its power or lock came back',
    lines: [...LINE_SIDE_DEAD, 'outdoor disconnect is pulled and locked, power is back on, the breaker is tripped'],
    wants: 'a switch that is only asked about ends the proof before the question',
  },
  {
    rule: 'f',
    kind: 'proven dead, though somebody is hurt',
    lines: [...LINE_SIDE_DEAD, 'I got a shock'],
    wants: 'every proof ends when somebody is hurt',
  },
  {
    rule: 'g',
    kind: 'proven dead, though there is live evidence',
    lines: [...UNIT_DEAD, 'lit the torch, fan amps point nine'],
    wants: 'live evidence ends the proof before it is asked about',
  },
  {
    rule: 'f',
    kind: 'proven dead, though a part runs',
    lines: [...LINE_SIDE_DEAD, 'compressor is running'],
    wants: 'what runs outdoors is fed through the line side: its proof ends too',
  },
  {
    rule: 'f',
    kind: 'proven dead, though the supply was restored',
    lines: [...LINE_SIDE_DEAD, 'the power company restored the power'],
    wants: 'a restored supply ends the proof of what it reaches',
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
    kind: 'proven dead, though its proof was not begun in order',
    lines: [
      'service switch is off and locked',
      'lock is off',
      'control meter twenty four zero zero zero meter twenty four',
    ],
    wants: 'call off, open, locked, and only then the meter; a lock taken off is off',
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
    rule: 'c',
    kind: 'proven dead, though a part of the proof was taken back',
    lines: [...LINE_SIDE_DEAD, 'take that back'],
    wants: '"take that back" behind a proof takes the proof back, not an older reading',
  },
  {
    rule: 'c',
    kind: 'proven dead, though a pair of the proof was corrected',
    lines: [...LINE_SIDE_DEAD, 'correction zero'],
    wants: 'a corrected value reopens its pair',
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
    rule: 'e',
    kind: 'proven dead, though the clocks went apart',
    lines: [...LINE_SIDE_DEAD, '@sleep 40', 'what next'],
    wants: 'wall and monotonic clock apart by more than 2 minutes: the proof lapses',
  },
  {
    rule: 'e',
    kind: 'proven dead, though the clock went back',
    lines: [...LINE_SIDE_DEAD, '@clock -5', 'what next'],
    wants: 'the wall clock went back: the proof lapses',
  },
  {
    rule: 'e',
    kind: 'proven dead, though there is a gap in the record',
    lines: [...LINE_SIDE_DEAD, '@away 5'],
    wants: 'nobody and no clock of the visit was there for more than 2 minutes: the proof lapses',
  },
  {
    rule: 'e',
    kind: 'proof lapsed',
    lines: [...LINE_SIDE_DEAD, '@clock 5', 'thermostat is not calling'],
    wants: 'the proof lapses aloud',
  },
  {
    rule: 'p',
    kind: 'proven dead, though a trainee alone proves nothing',
    lines: ['@trainee', ...LINE_SIDE_DEAD],
    wants: 'a proof that a trainee volunteers waits for the supervisor',
  },
  {
    rule: 'g',
    kind: 'voltage where it was reported off',
    lines: [
      'outdoor disconnect is pulled and locked',
      'reset the breaker',
      'leg one to leg two zero volts',
      'correction one eighteen',
    ],
    wants: 'hands off, voltage present; a breaker closed above a locked disconnect leaves the load side reported off',
  },
  {
    rule: 'g',
    kind: 'voltage within a proof',
    lines: ['outdoor disconnect is pulled and locked', 'meter two forty zero zero one eighteen meter two forty'],
    wants: 'hands off, voltage present, whatever else the proof lacks',
  },
  {
    rule: 'a',
    kind: 'ohms in a zone not proven',
    lines: [...LINE_SIDE_DEAD, 'fuse one line end to fuse one load end open'],
    wants: 'ohms across two zones want both of them proven dead',
  },
  {
    rule: 'a',
    kind: 'terminal cover off in a zone not proven',
    lines: ['the terminal cover is off'],
    wants: '"Outdoor unit: not proven dead."',
  },
  {
    rule: 'a',
    kind: 'wire moved in a zone not proven',
    lines: ['lifted the red wire from T one'],
    wants: '"Outdoor unit: not proven dead."',
  },
  {
    rule: 'a',
    kind: 'jumper in a zone not proven',
    lines: ['put a jumper across leg one and T one'],
    wants: '"Outdoor unit: not proven dead."',
  },
  {
    rule: 'a',
    kind: 'part out in a zone not proven',
    lines: ['took the contactor out'],
    wants: '"Outdoor unit: not proven dead."',
  },
  {
    rule: 'a',
    kind: 'part fitted in a zone not proven',
    lines: ['fitted a forty five over five dual capacitor four forty volt'],
    wants: '"Outdoor unit: not proven dead."',
  },
  {
    rule: 'r',
    kind: 'contactor pressed by hand',
    lines: ['pressed the contactor by hand'],
    wants: 'warned when told of',
  },
  {
    rule: 'h',
    kind: 'd.c. of what is live',
    lines: ['fan section zero volts d c'],
    wants: 'd.c. from a zone that is live or unknown is asked, not taken',
  },
  {
    rule: 'j',
    kind: 'grounded winding',
    lines: [...UNIT_DEAD, 'compressor common to shell zero ohms'],
    wants: 'may vent at the terminals, stay clear, do not reset',
  },
  {
    rule: 'j',
    kind: 'power back on a grounded winding',
    lines: [...UNIT_DEAD, 'compressor common to shell zero ohms', 'the breaker is tripped', 'panel breaker is on'],
    wants: 'warned when power returns to a grounded winding',
  },
  {
    rule: 'j',
    kind: 'power back after a trip, windings not read',
    lines: ['the breaker is tripped', 'outdoor disconnect is back in'],
    wants: 'each winding to shell is read before power returns',
  },
  {
    rule: 'j',
    kind: 'a second reset',
    lines: ['the breaker is tripped', 'panel breaker is on', 'panel breaker is on'],
    wants: 'a second reset is warned of, a third too',
  },
  {
    rule: 'm',
    kind: 'flame on a charged line',
    lines: ['brazed the joint'],
    wants: 'a flame on a charged line is warned of whatever is in it',
  },
  {
    rule: 'm',
    kind: 'flammable refrigerant',
    lines: ['@unit flammable'],
    wants: 'a flammable refrigerant is said on arrival',
  },
  {
    rule: 'l',
    kind: 'run in vacuum',
    lines: ['vacuum four hundred microns', 'compressor is running'],
    wants: 'no start in vacuum',
  },
  {
    rule: 'l',
    kind: 'power with the refrigerant circuit not closed',
    lines: ['opened the system', 'outdoor disconnect is back in'],
    wants: 'power before the circuit is tested, evacuated and charged is warned of at once',
  },
  {
    rule: 'l',
    kind: 'call with the refrigerant circuit not closed',
    lines: ['opened the system', 'thermostat is calling'],
    wants: 'a call before that is warned of at once',
  },
  {
    rule: 'l',
    kind: 'run with the refrigerant circuit not closed',
    lines: ['opened the system', 'compressor is running'],
    wants: 'a run before that is warned of at once',
  },
  {
    rule: 'q',
    kind: 'power back with a cover off',
    lines: ['the terminal cover is off', 'outdoor disconnect is back in'],
    wants: 'said at that moment, not at close',
  },
  {
    rule: 'q',
    kind: 'power back with a jumper on',
    lines: ['put a jumper across leg one and T one', 'panel breaker is on'],
    wants: 'said at that moment, not at close',
  },
  {
    rule: 'q',
    kind: 'power back with a wire off',
    lines: ['lifted the red wire from T one', 'panel breaker is on'],
    wants: 'said at that moment, not at close',
  },
  {
    rule: 'q',
    kind: 'power back with a lock recorded',
    lines: ['outdoor disconnect is pulled and locked', 'panel breaker is on'],
    wants: 'said at that moment, not at close',
  },
  {
    rule: 'p',
    kind: 'live reading of a trainee alone',
    lines: ['@trainee', 'leg one to ground one eighteen'],
    wants: 'a live reading that a trainee volunteers waits for the supervisor',
  },
  {
    rule: 'r',
    kind: 'pressure switch bypassed',
    lines: ['jumped high switch side one to high switch side two'],
    wants: 'warned when told of',
  },
  {
    rule: 'o',
    kind: 'compressor on the bench',
    lines: ['compressor common to compressor run two ohms on the bench'],
    wants: 'a compressor does not come out on the bench: refused',
  },
  {
    rule: 'r',
    kind: 'hand on a hot shell',
    lines: ['compressor is too hot to touch'],
    wants: 'a hand near a hot shell in a live unit is warned of',
  },
];
