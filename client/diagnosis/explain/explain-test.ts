import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Expected, NextTest, Shown, Suspect } from '../diagnosis.ts';
import { DiagnosisError } from '../errors.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { atmosphere, expectedFigure } from '../refrigerant/expected-figures.ts';
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

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}

/** A residual back into the raw reading, under usual conditions. */
function rawFigure(table: FaultTable, figure: keyof Residuals, residual: number): number {
  const { profile } = table;
  const at = (name: keyof Residuals) => {
    const expected = expectedFigure(name, new Map(), profile);
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
      return at('evaporating') + value;
    case 'subcooling':
      return at('condensing') - value;
    case 'airDrop':
      return 79 - value;
    case 'condenserRise':
      return 90 + value;
    case 'discharge':
      return value;
  }
}

/** Middle of what a suspect's draws give; a fault that cannot move the test reads as the healthy unit does. */
function drawsOf(table: FaultTable, start: Int32Array, fault: FaultId): readonly [from: number, count: number] {
  const own = table.faults.indexOf(fault);
  const f = start[own]! < 0 ? table.healthy : own;
  return [start[f]!, table.first[f + 1]! - table.first[f]!];
}

/** The answer that most draws of a suspect give to a look. */
function likeliestAnswer(column: LookColumn, [from, count]: readonly [number, number]): number {
  const sums = Array.from({ length: column.answers }, (_, answer) => {
    let sum = 0;
    for (let d = from; d < from + count; d += 1) sum += column.chance[d * column.answers + answer]!;
    return sum;
  });
  return sums.indexOf(Math.max(...sums));
}

/**
 * What each suspect would show at a test: the middle one of its draws, or the likeliest answer of a look.
 * Errors: `unknown-test`.
 */
export function explainTest(table: FaultTable, test: TestId, suspects: readonly Suspect[]): readonly Expected[] {
  if (!Object.hasOwn(TEST_MODELS, test)) throw new DiagnosisError('unknown-test', test);
  const { measure, function: fn } = TEST_MODELS[test];
  const { column, start } = table.columns[table.tests.indexOf(test)] ?? {};
  if (!column || !start) return [];
  return suspects
    .filter(({ fault }) => fault !== 'something-else' && table.faults.includes(fault))
    .map(({ fault }) => ({ fault, ...shown(column, drawsOf(table, start, fault)) }));

  function shown(from: Column, draws: readonly [number, number]): Shown {
    if (from.kind === 'number') {
      const mean = middle(Array.from(from.mean.subarray(draws[0], draws[0] + draws[1])));
      return { expected: toValue(mean), unit: UNITS[fn as keyof typeof UNITS] };
    }
    const answers = measure.kind === 'look' ? measure.answers : [];
    return { expected: answers[likeliestAnswer(from, draws)]!, unit: 'observation' };
  }

  function toValue(mean: number): Value {
    if (measure.kind === 'residual') return rawFigure(table, measure.figure, mean);
    if (fn !== 'ohms') return mean;
    const ohms = ohmsFromScale(mean);
    return ohms > OPEN_OHMS / 2 ? 'open' : ohms;
  }
}
