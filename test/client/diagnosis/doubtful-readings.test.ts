import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../client/diagnosis/diagnosis.ts';
import { diagnosisFrom } from '../../../client/diagnosis/make-diagnosis.ts';
import { worthOfReadingAgain } from '../../../client/diagnosis/planner/when-to-stop.ts';
import { saturationPressure } from '../../../client/diagnosis/refrigerant/saturation.ts';
import { buildTable } from '../../../client/diagnosis/table/build-table.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';

const table = buildTable({ id: 'x', refrigerant: 'R-410A', metering: 'thermostatic-valve' });
const diagnosis = diagnosisFrom(table);
const RUNNING = { power: 'on', call: 'cooling', bench: false } as const;

function visit() {
  const evidence: Evidence[] = [];
  const add = (quantity: QuantityId, at: PointId, value: number, unit: UnitCode) => {
    evidence.push({ seq: evidence.length + 1, kind: 'reading', quantity, at: [at], value, unit, ...RUNNING });
  };
  return {
    evidence,
    degrees: (at: PointId, value: number) => add('temperature', at, value, '[degF]'),
    /** Gauge pressure at sea level whose saturation temperature is this. */
    gauge: (at: PointId, phase: 'bubble' | 'dew', saturated: number) =>
      add('pressure', at, saturationPressure('R-410A', phase, saturated) - 14.696, '[psi]'),
    see: (observation: ObservationId) => {
      evidence.push({ seq: evidence.length + 1, kind: 'observation', observation, ...RUNNING });
    },
  };
}

const chance = (evidence: readonly Evidence[], fault: string) =>
  diagnosis.assess(evidence, []).suspects.find((s) => s.fault === fault)!.probability;

describe('a gauge that was misread', () => {
  function dirtyCoil(saturated: number) {
    const told = visit();
    for (const seen of ['fan-turning', 'compressor-running', 'outdoor-coil-dirty'] as const) told.see(seen);
    told.degrees('outdoor-air', 80);
    told.degrees('condenser-air-out', 104);
    told.gauge('liquid-port', 'bubble', saturated);
    told.degrees('liquid-line', 112);
    return told;
  }

  it('does not name a lack of charge by itself, however often the line is read beside it', () => {
    const told = dirtyCoil(57);
    const once = chance(told.evidence, 'low-charge');
    told.degrees('liquid-line', 112);
    const twice = chance(told.evidence, 'low-charge');
    expect(once).toBeLessThan(0.6);
    expect(twice).toBeLessThan(0.6);
    expect(Math.abs(twice - once)).toBeLessThan(0.1);
  });

  it('is forgotten once it is read right', () => {
    const told = dirtyCoil(57);
    told.gauge('liquid-port', 'bubble', 120);
    told.gauge('liquid-port', 'bubble', 120);
    expect(chance(told.evidence, 'condenser-dirty')).toBeGreaterThan(0.9);
    expect(diagnosis.assess(told.evidence, []).contradiction).toEqual([6]);
  });
});

describe('what reading once more is worth', () => {
  it('much for a reading that seldom errs where a compressor hangs on it, little where a filter does', () => {
    expect(worthOfReadingAgain('compressor-seized', 0.01, 0.5, 4)).toBeGreaterThan(0);
    expect(worthOfReadingAgain('filter-dirty', 0.01, 0.5, 4)).toBeLessThan(0);
  });

  it('nothing where the leader does not hang on it', () => {
    expect(worthOfReadingAgain('compressor-seized', 0.2, 0, 0.5)).toBe(-0.5);
  });
});

describe('the draws of a column', () => {
  const place = (fault: FaultId, test: TestId) => {
    const column = table.columns[table.tests.indexOf(test)]!;
    return column.start[table.faults.indexOf(fault)]!;
  };

  it('are those of the faults that can move its test, and of the healthy unit', () => {
    expect(place('breaker-tripped', 'microfarads-fan')).toBe(-1);
    expect(place('fan-capacitor-weak', 'microfarads-fan')).toBeGreaterThanOrEqual(0);
    for (const column of table.columns) if (column) expect(column.start[table.healthy]).toBe(0);
  });

  it('a fault that cannot move a test is explained by what a healthy unit reads', () => {
    const expected = (fault: 'breaker-tripped' | 'nothing-wrong') =>
      diagnosis.explain('microfarads-fan', [{ fault, probability: 1 }])[0]!.expected;
    expect(expected('breaker-tripped')).toBe(expected('nothing-wrong'));
  });
});
