import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Measure, Plate } from './branching-chart.ts';
import type { Answer } from './instrument.ts';

type Rule = readonly [TestId, (answer: Answer, plate: Plate) => FaultId | undefined];

const above = (limit: number, fault: FaultId) => (a: Answer) =>
  a === 'open' || (a as number) > limit ? fault : undefined;
const below = (limit: number, fault: FaultId) => (a: Answer) =>
  a !== 'open' && (a as number) < limit ? fault : undefined;
const seen = (what: string, fault: FaultId) => (a: Answer) => (a === what ? fault : undefined);

/** One part after the other, each measured directly, from the door to the compressor: stops at the first bad one. */
const ORDER: readonly Rule[] = [
  ['look-filter', seen('filter-dirty', 'filter-dirty')],
  ['look-indoor-coil', seen('coil-iced', 'indoor-coil-iced')],
  ['look-outdoor-coil', seen('outdoor-coil-dirty', 'condenser-dirty')],
  ['look-breaker', seen('breaker-tripped', 'breaker-tripped')],
  ['look-disconnect', seen('disconnect-out', 'disconnect-open')],
  ['volts-handler-supply', below(100, 'air-handler-no-power')],
  ['volts-door-switch', above(100, 'door-switch-open')],
  ['volts-control-fuse', above(15, 'control-fuse-open')],
  ['volts-float', above(15, 'float-switch-open')],
  ['volts-transformer-secondary', below(15, 'transformer-dead')],
  ['volts-R-C-thermostat', below(15, 'R-wire-broken')],
  ['volts-R-Y-thermostat', above(15, 'thermostat-not-calling')],
  ['volts-Y-C-air-handler', below(15, 'Y-wire-broken-indoors')],
  ['volts-Y-C-condenser', below(15, 'Y-wire-broken-outdoors')],
  ['volts-high-switch', above(15, 'high-switch-open')],
  ['volts-low-switch', above(15, 'low-switch-open')],
  ['volts-fuse-1', above(60, 'line-fuse-1-open')],
  ['volts-fuse-2', above(60, 'line-fuse-2-open')],
  ['volts-L1-L2', below(187, 'supply-low')],
  ['volts-L1-T1', above(10, 'contactor-pole-1-burnt')],
  ['volts-L2-T2', above(10, 'contactor-pole-2-burnt')],
  ['ohms-coil', above(1e6, 'contactor-coil-open')],
  [
    'microfarads-herm',
    (a, p) =>
      (a as number) < 0.06 * p.herm
        ? 'herm-capacitor-open'
        : (a as number) < 0.9 * p.herm
          ? 'herm-capacitor-weak'
          : undefined,
  ],
  [
    'microfarads-fan',
    (a, p) =>
      (a as number) < 0.06 * p.fan
        ? 'fan-capacitor-open'
        : (a as number) < 0.9 * p.fan
          ? 'fan-capacitor-weak'
          : undefined,
  ],
  ['look-fan-by-hand', seen('fan-stiff', 'fan-bearings-seized')],
  ['ohms-fan-C-R', above(1e6, 'fan-run-winding-open')],
  ['ohms-fan-C-S', above(1e6, 'fan-start-winding-open')],
  ['ohms-compressor-C-R', above(1e6, 'compressor-overload-open')],
  ['ohms-compressor-R-S', above(1e6, 'compressor-run-winding-open')],
  ['ohms-compressor-shell', below(5e5, 'compressor-grounded')],
  ['ohms-fan-frame', below(5e5, 'fan-motor-grounded')],
  ['microfarads-blower', below(4, 'blower-capacitor-weak')],
  ['ohms-blower', above(1e6, 'blower-motor-open')],
  ['ohms-pole-1', below(5, 'contactor-pole-1-stuck-closed')],
  ['look-compressor', seen('compressor-hums-and-trips', 'compressor-seized')],
];

/** The fixed order, in the words of the chart. What is left at the end is taken for low charge. */
export function followOrder(measure: Measure, plate: Plate): FaultId {
  for (const [test, judge] of ORDER) {
    const answer = measure(test);
    const found = answer === undefined ? undefined : judge(answer, plate);
    if (found) return found;
  }
  return 'low-charge';
}
