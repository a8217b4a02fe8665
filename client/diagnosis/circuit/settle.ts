import type { Motor, MotorState } from '../unit/motor.ts';
import type { Unit } from '../unit/unit.ts';
import { putCircuit, RESTING, type RelayState } from './branch-values.ts';
import { type CircuitValues, emptyCircuit } from './circuit-values.ts';
import { PhasorSolver } from './phasor-solver.ts';
import { BACK_EMFS, BRANCHES, type BranchName, branchNumber, NODES, type NodeName, nodeNumber } from './topology.ts';

/** A contactor or relay that was in lets go only below this, volts (IEC 60947-4-1 wants open by 20 % of 24 V: memory). */
const DROP_OUT_VOLTS = 12;
/** A 3 A blade fuse, or the winding of a 40 VA transformer, gives up above this. */
const CONTROL_FUSE_AMPS = 3.5;

/** A circuit at rest after relays, motors and protectors made up their minds. */
export class Settled {
  readonly solver = new PhasorSolver();
  readonly values: CircuitValues = emptyCircuit();
  readonly re = new Float64Array(NODES.length);
  readonly im = new Float64Array(NODES.length);
  state: RelayState = RESTING;
  /** As it was before something tripped, where something did: whoever waits for a start meets the unit like this. */
  before: Settled | undefined;
  /** Room for it. */
  untripped: Settled | undefined;

  /** Open-circuit volts between two nodes. */
  volts(from: NodeName, to: NodeName): number {
    return this.voltsBetween(nodeNumber(from), nodeNumber(to));
  }

  voltsBetween(from: number, to: number): number {
    return Math.hypot(this.re[from]! - this.re[to]!, this.im[from]! - this.im[to]!);
  }

  /** Amps through a branch. */
  amps(name: BranchName): number {
    const at = branchNumber(name);
    const { from, to } = BRANCHES[at]!;
    let vr = this.re[nodeNumber(from)]! - this.re[nodeNumber(to)]!;
    let vi = this.im[nodeNumber(from)]! - this.im[nodeNumber(to)]!;
    const e = BACK_EMFS.findIndex((emf) => emf.branch === name);
    if (e >= 0) {
      const { plus, minus } = BACK_EMFS[e]!;
      const xr = this.re[nodeNumber(plus)]! - this.re[nodeNumber(minus)]!;
      const xi = this.im[nodeNumber(plus)]! - this.im[nodeNumber(minus)]!;
      vr -= this.values.gainRe[e]! * xr - this.values.gainIm[e]! * xi;
      vi -= this.values.gainRe[e]! * xi + this.values.gainIm[e]! * xr;
    }
    return Math.hypot(this.values.re[at]!, this.values.im[at]!) * Math.hypot(vr, vi);
  }

  solve(unit: Unit, state: RelayState): void {
    this.state = state;
    putCircuit(unit, state, this.values);
    this.solver.load(this.values);
    this.solver.solve(this.values, this.re, this.im);
  }
}

/** Whether a standing motor starts on the volts it sees, with the capacitor it has. */
function starts(motor: Motor, volts: number, microfarads: number, shorted: boolean): MotorState {
  const able = !motor.seized && !motor.runOpen && !motor.startOpen && !shorted;
  const fed = volts >= motor.voltageLimit * motor.ratedVolts;
  const pushed = microfarads >= motor.capacitorLimit * motor.ratedMicrofarads;
  return able && fed && pushed ? 'turning' : 'stopped';
}

/**
 * Lets the circuit settle with or without a cooling call. First the control circuit alone: what blows there stays
 * blown. Then the relays pull, the motors stand; those that can start, turn. Last the protectors that open on heat or
 * pressure, and a contactor that cannot hold.
 */
export function settle(unit: Unit, call: boolean, fuseAlreadyBlown: boolean, into: Settled): void {
  into.before = undefined;
  into.solve(unit, { ...RESTING, call, controlFuseBlown: fuseAlreadyBlown });
  if (!fuseAlreadyBlown && into.amps('control-fuse') > CONTROL_FUSE_AMPS) {
    into.solve(unit, { ...into.state, controlFuseBlown: true });
  }
  const contactor =
    unit.coilOhms < Number.POSITIVE_INFINITY && into.volts('coil-hot', 'C-condenser') >= unit.pickUpVolts;
  const blowerRelay = into.volts('G-handler', 'C-handler') >= 17;
  const stuck = unit.poleStuck[0] || unit.poleStuck[1];
  if (!contactor && !blowerRelay && !stuck) return;
  const unloaded = unit.twoStage && !isLoaded(unit, into);
  into.solve(unit, { ...into.state, contactor, blowerRelay, unloaded });
  startMotors(unit, into);
  tripProtectors(unit, into);
  if (into.state.contactor && into.volts('coil-hot', 'C-condenser') < DROP_OUT_VOLTS) stopOutdoors(unit, into, {});
}

/** The solenoid of the second stage pulls, and what it moves follows. */
function isLoaded(unit: Unit, into: Settled): boolean {
  const pulls =
    unit.unloaderOhms < Number.POSITIVE_INFINITY && into.volts('Y2-condenser', 'C-condenser') >= unit.unloaderPullVolts;
  return pulls && !unit.stuckUnloaded;
}

const OMEGA = 2 * Math.PI * 60;

/** Microfarads that push as much as a section does behind a lead of so many ohms. */
function pushing(microfarads: number, leadOhms: number): number {
  const reactance = 1e6 / (OMEGA * Math.max(microfarads, 1e-3));
  return (microfarads * reactance ** 2) / (reactance ** 2 + leadOhms ** 2);
}

function startMotors(unit: Unit, into: Settled): void {
  const helped = unit.hardStart && !unit.needsHardStart;
  const compressor = starts(
    helped ? { ...unit.compressor, capacitorLimit: unit.compressor.capacitorLimit * 0.8 } : unit.compressor,
    into.volts('T1', 'winding-common'),
    unit.needsHardStart ? 0 : pushing(unit.hermMicrofarads, unit.capacitorLead),
    unit.hermShorted,
  );
  const fan = starts(
    unit.fan,
    into.volts('T1', 'fan-common'),
    unit.fanSpunUp ? unit.fan.ratedMicrofarads : pushing(unit.fanMicrofarads, unit.capacitorLead),
    unit.fanCapShorted,
  );
  const blower = starts(unit.blower, into.volts('blower-1', 'handler-2'), unit.blowerMicrofarads, false);
  if (compressor === 'turning' || fan === 'turning' || blower === 'turning') {
    into.solve(unit, { ...into.state, compressor, fan, blower });
  }
}

/** The compressor draws and does not turn, or turns without outdoor air. With its run winding open it draws little. */
export function overheats(unit: Unit, settled: Settled): boolean {
  const fed = settled.volts('T1', 'T2') > 60;
  const draws = unit.overload !== Number.POSITIVE_INFINITY && !unit.compressor.runOpen;
  const standing = settled.state.compressor === 'stopped' && draws;
  return fed && (standing || settled.state.fan === 'stopped');
}

function keepBefore(unit: Unit, into: Settled): void {
  into.untripped ??= new Settled();
  into.untripped.solve(unit, into.state);
  into.before = into.untripped;
}

function tripProtectors(unit: Unit, into: Settled): void {
  const turning = into.state.compressor === 'turning';
  const noAir = turning && into.state.fan === 'stopped' && unit.highTripsWithoutFan;
  if ((noAir || (turning && unit.tripsOnHead)) && unit.hasPressureSwitches && into.state.contactor) {
    keepBefore(unit, into);
    stopOutdoors(unit, into, { highTripped: true });
    return;
  }
  const noLoad = turning && into.state.blower === 'stopped';
  if (noLoad && unit.hasPressureSwitches && unit.lowTripsWithoutBlower && into.state.contactor) {
    keepBefore(unit, into);
    stopOutdoors(unit, into, { lowTripped: true });
    return;
  }
  if ((overheats(unit, into) && unit.overloadOpenWhenHot) || (turning && unit.tripsOnHead)) {
    keepBefore(unit, into);
    into.solve(unit, { ...into.state, overloadTripped: true, compressor: 'stopped' });
  }
}

function stopOutdoors(unit: Unit, into: Settled, more: Partial<RelayState>): void {
  const stuck = unit.poleStuck[0] && (unit.poleStuck[1] || unit.poles === 1);
  const { compressor, fan } = into.state;
  into.solve(unit, {
    ...into.state,
    contactor: false,
    compressor: stuck ? compressor : 'stopped',
    fan: stuck ? fan : 'stopped',
    ...more,
  });
}
