import type { Dice } from './dice.ts';
import { size } from './phasor.ts';
import { OPEN, type Plant, type Standing } from './plant.ts';
import { gaugeAt } from './pressure-chart.ts';
import { ampsOf, blowerAmps, blowerTurns, type Settled, settle, solved, startAmpsOf } from './settle.ts';
import { type Part, wirePlant } from './wire-plant.ts';

/** A test as a line of the protocol asks for it. */
export interface AskedTest {
  readonly id: string;
  readonly function: string;
  readonly from?: string;
  readonly to?: string;
  readonly answers?: readonly string[];
  readonly needs: { readonly power: string; readonly call: string; readonly bench: boolean };
  readonly place: string;
  readonly minutes: number;
}

/** A number in the test's unit, `open`, an answer of a look, or nothing: there is no such thing on this unit. */
export type Answer = number | 'open' | string | undefined;

/** Which part is taken out of the circuit for a measurement on the bench, by the point it begins at. */
const BENCH: readonly (readonly [start: string, part: Part])[] = [
  ['coil-', 'coil'],
  ['unloader', 'unloader'],
  ['fan-', 'fan'],
  ['comp-', 'compressor'],
  ['heater-', 'heater'],
  ['transformer-', 'transformer'],
  ['control-fuse', 'fuse'],
  ['float', 'float'],
  ['high-switch', 'switches'],
  ['low-switch', 'switches'],
  ['door', 'door'],
  ['blower', 'blower'],
  ['cap-', 'capacitor'],
  ['L', 'contactor'],
];

/** A unit with its instruments: it answers tests, knowing nothing of who asks. */
export class MeteredPlant {
  readonly plant: Plant;
  private readonly dice: Dice;
  private standing = new Map<boolean, Settled>();
  /** Each visitor's meter is off by its own share. */
  private readonly off: Readonly<Record<'volts' | 'amps' | 'ohms' | 'thermometer' | 'gauge', number>>;
  /** A meter that draws more shows no ghosts. */
  private readonly meterOhms: number;
  /** One in some looks at a unit that trips meets it while it runs. */
  private readonly meetsItRunning: boolean;
  /** Whether the overload has closed again when the meter comes to the terminals of a resting compressor. */
  private readonly hasCooled: boolean;

  constructor(plant: Plant, dice: Dice) {
    this.plant = plant;
    this.dice = dice;
    this.meterOhms = dice.yes(0.12) ? 3000 : 1e7;
    this.meetsItRunning = dice.yes(0.5);
    this.hasCooled = dice.yes(0.6);
    this.off = {
      volts: dice.around(1, 0.006),
      amps: dice.around(1, 0.015),
      ohms: dice.around(1, 0.008),
      thermometer: dice.around(0, 0.8),
      gauge: dice.around(0, 1.2),
    };
    // Calls were made before anybody came: what blows has blown.
    const { cycle } = this.settled(true);
    // A coil that boils well below freezing has frosted over by the time somebody comes.
    if (cycle && cycle.evaporatorF < 24 && plant.cycle.wetBulbF > 55 && dice.yes(0.6)) plant.seen.add('coil-iced');
    this.standing.clear();
  }

  settled(call: boolean): Settled {
    const known = this.standing.get(call) ?? settle(this.plant, call);
    this.standing.set(call, known);
    return known;
  }

  /** After a repair everything settles anew. */
  disturbed(): void {
    this.standing.clear();
    this.settled(true);
    this.standing.clear();
  }

  private now(call: boolean): Standing {
    const s = this.settled(call);
    return s.compressor === 'runs-then-trips' && this.meetsItRunning ? s.tried : s.found;
  }

  answer(test: AskedTest): Answer {
    const call = test.needs.call !== 'none';
    switch (test.function) {
      case 'volts':
        return this.volts(test.from!, test.to!, call);
      case 'ohms':
        return this.ohms(test);
      case 'amps':
        return this.amps(test.from!, call);
      case 'microfarads':
        return this.microfarads(test.to!);
      case 'temperature':
        return this.temperature(test, call);
      case 'pressure':
        return this.pressure(test, call);
      default:
        return this.look(test, call);
    }
  }

  private volts(from: string, to: string, call: boolean): Answer {
    const at = this.now(call);
    const net = wirePlant(this.plant, at, false);
    if (!net.has(from) || !net.has(to)) return undefined;
    net.admittance(from, to, [1 / this.meterOhms, 0]);
    const volts = size(net.solve()(from, to));
    const seen = volts * this.off.volts * this.dice.around(1, 0.004) + this.dice.around(0, 0.03);
    return round(Math.max(seen, 0), seen < 60 ? 0.1 : 1);
  }

  private ohms(test: AskedTest): Answer {
    const { from, to } = test as Required<AskedTest>;
    const { contacts: c } = this.plant;
    const direct: Readonly<Record<string, number>> = { 'ohms-Y-wire': c.wireYOutdoors, 'ohms-C-wire': c.wireC };
    const ohms = direct[test.id] ?? this.ohmmeter(test, from, to);
    if (ohms === undefined) return undefined;
    if (ohms > 3e7) return 'open';
    const seen = ohms * this.off.ohms * this.dice.around(1, 0.006) + Math.abs(this.dice.around(0.1, 0.08));
    return round(seen, seen < 100 ? 0.1 : seen < 10000 ? 1 : 1000);
  }

  private ohmmeter(test: AskedTest, from: string, to: string): number | undefined {
    const part = test.needs.bench && test.id !== 'ohms-Y-C' ? BENCH.find(([s]) => from.startsWith(s))?.[1] : undefined;
    const now = this.now(true);
    const at = { ...now, contactorIn: false, call: false, blowerRelayIn: false };
    at.overloadOut = now.overloadOut && !this.hasCooled;
    const net = wirePlant(this.plant, at, true, part, test.id.endsWith('-pressed'));
    if (!net.has(from) || !net.has(to)) return undefined;
    net.inject(to, from, [1e-6, 0]);
    return size(net.solve()(from, to)) * 1e6;
  }

  private amps(from: string, call: boolean): Answer {
    const { plant } = this;
    const settled = this.settled(call);
    // Who clamps a compressor that trips waits for its start, mostly.
    const starts = from.startsWith('comp') && settled.compressor !== 'running' && this.dice.yes(0.75);
    const at = starts ? settled.tried : this.now(call);
    const volts = solved(plant, at);
    const read = (amps: number) => round(amps * this.off.amps * this.dice.around(1, 0.012), 0.1);
    if (from === 'compressor') return read(ampsOf(plant, at, volts, 'compressor'));
    if (from === 'comp-S') return read(startAmpsOf(plant, at, volts, 'compressor'));
    if (from === 'fan-motor') return read(ampsOf(plant, at, volts, 'fan'));
    if (from === 'fan-S') return read(startAmpsOf(plant, at, volts, 'fan'));
    if (from === 'blower-motor') return read(blowerAmps(plant, at, volts));
    if (!plant.build.heater) return undefined;
    return read(size(volts('heater-1', 'heater-2')) / (900 + plant.contacts.heater));
  }

  private microfarads(to: string): Answer {
    const { microfarads: uf, build, shorts } = this.plant;
    const read = (value: number) => round(value * this.dice.around(1, 0.01), 0.1);
    switch (to) {
      case 'start-cap-2':
        return build.hardStart ? read(uf.start) : undefined;
      case 'blower-cap-2':
        return build.electronicBlower ? undefined : read(uf.blower);
      case 'cap-HERM':
        return read(shorts.hermSection < 1000 ? 0 : uf.herm);
      default:
        return read(shorts.fanSection < 1000 ? 0 : uf.fan);
    }
  }

  private temperature(test: AskedTest, call: boolean): Answer {
    const { cycle: day, build } = this.plant;
    const { compressor, cycle } = this.settled(call);
    const state = compressor === 'running' || this.meetsItRunning ? cycle : undefined;
    const read = (f: number, scatter = 0.6) => round(f + this.off.thermometer + this.dice.around(0, scatter), 0.1);
    const idle = day.outdoorF + 1;
    const indoorsIdle = day.returnF - 1;
    switch (test.id) {
      case 'temperature-outdoor-air':
        return read(day.outdoorF);
      case 'temperature-return-air':
        return read(day.returnF);
      case 'wet-bulb-return-air':
        return read(day.wetBulbF);
      case 'temperature-supply-air':
        if (day.reversed && build.heatPump && state) return read(day.returnF + 17);
        return read(state?.supplyF ?? indoorsIdle, 1);
      case 'temperature-condenser-air-out':
        if (day.reversed && build.heatPump && state) return read(day.outdoorF - 9);
        return read(state?.condenserOutF ?? idle, 1.2);
      case 'temperature-suction-line':
        if (day.reversed && build.heatPump && state) return read(state.dischargeF - 12, 1.5);
        return read(state?.suctionF ?? idle, 1);
      case 'temperature-liquid-line':
        return read(state?.liquidF ?? idle, 1);
      default:
        return read(state?.dischargeF ?? idle, 2);
    }
  }

  private pressure(test: AskedTest, call: boolean): Answer {
    const { cycle: day, build } = this.plant;
    const at = this.now(call);
    const { cycle } = this.settled(call);
    const read = (psi: number) => round(psi * this.dice.around(1, 0.006) + this.off.gauge, 1);
    if (cycle === undefined || at.slip.compressor === 1 || test.id === 'pressure-standing') {
      // Equal on both sides while liquid is left; a system that lost nearly all has gas alone.
      const saturated = gaugeAt(build.refrigerant, day.outdoorF) + day.foreignGas;
      return read(day.charge < 0.12 ? saturated * (day.charge / 0.12) : saturated);
    }
    if (test.id === 'pressure-suction') {
      const low = day.reversed && build.heatPump ? cycle.liquidPsi * 0.95 : cycle.suctionPsi;
      return read(low);
    }
    return read(cycle.liquidPsi);
  }

  private look(test: AskedTest, call: boolean): Answer {
    const { plant } = this;
    const settled = this.settled(call);
    const at = this.now(call);
    const either = (yes: boolean, a: string, b: string) => (yes ? a : b);
    switch (test.id) {
      case 'look-outdoor-fan':
        return this.fanLook(at);
      case 'look-compressor':
        return `compressor-${settled.compressor}`;
      case 'look-no-call':
        return either(at.slip.compressor < 1, 'compressor-running', 'compressor-not-running');
      case 'look-contactor':
      case 'look-contactor-no-call':
        return either(
          at.contactorIn || plant.seen.has('armature-in'),
          'contactor-pulled-in',
          'contactor-not-pulled-in',
        );
      case 'look-contacts':
        return plant.seen.has('contacts-burnt')
          ? 'contacts-burnt'
          : either(plant.seen.has('contacts-stuck'), 'contacts-stuck', 'contacts-clean');
      case 'look-blower':
        return either(blowerTurns(plant, at), 'blower-running', 'blower-not-running');
      case 'look-thermostat':
        return this.thermostatLook();
      case 'look-breaker':
        return either(
          plant.contacts.breaker1 === OPEN && plant.contacts.breaker2 === OPEN && plant.seen.has('breaker-tripped'),
          'breaker-tripped',
          'breaker-on',
        );
      case 'look-disconnect':
        return either(plant.disconnectOut, 'disconnect-out', 'disconnect-in');
      case 'look-second-stage':
        if (!plant.build.twoStage) return undefined;
        return either(this.dropsWithoutStage(), 'second-stage-loads', 'second-stage-no-change');
      case 'look-fan-by-hand':
        return either(plant.drives.fan.seized, 'fan-stiff', 'fan-spins-freely');
      case 'look-blower-by-hand':
        return either(plant.drives.blower.seized, 'blower-stiff', 'blower-spins-freely');
      case 'look-compressor-heat':
        return either(
          /trips/.test(settled.compressor) || plant.seen.has('compressor-hot'),
          'compressor-very-hot',
          'compressor-not-hot',
        );
      default:
        // What only eyes tell: the first of a look's answers is the bad one.
        return either(plant.seen.has(test.answers![0]!), test.answers![0]!, test.answers![1]!);
    }
  }

  /** Amps before and after the wire of the second stage is lifted: a clamp shows a tenth. */
  private dropsWithoutStage(): boolean {
    const { compressor, tried } = this.settled(true);
    if (compressor !== 'running') return false;
    const { wireOutdoors } = this.plant.stage;
    this.plant.stage.wireOutdoors = OPEN;
    const lifted = settle(this.plant, true).tried;
    const amps = (at: Standing) => ampsOf(this.plant, at, solved(this.plant, at), 'compressor');
    const without = amps(lifted);
    this.plant.stage.wireOutdoors = wireOutdoors;
    return without < 0.92 * amps(tried);
  }

  private fanLook(at: Standing): string {
    if (this.plant.seen.has('blade-slips')) return 'fan-not-turning';
    if (at.slip.fan < 1) return 'fan-turning';
    const volts = solved(this.plant, at);
    return ampsOf(this.plant, at, volts, 'fan') > 0.4 * this.plant.build.plate.fla ? 'fan-hums' : 'fan-not-turning';
  }

  private thermostatLook(): string {
    const { plant } = this;
    const at = this.now(true);
    const powered =
      plant.build.thermostatOnBattery ||
      size(solved(plant, at)('R@thermostat', plant.build.thermostatHasC ? 'C@thermostat' : 'ground')) > 15;
    if (!powered || plant.seen.has('thermostat-blank')) return 'thermostat-blank';
    return plant.seen.has('thermostat-not-calling') ? 'thermostat-not-calling' : 'thermostat-calling';
  }
}

function round(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(4));
}
