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
  /** Saturation temperatures from the technician's own card, °F at psi gauge. */
  readonly dew: (psi: number) => number;
  readonly bubble: (psi: number) => number;
}

const num = (answer: Answer | undefined): number =>
  typeof answer === 'number' ? answer : answer === 'open' ? 1e9 : -1;

/** Measures twice before condemning a part; a third reading settles a quarrel. */
function condemns(measure: Measure, test: TestId, bad: (value: number) => boolean): boolean {
  const first = measure(test);
  if (first === undefined || !bad(num(first))) return false;
  return bad(num(measure(test, true))) || bad(num(measure(test, true)));
}

/**
 * The chart of a good technician: symptoms first, then the half of the machine that they point to, each branch split
 * in the middle where that is possible, the part itself measured last. Written for the comparison (common practice).
 */
export function followChart(measure: Measure, plate: Plate): FaultId {
  const stat = measure('look-thermostat');
  if (stat === 'thermostat-blank') return noControlPower(measure);
  if (stat === 'thermostat-not-calling') return 'thermostat-not-calling';
  if (measure('look-blower') === 'blower-not-running') return blowerStill(measure, plate);
  const fan = measure('look-outdoor-fan');
  const compressor = measure('look-compressor');
  if (fan !== 'fan-turning' && compressor === 'compressor-not-running') return outdoorsDead(measure, plate);
  if (fan !== 'fan-turning') return fanStill(measure, plate);
  if (compressor !== 'compressor-running') return compressorStill(measure, plate);
  return bothRun(measure, plate);
}

function noControlPower(measure: Measure): FaultId {
  if (num(measure('volts-R-C-air-handler')) > 18) return 'R-wire-broken';
  if (num(measure('volts-transformer-secondary')) > 18) {
    if (num(measure('volts-control-fuse')) > 18) return shortOrFuse(measure);
    return 'float-switch-open';
  }
  if (num(measure('volts-transformer-primary')) > 180) return 'transformer-dead';
  if (num(measure('volts-handler-supply')) > 180) return 'door-switch-open';
  if (num(measure('volts-disconnect-line')) > 180) return 'air-handler-no-power';
  return 'lost-utility-leg';
}

function shortOrFuse(measure: Measure): FaultId {
  const loop = num(measure('ohms-Y-C'));
  if (loop > 6) return 'control-fuse-open';
  return num(measure('ohms-coil')) < 4 ? 'contactor-coil-shorted' : 'control-short-Y-C';
}

function blowerStill(measure: Measure, plate: Plate): FaultId {
  if (num(measure('volts-R-C-air-handler')) < 18) return noControlPower(measure);
  if (num(measure('volts-G-C-air-handler')) < 18) {
    if (condemns(measure, 'volts-R-C-thermostat', (v) => v < 18)) return 'R-wire-broken';
    return condemns(measure, 'volts-R-G-thermostat', (v) => v > 18) ? 'thermostat-not-calling' : 'G-wire-broken';
  }
  const volts = num(measure('volts-blower'));
  if (volts < 100) return 'blower-relay-open';
  if (volts < 190) return 'supply-low';
  if (condemns(measure, 'microfarads-blower', (c) => c < 0.9 * plate.blower)) return 'blower-capacitor-weak';
  return measure('look-blower-by-hand') === 'blower-stiff' ? 'blower-seized' : 'blower-motor-open';
}

function outdoorsDead(measure: Measure, plate: Plate): FaultId {
  const coil = num(measure('volts-coil'));
  if (coil < 17) return noCoilVolts(measure);
  if (measure('look-contactor') === 'contactor-not-pulled-in') {
    return num(measure('ohms-coil')) > 1e6 ? 'contactor-coil-open' : 'contactor-jammed-open';
  }
  if (num(measure('volts-L1-L2')) < 190) return noLineVolts(measure);
  if (num(measure('volts-T1-T2')) < 190) {
    return num(measure('volts-L1-T1')) > 10 ? 'contactor-pole-1-burnt' : 'contactor-pole-2-burnt';
  }
  return compressorStill(measure, plate);
}

function noCoilVolts(measure: Measure): FaultId {
  if (num(measure('volts-Y-C-condenser')) > 18) {
    if (num(measure('volts-high-switch')) > 18) return 'high-switch-open';
    return 'low-switch-open';
  }
  if (num(measure('volts-R-C-air-handler')) < 18) return noControlPower(measure);
  if (num(measure('volts-float')) > 18) return 'float-switch-open';
  if (num(measure('volts-Y-C-air-handler')) > 18) {
    return num(measure('ohms-Y-C')) > 1e6 && num(measure('volts-R-C-condenser')) < 5
      ? 'C-wire-broken'
      : 'Y-wire-broken-outdoors';
  }
  return num(measure('volts-R-Y-thermostat')) > 18 ? 'thermostat-not-calling' : 'Y-wire-broken-indoors';
}

function noLineVolts(measure: Measure): FaultId {
  if (num(measure('volts-disconnect-load')) > 190) return looseLug(measure);
  if (num(measure('volts-disconnect-line')) > 190) {
    if (num(measure('volts-fuse-1')) > 60) return blownFuse(measure, 'line-fuse-1-open');
    if (num(measure('volts-fuse-2')) > 60) return blownFuse(measure, 'line-fuse-2-open');
    return 'disconnect-open';
  }
  if (measure('look-breaker') === 'breaker-tripped') {
    if (num(measure('ohms-compressor-shell')) < 5e5) return 'compressor-grounded';
    return num(measure('ohms-fan-frame')) < 5e5 ? 'fan-motor-grounded' : 'breaker-tripped';
  }
  if (num(measure('volts-handler-supply')) < 100) return 'lost-utility-leg';
  if (num(measure('volts-breaker')) > 190) return looseLug(measure);
  return num(measure('volts-breaker-pole-1')) > 60 ? 'breaker-pole-1-open' : 'breaker-pole-2-open';
}

function blownFuse(measure: Measure, fuse: 'line-fuse-1-open' | 'line-fuse-2-open'): FaultId {
  if (num(measure('ohms-compressor-shell')) < 5e5) return 'compressor-grounded';
  return num(measure('ohms-fan-frame')) < 5e5 ? 'fan-motor-grounded' : fuse;
}

function looseLug(measure: Measure): FaultId {
  const one = num(measure('volts-L1-ground'));
  const two = num(measure('volts-L2-ground'));
  if (Math.abs(one - two) < 12) return 'supply-low';
  return one < two ? 'loose-lug-1' : 'loose-lug-2';
}

/** Line volts under load come before any part outdoors is blamed. */
function badLine(measure: Measure): FaultId | undefined {
  if (!condemns(measure, 'volts-L1-L2', (v) => v < 190)) return undefined;
  return num(measure('volts-disconnect-line')) < 190 ? 'supply-low' : looseLug(measure);
}

function fanStill(measure: Measure, plate: Plate): FaultId {
  const line = badLine(measure);
  if (line) return line;
  if (num(measure('volts-fan')) < 100) {
    if (num(measure('volts-T1-T2')) > 190) return 'defrost-fan-relay-open';
    return num(measure('volts-L1-T1')) > 10 ? 'contactor-pole-1-burnt' : 'contactor-pole-2-burnt';
  }
  if (condemns(measure, 'microfarads-fan', (c) => c < 0.9 * plate.fan)) {
    if (num(measure('microfarads-fan')) > 0.06 * plate.fan) return 'fan-capacitor-weak';
    return num(measure('ohms-cap-FAN')) < 5 ? 'fan-capacitor-shorted' : 'fan-capacitor-open';
  }
  if (measure('look-fan-by-hand') === 'fan-stiff') return 'fan-bearings-seized';
  if (condemns(measure, 'ohms-fan-C-R', (r) => r > 1e6)) return 'fan-run-winding-open';
  if (condemns(measure, 'ohms-fan-C-S', (r) => r > 1e6)) return 'fan-start-winding-open';
  return condemns(measure, 'ohms-fan-frame', (r) => r < 5e5) ? 'fan-motor-grounded' : 'fan-bearings-seized';
}

function compressorStill(measure: Measure, plate: Plate): FaultId {
  const line = badLine(measure);
  if (line) return line;
  if (num(measure('volts-T1-T2')) < 190) {
    return num(measure('volts-L1-T1')) > 8 ? 'contactor-pole-1-burnt' : 'contactor-pole-2-burnt';
  }
  if (condemns(measure, 'microfarads-herm', (c) => c < 0.9 * plate.herm)) {
    if (num(measure('microfarads-herm')) > 0.06 * plate.herm) return 'herm-capacitor-weak';
    return num(measure('ohms-cap-HERM')) < 5 ? 'herm-capacitor-shorted' : 'herm-capacitor-open';
  }
  if (condemns(measure, 'ohms-compressor-R-S', (r) => r > 1e6)) {
    return num(measure('ohms-compressor-C-R')) > 1e6 ? 'compressor-run-winding-open' : 'compressor-start-winding-open';
  }
  if (condemns(measure, 'ohms-compressor-R-shell', (r) => r < 5e5)) return 'compressor-grounded';
  const kick = measure('microfarads-hard-start');
  if (kick !== undefined && num(kick) < 60) return 'hard-start-failed';
  const hot = measure('look-compressor-heat') === 'compressor-very-hot';
  if (!hot && condemns(measure, 'ohms-compressor-C-R', (r) => r > 1e6)) return 'compressor-overload-open';
  return 'compressor-seized';
}

function bothRun(measure: Measure, plate: Plate): FaultId {
  if (measure('look-filter') === 'filter-dirty' && measure('look-filter', true) === 'filter-dirty')
    return 'filter-dirty';
  const dirty = measure('look-outdoor-coil') === 'outdoor-coil-dirty';
  if (dirty && measure('look-outdoor-coil', true) === 'outdoor-coil-dirty') return 'condenser-dirty';
  const line = badLine(measure);
  if (line) return line;
  const back = num(measure('temperature-return-air'));
  const split = back - num(measure('temperature-supply-air'));
  if (split < -2) return 'reversing-valve-stuck';
  const outdoor = num(measure('temperature-outdoor-air'));
  const wetBulb = num(measure('wet-bulb-return-air'));
  const evaporating = plate.dew(num(measure('pressure-suction')));
  const superheat = num(measure('temperature-suction-line')) - evaporating;
  const liquid = plate.bubble(num(measure('pressure-liquid')));
  const subcooling = liquid - num(measure('temperature-liquid-line'));
  if (measure('look-indoor-coil') === 'coil-iced' && superheat < 14) return 'indoor-coil-iced';
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

function stillUnclear(measure: Measure, plate: Plate): FaultId {
  if (measure('look-no-call') === 'compressor-running') {
    const two = measure('ohms-pole-2');
    const one = num(measure('ohms-pole-1')) < 5;
    if (two === undefined) return 'contactor-pole-1-stuck-closed';
    if (one && num(two) < 5) return 'contactor-stuck-closed';
    return one ? 'contactor-pole-1-stuck-closed' : 'contactor-pole-2-stuck-closed';
  }
  if (num(measure('microfarads-fan')) < 0.9 * plate.fan) return 'fan-capacitor-weak';
  if (num(measure('microfarads-herm')) < 0.9 * plate.herm) return 'herm-capacitor-weak';
  const heater = measure('ohms-crankcase-heater');
  if (heater !== undefined && num(heater) > 1e6) return 'crankcase-heater-open';
  if (num(measure('volts-L1-L2')) < 190) return 'supply-low';
  const one = num(measure('ohms-pole-1'));
  if (one < 5) return 'contactor-pole-1-stuck-closed';
  return 'contactor-pole-2-stuck-closed';
}
