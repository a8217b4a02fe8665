import type { Amps, Microfarads, Volts } from '../../../grammar/vocabulary/quantities.ts';
import type { RefrigerantId, UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

/** A unit profile with one nameplate field set. Fields that the profile has no place for leave it as it was. */
export function withNameplate(unit: UnitProfile, field: string, value: number | string): UnitProfile {
  if (typeof value === 'string')
    return field === 'refrigerant' ? { ...unit, refrigerant: value as RefrigerantId } : unit;
  const capacitor = unit.capacitor ?? { herm: 0 as Microfarads, fan: 0 as Microfarads };
  switch (field) {
    case 'supply-volts':
      return { ...unit, supply: { nominal: value as Volts } };
    case 'capacitor-herm':
      return { ...unit, capacitor: { ...capacitor, herm: value as Microfarads } };
    case 'capacitor-fan':
      return { ...unit, capacitor: { ...capacitor, fan: value as Microfarads } };
    case 'compressor-rla':
      return { ...unit, compressor: { lra: 0 as Amps, ...unit.compressor, rla: value as Amps } };
    case 'compressor-lra':
      return { ...unit, compressor: { rla: 0 as Amps, ...unit.compressor, lra: value as Amps } };
    case 'fan-fla':
      return { ...unit, fanMotor: { fla: value as Amps } };
    case 'tons':
      return { ...unit, tons: value };
    default:
      return unit;
  }
}
