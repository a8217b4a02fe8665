import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Expected, NextTest, Shown, Suspect } from '../diagnosis.ts';
import { DiagnosisError } from '../errors.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { atmosphere, expectedFigure, figureOf, type Readings } from '../refrigerant/expected-figures.ts';
import { saturationPressure } from '../refrigerant/saturation.ts';
import type { Column, FaultTable, LookColumn } from '../table/fault-table.ts';
import { OPEN_OHMS, ohmsFromScale } from '../table/predict.ts';
import type { Residuals } from '../unit/unit.ts';

const UNITS: Readonly<Record<Exclude<NextTest['function'], 'look'>, UnitCode>> = {
  volts: 'V',
  amps: 'A',
  ohms: 'Ohm',
  microfarads: 'uF',
  temperature: '[degF]',
  pressure: '[psi]',
};

/** The middle one, each by its weight. */
function middle(values: ArrayLike<number>, weights: ArrayLike<number>): number {
  const order = Array.from(values, (_, at) => at).sort((a, b) => values[a]! - values[b]!);
  const half = order.reduce((sum, at) => sum + weights[at]!, 0) / 2;
  let below = 0;
  const at = order.find((one) => {
    below += weights[one]!;
    return below > half;
  });
  return values[at ?? order.at(-1)!]!;
}

/** What is known when a test is explained. */
export interface Known {
  /** Of each draw by the readings, as `weighParticles` gives it. */
  readonly weight: Float64Array;
  /** Latest number of each test. */
  readonly readings: Readings;
}

/** A residual back into the raw reading, under the conditions that were read, else usual ones. */
function rawFigure(table: FaultTable, figure: keyof Residuals, residual: number, readings: Readings): number {
  const { profile } = table;
  const at = (name: keyof Residuals) => {
    const expected = expectedFigure(name, readings, profile);
    return profile.metering === 'fixed-orifice' ? expected.fixed : expected.valve;
  };
  const value = at(figure) + residual;
  const gauge = (phase: 'bubble' | 'dew') =>
    saturationPressure(profile.refrigerant!, phase, Math.min(value, 150)) - atmosphere(profile.altitudeFeet ?? 0);
  switch (figure) {
    case 'evaporating':
      return gauge('dew');
    case 'standing':
    case 'condensing':
      return gauge('bubble');
    case 'superheat':
      return (figureOf('evaporating', readings, profile) ?? at('evaporating')) + value;
    case 'subcooling':
      return (figureOf('condensing', readings, profile) ?? at('condensing')) - value;
    case 'airDrop':
      return (readings.get('temperature-return-air') ?? 79) - value;
    case 'condenserRise':
      return (readings.get('temperature-outdoor-air') ?? 90) + value;
    case 'discharge':
      return value;
  }
}

/** Draws of a suspect in one column of the table, and how much each counts. */
interface Draws {
  readonly from: number;
  readonly weights: ArrayLike<number>;
}

/**
 * A fault that cannot move the test reads as the healthy unit does. By the readings some draws of a fault are likelier
 * than others: each counts by its weight, all alike where nothing was read.
 */
function drawsOf(table: FaultTable, start: Int32Array, fault: FaultId, weight: Float64Array | undefined): Draws {
  const own = table.faults.indexOf(fault);
  const isMoved = start[own]! >= 0;
  const f = isMoved ? own : table.healthy;
  const weights = isMoved ? weight?.subarray(table.first[f]!, table.first[f + 1]!) : undefined;
  const isWeighed = weights?.some((one) => one > 0) === true;
  const alike = new Float64Array(table.first[f + 1]! - table.first[f]!).fill(1);
  return { from: start[f]!, weights: isWeighed && weights !== undefined ? weights : alike };
}

/** The answer that most draws of a suspect give to a look. */
function likeliestAnswer(column: LookColumn, { from, weights }: Draws): number {
  const sums = Array.from({ length: column.answers }, (_, answer) => {
    let sum = 0;
    for (let d = 0; d < weights.length; d += 1)
      sum += weights[d]! * column.chance[(from + d) * column.answers + answer]!;
    return sum;
  });
  return sums.indexOf(Math.max(...sums));
}

/**
 * What each suspect would show at a test: the middle one of its draws, or the likeliest answer of a look.
 * Errors: `unknown-test`.
 *
 * @param known left out: before any reading
 */
export function explainTest(
  table: FaultTable,
  test: TestId,
  suspects: readonly Suspect[],
  known?: Known,
): readonly Expected[] {
  if (!Object.hasOwn(TEST_MODELS, test)) throw new DiagnosisError('unknown-test', test);
  const { measure, function: fn } = TEST_MODELS[test];
  const { column, start } = table.columns[table.tests.indexOf(test)] ?? {};
  if (!column || !start) return [];
  return suspects
    .filter(({ fault }) => fault !== 'something-else' && table.faults.includes(fault))
    .map(({ fault }) => ({ fault, ...shown(column, drawsOf(table, start, fault, known?.weight)) }));

  function shown(from: Column, draws: Draws): Shown {
    if (from.kind === 'number') {
      const mean = middle(from.mean.subarray(draws.from, draws.from + draws.weights.length), draws.weights);
      return { expected: toValue(mean), unit: UNITS[fn as keyof typeof UNITS] };
    }
    const answers = measure.kind === 'look' ? measure.answers : [];
    return { expected: answers[likeliestAnswer(from, draws)]!, unit: 'observation' };
  }

  function toValue(mean: number): Value {
    if (measure.kind === 'residual') return rawFigure(table, measure.figure, mean, known?.readings ?? new Map());
    if (fn !== 'ohms') return mean;
    const ohms = ohmsFromScale(mean);
    return ohms > OPEN_OHMS / 2 ? 'open' : ohms;
  }
}
