import { type Complex, cx, minus, over, plus, scale, size, times } from './complex.ts';
import type { HiddenMotor, HiddenUnit } from './hidden-unit.ts';
import { Network } from './network.ts';
import { terminalMatrix } from './psc-motor.ts';

/** What is pulled in and how fast things turn; slip 1 is standing still. */
export interface Running {
  contactor: boolean;
  blowerRelay: boolean;
  overloadOut: boolean;
  slips: { compressor: number; fan: number; blower: number };
}

const OMEGA = 2 * Math.PI * 60;
const farads = (microfarads: number): Complex => cx(0, -1 / (OMEGA * Math.max(microfarads, 1e-4) * 1e-6));

/** Terminals of a motor, and the two of its capacitor. */
type Terminals = readonly [run: string, start: string, common: string, fromCap: string, toCap: string];

function addMotor(net: Network, m: HiddenMotor, slip: number, terminals: Terminals): void {
  const [run, start, common, fromCap, toCap] = terminals;
  const [z11, z12, z21, z22] = terminalMatrix(m.windings, slip);
  const mainOpen = !Number.isFinite(m.mainDc);
  const auxOpen = !Number.isFinite(m.auxDc);
  if (!mainOpen && !auxOpen) {
    const det = minus(times(z11, z22), times(z12, z21));
    net.transfer(run, common, run, common, over(z22, det));
    net.transfer(run, common, start, common, scale(over(z12, det), -1));
    net.transfer(start, common, run, common, scale(over(z21, det), -1));
    net.transfer(start, common, start, common, over(z11, det));
  } else if (!mainOpen) net.impedance(run, common, z11);
  else if (!auxOpen) net.impedance(start, common, z22);
  if (m.capShorted) net.impedance(fromCap, toCap, cx(0.2));
  else net.impedance(fromCap, toCap, farads(m.microfarads));
}

/** Everything at line voltage. */
export function lineNetwork(u: HiddenUnit, r: Running): Network {
  const net = new Network();
  for (const leg of [1, 2] as const) {
    const i = leg - 1;
    const angle = leg === 1 ? 0 : u.threePhase ? (-2 * Math.PI) / 3 : Math.PI;
    net.join(`utility-${leg}`, `service-${leg}`);
    if (!u.lost[i]) {
      const volts = cx(u.leg * Math.cos(angle), u.leg * Math.sin(angle));
      net.source(`utility-${leg}`, volts, cx(0.03, 0.02));
    }
    net.impedance(`utility-${leg}`, 'ground', cx(u.smallLoads[i]!));
    net.path(`utility-${leg}`, `breaker-${leg}`, u.breaker[i]!);
    net.path(`breaker-${leg}`, `disconnect-line-${leg}`, u.feeder[i]!);
    net.path(`disconnect-line-${leg}`, `fuse-${leg}-line`, u.blade[i]!);
    net.path(`fuse-${leg}-line`, `fuse-${leg}-load`, u.fuse[i]!);
    net.join(`fuse-${leg}-load`, `disconnect-load-${leg}`);
    net.path(`disconnect-load-${leg}`, `L${leg}`, u.whip[i]!);
    const bar = leg === 2 && u.poles === 1;
    if (bar || u.welded[i]) net.join(`L${leg}`, `T${leg}`);
    else if (r.contactor && !u.jammed) net.path(`L${leg}`, `T${leg}`, u.pole[i]!);
    for (const node of [`L${leg}`, `T${leg}`]) net.impedance(node, 'ground', cx(0, -1 / (OMEGA * u.strayFarads)));
    if (u.handlerOn) net.path(`utility-${leg}`, `handler-L${leg}`, 0);
    net.join(`heater-${leg}`, `L${leg}`);
  }
  net.impedance('utility-1', 'utility-2', cx(u.bigLoads));
  net.impedance('L1', 'L2', cx(0, -1 / (OMEGA * 0.6 * u.strayFarads)));
  net.path('L1', 'L2', u.heater);
  addOutdoorLoads(net, u, r);
  addHandlerLoads(net, u, r);
  return net;
}

function addOutdoorLoads(net: Network, u: HiddenUnit, r: Running): void {
  const { compressorLeads: c, fanLeads: f } = u;
  net.path('T1', 'comp-R', c.R);
  net.path('T2', 'comp-C', c.C);
  net.path('cap-HERM', 'comp-S', c.S);
  net.path('T1', 'cap-C', u.capacitorLead);
  net.path('T1', 'fan-R', f.R);
  net.path('cap-FAN', 'fan-S', f.S);
  net.path('comp-C', 'winding', r.overloadOut ? Number.POSITIVE_INFINITY : u.overload);
  addMotor(net, u.compressor, r.slips.compressor, ['comp-R', 'comp-S', 'winding', 'cap-C', 'cap-HERM']);
  net.path('winding', 'ground', u.compressor.shellOhms);
  net.path('T2', 'fan-feed', u.fanRelay);
  net.path('fan-feed', 'fan-C', f.C);
  addMotor(net, u.fan, r.slips.fan, ['fan-R', 'fan-S', 'fan-C', 'cap-C', 'cap-FAN']);
  net.path('fan-C', 'ground', u.fan.shellOhms);
}

function addHandlerLoads(net: Network, u: HiddenUnit, r: Running): void {
  net.join('handler-L1', 'door-switch-1');
  net.path('door-switch-1', 'door-switch-2', u.door);
  net.join('door-switch-2', 'transformer-primary-1');
  net.join('handler-L2', 'transformer-primary-2');
  net.join('handler-L2', 'blower-2');
  if (Number.isFinite(u.primaryOhms)) net.impedance('transformer-primary-1', 'transformer-primary-2', cx(700, 1400));
  net.path('door-switch-2', 'blower-1', r.blowerRelay && u.blowerContact ? 0.02 : Number.POSITIVE_INFINITY);
  net.join('blower-1', 'blower-cap-1');
  addMotor(net, u.blower, r.slips.blower, ['blower-1', 'blower-cap-2', 'blower-2', 'blower-1', 'blower-cap-2']);
}

/** Everything at 24 V, fed by what the primary sees. */
export function controlNetwork(
  u: HiddenUnit,
  primaryVolts: number,
  call: boolean,
  fuseOut: boolean,
  highOut: boolean,
): Network {
  const net = new Network();
  const works = Number.isFinite(u.primaryOhms) && Number.isFinite(u.secondaryOhms);
  const volts = works ? (primaryVolts * u.secondaryVolts) / u.tap : 0;
  if (works) net.sourceBetween('transformer-secondary-1', 'transformer-secondary-2', cx(volts), cx(u.secondaryLeak));
  net.join('transformer-secondary-2', 'C@air-handler');
  if (u.grounded24) net.path('C@air-handler', 'ground', 0.1);
  else net.impedance('C@air-handler', 'ground', cx(0, -1 / (OMEGA * 4e-10)));
  net.join('transformer-secondary-1', 'control-fuse-1');
  net.path('control-fuse-1', 'control-fuse-2', fuseOut ? Number.POSITIVE_INFINITY : u.fuse24);
  addFloat(net, u);
  net.path('R@air-handler', 'R@thermostat', u.wireR);
  net.path('C@air-handler', 'C@thermostat', 0.4);
  net.impedance('R@thermostat', 'C@thermostat', cx(2500));
  if (call && u.statCalls) net.path('R@thermostat', 'Y@thermostat', 0.05);
  if (call && u.statCallsFan) net.path('R@thermostat', 'G@thermostat', 0.05);
  if (Number.isFinite(u.shortRC)) net.path('R@thermostat', 'C@thermostat', Math.max(u.shortRC, 0.02));
  net.path('Y@thermostat', 'Y@air-handler', u.wireYin);
  net.path('G@thermostat', 'G@air-handler', u.wireG);
  net.impedance('G@air-handler', 'C@air-handler', cx(45, 120));
  net.join('Y@condenser', 'high-switch-1');
  net.path('high-switch-1', 'high-switch-2', highOut ? Number.POSITIVE_INFINITY : u.high);
  net.join('high-switch-2', 'low-switch-1');
  net.path('low-switch-1', 'low-switch-2', u.low);
  net.path('low-switch-2', 'coil-1', u.delay);
  net.join('coil-2', 'C@condenser');
  if (Number.isFinite(u.coilR)) net.impedance('coil-1', 'coil-2', cx(u.coilR, u.coilX));
  net.path('C@air-handler', 'C@condenser', u.wireC);
  net.path('Y@condenser', 'C@condenser', Math.max(u.shortYC, 0.02));
  if (u.stages === 2) addSecondStage(net, u, call);
  if (u.heatPump) {
    net.path('R@thermostat', 'O@thermostat', 0.05);
    net.path('O@thermostat', 'O@air-handler', 0.5);
    net.path('O@air-handler', 'O@condenser', u.wireO);
    net.impedance('O@condenser', 'C@condenser', cx(22, 58));
    net.path('R@air-handler', 'R@condenser', 0.5);
  }
  return net;
}

/** Y2 runs past the air handler to the coil on the compressor; the other end of the coil is on the common. */
function addSecondStage(net: Network, u: HiddenUnit, call: boolean): void {
  if (call && u.statCalls && u.statCallsTwo) net.path('R@thermostat', 'Y2@thermostat', 0.05);
  net.path('Y2@thermostat', 'Y2@air-handler', 0.4);
  net.path('Y2@air-handler', 'Y2@condenser', u.wireTwo);
  net.join('unloader-1', 'Y2@condenser');
  net.join('unloader-2', 'C@condenser');
  if (Number.isFinite(u.unloaderR)) net.impedance('unloader-1', 'unloader-2', cx(u.unloaderR, u.unloaderX));
}

function addFloat(net: Network, u: HiddenUnit): void {
  if (u.floatIn === 'R') {
    net.join('control-fuse-2', 'float-1');
    net.path('float-1', 'float-2', u.floatOhms);
    net.join('float-2', 'R@air-handler');
    net.path('Y@air-handler', 'Y@condenser', u.wireYout);
    return;
  }
  net.join('control-fuse-2', 'R@air-handler');
  net.join('Y@air-handler', 'float-1');
  net.path('float-1', 'float-2', u.floatIn === 'Y' ? u.floatOhms : 0);
  net.path('float-2', 'Y@condenser', u.wireYout);
}

/** What a meter on ohms sees with the disconnect pulled and the air handler off: only metal and windings. */
export function deadNetwork(u: HiddenUnit): Network {
  const net = new Network();
  for (const leg of [1, 2] as const) {
    const i = leg - 1;
    net.path(`fuse-${leg}-line`, `fuse-${leg}-load`, u.fuse[i]!);
    net.path(`fuse-${leg}-load`, `L${leg}`, u.whip[i]!);
    if ((leg === 2 && u.poles === 1) || u.welded[i]) net.path(`L${leg}`, `T${leg}`, 0.01);
  }
  net.path('L1', 'L2', u.heater);
  net.join('T1', 'cap-C');
  net.path('T2', 'winding', u.overload);
  net.path('T1', 'winding', u.compressor.mainDc);
  net.path('T2', 'fan-C', u.fanRelay);
  net.path('fan-C', 'T1', u.fan.mainDc);
  net.path('winding', 'ground', u.compressor.shellOhms);
  net.path('fan-C', 'ground', u.fan.shellOhms);
  return net;
}

export const magnitude = (net: Network, a: string, b: string): number => size(plus(net.at(a), scale(net.at(b), -1)));
