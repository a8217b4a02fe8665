import { balanceCycle, type CycleState } from './balance-cycle.ts';
import type { NodalNetwork } from './nodal-network.ts';
import { type Phasor, plus, size, times } from './phasor.ts';
import { type Machine, OPEN, type Plant, type Standing } from './plant.ts';
import { admittances, torque } from './split-phase-motor.ts';
import { electronicBlowerOhms, wirePlant } from './wire-plant.ts';

type Volts = ReturnType<NodalNetwork['solve']>;

const STAR: Readonly<Record<Machine, readonly [star: string, run: string, start: string]>> = {
  compressor: ['comp-star', 'comp-R', 'comp-S'],
  fan: ['fan-C', 'fan-R', 'fan-S'],
  blower: ['blower-1', 'blower-2', 'blower-cap-1'],
};

/** Currents of main and auxiliary winding, amperes. */
export function currents(plant: Plant, at: Standing, volts: Volts, machine: Machine): readonly [Phasor, Phasor] {
  const { motor } = plant.drives[machine];
  const [mm, ma, am, aa] = admittances(motor, at.slip[machine]);
  const main = volts(STAR[machine][0], `${machine}-main-end`);
  const auxiliary = volts(STAR[machine][0], `${machine}-auxiliary-end`);
  return [plus(times(mm, main), times(ma, auxiliary)), plus(times(am, main), times(aa, auxiliary))];
}

export const solved = (plant: Plant, at: Standing): Volts => wirePlant(plant, at, false).solve();

function torqueOf(plant: Plant, at: Standing, machine: Machine): number {
  const [main, auxiliary] = currents(plant, at, solved(plant, at), machine);
  return torque(plant.drives[machine].motor, at.slip[machine], main, auxiliary);
}

/** The slip at which the motor carries its load, or 1 where it stands. A fan's load grows with the square of speed. */
function runUp(plant: Plant, at: Standing, machine: Machine): number {
  const { load, breakaway, seized, motor } = plant.drives[machine];
  const turn = (slip: number): number => {
    at.slip[machine] = slip;
    return torqueOf(plant, at, machine);
  };
  const needs = (slip: number): number => (machine === 'compressor' ? load : load * (1 - slip) ** 2);
  if (seized || turn(1) <= breakaway) return 1;
  const pullOut = Math.min(0.5, motor.rotorOhms / (motor.mainReactance + motor.rotorReactance));
  let high = machine === 'compressor' ? pullOut : 0.85;
  if (turn(high) < needs(high)) return 1;
  let low = 0.002;
  for (let i = 0; i < 9; i += 1) {
    const mid = Math.sqrt(low * high);
    if (turn(mid) > needs(mid)) high = mid;
    else low = mid;
  }
  return high;
}

const energised = (volts: Volts, machine: Machine): boolean =>
  size(volts(STAR[machine][0], STAR[machine][1])) > 40 || size(volts(STAR[machine][0], STAR[machine][2])) > 40;

function settleMotors(plant: Plant, at: Standing): void {
  for (const machine of ['compressor', 'fan', 'blower'] as const) {
    const volts = solved(plant, at);
    const live = energised(volts, machine);
    const wasLive = at.slip[machine] < 1;
    if (machine === 'blower' && plant.build.electronicBlower) continue;
    if (live !== wasLive || (live && machine === 'compressor')) at.slip[machine] = live ? runUp(plant, at, machine) : 1;
  }
}

/**
 * What blows stays blown: a fuse of the control circuit, a line fuse or the breaker.
 * @param ratings of the compressor's rated current: many at once, few for long
 */
function blowWhatMust(plant: Plant, volts: Volts, ratings = 8): boolean {
  const { contacts: c, build } = plant;
  if (size(volts('control-fuse-1', 'control-fuse-2')) / c.controlFuse > 6.5 && c.controlFuse < 10) {
    c.controlFuse = OPEN;
    return true;
  }
  for (const n of [1, 2] as const) {
    const amps = size(volts(`disconnect-load-${n}`, `L${n}`)) / c[`lug${n}`];
    if (amps < ratings * build.plate.rla) continue;
    // The leg's own fuse is the faster, unless there is none.
    if (build.fused) c[`fuse${n}`] = OPEN;
    else {
      c.breaker1 = OPEN;
      c.breaker2 = OPEN;
      plant.seen.add('breaker-tripped');
    }
    return true;
  }
  return false;
}

function settleRelays(plant: Plant, at: Standing, volts: Volts): void {
  const coil = size(volts('coil-inside', 'coil-2'));
  const shorted = plant.shorts.coilTurns < 1e6;
  at.contactorIn = plant.armature === 'free' && !shorted && coil > plant.pullIn * (at.contactorIn ? 0.65 : 1);
  const { stage, build } = plant;
  at.portsClosed =
    !build.twoStage ||
    (!stage.portsStick && size(volts('unloader-inside', 'unloader-2')) > stage.pullIn && stage.coil < OPEN);
  at.blowerRelayIn = size(volts('G@air-handler', 'C@air-handler')) > (at.blowerRelayIn ? 9 : 15);
}

const nothingMoves = (call: boolean): Standing => ({
  call,
  contactorIn: false,
  blowerRelayIn: false,
  portsClosed: true,
  slip: { compressor: 1, fan: 1, blower: 1 },
  overloadOut: false,
  highOut: false,
  lowOut: false,
});

/** A thermostat without power does not call. */
function stillCalls(plant: Plant, volts: Volts): boolean {
  return (
    plant.build.thermostatOnBattery || !plant.build.thermostatHasC || size(volts('R@thermostat', 'C@thermostat')) > 15
  );
}

function settleElectric(plant: Plant, at: Standing): Standing {
  let here = at;
  for (let round = 0; round < 12; round += 1) {
    const before = `${here.contactorIn}${here.blowerRelayIn}${here.call}`;
    const volts = solved(plant, here);
    if (blowWhatMust(plant, volts)) continue;
    if (here.call && !stillCalls(plant, volts)) here = { ...here, call: false };
    settleRelays(plant, here, solved(plant, here));
    if (before === `${here.contactorIn}${here.blowerRelayIn}${here.call}`) break;
  }
  settleMotors(plant, here);
  // Once more for the contactor: a compressor that stands pulls the volts down.
  if (blowWhatMust(plant, solved(plant, here))) return settleElectric(plant, nothingMoves(here.call));
  return here;
}

/** Whether air is heard indoors. */
export function blowerTurns(plant: Plant, at: Standing): boolean {
  if (!plant.build.electronicBlower) return at.slip.blower < 1;
  if (!at.blowerRelayIn || plant.drives.blower.seized) return false;
  return size(solved(plant, at)('blower-1', 'blower-2')) > 80 && plant.contacts.blowerMain < 10;
}

/** Share of its air that a fan moves at its slip. */
const airOf = (slip: number): number => (slip >= 0.95 ? 0.04 : Math.min(1, (1 - slip) / 0.9));

/** The refrigerant side as it runs with those motors. */
export function cycleOf(plant: Plant, at: Standing): CycleState {
  const { cycle, iced } = plant;
  const indoors = plant.build.electronicBlower ? airOf(blowerTurns(plant, at) ? 0.1 : 1) : airOf(at.slip.blower);
  return balanceCycle(plant.build, {
    ...cycle,
    stroke: at.portsClosed ? 1 : plant.stage.strokeLeft,
    outdoorAir: cycle.outdoorAir * airOf(at.slip.fan),
    indoorAir: cycle.indoorAir * indoors * (iced ? 0.2 : 1),
  });
}

/** What is found when somebody comes: what was tried last, and what stands now. */
export interface Settled {
  /** With whatever protects still closed. */
  readonly tried: Standing;
  readonly found: Standing;
  readonly cycle: CycleState | undefined;
  readonly compressor: 'running' | 'not-running' | 'hums-and-trips' | 'runs-then-trips';
}

const LIMITS = { 'R-410A': { high: 610, low: 45 }, 'R-22': { high: 410, low: 22 } } as const;

/** Lets the unit go from rest to what a technician finds. What blows on the way is blown in `plant` afterwards. */
export function settle(plant: Plant, call: boolean): Settled {
  const tried = settleElectric(plant, nothingMoves(call));
  const volts = solved(plant, tried);
  const live = energised(volts, 'compressor');
  const found: Standing = { ...tried, slip: { ...tried.slip } };
  if (!live) return { tried, found, cycle: undefined, compressor: 'not-running' };
  const [main, auxiliary] = currents(plant, tried, volts, 'compressor');
  if (tried.slip.compressor === 1) {
    const draws = size(plus(main, auxiliary)) > 0.6 * plant.build.plate.rla;
    if (!draws) return { tried, found, cycle: undefined, compressor: 'not-running' };
    const rests = restOf(plant, { ...found, overloadOut: true });
    // A current that no overload ends goes on until a fuse does.
    if (blowWhatMust(plant, solved(plant, rests), 2.2)) return settle(plant, call);
    return { tried, found: rests, cycle: undefined, compressor: 'hums-and-trips' };
  }
  const cycle = cycleOf(plant, tried);
  const load = plant.drives.compressor.load;
  // It trips on its way up: nobody reads more than that.
  plant.drives.compressor.load = load * Math.min(cycle.work, 1.4);
  tried.slip.compressor = runUp(plant, tried, 'compressor');
  found.slip.compressor = tried.slip.compressor;
  const now = currents(plant, tried, solved(plant, tried), 'compressor');
  plant.drives.compressor.load = load;
  const amps = size(plus(...now));
  const limit = LIMITS[plant.build.refrigerant];
  const switches = plant.build.pressureSwitches;
  const trips = { highOut: switches && cycle.liquidPsi > limit.high, lowOut: switches && cycle.suctionPsi < limit.low };
  const hot =
    amps > 1.45 * plant.build.plate.rla || cycle.dischargeF > 290 || (!switches && cycle.liquidPsi > limit.high * 0.97);
  if (!(trips.highOut || trips.lowOut || hot)) return { tried, found, cycle, compressor: 'running' };
  const pressure = trips.highOut || trips.lowOut;
  const at = restOf(plant, { ...found, ...trips, slip: { ...found.slip }, overloadOut: hot && !pressure });
  // Switches in the control circuit do not stop what is welded to the line.
  if (pressure && energised(solved(plant, at), 'compressor')) return { tried, found, cycle, compressor: 'running' };
  return { tried, found: at, cycle, compressor: 'runs-then-trips' };
}

/** The rest of the unit with the compressor held off by its protection. */
function restOf(plant: Plant, at: Standing): Standing {
  const volts = solved(plant, at);
  settleRelays(plant, at, volts);
  if (!at.contactorIn) at.slip.fan = 1;
  at.slip.compressor = 1;
  if (energised(solved(plant, at), 'fan') && at.slip.fan === 1) at.slip.fan = runUp(plant, at, 'fan');
  return at;
}

/** Amperes of a motor's common lead. */
export function ampsOf(plant: Plant, at: Standing, volts: Volts, machine: Machine): number {
  return size(plus(...currents(plant, at, volts, machine)));
}

/** Amperes that the blower draws, whatever drives it. */
export function blowerAmps(plant: Plant, at: Standing, volts: Volts): number {
  if (!plant.build.electronicBlower) return ampsOf(plant, at, volts, 'blower');
  return size(volts('blower-1', 'blower-2')) / electronicBlowerOhms(plant, blowerTurns(plant, at));
}

/** Amperes of its auxiliary winding. */
export function startAmpsOf(plant: Plant, at: Standing, volts: Volts, machine: Machine): number {
  return size(currents(plant, at, volts, machine)[1]);
}
