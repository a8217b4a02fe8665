import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Answer } from './instrument.ts';

/** Takes a reading, or takes it again; undefined when the unit has no such part. */
export type Measure = (test: TestId, again?: true) => Answer | undefined;

/** What the plate says, as far as the chart uses it. */
export interface Plate {
  readonly herm: number;
  readonly fan: number;
  readonly blower: number;
  readonly valve: boolean;
  readonly subcool: number;
  readonly twoStage?: boolean;
  /** Saturation temperatures from the technician's own card, °F at psi gauge. */
  readonly dew: (psi: number) => number;
  readonly bubble: (psi: number) => number;
}

const num = (answer: Answer | undefined): number =>
  typeof answer === 'number' ? answer : answer === 'open' ? 1e9 : -1;

/** Whether a reading is of this kind. What is not as it should be is read again; a third reading settles a quarrel. */
function reads(measure: Measure, test: TestId, bad: (value: number) => boolean): boolean {
  const first = measure(test);
  if (first === undefined || !bad(num(first))) return false;
  return bad(num(measure(test, true))) || bad(num(measure(test, true)));
}

/** The same for a look: one of these answers. */
function sees(measure: Measure, test: TestId, ...what: readonly Answer[]): boolean {
  const seen = (again?: true) => what.includes(measure(test, again) as Answer);
  return seen() && (seen(true) || seen(true));
}

/**
 * The chart of a good technician: symptoms first, then the half of the machine that they point to, each branch split
 * in the middle where that is possible, the part itself measured last. Written for the comparison (common practice).
 */
export function followChart(measure: Measure, plate: Plate): FaultId {
  if (sees(measure, 'look-thermostat', 'thermostat-blank')) return noControlPower(measure);
  if (sees(measure, 'look-thermostat', 'thermostat-not-calling')) return 'thermostat-not-calling';
  if (sees(measure, 'look-blower', 'blower-not-running')) return blowerStill(measure, plate);
  const fanStands = sees(measure, 'look-outdoor-fan', 'fan-not-turning', 'fan-hums');
  const still = sees(measure, 'look-compressor', 'compressor-not-running', 'compressor-hums-and-trips');
  if (fanStands && still) return outdoorsDead(measure, plate);
  if (fanStands) return fanStill(measure, plate);
  if (still) return compressorStill(measure, plate);
  return bothRun(measure, plate);
}

function noControlPower(measure: Measure): FaultId {
  if (reads(measure, 'volts-R-C-air-handler', (v) => v > 18)) return 'R-wire-broken';
  if (reads(measure, 'volts-transformer-secondary', (v) => v > 18)) {
    if (reads(measure, 'volts-control-fuse', (v) => v > 18)) return shortOrFuse(measure);
    return 'float-switch-open';
  }
  if (reads(measure, 'volts-transformer-primary', (v) => v > 180)) return 'transformer-dead';
  if (reads(measure, 'volts-handler-supply', (v) => v > 180)) return 'door-switch-open';
  if (reads(measure, 'volts-disconnect-line', (v) => v > 180)) return 'air-handler-no-power';
  return 'lost-utility-leg';
}

function shortOrFuse(measure: Measure): FaultId {
  const loop = num(measure('ohms-Y-C'));
  if (loop > 6) return 'control-fuse-open';
  return reads(measure, 'ohms-coil', (v) => v < 4) ? 'contactor-coil-shorted' : 'control-short-Y-C';
}

function blowerStill(measure: Measure, plate: Plate): FaultId {
  if (reads(measure, 'volts-R-C-air-handler', (v) => v < 18)) return noControlPower(measure);
  if (reads(measure, 'volts-G-C-air-handler', (v) => v < 18)) {
    if (reads(measure, 'volts-R-C-thermostat', (v) => v < 18)) return 'R-wire-broken';
    return reads(measure, 'volts-R-G-thermostat', (v) => v > 18) ? 'thermostat-not-calling' : 'G-wire-broken';
  }
  const volts = num(measure('volts-blower'));
  if (volts < 100) return 'blower-relay-open';
  if (volts < 190) return 'supply-low';
  if (reads(measure, 'microfarads-blower', (c) => c < 0.9 * plate.blower)) return 'blower-capacitor-weak';
  return sees(measure, 'look-blower-by-hand', 'blower-stiff') ? 'blower-seized' : 'blower-motor-open';
}

function outdoorsDead(measure: Measure, plate: Plate): FaultId {
  const coil = num(measure('volts-coil'));
  if (coil < 17) return noCoilVolts(measure);
  if (sees(measure, 'look-contactor', 'contactor-not-pulled-in')) {
    return reads(measure, 'ohms-coil', (v) => v > 1e6) ? 'contactor-coil-open' : 'contactor-jammed-open';
  }
  if (reads(measure, 'volts-L1-L2', (v) => v < 190)) return noLineVolts(measure);
  if (reads(measure, 'volts-T1-T2', (v) => v < 190)) {
    return reads(measure, 'volts-L1-T1', (v) => v > 10) ? 'contactor-pole-1-burnt' : 'contactor-pole-2-burnt';
  }
  return compressorStill(measure, plate);
}

function noCoilVolts(measure: Measure): FaultId {
  if (reads(measure, 'volts-Y-C-condenser', (v) => v > 18)) {
    if (reads(measure, 'volts-high-switch', (v) => v > 18)) return 'high-switch-open';
    return 'low-switch-open';
  }
  if (reads(measure, 'volts-R-C-air-handler', (v) => v < 18)) return noControlPower(measure);
  if (reads(measure, 'volts-float', (v) => v > 18)) return 'float-switch-open';
  if (reads(measure, 'volts-Y-C-air-handler', (v) => v > 18)) {
    return reads(measure, 'ohms-Y-C', (v) => v > 1e6) && reads(measure, 'volts-R-C-condenser', (v) => v < 5)
      ? 'C-wire-broken'
      : 'Y-wire-broken-outdoors';
  }
  return reads(measure, 'volts-R-Y-thermostat', (v) => v > 18) ? 'thermostat-not-calling' : 'Y-wire-broken-indoors';
}

function noLineVolts(measure: Measure): FaultId {
  if (reads(measure, 'volts-disconnect-load', (v) => v > 190)) return looseLug(measure);
  if (reads(measure, 'volts-disconnect-line', (v) => v > 190)) {
    if (reads(measure, 'volts-fuse-1', (v) => v > 60)) return blownFuse(measure, 'line-fuse-1-open');
    if (reads(measure, 'volts-fuse-2', (v) => v > 60)) return blownFuse(measure, 'line-fuse-2-open');
    return 'disconnect-open';
  }
  if (sees(measure, 'look-breaker', 'breaker-tripped')) {
    if (reads(measure, 'ohms-compressor-shell', (v) => v < 5e5)) return 'compressor-grounded';
    return reads(measure, 'ohms-fan-frame', (v) => v < 5e5) ? 'fan-motor-grounded' : 'breaker-tripped';
  }
  if (reads(measure, 'volts-handler-supply', (v) => v < 100)) return 'lost-utility-leg';
  if (reads(measure, 'volts-breaker', (v) => v > 190)) return looseLug(measure);
  return reads(measure, 'volts-breaker-pole-1', (v) => v > 60) ? 'breaker-pole-1-open' : 'breaker-pole-2-open';
}

function blownFuse(measure: Measure, fuse: 'line-fuse-1-open' | 'line-fuse-2-open'): FaultId {
  if (reads(measure, 'ohms-compressor-shell', (v) => v < 5e5)) return 'compressor-grounded';
  return reads(measure, 'ohms-fan-frame', (v) => v < 5e5) ? 'fan-motor-grounded' : fuse;
}

function looseLug(measure: Measure): FaultId {
  const one = num(measure('volts-L1-ground'));
  const two = num(measure('volts-L2-ground'));
  if (Math.abs(one - two) < 12) return 'supply-low';
  return one < two ? 'loose-lug-1' : 'loose-lug-2';
}

/** Line volts under load come before any part outdoors is blamed. */
function badLine(measure: Measure): FaultId | undefined {
  if (!reads(measure, 'volts-L1-L2', (v) => v < 190)) return undefined;
  return reads(measure, 'volts-disconnect-line', (v) => v < 190) ? 'supply-low' : looseLug(measure);
}

function fanStill(measure: Measure, plate: Plate): FaultId {
  const line = badLine(measure);
  if (line) return line;
  if (reads(measure, 'volts-fan', (v) => v < 100)) {
    if (reads(measure, 'volts-T1-T2', (v) => v > 190)) return 'defrost-fan-relay-open';
    return reads(measure, 'volts-L1-T1', (v) => v > 10) ? 'contactor-pole-1-burnt' : 'contactor-pole-2-burnt';
  }
  if (reads(measure, 'microfarads-fan', (c) => c < 0.9 * plate.fan)) {
    if (reads(measure, 'microfarads-fan', (v) => v > 0.06 * plate.fan)) return 'fan-capacitor-weak';
    return reads(measure, 'ohms-cap-FAN', (v) => v < 5) ? 'fan-capacitor-shorted' : 'fan-capacitor-open';
  }
  if (sees(measure, 'look-fan-by-hand', 'fan-stiff')) return 'fan-bearings-seized';
  if (reads(measure, 'ohms-fan-C-R', (r) => r > 1e6)) return 'fan-run-winding-open';
  if (reads(measure, 'ohms-fan-C-S', (r) => r > 1e6)) return 'fan-start-winding-open';
  return reads(measure, 'ohms-fan-frame', (r) => r < 5e5) ? 'fan-motor-grounded' : 'fan-bearings-seized';
}

function compressorStill(measure: Measure, plate: Plate): FaultId {
  const line = badLine(measure);
  if (line) return line;
  if (reads(measure, 'volts-T1-T2', (v) => v < 190)) {
    return reads(measure, 'volts-L1-T1', (v) => v > 8) ? 'contactor-pole-1-burnt' : 'contactor-pole-2-burnt';
  }
  if (reads(measure, 'microfarads-herm', (c) => c < 0.9 * plate.herm)) {
    if (reads(measure, 'microfarads-herm', (v) => v > 0.06 * plate.herm)) return 'herm-capacitor-weak';
    return reads(measure, 'ohms-cap-HERM', (v) => v < 5) ? 'herm-capacitor-shorted' : 'herm-capacitor-open';
  }
  if (reads(measure, 'ohms-compressor-R-S', (r) => r > 1e6)) {
    return reads(measure, 'ohms-compressor-C-R', (v) => v > 1e6)
      ? 'compressor-run-winding-open'
      : 'compressor-start-winding-open';
  }
  if (reads(measure, 'ohms-compressor-R-shell', (r) => r < 5e5)) return 'compressor-grounded';
  const kick = measure('microfarads-hard-start');
  if (kick !== undefined && num(kick) < 60) return 'hard-start-failed';
  const hot = sees(measure, 'look-compressor-heat', 'compressor-very-hot');
  if (!hot && reads(measure, 'ohms-compressor-C-R', (r) => r > 1e6)) return 'compressor-overload-open';
  return 'compressor-seized';
}

function bothRun(measure: Measure, plate: Plate): FaultId {
  if (sees(measure, 'look-filter', 'filter-dirty')) return 'filter-dirty';
  if (sees(measure, 'look-outdoor-coil', 'outdoor-coil-dirty')) return 'condenser-dirty';
  const line = badLine(measure);
  if (line) return line;
  const stage = plate.twoStage ? weakStage(measure) : undefined;
  if (stage) return stage;
  const back = num(measure('temperature-return-air'));
  const split = back - num(measure('temperature-supply-air'));
  if (split < -2) return 'reversing-valve-stuck';
  const outdoor = num(measure('temperature-outdoor-air'));
  const wetBulb = num(measure('wet-bulb-return-air'));
  const evaporating = plate.dew(num(measure('pressure-suction')));
  const superheat = num(measure('temperature-suction-line')) - evaporating;
  const liquid = plate.bubble(num(measure('pressure-liquid')));
  const subcooling = liquid - num(measure('temperature-liquid-line'));
  if (sees(measure, 'look-indoor-coil', 'coil-iced') && superheat < 14) return 'indoor-coil-iced';
  const meant = plate.valve ? 11 : Math.max(5, (3 * wetBulb - 80 - outdoor) / 2);
  const lean = evaporating < 38;
  if (lean && subcooling < plate.subcool - 4) return 'low-charge';
  if (superheat > meant + 7 && subcooling > plate.subcool + 3) return 'liquid-restriction';
  if (superheat > meant + 7) return 'low-charge';
  if (lean) return 'low-indoor-air';
  if (liquid > outdoor + 32) return subcooling > plate.subcool + 8 ? 'non-condensables' : 'condenser-dirty';
  if (subcooling > plate.subcool + 5) return 'overcharge';
  if (evaporating > 52) return 'leaking-valves';
  if (subcooling < plate.subcool - 4) return 'low-charge';
  return stillUnclear(measure, plate);
}

/** A second stage that does not come in: volts at its end first, then the coil, then the way back to the thermostat. */
function weakStage(measure: Measure): FaultId | undefined {
  if (!sees(measure, 'look-second-stage', 'second-stage-no-change')) return undefined;
  if (reads(measure, 'volts-Y2-C-condenser', (v) => v > 18))
    return reads(measure, 'ohms-unloader', (v) => v > 1e5) ? 'unloader-solenoid-open' : 'unloader-stuck-unloaded';
  return reads(measure, 'volts-R-Y2-thermostat', (v) => v > 18) ? 'thermostat-no-second-stage' : 'Y2-wire-broken';
}

function stillUnclear(measure: Measure, plate: Plate): FaultId {
  if (sees(measure, 'look-no-call', 'compressor-running')) {
    const two = measure('ohms-pole-2');
    const one = reads(measure, 'ohms-pole-1', (v) => v < 5);
    if (two === undefined) return 'contactor-pole-1-stuck-closed';
    if (one && num(two) < 5) return 'contactor-stuck-closed';
    return one ? 'contactor-pole-1-stuck-closed' : 'contactor-pole-2-stuck-closed';
  }
  if (reads(measure, 'microfarads-fan', (v) => v < 0.9 * plate.fan)) return 'fan-capacitor-weak';
  if (reads(measure, 'microfarads-herm', (v) => v < 0.9 * plate.herm)) return 'herm-capacitor-weak';
  const heater = measure('ohms-crankcase-heater');
  if (heater !== undefined && num(heater) > 1e6) return 'crankcase-heater-open';
  if (reads(measure, 'volts-L1-L2', (v) => v < 190)) return 'supply-low';
  const one = num(measure('ohms-pole-1'));
  if (one < 5) return 'contactor-pole-1-stuck-closed';
  return 'contactor-pole-2-stuck-closed';
}
