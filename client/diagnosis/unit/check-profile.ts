import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { DiagnosisError } from '../errors.ts';
import { SATURATION_EQUATIONS } from '../refrigerant/saturation-equations.ts';

/** Widest nameplate values of a single-phase split unit on 208 or 240 V, as far as common practice goes. */
const LIMITS: readonly (readonly [string, (p: UnitProfile) => number | undefined, number, number])[] = [
  ['supply volts', (p) => p.supply?.nominal, 200, 250],
  ['herm section microfarads', (p) => p.capacitor?.herm, 5, 150],
  ['fan section microfarads', (p) => p.capacitor?.fan, 1, 40],
  ['blower capacitor microfarads', (p) => p.blowerCapacitor, 1, 60],
  ['rated load amps', (p) => p.compressor?.rla, 2, 60],
  ['locked rotor amps', (p) => p.compressor?.lra, 8, 400],
  ['fan full load amps', (p) => p.fanMotor?.fla, 0.1, 10],
  ['tons', (p) => p.tons, 0.5, 10],
  ['transformer tap volts', (p) => p.transformerTap, 100, 250],
  ['plate subcooling', (p) => p.plateSubcooling, 0, 30],
  ['feet above the sea', (p) => p.altitudeFeet, -1500, 15_000],
];

const WORDS: readonly (readonly [string, (p: UnitProfile) => unknown, readonly unknown[]])[] = [
  ['contactor poles', (p) => p.contactorPoles, [1, 2]],
  ['metering', (p) => p.metering, ['fixed-orifice', 'thermostatic-valve']],
  ['refrigerant', (p) => p.refrigerant, Object.keys(SATURATION_EQUATIONS)],
  ['float switch', (p) => p.floatSwitch, ['breaks-R', 'breaks-Y', 'none']],
  ['crankcase heater', (p) => p.crankcaseHeater, [true, false]],
  ['heat pump', (p) => p.heatPump, [true, false]],
  ['inverter-driven', (p) => p.inverterDriven, [true, false]],
  ['fused disconnect', (p) => p.fusedDisconnect, [true, false]],
  ['pressure switches', (p) => p.pressureSwitches, [true, false]],
  ['blower drive', (p) => p.blowerDrive, ['capacitor', 'electronic']],
  ['two stage', (p) => p.twoStage, [true, false]],
  ['hard start', (p) => p.hardStart, [true, false]],
];

/** Every field that a profile may have, with what must stand in those that hold more than one value. */
const FIELDS: Readonly<Record<keyof UnitProfile, readonly string[] | 'value'>> = {
  id: 'value',
  model: 'value',
  serial: 'value',
  made: 'value',
  supply: ['nominal'],
  contactorPoles: 'value',
  capacitor: ['herm', 'fan'],
  compressor: ['rla', 'lra'],
  fanMotor: ['fla'],
  blowerCapacitor: 'value',
  blowerDrive: 'value',
  crankcaseHeater: 'value',
  metering: 'value',
  refrigerant: 'value',
  heatPump: 'value',
  inverterDriven: 'value',
  twoStage: 'value',
  tons: 'value',
  fusedDisconnect: 'value',
  floatSwitch: 'value',
  pressureSwitches: 'value',
  hardStart: 'value',
  transformerTap: 'value',
  plateSubcooling: 'value',
  altitudeFeet: 'value',
};

/** A misspelt field would be drawn as if the plate did not say it: it is refused. */
function checkFields(profile: UnitProfile): void {
  if (typeof profile.id !== 'string' || profile.id === '') throw new DiagnosisError('bad-profile', 'no id');
  for (const [field, value] of Object.entries(profile)) {
    if (!Object.hasOwn(FIELDS, field))
      throw new DiagnosisError('bad-profile', `"${field}" is no field of a unit profile`);
    const inside = FIELDS[field as keyof UnitProfile];
    if (inside === 'value' || value === undefined) continue;
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      throw new DiagnosisError('bad-profile', `${field} is ${JSON.stringify(value)}, not { ${inside.join(', ')} }`);
    const given = Object.keys(value);
    const wrong = given.find((name) => !inside.includes(name)) ?? inside.find((name) => !given.includes(name));
    if (wrong !== undefined)
      throw new DiagnosisError(
        'bad-profile',
        `${field} holds ${given.join(', ') || 'nothing'}, not ${inside.join(', ')}`,
      );
  }
}

/**
 * Holds a profile against what a nameplate can say. Values that are left out are fine: they are drawn.
 * Errors: `bad-profile` names the value in plain words; `unknown-refrigerant`; `unit-not-covered` for inverter-driven units.
 */
export function checkProfile(profile: UnitProfile): void {
  if (typeof profile !== 'object' || profile === null || Array.isArray(profile))
    throw new DiagnosisError('bad-profile', 'not an object');
  checkFields(profile);
  for (const field of ['model', 'serial'] as const)
    if (profile[field] !== undefined && typeof profile[field] !== 'string')
      throw new DiagnosisError('bad-profile', `${field} is ${JSON.stringify(profile[field])}, not text`);
  if (profile.inverterDriven === true) throw new DiagnosisError('unit-not-covered', 'inverter-driven');
  for (const [name, get, low, high] of LIMITS) {
    const value = get(profile);
    if (value === undefined) continue;
    if (!(typeof value === 'number' && value >= low && value <= high)) {
      throw new DiagnosisError('bad-profile', `${name} is ${value}, outside ${low} to ${high}`);
    }
  }
  for (const [name, get, words] of WORDS) {
    const value = get(profile);
    if (value === undefined || words.includes(value)) continue;
    if (name === 'refrigerant') throw new DiagnosisError('unknown-refrigerant', String(value));
    throw new DiagnosisError('bad-profile', `${name} is ${String(value)}, not one of ${words.join(', ')}`);
  }
  const { compressor } = profile;
  if (compressor && !(compressor.lra > 2 * compressor.rla)) {
    throw new DiagnosisError(
      'bad-profile',
      `locked rotor amps ${compressor.lra}, not above twice the rated load amps ${compressor.rla}`,
    );
  }
}
