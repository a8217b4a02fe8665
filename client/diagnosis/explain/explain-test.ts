import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Diagnosis, NextTest, Suspect } from '../diagnosis.ts';
import { DiagnosisError } from '../errors.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { atmosphere, expectedFigure } from '../refrigerant/expected-figures.ts';
import { saturationPressure } from '../refrigerant/saturation.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { OPEN_OHMS, ohmsFromScale } from '../table/predict.ts';
import type { Residuals } from '../unit/unit.ts';

const UNITS: Readonly<Record<NextTest['function'], UnitCode | 'no-number'>> = {
  volts: 'V',
  amps: 'A',
  ohms: 'Ohm',
  microfarads: 'uF',
  temperature: '[degF]',
  pressure: '[psi]',
  look: 'no-number',
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

/**
 * The reading that each suspect would give: the middle one of its draws. Looks have no number and give none.
 * Errors: `unknown-test`.
 */
export function explainTest(
  table: FaultTable,
  test: TestId,
  suspects: readonly Suspect[],
): ReturnType<Diagnosis['explain']> {
  if (!Object.hasOwn(TEST_MODELS, test)) throw new DiagnosisError('unknown-test', test);
  const { measure, function: fn } = TEST_MODELS[test];
  const { column, start } = table.columns[table.tests.indexOf(test)] ?? {};
  const unit = UNITS[fn];
  if (column?.kind !== 'number' || !start || unit === 'no-number') return [];
  return suspects
    .filter(({ fault }) => fault !== 'something-else' && table.faults.includes(fault))
    .map(({ fault }) => {
      const own = table.faults.indexOf(fault);
      const f = start[own]! < 0 ? table.healthy : own;
      const draws = table.first[f + 1]! - table.first[f]!;
      const mean = middle(Array.from(column.mean.subarray(start[f]!, start[f]! + draws)));
      return { fault, expected: toValue(mean), unit };
    });

  function toValue(mean: number): Value {
    if (measure.kind === 'residual') return rawFigure(table, measure.figure, mean);
    if (fn !== 'ohms') return mean;
    const ohms = ohmsFromScale(mean);
    return ohms > OPEN_OHMS / 2 ? 'open' : ohms;
  }
}
