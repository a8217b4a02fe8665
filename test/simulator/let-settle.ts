import type { HiddenMotor, HiddenUnit, Leads } from './hidden-unit.ts';
import type { Network } from './network.ts';
import { torque } from './psc-motor.ts';
import { type CycleState, runCycle } from './refrigerant-cycle.ts';
import { controlNetwork, lineNetwork, magnitude, type Running } from './unit-circuits.ts';

/** The hidden unit at one position of the thermostat, everything settled. */
export interface Settled {
  readonly line: Network;
  readonly control: Network;
  readonly running: Running;
  readonly compressorTurns: boolean;
  readonly fanTurns: boolean;
  readonly blowerTurns: boolean;
  /** The compressor is fed and cannot turn, or has tripped on heat. */
  readonly compressorTrips: 'no' | 'cannot start' | 'runs first';
  readonly fuse24Out: boolean;
  readonly highOut: boolean;
  /** The second stage, where there is one, is in. */
  readonly loaded: boolean;
  readonly cycle: CycleState;
}

const STILL = { compressor: 1, fan: 1, blower: 1 };

/** The slip at which the motor carries its load; 1 when it cannot start or would stall. */
function slipOf(m: HiddenMotor, volts: number, breakaway: number): number {
  const whole = Number.isFinite(m.mainDc) && Number.isFinite(m.auxDc) && !m.capShorted;
  if (m.stuck || !whole || volts < 20) return 1;
  const healthy = torque(m.windings, m.volts, m.rated, 1);
  if (torque(m.windings, volts, m.microfarads, 1) < breakaway * healthy) return 1;
  for (let slip = 0.01; slip < 0.4; slip += 0.01) {
    if (torque(m.windings, volts, m.microfarads, slip) >= m.load) return slip;
  }
  return 1;
}

/** A motor with a lead off, or a capacitor that is not joined, does not start. */
const joined = ({ C, R, S }: Leads, u: HiddenUnit): boolean => C + R + S + u.capacitorLead < 60;

function breakawayOf(u: HiddenUnit): number {
  if (u.kicker === 'failed') return 9;
  return u.compressor.breakaway * (u.kicker === 'good' ? 0.7 : 1);
}

/** The coil of the second stage pulls from 15 volts on. */
const bypassShut = (u: HiddenUnit, volts: number): boolean =>
  Number.isFinite(u.unloaderR) && volts > 15 && !u.bypassSticks;

/** With its bypass open the rotor carries less: what it pumps, and half of the rest (our figure). */
function atStage(u: HiddenUnit, loaded: boolean): HiddenUnit {
  if (loaded) return u;
  const load = u.compressor.load * (0.1 + 0.9 * u.lowStage);
  return { ...u, compressor: { ...u.compressor, load } };
}

function relays(u: HiddenUnit, call: boolean, highOut: boolean, fuseOut: boolean) {
  const idle: Running = { contactor: false, blowerRelay: false, overloadOut: false, slips: STILL };
  const primary = magnitude(lineNetwork(u, idle), 'transformer-primary-1', 'transformer-primary-2');
  let control = controlNetwork(u, primary, call, fuseOut, highOut);
  const sagged = (primary * u.secondaryVolts) / u.tap - magnitude(control, 'transformer-secondary-1', 'C@air-handler');
  const blown = fuseOut || sagged / u.secondaryLeak > 3.2;
  if (blown && !fuseOut) control = controlNetwork(u, primary, call, true, highOut);
  const coil = magnitude(control, 'coil-1', 'coil-2');
  return {
    control,
    blown,
    contactor: coil >= u.pullIn && Number.isFinite(u.coilR) && u.coilR > 3,
    blowerRelay: magnitude(control, 'G@air-handler', 'C@air-handler') > 16,
    loaded: u.stages === 1 || bypassShut(u, magnitude(control, 'unloader-1', 'unloader-2')),
  };
}

function spin(u: HiddenUnit, standing: Running): Running['slips'] {
  const first = lineNetwork(u, standing);
  const start = {
    compressor: joined(u.compressorLeads, u)
      ? slipOf(u.compressor, magnitude(first, 'comp-R', 'winding'), breakawayOf(u))
      : 1,
    fan: joined(u.fanLeads, u) ? slipOf(u.fan, magnitude(first, 'fan-R', 'fan-C'), u.fan.breakaway) : 1,
    blower: slipOf(u.blower, magnitude(first, 'blower-1', 'blower-2'), u.blower.breakaway),
  };
  if (start.compressor === 1 && start.fan === 1) return start;
  // Once the big motor runs the line recovers: let the others try again on better volts.
  const then = lineNetwork(u, { ...standing, slips: start });
  return {
    compressor: start.compressor,
    fan: joined(u.fanLeads, u) ? slipOf(u.fan, magnitude(then, 'fan-R', 'fan-C'), u.fan.breakaway) : 1,
    blower: start.blower,
  };
}

/** Lets relays pull, motors start and protectors trip. `fuseOut` carries a blown control fuse on from before. */
export function letSettle(whole: HiddenUnit, call: boolean, fuseOut = false): Settled {
  let { control, blown, contactor, blowerRelay, loaded } = relays(whole, call, false, fuseOut);
  const u = atStage(whole, loaded);
  const standing: Running = { contactor, blowerRelay, overloadOut: false, slips: STILL };
  let running: Running = { ...standing, slips: spin(u, standing) };
  let line = lineNetwork(u, running);
  const fed = magnitude(line, 'T1', 'T2') > 60;
  const turns = running.slips.compressor < 1;
  const noAir = turns && running.slips.fan === 1;
  const { C, R } = u.compressorLeads;
  const draws = Number.isFinite(u.overload) && Number.isFinite(u.compressor.mainDc) && Number.isFinite(C + R);
  const stalls = fed && !turns && draws;
  let highOut = false;
  if (noAir && u.restingNow && u.highFirst && u.switchesFitted && contactor) {
    highOut = true;
    ({ control, blown, contactor } = relays(u, call, true, fuseOut));
    const stop = { ...running.slips, compressor: 1, fan: 1 };
    running = { ...running, contactor, slips: stop };
    line = lineNetwork(u, running);
  } else if ((noAir || stalls) && u.restingNow) {
    running = { ...running, overloadOut: true, slips: { ...running.slips, compressor: 1 } };
    line = lineNetwork(u, running);
  }
  const compressorTurns = running.slips.compressor < 1;
  const fanTurns = running.slips.fan < 1;
  const blowerTurns = running.slips.blower < 1;
  const speed = fanTurns ? Math.min(1, (1 - running.slips.fan) / 0.92) : 0;
  return {
    line,
    control,
    running,
    compressorTurns,
    fanTurns,
    blowerTurns,
    compressorTrips: stalls ? 'cannot start' : noAir ? 'runs first' : 'no',
    fuse24Out: blown,
    highOut,
    loaded,
    cycle: runCycle(u, compressorTurns, speed, blowerTurns, loaded ? 1 : u.lowStage),
  };
}
