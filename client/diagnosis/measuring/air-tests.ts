import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { type Measure, placeOf, type Spot, type TestModel } from './test-model.ts';

const RUNNING = { power: 'on', call: 'cooling', bench: false } as const;

function reading(
  fn: 'temperature' | 'pressure',
  at: PointId,
  spot: Spot,
  minutes: number,
  measure: Measure,
  more?: Partial<TestModel>,
): TestModel {
  return {
    function: fn,
    quantity: fn === 'temperature' ? 'temperature' : 'pressure',
    at: [at],
    needs: RUNNING,
    ...placeOf(spot),
    minutes,
    hazards: fn === 'pressure' ? ['pressurised-refrigerant', 'moving-fan'] : [],
    measure,
    ...more,
  };
}

const CONDITION = { kind: 'condition' } as const;

/**
 * Air and refrigerant. A raw figure becomes a residual against what the conditions make expected; `requires` are the
 * readings without which there is no figure. Set-up minutes hold the gauges and the wait for a steady state.
 */
export const AIR_TESTS = {
  'temperature-outdoor-air': reading('temperature', 'outdoor-air', 'outdoor-in-reach', 0.5, CONDITION),
  'temperature-return-air': reading('temperature', 'return-air', 'air-handler', 0.7, CONDITION),
  'wet-bulb-return-air': reading('temperature', 'return-air', 'air-handler', 1, CONDITION, { quantity: 'wet-bulb' }),
  'temperature-supply-air': reading('temperature', 'supply-air', 'air-handler', 0.7, {
    kind: 'residual',
    figure: 'airDrop',
    requires: ['temperature-return-air'],
    sharpenedBy: ['wet-bulb-return-air'],
  }),
  'temperature-condenser-air-out': reading('temperature', 'condenser-air-out', 'outdoor-in-reach', 0.8, {
    kind: 'residual',
    figure: 'condenserRise',
    requires: ['temperature-outdoor-air'],
    sharpenedBy: [],
  }),
  'temperature-suction-line': reading('temperature', 'suction-line', 'outdoor-in-reach', 1.2, {
    kind: 'residual',
    figure: 'superheat',
    requires: ['pressure-suction'],
    sharpenedBy: ['wet-bulb-return-air', 'temperature-outdoor-air'],
  }),
  'temperature-liquid-line': reading('temperature', 'liquid-line', 'outdoor-in-reach', 1.2, {
    kind: 'residual',
    figure: 'subcooling',
    requires: ['pressure-liquid'],
    sharpenedBy: [],
  }),
  'temperature-discharge-line': reading(
    'temperature',
    'discharge-line',
    'outdoor-behind-panel',
    1.2,
    { kind: 'residual', figure: 'discharge', requires: ['temperature-outdoor-air'], sharpenedBy: [] },
    { hazards: ['hot-line', 'moving-fan'] },
  ),
  'pressure-suction': reading('pressure', 'suction-port', 'outdoor-in-reach', 2.5, {
    kind: 'residual',
    figure: 'evaporating',
    requires: [],
    sharpenedBy: ['wet-bulb-return-air'],
  }),
  'pressure-liquid': reading('pressure', 'liquid-port', 'outdoor-in-reach', 2, {
    kind: 'residual',
    figure: 'condensing',
    requires: ['temperature-outdoor-air'],
    sharpenedBy: [],
  }),
  // Off until the outdoor coil has the temperature of the air: a quarter of an hour with the fan running helps.
  'pressure-standing': reading(
    'pressure',
    'liquid-port',
    'outdoor-in-reach',
    15,
    { kind: 'residual', figure: 'standing', requires: ['temperature-outdoor-air'], sharpenedBy: [] },
    { needs: { power: 'on', call: 'none', bench: false }, hazards: ['pressurised-refrigerant'] },
  ),
} as const satisfies Partial<Record<TestId, TestModel>>;
