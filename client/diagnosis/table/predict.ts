import type { Settled } from '../circuit/settle.ts';
import { nodeNumber } from '../circuit/topology.ts';
import type { Measure, Moment } from '../measuring/test-model.ts';
import { type Predicted, predictResidual } from '../refrigerant/predicted-residuals.ts';

/** Input of a common digital voltmeter, ohms. */
export const METER_OHMS = 10e6;
/** An ohmmeter shows "open" from here on. */
export const OPEN_OHMS = 4e7;

/** Ohms are compared by their logarithm, with a third of an ohm for leads and contact. */
export function ohmsScale(ohms: number): number {
  return Math.log(Math.min(ohms, OPEN_OHMS) + 0.3);
}

export function ohmsFromScale(scaled: number): number {
  return Math.max(0, Math.exp(scaled) - 0.3);
}

/** What a 10 MΩ meter shows, and how far the source is a ghost: s = |Zth| / (|Zth| + 1 MΩ). */
export function meterVolts(
  settled: Settled,
  from: number,
  to: number,
  meterOhms = METER_OHMS,
): { volts: number; ghost: number } {
  const open = settled.voltsBetween(from, to);
  const [re, im] = settled.solver.thevenin(from, to);
  const z = Math.hypot(re, im);
  return { volts: (open * meterOhms) / Math.hypot(meterOhms + re, im), ghost: z / (z + 1e6) };
}

/** Share of a value by which our circuit may differ from the true one, and the least that matters. */
const MISMATCH = { volts: 0.07, amps: 0.2, ohms: 0.3, microfarads: 0.03 } as const;

function predictVolts(settled: Settled, from: number, to: number): Predicted {
  const { volts, ghost } = meterVolts(settled, from, to);
  const least = volts > 40 ? 1.5 : 0.8;
  const spread = Math.hypot(0.01 * volts + 0.3, 0.5 * ghost * volts, MISMATCH.volts * volts, least + 8 * ghost);
  return { mean: volts, spread };
}

const predictAmps = (amps: number): Predicted => ({
  mean: amps,
  spread: Math.hypot(0.02 * amps + 0.05, MISMATCH.amps * amps, 0.05),
});

/** What differs by less than this share of its spread is the same. */
const TELLS = 0.5;

/** A unit that trips and starts again is met either way. */
function withBefore(settled: Settled, read: (at: Settled) => Predicted): Predicted {
  const found = read(settled);
  if (!settled.before) return found;
  const before = read(settled.before);
  return Math.abs(before.mean - found.mean) < TELLS * found.spread ? found : { ...found, before };
}

/** Mean and standard deviation of a reading under a drawn unit, on the scale of its function (ohms: logarithm). */
export function predict(measure: Measure, moment: Moment): Predicted {
  switch (measure.kind) {
    case 'volts':
      return withBefore(moment[measure.when], (at) =>
        predictVolts(at, nodeNumber(measure.from), nodeNumber(measure.to)),
      );
    case 'volts-float':
      return withBefore(moment[measure.when], (at) =>
        predictVolts(at, nodeNumber(measure.from(moment.unit)), nodeNumber(measure.to(moment.unit))),
      );
    case 'amps':
      return withBefore(moment[measure.when], (at) => predictAmps(at.amps(measure.branch)));
    case 'ohms': {
      const [ohms] = moment.dead.solver.thevenin(nodeNumber(measure.from), nodeNumber(measure.to));
      return predictOhms(ohms);
    }
    case 'ohms-part':
      return predictOhms(measure.of(moment));
    case 'microfarads': {
      const value = measure.of(moment.unit);
      return { mean: value, spread: Math.hypot(0.02 * value + 0.05, MISMATCH.microfarads * value, 0.1) };
    }
    case 'residual':
      return predictResidual(moment, measure.figure);
    case 'look':
    case 'condition':
      return { mean: Number.NaN, spread: Number.NaN };
  }
}

function predictOhms(ohms: number): Predicted {
  const mean = ohmsScale(ohms);
  const noise = ohms >= OPEN_OHMS ? 0.6 : (0.01 * ohms + 0.2) / (ohms + 0.3);
  return { mean, spread: Math.hypot(noise, MISMATCH.ohms) };
}
