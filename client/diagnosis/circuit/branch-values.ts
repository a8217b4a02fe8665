import { type MotorState, motorAdmittance } from '../unit/motor.ts';
import type { Unit } from '../unit/unit.ts';
import type { CircuitValues } from './circuit-values.ts';
import { type BranchName, branchNumber, nodeNumber } from './topology.ts';

/** What relays, motors and protectors do at the moment. */
export interface RelayState {
  readonly call: boolean;
  readonly contactor: boolean;
  readonly blowerRelay: boolean;
  /** The second stage is not in: the compressor bypasses a third. */
  readonly unloaded: boolean;
  readonly compressor: MotorState;
  readonly fan: MotorState;
  readonly blower: MotorState;
  readonly overloadTripped: boolean;
  readonly highTripped: boolean;
  readonly lowTripped: boolean;
  readonly controlFuseBlown: boolean;
}

/** Nothing called for, nothing turning, nothing tripped. */
export const RESTING: RelayState = {
  call: false,
  contactor: false,
  blowerRelay: false,
  unloaded: false,
  compressor: 'stopped',
  fan: 'stopped',
  blower: 'stopped',
  overloadTripped: false,
  highTripped: false,
  lowTripped: false,
  controlFuseBlown: false,
};

const OMEGA = 2 * Math.PI * 60;
/** Utility transformer and service drop, ohms: resistance and reactance. */
const SERVICE = [0.02, 0.02] as const;

type Put = (name: BranchName, re: number, im?: number) => void;

function putter(values: CircuitValues): Put {
  return (name, re, im = 0) => {
    const at = branchNumber(name);
    values.re[at] = re;
    values.im[at] = im;
  };
}

const conductance = (ohms: number) => (ohms === Number.POSITIVE_INFINITY ? 0 : 1 / ohms);
const closedIf = (closed: boolean) => (closed ? 100 : 0);

function putService(unit: Unit, values: CircuitValues, put: Put): void {
  for (const leg of [1, 2] as const) {
    const ohms = SERVICE[0] + unit.legOhms[leg - 1]!;
    const d = ohms ** 2 + SERVICE[1] ** 2;
    const re = ohms === Number.POSITIVE_INFINITY ? 0 : ohms / d;
    const im = -SERVICE[1] / d;
    put(`utility-${leg}`, re, im);
    const angle = leg === 1 ? 0 : -unit.legAngle;
    const er = unit.legVolts * Math.cos(angle);
    const ei = unit.legVolts * Math.sin(angle);
    const node = nodeNumber(`service-${leg}`);
    values.sourceRe[node] = er * re - ei * im;
    values.sourceIm[node] = er * im + ei * re;
    put(`house-120-${leg}`, 1 / unit.house120Ohms[leg - 1]!);
  }
  put('house-240', 1 / unit.house240Ohms);
}

function putLine(unit: Unit, state: RelayState, put: Put): void {
  for (const leg of [1, 2] as const) {
    const i = leg - 1;
    put(`breaker-pole-${leg}`, conductance(unit.breaker[i]!));
    put(`feeder-${leg}`, conductance(unit.feeder[i]!));
    put(`blade-${leg}`, conductance(unit.blade[i]!));
    put(`fuse-${leg}`, conductance(unit.fuse[i]!));
    put(`whip-${leg}`, conductance(unit.whip[i]!));
    put(`stray-L${leg}`, 0, OMEGA * unit.strayEarth);
    put(`stray-T${leg}`, leg === 1 ? touching(unit) : 0, OMEGA * unit.strayEarth);
    put(`stray-pole-${leg}`, 0, OMEGA * 2e-12);
    const bar = leg === 2 && unit.poles === 1;
    const pulled = state.contactor && !unit.armatureJammed;
    const closed = bar || unit.poleStuck[i] || pulled;
    put(`pole-${leg}`, closed ? conductance(unit.poleStuck[i] ? 0.01 : unit.poleClosed[i]!) : 0);
  }
  put('stray-L1-L2', 0, OMEGA * unit.strayPair);
  put('crankcase-heater', conductance(unit.heaterOhms));
}

/** Siemens from T1 to earth through motors that touch their shells there. */
const touching = ({ compressor, fan }: Unit): number =>
  (compressor.shellAtRun ? conductance(compressor.shellOhms) : 0) + (fan.shellAtRun ? conductance(fan.shellOhms) : 0);

/** A shorted section is a tenth of an ohm; otherwise jωC. */
function capacitor(microfarads: number, shorted: boolean): [number, number] {
  return shorted ? [10, 0] : [0, OMEGA * microfarads * 1e-6];
}

function putLoads(unit: Unit, state: RelayState, values: CircuitValues, put: Put): void {
  const { fan } = unit;
  const compressor = state.unloaded
    ? { ...unit.compressor, turningAmps: unit.unloadedAmps * unit.compressor.turningAmps }
    : unit.compressor;
  const comp = motorAdmittance(compressor, state.compressor, unit.hermMicrofarads / compressor.ratedMicrofarads);
  put('overload', state.overloadTripped ? 0 : conductance(unit.overload));
  put('compressor-run', ...comp.run);
  put('compressor-start', ...comp.start);
  put('compressor-shell', compressor.shellAtRun ? 0 : conductance(compressor.shellOhms));
  put('capacitor-lead', conductance(unit.capacitorLead));
  put('capacitor-herm', ...capacitor(unit.hermMicrofarads, unit.hermShorted));
  values.gainRe[0] = comp.gain[0];
  values.gainIm[0] = comp.gain[1];
  const turn = motorAdmittance(fan, state.fan, unit.fanMicrofarads / fan.ratedMicrofarads);
  put('defrost-relay', conductance(unit.defrostRelay));
  put('fan-run', ...turn.run);
  put('fan-start', ...turn.start);
  put('fan-frame', fan.shellAtRun ? 0 : conductance(fan.shellOhms));
  put('capacitor-fan', ...capacitor(unit.fanMicrofarads, unit.fanCapShorted));
  values.gainRe[1] = turn.gain[0];
  values.gainIm[1] = turn.gain[1];
}

function putIndoors(unit: Unit, state: RelayState, values: CircuitValues, put: Put): void {
  put('handler-feed-1', unit.handlerFed ? 50 : 0);
  put('handler-feed-2', unit.handlerFed && !unit.handlerAt120 ? 50 : 0);
  put('handler-neutral', unit.handlerAt120 ? 50 : 0);
  put('door-switch', conductance(unit.doorSwitch));
  put('blower-relay', closedIf(state.blowerRelay && unit.blowerRelayWorks));
  const blow = motorAdmittance(unit.blower, state.blower, unit.blowerMicrofarads / unit.blower.ratedMicrofarads);
  put('blower-run', ...blow.run);
  put('blower-winding-start', ...blow.start);
  put('blower-capacitor', ...capacitor(unit.blowerMicrofarads, false));
  values.gainRe[2] = blow.gain[0];
  values.gainIm[2] = blow.gain[1];
  put('transformer-magnetising', unit.transformerWorks ? 2e-4 : 0, unit.transformerWorks ? -4e-4 : 0);
  values.transformerRatio = unit.secondaryVolts / unit.transformerTap;
  values.transformerRe = unit.transformerWorks ? 1 / unit.leakageOhms : 0;
  values.transformerIm = 0;
}

function putControl(unit: Unit, state: RelayState, put: Put): void {
  const called = state.call && unit.thermostatCalls;
  put('control-fuse', state.controlFuseBlown ? 0 : conductance(unit.controlFuse));
  put('float-in-R', unit.floatBreaks === 'R' ? conductance(unit.float) : 100);
  put('float-in-Y', unit.floatBreaks === 'Y' ? conductance(unit.float) : 100);
  put('stray-R', 0, OMEGA * unit.strayEarth);
  put('common-bond', unit.commonBonded ? 10 : 0, OMEGA * unit.strayEarth);
  put('R-wire-indoors', conductance(unit.rWire));
  put('C-wire-indoors', 2);
  put('thermostat-electronics', 1 / unit.thermostatOhms);
  put('call-Y', closedIf(called));
  put('call-G', closedIf(state.call && unit.thermostatCallsBlower));
  put('call-O', closedIf(unit.heatPump));
  put('Y-wire-indoors', conductance(unit.yWireIndoors));
  put('Y-wire-outdoors', conductance(unit.yWireOutdoors));
  put('short-R-C', conductance(unit.shortRC));
  put('short-Y-C', conductance(unit.shortYC));
  put('high-switch', state.highTripped ? 0 : conductance(unit.highSwitch));
  put('low-switch', state.lowTripped ? 0 : conductance(unit.lowSwitch));
  put('delay', conductance(unit.delay));
  const coil = unit.coilOhms ** 2 + unit.coilReactance ** 2;
  const coilOpen = unit.coilOhms === Number.POSITIVE_INFINITY;
  put('contactor-coil', coilOpen ? 0 : unit.coilOhms / coil, coilOpen ? 0 : -unit.coilReactance / coil);
  put('C-wire-outdoors', conductance(unit.cWire));
  put('R-wire-outdoors', unit.heatPump ? 2 : 0);
  put('G-wire', conductance(unit.gWire));
  put('blower-relay-coil', 40 / 14_500, -113 / 14_500);
  put('O-wire-indoors', unit.heatPump ? 2 : 0);
  put('O-wire-outdoors', unit.heatPump ? conductance(unit.oWire) : 0);
  put('reversing-valve-coil', unit.heatPump ? 20 / 4000 : 0, unit.heatPump ? -60 / 4000 : 0);
  putSecondStage(unit, state, put);
}

/** The wire of the second stage and its solenoid; a unit with one stage has neither. */
function putSecondStage({ twoStage, ...unit }: Unit, state: RelayState, put: Put): void {
  put('call-Y2', closedIf(twoStage && state.call && unit.thermostatCalls && unit.thermostatCallsSecond));
  put('Y2-wire-indoors', twoStage ? conductance(unit.y2WireIndoors) : 0);
  put('Y2-wire-outdoors', twoStage ? conductance(unit.y2WireOutdoors) : 0);
  const whole = twoStage && unit.unloaderOhms < Number.POSITIVE_INFINITY;
  const z2 = unit.unloaderOhms ** 2 + unit.unloaderReactance ** 2;
  put('unloader-solenoid', whole ? unit.unloaderOhms / z2 : 0, whole ? -unit.unloaderReactance / z2 : 0);
}

/** Writes the circuit of a unit in a state, at line frequency. */
export function putCircuit(unit: Unit, state: RelayState, values: CircuitValues): void {
  const put = putter(values);
  putService(unit, values, put);
  putLine(unit, state, put);
  putLoads(unit, state, values, put);
  putIndoors(unit, state, values, put);
  putControl(unit, state, put);
}

/**
 * The same circuit dead, seen by an ohmmeter: disconnect pulled, air handler off, no call, capacitors open to direct
 * current, windings at their direct-current resistance, meshed parallel paths included.
 */
export function putDeadCircuit(
  unit: Unit,
  overloadTripped: boolean,
  controlFuseBlown: boolean,
  values: CircuitValues,
): void {
  const state: RelayState = { ...RESTING, overloadTripped, controlFuseBlown };
  putCircuit(unit, state, values);
  values.im.fill(0);
  const put = putter(values);
  const winding = (open: boolean, ohms: number) => (open ? 0 : 1 / ohms);
  const { compressor, fan, blower } = unit;
  put('compressor-run', winding(compressor.runOpen, compressor.runOhms));
  put('compressor-start', winding(compressor.startOpen, compressor.startOhms));
  put('capacitor-herm', unit.hermShorted ? 10 : 0);
  put('fan-run', winding(fan.runOpen, fan.runOhms));
  put('fan-start', winding(fan.startOpen, fan.startOhms));
  put('capacitor-fan', unit.fanCapShorted ? 10 : 0);
  put('blower-run', winding(blower.runOpen, blower.runOhms));
  put('blower-winding-start', winding(blower.startOpen, blower.startOhms));
  put('contactor-coil', conductance(unit.coilOhms));
  put('blower-relay-coil', 1 / 40);
  put('reversing-valve-coil', unit.heatPump ? 1 / 20 : 0);
  put('unloader-solenoid', unit.twoStage ? conductance(unit.unloaderOhms) : 0);
  for (const leg of [1, 2] as const) {
    put(`blade-${leg}`, 0);
    put(`handler-feed-${leg}`, 0);
  }
  put('transformer-magnetising', conductance(unit.transformerPrimaryOhms));
  values.gainRe.fill(0);
  values.gainIm.fill(0);
  values.transformerRatio = 0;
  values.transformerRe = conductance(unit.transformerSecondaryOhms);
  values.transformerIm = 0;
}
