import { DiagnosisError } from '../errors.ts';

function positive(name: string, value: number): number {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) throw new DiagnosisError('bad-reading', `${name} ${value}`);
  return value;
}

/**
 * Microfarads of a capacitor under load: 10⁶·I ÷ (2π·f·V), from the amps of its lead and the volts across it
 * (2652.6·I/V at 60 Hz). Errors: `bad-reading`.
 */
export function capacitanceUnderLoad(amps: number, volts: number, hertz: 50 | 60 = 60): number {
  return (1e6 * positive('amps', amps)) / (2 * Math.PI * hertz * positive('volts', volts));
}

/** A verdict that keeps the meter's own error in mind. */
export type Verdict = 'fits' | 'marginal' | 'does not fit';

/**
 * A value against a band, with a guard as wide as the meter's error on either side of each limit: within it the value
 * is marginal.
 */
export function judgeWithGuard(value: number, low: number, high: number, meterError: number): Verdict {
  if (value < low - meterError || value > high + meterError) return 'does not fit';
  return value < low + meterError || value > high - meterError ? 'marginal' : 'fits';
}

/** Deviation of a measured from a rated value, per cent. Errors: `bad-reading`. */
export function percentOfRating(measured: number, rated: number): number {
  return (100 * (measured - positive('rating', rated))) / rated;
}

/**
 * Whether R–S is the sum of C–R and C–S, within the larger of 0.3 Ω and 5 % (common practice: leads zeroed, overload
 * closed). Ohms in, the difference out. Errors: `bad-reading`.
 */
export function windingSum(runToCommon: number, startToCommon: number, runToStart: number) {
  const sum = positive('C–R', runToCommon) + positive('C–S', startToCommon);
  const difference = positive('R–S', runToStart) - sum;
  return { difference, fits: Math.abs(difference) <= Math.max(0.3, 0.05 * sum) };
}

/**
 * Voltage unbalance of three phases, per cent: 100 × largest deviation from the mean ÷ mean (NEMA MG 1-14.36).
 * Two legs of a single phase have none. Errors: `bad-reading` for any other count.
 */
export function voltageUnbalance(lineVolts: readonly number[]): number {
  if (lineVolts.length !== 3)
    throw new DiagnosisError('bad-reading', `${lineVolts.length} line voltages, three-phase only`);
  const mean = lineVolts.reduce((sum, v) => sum + positive('volts', v), 0) / 3;
  return (100 * Math.max(...lineVolts.map((v) => Math.abs(v - mean)))) / mean;
}

/**
 * A closed contact under load: share of the line voltage it drops, per cent, and the watts lost in it. Above 3 % is
 * replaced (RSES, "Electricity for HVACR Technicians"); healthy ones drop near nothing. Errors: `bad-reading`.
 */
export function contactDrop(dropVolts: number, lineVolts: number, amps: number) {
  if (!(dropVolts >= 0)) throw new DiagnosisError('bad-reading', `drop ${dropVolts}`);
  const percent = (100 * dropVolts) / positive('line volts', lineVolts);
  return { percent, watts: dropVolts * positive('amps', amps), replace: percent > 3 };
}
