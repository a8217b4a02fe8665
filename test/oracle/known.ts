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
      'control meter twenty four zero meter twenty four',
      'thermostat is calling',
    ],
    wants: 'a call with the control circuit proven dead ends its proof: something feeds it',
  },
  {
    rule: 'f',
    kind: 'proven dead, though the words can mean that power is back',
    lines: [
      'air handler leg one to ground one eighteen, thermostat is not calling',
      'service switch is off and locked',
      'control meter twenty four zero meter twenty four',
      'I hear the compressor',
    ],
    wants: 'a compressor that is heard tells of the control circuit too',
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
