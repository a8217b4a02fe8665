import type { Dice } from '../../client/practice/plant/dice.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import type { HiddenUnit } from './hidden-unit.ts';
import { letSettle, type Settled } from './let-settle.ts';
import { deadNetwork } from './unit-circuits.ts';

/** What the simulator is asked, in the words of the tool's own lines. */
export interface Asked {
  readonly id: string;
  readonly function: string;
  readonly from?: string;
  readonly to?: string;
  readonly quantity?: string;
  readonly answers?: readonly string[];
  readonly needs: { readonly power: string; readonly call: string; readonly bench: boolean };
}
export type Answer = number | 'open' | ObservationId;

const OPEN = Number.POSITIVE_INFINITY;
const CONTROL = /@|^coil-|^unloader|^float|^high-|^low-|^control-fuse|^transformer-secondary/;

/** The meter, thermometer, gauges, eyes and ears of a case. */
export class Instrument {
  private readonly unit: HiddenUnit;
  private readonly dice: Dice;
  private readonly misread: number;
  private called: Settled | undefined;
  private idle: Settled | undefined;

  constructor(unit: HiddenUnit, dice: Dice, misread: number) {
    this.unit = unit;
    this.dice = dice;
    this.misread = misread;
  }

  /** After a repair everything settles anew. */
  again(): void {
    this.called = undefined;
    this.idle = undefined;
  }

  answer(asked: Asked): Answer {
    const wrong = this.dice.yes(this.misread);
    if (asked.function === 'look') return this.look(asked, wrong);
    const value = this.read(asked);
    return wrong ? this.garble(asked, value) : value;
  }

  private settled(call: string): Settled {
    this.called ??= letSettle(this.unit, true);
    if (call !== 'none') return this.called;
    this.idle ??= letSettle(this.unit, false, this.called.fuse24Out);
    return this.idle;
  }

  private read(asked: Asked): number | 'open' {
    const { from, to, needs } = asked;
    const now = this.settled(needs.call);
    switch (asked.function) {
      case 'volts': {
        const net = [from!, to!].some((p) => CONTROL.test(p)) ? now.control : now.line;
        return this.noisy(net.metered(name(from!), name(to!), 10e6), 0.005, 0.15, 1);
      }
      case 'amps':
        return this.noisy(this.amps(from!, now), 0.02, 0.03, 2);
      case 'ohms':
        // A compressor never comes out for it: its leads are off.
        return this.ohms(
          needs.bench || [from!, to!].some((at) => at.startsWith('comp-'))
            ? this.part(from!, to!, now)
            : deadNetwork(this.unit).ohms(name(from!), name(to!)),
        );
      case 'microfarads':
        return this.noisy(this.microfarads(from!, to!), 0.015, 0.03, 1);
      case 'temperature':
        return this.noisy(this.temperature(asked, now), 0, 0.8, 0);
      case 'pressure':
        return this.noisy(from === 'suction-port' ? now.cycle.suctionPsi : now.cycle.liquidPsi, 0.01, 0.7, 0);
      default:
        throw new Error(`the simulator has no ${asked.function}`);
    }
  }

  private noisy(value: number, relative: number, absolute: number, digits: number): number {
    const shown = this.dice.around(value, Math.hypot(relative * value, absolute));
    const kept = value >= 0 ? Math.max(0, shown) : shown;
    return Number(kept.toFixed(digits));
  }

  private ohms(value: number): number | 'open' {
    if (value > 4e7) return 'open';
    return this.noisy(value, 0.01, 0.06, value < 100 ? 1 : 0);
  }

  private amps(at: string, now: Settled): number {
    switch (at) {
      case 'compressor':
        return now.line.ampsBetween('comp-C', 'winding');
      case 'comp-S':
        return now.line.ampsBetween('cap-C', 'cap-HERM');
      case 'fan-motor':
        return now.line.ampsBetween('T2', 'fan-C');
      case 'fan-S':
        return now.line.ampsBetween('cap-C', 'cap-FAN');
      case 'blower-motor':
        return now.line.ampsBetween('door-switch-2', 'blower-1');
      case 'crankcase-heater':
        return now.line.ampsBetween('L1', 'L2');
      default:
        throw new Error(`no clamp at ${at}`);
    }
  }

  /** A part out of the circuit, or with its leads lifted. */
  private part(from: string, to: string, now: Settled): number {
    const u = this.unit;
    const { compressor: c, fan: f } = u;
    const key = [from, to].sort().join(' ');
    const overload = now.running.overloadOut ? OPEN : u.overload;
    const pole = (leg: 0 | 1) => (u.welded[leg] ? 0.02 : u.jammed ? OPEN : u.pole[leg]);
    const loop = () => {
      const far = u.high + u.low + u.delay + (Number.isFinite(u.coilR) ? u.coilR : OPEN);
      return u.wireYout + u.wireC + 1 / (1 / far + 1 / Math.max(u.shortYC, 0.02));
    };
    const parts: Record<string, () => number> = {
      'L1 T1': () => pole(0),
      'L2 T2': () => (u.poles === 1 ? 0.02 : pole(1)),
      'coil-1 coil-2': () => u.coilR,
      'unloader-1 unloader-2': () => u.unloaderR,
      'comp-C comp-R': () => overload + c.mainDc,
      'comp-C comp-S': () => overload + c.auxDc,
      'comp-R comp-S': () => c.mainDc + c.auxDc,
      'comp-C shell': () => overload + c.shellOhms,
      'comp-R shell': () => c.mainDc + c.shellOhms,
      'comp-S shell': () => c.auxDc + c.shellOhms,
      'fan-C fan-R': () => f.mainDc,
      'fan-C fan-S': () => f.auxDc,
      'fan-R fan-S': () => f.mainDc + f.auxDc,
      'fan-C fan-frame': () => f.shellOhms,
      'heater-1 heater-2': () => u.heater,
      'transformer-primary-1 transformer-primary-2': () => u.primaryOhms,
      'transformer-secondary-1 transformer-secondary-2': () => u.secondaryOhms,
      'control-fuse-1 control-fuse-2': () => (now.fuse24Out ? OPEN : u.fuse24),
      'C@air-handler Y@air-handler': loop,
      'Y@air-handler Y@condenser': () => u.wireYout,
      'C@air-handler C@condenser': () => u.wireC,
      'cap-C cap-HERM': () => (c.capShorted ? 0.2 : OPEN),
      'cap-C cap-FAN': () => (f.capShorted ? 0.2 : OPEN),
      'float-1 float-2': () => u.floatOhms,
      'high-switch-1 high-switch-2': () => u.high,
      'low-switch-1 low-switch-2': () => u.low,
      'C@air-handler R@air-handler': () => u.shortRC,
      'door-switch-1 door-switch-2': () => u.door,
      'blower-1 blower-2': () => u.blower.mainDc,
    };
    const part = parts[key];
    if (!part) throw new Error(`the simulator has no part ${key}`);
    return part();
  }

  private microfarads(from: string, to: string): number {
    const u = this.unit;
    const pair = `${from} ${to}`;
    if (/HERM/.test(pair)) return u.compressor.capShorted ? 0 : u.compressor.microfarads;
    if (/FAN/.test(pair)) return u.fan.capShorted ? 0 : u.fan.microfarads;
    if (/start-cap/.test(pair)) return u.kicker === 'none' ? 0 : u.kickerMicrofarads;
    return u.blower.microfarads;
  }

  private temperature(asked: Asked, now: Settled): number {
    const u = this.unit;
    if (asked.quantity === 'wet-bulb') return u.wetBulbF;
    switch (asked.from) {
      case 'outdoor-air':
        return u.outdoorF;
      case 'return-air':
        return u.indoorF;
      case 'supply-air':
        return now.cycle.supplyF;
      case 'condenser-air-out':
        return now.cycle.condenserOutF;
      case 'suction-line':
        return now.cycle.suctionLineF;
      case 'liquid-line':
        return now.cycle.liquidLineF;
      case 'discharge-line':
        return now.cycle.dischargeF;
      default:
        throw new Error(`no thermometer at ${asked.from}`);
    }
  }

  private garble(asked: Asked, value: number | 'open'): number | 'open' {
    const d = this.dice;
    if (asked.function === 'ohms')
      return value === 'open' ? d.pick([0, 0.4, 3, 20]) : d.pick(['open', 0, 250] as const);
    if (value === 'open') return 0;
    if (asked.function === 'volts') return Number(d.pick([0, 24.5, 119, 239, value / 10, d.span(0, 250)]).toFixed(1));
    if (asked.function === 'temperature') return Number((value + d.pick([-10, 10, -20, 20])).toFixed(0));
    if (asked.function === 'pressure') return Number((value * d.span(0.5, 1.5)).toFixed(0));
    return Number((value * d.pick([0.1, 0.5, 2, 0])).toFixed(1));
  }

  private look(asked: Asked, wrong: boolean): ObservationId {
    const options = asked.answers as readonly ObservationId[];
    const seen = this.see(asked.answers!.join(' '), asked.needs.call);
    if (!options.includes(seen)) throw new Error(`"${seen}" does not answer ${asked.id}`);
    if (wrong) return this.dice.pick(options.filter((o) => o !== seen));
    return seen;
  }

  private see(options: string, call: string): ObservationId {
    const u = this.unit;
    const d = this.dice;
    const now = this.settled(call);
    const hot = now.compressorTrips !== 'no';
    const has = (word: string) => options.includes(word);
    if (has('fan-hums')) {
      if (now.fanTurns) return 'fan-turning';
      const humming = now.line.ampsBetween('T2', 'fan-C') > 0.2;
      return humming && d.yes(0.3) ? 'fan-hums' : 'fan-not-turning';
    }
    if (has('compressor-hums-and-trips')) return this.hear(now);
    if (has('compressor-running')) return now.compressorTurns ? 'compressor-running' : 'compressor-not-running';
    if (has('contactor-pulled-in')) {
      const held = call === 'none' && (u.welded[0] || u.welded[1]) && d.yes(u.welded[0] && u.welded[1] ? 0.9 : 0.5);
      return (now.running.contactor && !u.jammed) || held ? 'contactor-pulled-in' : 'contactor-not-pulled-in';
    }
    if (has('second-stage-loads'))
      return now.compressorTurns && now.loaded ? 'second-stage-loads' : 'second-stage-no-change';
    if (has('contacts-burnt')) {
      if (u.pole[0] > 0.1 || u.pole[1] > 0.1) return d.yes(0.85) ? 'contacts-burnt' : 'contacts-clean';
      if (u.welded[0] || u.welded[1]) return d.yes(0.7) ? 'contacts-stuck' : 'contacts-clean';
      return d.yes(0.12) ? 'contacts-burnt' : 'contacts-clean';
    }
    if (has('capacitor-swollen')) {
      const weak = Math.min(u.compressor.microfarads / u.compressor.rated, u.fan.microfarads / u.fan.rated);
      return d.yes(weak < 0.85 ? 0.45 : 0.02) ? 'capacitor-swollen' : 'capacitor-not-swollen';
    }
    if (has('blower-running')) return now.blowerTurns ? 'blower-running' : 'blower-not-running';
    if (has('blower-stiff')) return u.blower.stuck ? 'blower-stiff' : 'blower-spins-freely';
    if (has('filter-dirty')) return u.filterDirty ? 'filter-dirty' : 'filter-clean';
    if (has('coil-iced')) {
      const freezes = now.compressorTurns && !now.blowerTurns;
      return u.iced || (freezes && d.yes(0.85)) ? 'coil-iced' : 'coil-clear';
    }
    if (has('outdoor-coil-dirty')) return u.outdoorDirty ? 'outdoor-coil-dirty' : 'outdoor-coil-clean';
    if (has('drain-pan-full')) return u.floatOhms === OPEN && d.yes(0.85) ? 'drain-pan-full' : 'drain-pan-dry';
    if (has('oil-stain')) return u.oil ? 'oil-stain' : 'no-oil-stain';
    if (has('thermostat-blank')) {
      const lit = u.statBatteries || now.control.metered('R@thermostat', 'C@thermostat', 10e6) > 16;
      return lit ? (u.statShowsCall ? 'thermostat-calling' : 'thermostat-not-calling') : 'thermostat-blank';
    }
    if (has('breaker-tripped'))
      return u.breaker.every((b) => b === OPEN) && d.yes(0.95) ? 'breaker-tripped' : 'breaker-on';
    if (has('disconnect-in'))
      return u.blade.every((b) => b === OPEN) && d.yes(0.85) ? 'disconnect-out' : 'disconnect-in';
    if (has('fan-stiff')) return u.fan.stuck ? 'fan-stiff' : 'fan-spins-freely';
    if (has('compressor-very-hot')) return hot && d.yes(0.8) ? 'compressor-very-hot' : 'compressor-not-hot';
    throw new Error(`the simulator cannot see ${options}`);
  }

  private hear(now: Settled): ObservationId {
    const d = this.dice;
    if (now.highOut) return d.yes(0.5) ? 'compressor-runs-then-trips' : 'compressor-not-running';
    if (now.compressorTrips === 'cannot start') {
      const hums = Number.isFinite(this.unit.compressor.mainDc) || Number.isFinite(this.unit.compressor.auxDc);
      return hums && d.yes(0.65) ? 'compressor-hums-and-trips' : 'compressor-not-running';
    }
    if (now.compressorTrips === 'runs first') {
      if (now.compressorTurns) return d.yes(0.65) ? 'compressor-running' : 'compressor-runs-then-trips';
      return d.yes(0.6) ? 'compressor-runs-then-trips' : 'compressor-not-running';
    }
    return now.compressorTurns ? 'compressor-running' : 'compressor-not-running';
  }
}

/** Points that other words name too. */
function name(point: string): string {
  return point === 'shell' || point === 'fan-frame' || point === 'neutral' ? 'ground' : point;
}
