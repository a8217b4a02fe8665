import type { RefrigerantId } from '../../../grammar/vocabulary/unit-profile.ts';
import { atmosphere } from './expected-figures.ts';
import { saturationTemperature } from './saturation.ts';

/** A figure with its right to be judged: outside its conditions there is none. */
export type Checked =
  | { readonly valid: true; readonly value: number }
  | { readonly valid: false; readonly reason: Refusal };

export type Refusal = 'running-too-short' | 'outdoors-too-cold' | 'outside-the-chart' | 'no-valid-test' | 'not-running';

/** What holds while the figures are read. */
export interface RunningConditions {
  readonly running: boolean;
  readonly minutesRunning: number;
  /** °F */
  readonly outdoor: number;
}

/** Altitude in feet, for the local pressure; sea level without it. */
export interface Locality {
  readonly altitudeFeet?: number;
}

const local = (place: Locality) => atmosphere(place.altitudeFeet ?? 0);

/** Superheat, °F: line temperature less the dew point at the suction pressure (psi gauge). Errors as saturation. */
export function superheat(fluid: RefrigerantId, psiGauge: number, line: number, place: Locality = {}): number {
  return line - saturationTemperature(fluid, 'dew', psiGauge + local(place));
}

/** Subcooling, °F: bubble point at the liquid pressure (psi gauge) less the line temperature. Errors as saturation. */
export function subcooling(fluid: RefrigerantId, psiGauge: number, line: number, place: Locality = {}): number {
  return saturationTemperature(fluid, 'bubble', psiGauge + local(place)) - line;
}

/** A charge is judged after 15 minutes and above 55 °F outdoors (CEC RA3.2.2, 2008 appendices). */
const LEAST_MINUTES = 15;
const LEAST_OUTDOOR = 55;

/** Why a charge or capacity verdict must not be given now, or undefined. */
export function refusal(now: RunningConditions): Refusal | undefined {
  if (!now.running) return 'not-running';
  if (now.minutesRunning < LEAST_MINUTES) return 'running-too-short';
  return now.outdoor < LEAST_OUTDOOR ? 'outdoors-too-cold' : undefined;
}

/**
 * Target superheat of a fixed orifice, °F: (3·WB − 80 − DB)/2 from indoor wet bulb and outdoor dry bulb (rule of
 * thumb, no standard). Valid for WB 56–72 °F and DB 65–105 °F; a result below 5 °F is no valid test.
 */
export function targetSuperheat(wetBulb: number, outdoor: number): Checked {
  const inside = wetBulb >= 56 && wetBulb <= 72 && outdoor >= 65 && outdoor <= 105;
  if (!inside) return { valid: false, reason: 'outside-the-chart' };
  const value = (3 * wetBulb - 80 - outdoor) / 2;
  return value < 5 ? { valid: false, reason: 'no-valid-test' } : { valid: true, value };
}
