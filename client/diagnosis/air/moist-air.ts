import shared from 'psychrolib';
import { DiagnosisError } from '../errors.ts';

// The library keeps its unit system in the instance it exports: an instance of our own cannot be switched by others.
const psychrometrics = new (shared.constructor as new () => typeof shared)();
psychrometrics.SetUnitSystem(psychrometrics.IP);

/** A state of moist air. */
export interface MoistAir {
  /** °F */
  readonly dryBulb: number;
  /** Pounds of water for each pound of dry air. */
  readonly humidityRatio: number;
  /** 0…1 */
  readonly relativeHumidity: number;
  /** °F */
  readonly dewPoint: number;
  /** Btu for each pound of dry air. */
  readonly enthalpy: number;
  /** Cubic feet for each pound of dry air. */
  readonly volume: number;
}

/** psi absolute of the standard atmosphere at an altitude in feet. */
export function standardPressure(altitudeFeet: number): number {
  return psychrometrics.GetStandardAtmPressure(altitudeFeet);
}

/**
 * The state of air from dry and wet bulb, °F, at a pressure in psi absolute.
 * Errors: `bad-reading` when the wet bulb is the warmer one or a value is out of reason.
 * Source: psychrolib after ASHRAE Handbook Fundamentals 2017, chapter 1.
 */
export function moistAir(dryBulb: number, wetBulb: number, psia: number): MoistAir {
  const reasonable = dryBulb > -40 && dryBulb < 200 && wetBulb > -40 && wetBulb <= dryBulb && psia > 8 && psia < 16;
  if (!reasonable) throw new DiagnosisError('bad-reading', `dry bulb ${dryBulb}, wet bulb ${wetBulb}, ${psia} psia`);
  const humidityRatio = psychrometrics.GetHumRatioFromTWetBulb(dryBulb, wetBulb, psia);
  return {
    dryBulb,
    humidityRatio,
    relativeHumidity: psychrometrics.GetRelHumFromTWetBulb(dryBulb, wetBulb, psia),
    dewPoint: psychrometrics.GetTDewPointFromHumRatio(dryBulb, humidityRatio, psia),
    enthalpy: psychrometrics.GetMoistAirEnthalpy(dryBulb, humidityRatio),
    volume: psychrometrics.GetMoistAirVolume(dryBulb, humidityRatio, psia),
  };
}

/** Wet bulb, °F, from dry bulb and relative humidity (0…1). Errors: `bad-reading`. */
export function wetBulbFromHumidity(dryBulb: number, relativeHumidity: number, psia: number): number {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
    throw new DiagnosisError('bad-reading', `relative humidity ${relativeHumidity}`);
  }
  return psychrometrics.GetTWetBulbFromRelHum(dryBulb, relativeHumidity, psia);
}

/**
 * Heat taken from an air stream, Btu/h, with the density where the air is measured:
 * sensible 60·cfm/v·(0.240 + 0.444·W)·ΔT, total 60·cfm/v·Δh. `volume` is that of the air which the flow was read in.
 */
export function coolingCapacity(cfm: number, entering: MoistAir, leaving: MoistAir, volume = entering.volume) {
  const pounds = (60 * cfm) / volume;
  return {
    sensible: pounds * (0.24 + 0.444 * entering.humidityRatio) * (entering.dryBulb - leaving.dryBulb),
    total: pounds * (entering.enthalpy - leaving.enthalpy),
  };
}
