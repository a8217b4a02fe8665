import { type Cx, cx, Mesh, type Solved } from './mesh.ts';
import { heldOhms, type Motor, speedVolts, startWindingOhms, turningOhms } from './sheet-motor.ts';
import { LINKS, type LinkName, type Yard } from './yard.ts';

const OMEGA = 377;
const TURN: Cx = [-0.5, Math.sqrt(3) / 2];

/** How a motor stands: turning at a slip, or held. */
export type Turn = { readonly slip: number; readonly help: number; readonly volts: number } | undefined;

export interface State {
  readonly call: boolean;
  contactor: boolean;
  blowerRelay: boolean;
  compressor: Turn;
  fan: Turn;
  blower: Turn;
  /** What heat or pressure has opened. */
  overload: boolean;
  /** Share of the stroke that an open bypass sends back. */
  spills: number;
  high: boolean;
  low: boolean;
}

const capacitor = (microfarads: number): Cx => [
  0.05,
  microfarads < 0.05 ? Number.POSITIVE_INFINITY : -1e6 / (OMEGA * microfarads),
];

function joinMotor(
  mesh: Mesh,
  name: string,
  motor: Motor,
  turn: Turn,
  ends: { main: string; start: string; common: string },
  open: { main: boolean; start: boolean },
): void {
  const { main, start, common } = ends;
  const ohms = turn ? turningOhms(motor, turn.volts, turn.slip, turn.help) : heldOhms(motor);
  if (!open.main) mesh.join(`${name}-main`, main, common, ohms);
  if (open.start) return;
  const drive = turn ? { from: { plus: main, minus: common, gain: speedVolts(motor, turn.slip) } } : {};
  mesh.join(`${name}-start`, start, common, startWindingOhms(motor), drive);
}

/** Whether what is named conducts as a sound part would, for currents that matter. */
export const whole = (ohms: number) => ohms < 400;

/** The yard as a mesh of alternating volts in a state. */
export function live(yard: Yard, s: State): Mesh {
  const { design } = yard;
  const mesh = new Mesh();
  const second: Cx = design.volts === 240 ? [-yard.legs[1], 0] : cx.times([yard.legs[1], 0], TURN);
  mesh.join('leg1', 'service-1', 'earth', [yard.legOhms[0], 0.02], { volts: [yard.legs[0], 0] });
  mesh.join('leg2', 'service-2', 'earth', [yard.legOhms[1], 0.02], { volts: second });
  mesh.join('house1', 'service-1', 'house-neutral', yard.house[0]);
  mesh.join('house2', 'service-2', 'house-neutral', yard.house[1]);
  mesh.join('house240', 'service-1', 'service-2', yard.house[2]);
  mesh.join('neutral', 'house-neutral', 'earth', yard.neutralOhms);
  for (const name of Object.keys(LINKS) as LinkName[]) {
    const [a, b] = LINKS[name];
    if (!isClosed(yard, s, name)) continue;
    mesh.join(name, a, b, yard.ohms[name]);
  }
  contacts(mesh, yard, s);
  loads(mesh, yard, s);
  low(mesh, yard, s);
  for (const { a, b, ohms } of yard.shorts) mesh.join(`short-${a}-${b}`, a, b, ohms);
  // Cables lie beside each other and beside earth.
  for (const n of [
    'L1',
    'L2',
    'T1',
    'T2',
    'R@air-handler',
    'Y@condenser',
    'Y@thermostat',
    'disconnect-line-1',
    'disconnect-line-2',
  ])
    mesh.join(`stray-${n}`, n, 'earth', [1, -2.6e6]);
  mesh.join('stray-pair', 'L1', 'L2', [1, -5e6]);
  return mesh;
}

function isClosed(yard: Yard, s: State, name: LinkName): boolean {
  const { design } = yard;
  if (name === 'defrostRelay' && !design.heatPump) return true;
  if (['wireO', 'outO', 'callO'].includes(name) && !design.heatPump) return false;
  if (name === 'outR' && !design.heatPump) return false;
  if (name === 'wireC' && !design.wiredCommon) return false;
  if (name === 'callY') return s.call && yard.closes.Y && !yard.thermostatOff && awake(yard);
  if (name === 'callG') return s.call && yard.closes.G && !yard.thermostatOff && awake(yard);
  if (name === 'overload') return !s.overload;
  if (name === 'firstSwitch' || name === 'secondSwitch') {
    const isLow = (name === 'firstSwitch') === design.lowFirst;
    return !design.switches || !(isLow ? s.low : s.high);
  }
  return true;
}

/** A thermostat on the cable's power sleeps without it; that is seen where what it needs is broken. */
const awake = (yard: Yard): boolean => yard.design.batteries || !yard.design.wiredCommon || yard.ohms.wireC < 1000;

function contacts(mesh: Mesh, yard: Yard, s: State): void {
  const closes = s.contactor && !yard.jammed;
  const [first, second] = yard.welded;
  if (closes || first) mesh.join('pole1', 'L1', 'T1', yard.contact[0]);
  if (yard.design.poles === 1) mesh.join('pole2', 'L2', 'T2', 0.003);
  else if (closes || second) mesh.join('pole2', 'L2', 'T2', yard.contact[1]);
}

function loads(mesh: Mesh, yard: Yard, s: State): void {
  const { design } = yard;
  if (design.heater) mesh.join('heater', 'L1', 'L2', yard.heaterOhms);
  joinMotor(
    mesh,
    'compressor',
    // Spilling spares watts, a little less than it spares gas.
    { ...yard.compressor, load: yard.compressor.load * (1 - 0.85 * s.spills) },
    s.compressor,
    { main: 'comp-R', start: 'comp-S', common: 'windings' },
    {
      main: !whole(yard.compressor.mainOhms),
      start: !whole(yard.compressor.startOhms),
    },
  );
  mesh.join('herm', 'cap-C', 'cap-HERM', yard.hermShorted ? 0.3 : capacitor(yard.herm));
  // The part that starts is out of the way once the rotor turns.
  if (yard.startCap > 0 && !s.compressor) mesh.join('startCap', 'cap-C', 'cap-HERM', capacitor(yard.startCap));
  joinMotor(
    mesh,
    'fan',
    yard.fan,
    s.fan,
    { main: 'T1', start: 'cap-FAN', common: 'fan-C' },
    {
      main: !whole(yard.fan.mainOhms),
      start: !whole(yard.fan.startOhms),
    },
  );
  mesh.join('fanCap', 'cap-C', 'cap-FAN', yard.fanCapShorted ? 0.3 : capacitor(yard.fanCap));
  if (yard.handlerFed) {
    mesh.join('handler1', 'service-1', 'handler-L1', 0.05);
    if (design.blowerOn120) mesh.join('handler2', 'house-neutral', 'handler-L2', 0.05);
    else mesh.join('handler2', 'service-2', 'handler-L2', 0.05);
  }
  if (design.drivenBlower)
    mesh.join('blower-main', 'door-switch-2', 'handler-L2', s.blower ? (design.blowerOn120 ? 38 : 140) : 4e4);
  else {
    if (s.blowerRelay && yard.blowerRelay) mesh.join('blowerRelay', 'door-switch-2', 'blower-1', 0.02);
    joinMotor(
      mesh,
      'blower',
      yard.blower,
      s.blower,
      { main: 'blower-1', start: 'blower-cap-2', common: 'handler-L2' },
      {
        main: !whole(yard.blower.mainOhms),
        start: !whole(yard.blower.startOhms),
      },
    );
    mesh.join('blowerCap', 'blower-1', 'blower-cap-2', capacitor(yard.blowerCap));
  }
}

/** The 24 volts. */
function low(mesh: Mesh, yard: Yard, s: State): void {
  const { design, transformer } = yard;
  mesh.join('magnetising', 'door-switch-2', 'handler-L2', transformer.works ? [60, 900] : 1e7);
  if (transformer.works) {
    const gain: Cx = [26.6 / yard.tap, 0];
    mesh.join('secondary', 'hot-24', 'C@air-handler', [transformer.stiff, 0.6], {
      from: { plus: 'door-switch-2', minus: 'handler-L2', gain },
      drawn: true,
    });
  }
  if (design.grounded24) mesh.join('bond', 'C@air-handler', 'earth', 0.1);
  const turns = yard.coilTurns ** 2;
  const pull: Cx = s.contactor && !yard.jammed ? [18 * turns, 64 * turns] : [14 * turns, 26 * turns];
  if (yard.coilOhms < 1000) mesh.join('coil', 'coil-1', 'C@condenser', pull);
  mesh.join('relayCoil', 'G@air-handler', 'C@air-handler', [40, 130]);
  if (design.heatPump) mesh.join('valveCoil', 'O@condenser', 'C@condenser', [14, 70]);
  if (design.stages === 2) second(mesh, yard, s);
  if (design.wiredCommon) mesh.join('display', 'R@thermostat', 'C@thermostat', 900);
  else mesh.join('display', 'R@thermostat', 'Y@thermostat', 60_000);
}

/** Whether the thermostat closes to Y2: it asks for both stages at once. */
const asksSecond = (yard: Yard, s: State): boolean => s.call && yard.stage.calls && !yard.thermostatOff && awake(yard);

/** The wire of the second stage and the coil at its end. */
function second(mesh: Mesh, yard: Yard, s: State): void {
  const { stage, design } = yard;
  if (asksSecond(yard, s)) mesh.join('callY2', 'R@thermostat', 'Y2@thermostat', 0.15);
  if (whole(stage.indoors)) mesh.join('wireY2', 'Y2@thermostat', 'Y2@air-handler', stage.indoors);
  if (whole(stage.outdoors)) mesh.join('outY2', 'Y2@air-handler', 'Y2@condenser', stage.outdoors);
  if (design.stageBehindContactor && (!s.contactor || yard.jammed)) return;
  mesh.join('plugY2', 'Y2@condenser', 'unloader-1', 0.05);
  if (stage.coil < 1000) mesh.join('unloader', 'unloader-1', 'C@condenser', [stage.coil, 0.7 * stage.coil]);
}

/** Share of its stroke that the compressor spills back: none where it has one stage, or the plunger has come. */
export function spilled(yard: Yard, mesh: Solved): number {
  const { stage, design } = yard;
  if (design.stages === 1) return 0;
  const across = cx.size(cx.less(mesh.at('unloader-1') ?? [0, 0], mesh.at('C@condenser') ?? [0, 0]));
  return stage.plunger && stage.coil < 1000 && across > 16 ? 0 : stage.spills;
}

/** The same wiring with its power off, for an ohmmeter: direct current, contacts at rest. */
export function deadMesh(yard: Yard, overload: boolean): Mesh {
  const mesh = new Mesh();
  const rest: State = {
    call: false,
    contactor: false,
    blowerRelay: false,
    compressor: undefined,
    fan: undefined,
    blower: undefined,
    overload,
    spills: 0,
    high: false,
    low: false,
  };
  for (const name of Object.keys(LINKS) as LinkName[])
    if (isClosed(yard, rest, name)) mesh.join(name, LINKS[name][0], LINKS[name][1], yard.ohms[name]);
  contacts(mesh, yard, rest);
  const { design } = yard;
  if (design.heater) mesh.join('heater', 'L1', 'L2', yard.heaterOhms);
  mesh.join('main', 'comp-R', 'windings', yard.compressor.mainOhms);
  mesh.join('start', 'comp-S', 'windings', yard.compressor.startOhms);
  mesh.join('fan-main', 'T1', 'fan-C', yard.fan.mainOhms);
  mesh.join('fan-start', 'cap-FAN', 'fan-C', yard.fan.startOhms);
  if (yard.hermShorted) mesh.join('herm', 'cap-C', 'cap-HERM', 0.3);
  if (yard.fanCapShorted) mesh.join('fanCap', 'cap-C', 'cap-FAN', 0.3);
  for (const { a, b, ohms } of yard.shorts) mesh.join(`short-${a}-${b}`, a, b, ohms);
  return mesh;
}
