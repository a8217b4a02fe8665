import { type Running, runLoop } from './loop.ts';
import { type Cx, cx, type Solved } from './mesh.ts';
import { type Motor, slipOf, startTorque } from './sheet-motor.ts';
import { live, type State, spilled, type Turn, whole } from './wire-yard.ts';
import type { Yard } from './yard.ts';

/** What a yard has come to, with or without a call. */
export interface Stood {
  readonly state: State;
  readonly mesh: Solved;
  readonly loop: Running | undefined;
  /** The compressor starts, or tries to, and goes out again. */
  readonly trips: 'no' | 'cannot start' | 'on heat' | 'on pressure';
}

const volts = (mesh: Solved, a: string, b: string): Cx => cx.less(mesh.at(a) ?? [0, 0], mesh.at(b) ?? [0, 0]);

function tryMotor(
  motor: Motor,
  name: string,
  mesh: Solved,
  before: Turn,
  ends: { main: string; common: string },
  alive: { main: boolean; start: boolean; cap: number; needs?: number },
): Turn {
  if (!alive.main) return undefined;
  const across = cx.size(volts(mesh, ends.main, ends.common));
  const help = alive.start ? Math.min(1, (alive.cap / motor.sheet.microfarads) * (across / motor.sheet.volts)) : 0;
  if (!before) {
    const torque = startTorque(motor, mesh.through(`${name}-main`), mesh.through(`${name}-start`));
    if (torque < (alive.needs ?? 1) * Math.max(1, motor.load)) return undefined;
  }
  const slip = slipOf(motor, across, help);
  return slip === undefined ? undefined : { slip, help, volts: across };
}

/** Lets the yard come to rest from standing still. */
export function standYard(yard: Yard, call: boolean): Stood {
  const s: State = {
    call,
    contactor: false,
    blowerRelay: false,
    compressor: undefined,
    fan: undefined,
    blower: undefined,
    overload: false,
    spills: 0,
    high: false,
    low: false,
  };
  let mesh = live(yard, s).solve();
  let loop: Running | undefined;
  let trips: Stood['trips'] = 'no';
  for (let round = 0; round < 14; round += 1) {
    const was = JSON.stringify([
      s.contactor,
      s.blowerRelay,
      !!s.compressor,
      !!s.fan,
      !!s.blower,
      s.overload,
      s.high,
      s.low,
    ]);
    s.contactor =
      yard.coilOhms < 1000 &&
      cx.size(volts(mesh, 'coil-1', 'C@condenser')) * Math.min(1, yard.coilTurns + 0.25) >
        (s.contactor ? 9 : yard.pullsAt);
    s.spills = spilled(yard, mesh);
    s.blowerRelay = cx.size(volts(mesh, 'G@air-handler', 'C@air-handler')) > 14;
    const c = yard.compressor;
    const needs = yard.needsStart && yard.startCap < 60 ? 9 : 0.9;
    s.compressor = tryMotor(
      c,
      'compressor',
      mesh,
      s.compressor,
      { main: 'comp-R', common: 'windings' },
      {
        main: whole(c.mainOhms) && !s.overload,
        start: whole(c.startOhms) && !yard.hermShorted && whole(yard.ohms.leadCap) && whole(yard.ohms.leadS),
        cap: yard.herm,
        needs,
      },
    );
    s.fan = tryMotor(
      yard.fan,
      'fan',
      mesh,
      s.fan,
      { main: 'T1', common: 'fan-C' },
      {
        main: whole(yard.fan.mainOhms),
        start: whole(yard.fan.startOhms) && !yard.fanCapShorted && whole(yard.ohms.leadCap),
        cap: yard.fanCap,
        needs: 0.8,
      },
    );
    s.blower = blowerTurn(yard, s, mesh);
    mesh = live(yard, s).solve();
    if (
      JSON.stringify([s.contactor, s.blowerRelay, !!s.compressor, !!s.fan, !!s.blower, s.overload, s.high, s.low]) !==
      was
    )
      continue;
    // What opens is found by the next visitor open, or closed again: that is the meter's.
    if (s.compressor) {
      loop = runLoop(loopNow(yard, s), yard.weather);
      if (yard.design.switches && loop.liquidPsi > yard.switchSet.high) trips = 'on pressure';
      else if (yard.design.switches && loop.suctionPsi < yard.switchSet.low) trips = 'on pressure';
      else if (loop.load * c.load > 1.75) trips = 'on heat';
    } else if (
      cx.size(mesh.through('compressor-main')) > 0.4 * c.sheet.heldAmps ||
      cx.size(mesh.through('compressor-start')) > 0.3 * c.sheet.heldAmps
    ) {
      trips = 'cannot start';
    }
    break;
  }
  return { state: s, mesh, loop, trips };
}

/** The yard at rest after it tripped: what opened stays open. */
export function restYard(yard: Yard, stood: Stood): Stood {
  const s: State = { ...stood.state, compressor: undefined };
  const high = (stood.loop?.liquidPsi ?? 0) > yard.switchSet.high;
  if (stood.trips === 'on pressure') {
    s.high = high;
    s.low = !high;
    s.contactor = false;
    s.fan = undefined;
  } else s.overload = true;
  return { ...stood, state: s, mesh: live(yard, s).solve(), loop: undefined };
}

function blowerTurn(yard: Yard, s: State, mesh: Solved): Turn {
  const { design } = yard;
  if (design.drivenBlower) {
    const fed = cx.size(volts(mesh, 'door-switch-2', 'handler-L2')) > 0.6 * yard.blower.sheet.volts;
    const asked = s.blowerRelay && yard.blowerRelay;
    return fed && asked && whole(yard.blower.mainOhms) && yard.blower.load < 3
      ? { slip: 0.05, help: 1, volts: 230 }
      : undefined;
  }
  return tryMotor(
    yard.blower,
    'blower',
    mesh,
    s.blower,
    { main: 'blower-1', common: 'handler-L2' },
    {
      main: whole(yard.blower.mainOhms),
      start: whole(yard.blower.startOhms),
      cap: yard.blowerCap,
      needs: 0.5,
    },
  );
}

function loopNow(yard: Yard, s: State) {
  const speed = s.fan ? 1 - s.fan.slip : 0;
  const air = s.blower ? (yard.design.drivenBlower ? 1 : 1 - s.blower.slip + 0.05) : 0.07;
  return {
    ...yard.loop,
    spills: s.spills,
    outdoorAir: yard.loop.outdoorAir * Math.max(0.1, speed) * (yard.fanBackwards ? 0.35 : 1),
    indoorAir: yard.loop.indoorAir * Math.max(0.07, air),
  };
}
