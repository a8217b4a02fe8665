import type { Chance } from './chance.ts';
import { lookAt } from './looks.ts';
import { boilingPsi } from './loop.ts';
import { cx, type Solved } from './mesh.ts';
import { restYard, type Stood, standYard } from './run-yard.ts';
import { deadMesh } from './wire-yard.ts';
import type { Yard } from './yard.ts';

/** A test as the lines put it. */
export interface Question {
  readonly id: string;
  readonly function: string;
  readonly from?: string;
  readonly to?: string;
  readonly answers?: readonly string[];
  readonly needs: { readonly power: string; readonly call: string; readonly bench: boolean };
  readonly place: string;
  /** Minutes to let pass before. */
  readonly wait?: number;
}
export type Reading = number | string;

/** Nodes that are called otherwise in the lines. */
const OTHER_NAMES: Readonly<Record<string, string>> = {
  ground: 'earth',
  neutral: 'earth',
  shell: 'earth',
  'fan-frame': 'earth',
  'disconnect-load-1': 'fuse-1-load',
  'disconnect-load-2': 'fuse-2-load',
  // A fan's leads are read where they leave the panel.
  'fan-C': 'fan-feed',
  'fan-R': 'T1',
  'fan-S': 'cap-FAN',
  'coil-2': 'C@condenser',
  'control-fuse-1': 'hot-24',
  'transformer-primary-1': 'door-switch-2',
  'transformer-primary-2': 'handler-L2',
  'transformer-secondary-1': 'hot-24',
  'transformer-secondary-2': 'C@air-handler',
  'blower-cap-1': 'blower-1',
  'blower-2': 'handler-L2',
  'door-switch-1': 'handler-L1',
  'heater-1': 'L1',
  'heater-2': 'L2',
};

function nodeOf(yard: Yard, point: string): string {
  const { lowFirst, float } = yard.design;
  const first = { 1: 'Y@condenser', 2: 'Y-between' };
  const second = { 1: 'Y-between', 2: 'Y-safe' };
  const end = point.endsWith('1') ? 1 : 2;
  if (point.startsWith('low-switch')) return (lowFirst ? first : second)[end];
  if (point.startsWith('high-switch')) return (lowFirst ? second : first)[end];
  if (point.startsWith('float'))
    return (float === 'breaks-R' ? ['control-fuse-2', 'R@air-handler'] : ['Y@air-handler', 'Y-out'])[end - 1]!;
  // A drive is fed as long as the door is shut.
  if (point === 'blower-1' && yard.design.drivenBlower) return 'door-switch-2';
  return OTHER_NAMES[point] ?? point;
}

const OPEN = 2e7;
const tenths = (x: number) => Math.round(10 * x) / 10;

/** A yard under the hands of one visitor. */
export class MetredYard {
  readonly yard: Yard;
  private readonly chance: Chance;
  private readonly calling: Stood;
  /** What it does when it starts, for whoever has waited. */
  private readonly starting: Stood;
  private readonly idle: Stood;
  private readonly dead: Solved;
  /** Whoever reads a unit that trips either waits for a start each time or reads what stands. */
  private readonly waitsForStart: boolean;
  /** Ohms of leads that were not zeroed; how far the thermometer is off; leads left on. */
  private readonly leads: number;
  private readonly thermometer: number;

  constructor(yard: Yard, chance: Chance) {
    this.yard = yard;
    this.chance = chance;
    const asked = standYard(yard, true);
    this.waitsForStart = chance.yes(0.5);
    this.calling = asked.trips !== 'no' && !this.waitsForStart ? restYard(yard, asked) : asked;
    this.starting = asked;
    this.idle = standYard(yard, false);
    this.leads = chance.yes(0.4) ? chance.span(0.1, 0.5) : 0.05;
    this.thermometer = chance.around(0, 0.8);
    this.dead = deadMesh(yard, this.calling.state.overload).solve();
  }

  /** What it has come to under a call, for whoever judges whether somebody would have complained. */
  get stood(): Stood {
    return this.calling;
  }

  /** @returns nothing where there is nothing to put the probes on */
  answer(q: Question): Reading | undefined {
    if (!this.isThere(q)) return undefined;
    switch (q.function) {
      case 'look':
        return lookAt(
          q.id,
          this.yard,
          this.under({ ...q, needs: { ...q.needs, call: 'cooling' } }),
          this.idle,
          this.chance,
        );
      case 'volts':
        return this.volts(q);
      case 'amps':
        return this.amps(q);
      case 'ohms':
        return this.ohms(q);
      case 'microfarads':
        return this.microfarads(q);
      case 'temperature':
        return tenths(this.temperature(q) + this.thermometer + this.chance.around(0, 0.5));
      default:
        return Math.round(this.pressure(q) * this.chance.around(1, 0.006));
    }
  }

  private isThere({ id }: Question): boolean {
    const { design } = this.yard;
    if (/fuse-[12]/.test(id)) return design.fused;
    if (/(high|low)-switch/.test(id)) return design.switches;
    if (/float/.test(id)) return design.float !== 'none';
    if (/C-thermostat/.test(id)) return design.wiredCommon;
    if (/hard-start/.test(id)) return design.hardStart;
    if (/Y2|unloader|second-stage/.test(id)) return design.stages === 2;
    if (/heater/.test(id)) return design.heater;
    if (/R-C-condenser|O-C/.test(id)) return design.heatPump;
    if (/microfarads-blower|ohms-blower$/.test(id)) return !design.drivenBlower;
    return true;
  }

  private under({ needs, wait }: Question): Stood {
    return needs.call === 'none' ? this.idle : wait === undefined ? this.calling : this.starting;
  }

  private volts(q: Question): Reading {
    const { from, to } = q;
    const { mesh } = this.under(q);
    const node = (p: string) => mesh.at(nodeOf(this.yard, p)) ?? [0, 0];
    const exact = cx.size(cx.less(node(from!), node(to!)));
    const read = exact * this.chance.around(1, 0.006) + Math.abs(this.chance.around(0, 0.08));
    return read > 60 ? Math.round(read) : tenths(read);
  }

  private amps(q: Question): Reading {
    const { id } = q;
    const { mesh } = this.under(q);
    const branch: Readonly<Record<string, string>> = {
      'amps-compressor': 'leadC',
      'amps-compressor-start': 'leadS',
      'amps-fan': 'leadFan',
      'amps-fan-start': 'fan-start',
      'amps-blower': this.yard.design.drivenBlower ? 'blower-main' : 'blowerRelay',
      'amps-crankcase-heater': 'heater',
    };
    const exact = cx.size(mesh.through(branch[id]!));
    return tenths(Math.max(0, exact * this.chance.around(1, 0.02) + this.chance.around(0, 0.05)));
  }

  private ohms(q: Question): Reading {
    const exact = this.exactOhms(q);
    if (!(exact < OPEN)) return 'open';
    const read = exact * this.chance.around(1, 0.01) + this.leads;
    return read > 1000 ? Math.round(read) : tenths(read);
  }

  private exactOhms({ id, from, to, wait }: Question): number {
    const { yard } = this;
    const { ohms, compressor, fan, blower } = yard;
    const short = (a: string, b: string) =>
      yard.shorts.find((s) => (s.a === a && s.b === b) || (s.a === b && s.b === a))?.ohms ?? Number.POSITIVE_INFINITY;
    const grounded = (...nodes: string[]) => Math.min(...nodes.map((n) => short(n, 'earth')));
    const switched = (isLow: boolean) => (isLow === yard.design.lowFirst ? ohms.firstSwitch : ohms.secondSwitch);
    const lifted: Readonly<Record<string, () => number>> = {
      'ohms-pole-1-pressed': () => (yard.jammed ? OPEN : yard.contact[0]),
      'ohms-pole-2-pressed': () => (yard.design.poles === 1 ? 0.003 : yard.jammed ? OPEN : yard.contact[1]),
      'ohms-coil': () => yard.coilOhms,
      'ohms-unloader': () => yard.stage.coil,
      'ohms-compressor-shell': () =>
        grounded('windings', 'comp-R', 'comp-S', 'comp-C') + Math.min(5, compressor.mainOhms),
      'ohms-compressor-R-shell': () => grounded('windings', 'comp-R', 'comp-S', 'comp-C'),
      'ohms-fan-C-R': () => fan.mainOhms,
      'ohms-fan-C-S': () => fan.startOhms,
      'ohms-fan-R-S': () => fan.mainOhms + fan.startOhms,
      'ohms-fan-frame': () => grounded('fan-C', 'cap-FAN'),
      'ohms-crankcase-heater': () => yard.heaterOhms,
      'ohms-transformer-primary': () => yard.transformer.primaryOhms,
      'ohms-transformer-secondary': () => yard.transformer.secondaryOhms,
      'ohms-control-fuse': () => ohms.controlFuse,
      'ohms-Y-C': () => {
        const coil = yard.coilOhms * yard.coilTurns + ohms.outY + ohms.outC;
        const wire = short('Y@condenser', 'C@condenser');
        const way = [ohms.floatY, ohms.outY, ohms.firstSwitch, ohms.secondSwitch, ohms.delay, ohms.outC].some(
          (o) => o > 1e4,
        );
        return 1 / (1 / wire + (way ? 0 : 1 / coil));
      },
      'ohms-R-C': () => 1 / (1 / short('R@thermostat', 'C@thermostat') + (yard.design.wiredCommon ? 1 / 900 : 0)),
      'ohms-Y-wire': () => ohms.outY,
      'ohms-C-wire': () => ohms.outC,
      'ohms-float': () => (yard.design.float === 'breaks-R' ? ohms.floatR : ohms.floatY),
      'ohms-high-switch': () => switched(false),
      'ohms-low-switch': () => switched(true),
      'ohms-door-switch': () => ohms.door,
      'ohms-blower': () => blower.mainOhms,
      'ohms-cap-HERM': () => (yard.hermShorted ? 0.3 : OPEN),
      'ohms-cap-FAN': () => (yard.fanCapShorted ? 0.3 : OPEN),
    };
    const own = lifted[id];
    if (own) return own();
    return this.between(nodeOf(yard, from!), nodeOf(yard, to!), wait !== undefined);
  }

  /** Ohms between two nodes of the dead wiring: an amp is sent through and the volts are read. */
  private between(a: string, b: string, waited: boolean): number {
    if (this.dead.at(a) === undefined || this.dead.at(b) === undefined) return OPEN;
    const mesh = deadMesh(this.yard, !waited && this.calling.state.overload);
    mesh.join('meter', a, b, 1000, { volts: [1, 0] });
    const solved = mesh.solve();
    const amps = Math.abs(solved.through('meter')[0]);
    return amps < 2e-8 ? OPEN : 1 / amps - 1000;
  }

  private microfarads({ id }: Question): Reading {
    const { yard } = this;
    const shorted = id === 'microfarads-herm' ? yard.hermShorted : id === 'microfarads-fan' && yard.fanCapShorted;
    const value = {
      'microfarads-herm': yard.herm,
      'microfarads-fan': yard.fanCap,
      'microfarads-blower': yard.blowerCap,
    }[id];
    return shorted ? 0 : tenths(Math.max(0, (value ?? yard.startCap) * this.chance.around(1, 0.012)));
  }

  private temperature({ id }: Question): number {
    const { weather } = this.yard;
    const { loop } = this.calling;
    const still: Readonly<Record<string, number>> = {
      'temperature-supply-air': weather.return - 1,
      'temperature-condenser-air-out': weather.outdoors + 1,
      'temperature-suction-line': (weather.return + weather.outdoors) / 2,
      'temperature-liquid-line': weather.outdoors + 1,
      'temperature-discharge-line': weather.outdoors + 6,
    };
    if (id === 'temperature-outdoor-air') return weather.outdoors;
    if (id === 'temperature-return-air') return weather.return;
    if (id === 'wet-bulb-return-air') return weather.wetBulb;
    if (!loop || !this.calling.state.compressor) return still[id]!;
    if (this.yard.loop.reversed)
      return (
        {
          'temperature-supply-air': weather.return + 17,
          'temperature-condenser-air-out': weather.outdoors - 9,
          'temperature-suction-line': weather.return + 45,
          'temperature-liquid-line': weather.return + 14,
        }[id] ?? loop.discharge
      );
    return (
      {
        'temperature-supply-air': loop.supply,
        'temperature-condenser-air-out': loop.condenserOut,
        'temperature-suction-line': loop.suctionLine,
        'temperature-liquid-line': loop.liquidLine,
      }[id] ?? loop.discharge
    );
  }

  private pressure({ id }: Question): number {
    const { loop: kind, weather } = this.yard;
    const rest = boilingPsi(kind.fluid, weather.outdoors) - 14.7 + kind.foreignPsi;
    const { loop, state } = this.calling;
    if (id === 'pressure-standing' || !loop || !state.compressor) return rest;
    if (kind.reversed) return id === 'pressure-suction' ? loop.liquidPsi * 0.9 : loop.liquidPsi;
    return id === 'pressure-suction' ? loop.suctionPsi : loop.liquidPsi;
  }
}
