import type { RefrigerantId } from '../../../grammar/vocabulary/unit-profile.ts';
import { DiagnosisError } from '../errors.ts';
import { SATURATION_EQUATIONS, type SaturationEquation } from './saturation-equations.ts';

const PASCAL_PER_PSI = 6894.757293168361;

/** Bubble point (liquid, for subcooling) or dew point (vapour, for superheat). */
export type Phase = 'bubble' | 'dew';

const kelvin = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8;

function equation(fluid: RefrigerantId, phase: Phase): SaturationEquation {
  if (!Object.hasOwn(SATURATION_EQUATIONS, fluid)) throw new DiagnosisError('unknown-refrigerant', String(fluid));
  const found = SATURATION_EQUATIONS[fluid];
  return 'pure' in found ? found.pure : found[phase];
}

/** ln(p / p_r) and its slope with temperature. */
function logPressure(eq: SaturationEquation, temperature: number): number {
  const theta = 1 - temperature / eq.reducingTemperature;
  let sum = 0;
  for (let i = 0; i < eq.n.length; i += 1) sum += eq.n[i]! * theta ** eq.t[i]!;
  return (eq.reducingTemperature / temperature) * sum;
}

/**
 * Saturation pressure in psi absolute at a temperature in °F.
 * Errors: `unknown-refrigerant`; `saturation-out-of-range` outside the equation's limits (never extrapolated).
 */
export function saturationPressure(fluid: RefrigerantId, phase: Phase, fahrenheit: number): number {
  const eq = equation(fluid, phase);
  const t = kelvin(fahrenheit);
  if (!(t >= eq.lowestTemperature && t <= eq.highestTemperature)) {
    throw new DiagnosisError('saturation-out-of-range', `${fluid} at ${fahrenheit} °F`);
  }
  return (eq.reducingPressure * Math.exp(logPressure(eq, t))) / PASCAL_PER_PSI;
}

/**
 * Saturation temperature in °F at a pressure in psi absolute, by bisection on the published equation.
 * Errors as `saturationPressure`.
 */
export function saturationTemperature(fluid: RefrigerantId, phase: Phase, psiAbsolute: number): number {
  const eq = equation(fluid, phase);
  const target = Math.log((psiAbsolute * PASCAL_PER_PSI) / eq.reducingPressure);
  let low = Math.max(eq.lowestTemperature, 0.45 * eq.reducingTemperature);
  let high = eq.highestTemperature;
  const inside = psiAbsolute > 0 && target >= logPressure(eq, low) && target <= logPressure(eq, high);
  if (!inside) throw new DiagnosisError('saturation-out-of-range', `${fluid} at ${psiAbsolute} psia`);
  while (high - low > 1e-7) {
    const middle = (low + high) / 2;
    if (logPressure(eq, middle) < target) low = middle;
    else high = middle;
  }
  return 0.9 * (low + high) - 459.67;
}
