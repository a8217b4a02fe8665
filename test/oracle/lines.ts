/** What is typed in a walk, by what it is about. Lines that begin with `@` move the world. */

/** A proof as the paper wants it: reference read live, call off, locked, meter, six pairs, meter, sections. */
export const WHOLE_PROOF = [
  'leg one to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'meter two forty zero zero zero zero zero zero meter two forty',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;

/** The same with the pairs named one by one. */
export const PROOF_BY_POINTS = [
  'leg one to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'meter proves two forty',
  'leg one to ground zero volts',
  'leg two to ground zero volts',
  'leg one to leg two zero volts',
  'T one to ground zero volts',
  'T two to ground zero volts',
  'T one to T two zero volts',
  'meter proves two forty',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;

export const LINE_SIDE_PROOF = [
  'leg one to ground one eighteen',
  'panel breaker is off and locked',
  'line side meter two forty zero zero zero meter two forty',
] as const;

export const HANDLER_PROOF = [
  'air handler leg one to ground one eighteen',
  'service switch is off and locked',
  'air handler meter one eighteen zero zero zero meter one eighteen',
  'blower cap zero volts d c',
] as const;

export const CONTROL_PROOF = [
  'air handler leg one to ground one eighteen',
  'thermostat is not calling',
  'service switch is off and locked',
  'control meter twenty four zero meter twenty four',
] as const;

/** A tripped breaker, a grounded winding, and the breaker reset all the same. */
export const RESET_ON_GROUNDED = [
  ...WHOLE_PROOF,
  'the breaker is tripped',
  'compressor common to shell zero ohms',
  'panel breaker is on',
  'panel breaker is on',
] as const;

/** An opened refrigerant circuit in its order, and power behind it. */
export const CIRCUIT_CLOSED_AGAIN = [
  'recovered four pounds',
  'opened the system',
  'nitrogen three hundred psi',
  'vacuum four hundred microns',
  'added five pounds',
  'thermostat is calling',
  'outdoor disconnect is back in',
] as const;

export const PROOF_PARTS = [
  ...WHOLE_PROOF,
  ...PROOF_BY_POINTS,
  ...LINE_SIDE_PROOF,
  ...HANDLER_PROOF,
  ...CONTROL_PROOF,
  'meter two forty zero zero zero meter two forty',
  'meter two forty leg one zero leg one zero leg one zero meter two forty',
  'meter two forty zero zero one eighteen meter two forty',
  'outdoor disconnect is pulled',
  'zero',
  'zero volts',
  'yes',
  'live',
  'discharged the capacitor',
] as const;

export const POWER_BACK = [
  'power is back on',
  'it is live',
  "it's live",
  'lock is off',
  'outdoor disconnect lock is off',
  'I hear the compressor',
  'I got a shock',
  'my helper got shocked',
  'somebody flipped it',
  'somebody flipped the breaker',
  'compressor is running',
  'compressor hums',
  'outdoor fan is turning',
  'blower is running',
  'contactor is pulled in',
  'outdoor disconnect is back in',
  'panel breaker is on',
  'reset the breaker',
  'air handler breaker is on',
  'thermostat is calling',
  'found the breaker on',
  'the power company restored the power',
  'note power is back on',
  'compressor amps eleven',
  'fan amps point nine',
] as const;

export const VOLTAGE = [
  'leg one to ground one eighteen',
  'leg two to ground one eighteen',
  'leg one to leg two two forty',
  'T one to ground one fourteen',
  'T one to T two two forty',
  'line side one to ground one eighteen',
  'coil twenty four volts',
  'herm section forty one volts d c',
  'fan section zero volts d c',
  'herm volts three seventy one',
] as const;

export const WORK = [
  'lifted the red wire from T one',
  'landed the red wire on T one',
  'put a jumper across leg one and T one',
  'jumped high switch side one to high switch side two',
  'removed the jumper',
  'the terminal cover is off',
  'took the contactor out',
  'covers are on',
  'fitted a contactor',
  'fitted a forty five over five dual capacitor four forty volt',
  'fitted a hard start kit',
  'fitted a sixty amp breaker',
  'fitted a thirty amp fuse',
  'fitted a compressor',
  'fitted a filter drier',
  'nameplate max fuse thirty amps',
  'fan common to fan run twelve ohms',
  'compressor common to compressor run two ohms',
  'compressor common to shell zero ohms',
  'compressor common to shell open',
  'R to C at the air handler twelve ohms',
  'herm section forty four microfarads',
  'fan section one point one microfarads on the bench',
  'compressor common to compressor run two ohms on the bench',
  'fuse one line end to fuse one load end open',
  'the breaker is tripped',
  'pressed the contactor by hand',
  'compressor is too hot to touch',
  'repaired the leak',
  'brazed the joint',
  'lit the torch',
  'opened the system',
  'recovered four pounds',
  'nitrogen three hundred psi',
  'vacuum four hundred microns',
  'added five pounds',
  'nameplate refrigerant R thirty two',
] as const;

export const TAKEN_BACK = [
  'take that back',
  'correction one eighteen',
  'correction zero',
  'correction leg two to ground zero volts',
  'no',
] as const;

export const WORLD = [
  '@wait 3',
  '@wait 11',
  '@wait 31',
  '@reload',
  '@away 5',
  '@sleep 1',
  '@sleep 5',
  '@sleep 40',
  '@clock 5',
  '@clock -5',
  '@noise 3',
  '@supervisor',
] as const;
