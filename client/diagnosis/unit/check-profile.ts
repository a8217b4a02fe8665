import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { DiagnosisError } from '../errors.ts';
import { SATURATION_EQUATIONS } from '../refrigerant/saturation-equations.ts';

/** Widest nameplate values of a single-phase split unit on 208 or 240 V, as far as common practice goes. */
const LIMITS: readonly (readonly [string, (p: UnitProfile) => number | undefined, number, number])[] = [
  ['supply.nominal', (p) => p.supply?.nominal, 200, 250],
  ['capacitor.herm', (p) => p.capacitor?.herm, 5, 150],
  ['capacitor.fan', (p) => p.capacitor?.fan, 1, 40],
  ['blowerCapacitor', (p) => p.blowerCapacitor, 1, 60],
  ['compressor.rla', (p) => p.compressor?.rla, 2, 60],
  ['compressor.lra', (p) => p.compressor?.lra, 8, 400],
  ['fanMotor.fla', (p) => p.fanMotor?.fla, 0.1, 10],
  ['tons', (p) => p.tons, 0.5, 10],
  ['transformerTap', (p) => p.transformerTap, 100, 250],
  ['plateSubcooling', (p) => p.plateSubcooling, 0, 30],
  ['altitudeFeet', (p) => p.altitudeFeet, -1500, 15_000],
];

const WORDS: readonly (readonly [string, (p: UnitProfile) => unknown, readonly unknown[]])[] = [
  ['contactorPoles', (p) => p.contactorPoles, [1, 2]],
  ['metering', (p) => p.metering, ['fixed-orifice', 'thermostatic-valve']],
  ['refrigerant', (p) => p.refrigerant, Object.keys(SATURATION_EQUATIONS)],
  ['floatSwitch', (p) => p.floatSwitch, ['breaks-R', 'breaks-Y', 'none']],
  ['crankcaseHeater', (p) => p.crankcaseHeater, [true, false]],
  ['heatPump', (p) => p.heatPump, [true, false]],
  ['fusedDisconnect', (p) => p.fusedDisconnect, [true, false]],
  ['pressureSwitches', (p) => p.pressureSwitches, [true, false]],
  ['blowerDrive', (p) => p.blowerDrive, ['capacitor', 'electronic']],
  ['hardStart', (p) => p.hardStart, [true, false]],
];

/**
 * Holds a profile against what a nameplate can say. Values that are left out are fine: they are drawn.
 * Errors: `bad-profile` names the value; `unknown-refrigerant`; `unit-not-covered` for inverter-driven units.
 */
export function checkProfile(profile: UnitProfile): void {
  if (typeof profile !== 'object' || profile === null) throw new DiagnosisError('bad-profile', 'not an object');
  if (profile.inverterDriven) throw new DiagnosisError('unit-not-covered', 'inverter-driven');
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
      `compressor.lra ${compressor.lra} is not above twice rla ${compressor.rla}`,
    );
  }
}
