import type { Dice } from '../../client/practice/plant/dice.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { HiddenMotor, HiddenUnit, Ratings } from './hidden-unit.ts';

const OPEN = Number.POSITIVE_INFINITY;
type Hide = (u: HiddenUnit, dice: Dice) => void;

function toShell(u: HiddenUnit, motor: HiddenMotor, dice: Dice): void {
  motor.shellOhms = dice.yes(0.8) ? dice.span(0.2, 30) : 10 ** dice.span(3.5, 5.3);
  if (motor.shellOhms > 100) return;
  if (dice.yes(0.8)) u.breaker = [OPEN, OPEN];
  else u.fuse = [OPEN, OPEN];
}

function loose(u: HiddenUnit, leg: 0 | 1, dice: Dice): void {
  const where = dice.yes(0.75) ? u.whip : u.feeder;
  where[leg] = 10 ** dice.span(0.3, 1.5);
}

const share = (motor: HiddenMotor, low: number, high: number, dice: Dice) => {
  motor.microfarads = motor.rated * dice.span(low, high);
};

/** What each fault does to the hidden unit: severities of the simulator's own. */
const HIDE: Readonly<Record<Exclude<FaultId, 'something-else' | 'nothing-wrong'>, Hide>> = {
  'supply-low': (u, d) => {
    u.leg = 120 * d.span(0.7, 0.86);
  },
  'lost-utility-leg': (u, d) => {
    u.lost[d.yes(0.5) ? 0 : 1] = true;
  },
  'breaker-tripped': (u) => {
    u.breaker = [OPEN, OPEN];
  },
  'breaker-pole-1-open': (u) => {
    u.breaker[0] = OPEN;
  },
  'breaker-pole-2-open': (u) => {
    u.breaker[1] = OPEN;
  },
  'disconnect-open': (u) => {
    u.blade = [OPEN, OPEN];
  },
  'disconnect-blade-1-burnt': (u, d) => {
    u.blade[0] = d.yes(0.5) ? OPEN : 10 ** d.span(0, 1.6);
  },
  'disconnect-blade-2-burnt': (u, d) => {
    u.blade[1] = d.yes(0.5) ? OPEN : 10 ** d.span(0, 1.6);
  },
  'line-fuse-1-open': (u) => {
    u.fuse[0] = OPEN;
  },
  'line-fuse-2-open': (u) => {
    u.fuse[1] = OPEN;
  },
  'loose-lug-1': (u, d) => loose(u, 0, d),
  'loose-lug-2': (u, d) => loose(u, 1, d),
  'air-handler-no-power': (u) => {
    u.handlerOn = false;
  },
  'contactor-pole-1-burnt': (u, d) => {
    u.pole[0] = d.yes(0.7) ? OPEN : 10 ** d.span(-0.1, 1.5);
  },
  'contactor-pole-2-burnt': (u, d) => {
    u.pole[1] = d.yes(0.7) ? OPEN : 10 ** d.span(-0.1, 1.5);
  },
  'contactor-pole-1-stuck-closed': (u) => {
    u.welded[0] = true;
  },
  'contactor-pole-2-stuck-closed': (u) => {
    u.welded[1] = true;
  },
  'contactor-stuck-closed': (u) => {
    u.welded = [true, true];
  },
  'contactor-jammed-open': (u) => {
    u.jammed = true;
  },
  'contactor-coil-open': (u) => {
    u.coilR = OPEN;
  },
  'contactor-coil-shorted': (u, d) => {
    u.coilR = d.span(0.3, 1.2);
    u.coilX = 0.3;
  },
  'herm-capacitor-weak': (u, d) => share(u.compressor, 0.15, 0.85, d),
  'herm-capacitor-open': (u, d) => share(u.compressor, 0, 0.04, d),
  'herm-capacitor-shorted': (u) => {
    u.compressor.capShorted = true;
  },
  'fan-capacitor-weak': (u, d) => share(u.fan, 0.12, 0.8, d),
  'fan-capacitor-open': (u, d) => share(u.fan, 0, 0.04, d),
  'fan-capacitor-shorted': (u) => {
    u.fan.capShorted = true;
  },
  'hard-start-failed': (u, d) => {
    u.kicker = 'failed';
    u.kickerMicrofarads = d.span(0, 35);
  },
  'capacitor-lead-off': (u) => {
    u.capacitorLead = OPEN;
  },
  'compressor-lead-burnt': (u, d) => {
    u.compressorLeads[d.pick(['C', 'R', 'S'] as const)] = OPEN;
  },
  'fan-lead-off': (u, d) => {
    u.fanLeads[d.pick(['C', 'R', 'S'] as const)] = OPEN;
  },
  'compressor-run-winding-open': (u) => {
    u.compressor.mainDc = OPEN;
  },
  'compressor-start-winding-open': (u) => {
    u.compressor.auxDc = OPEN;
  },
  'compressor-grounded': (u, d) => toShell(u, u.compressor, d),
  'compressor-overload-open': (u) => {
    u.overload = OPEN;
  },
  'compressor-seized': (u) => {
    u.compressor.stuck = true;
  },
  'crankcase-heater-open': (u) => {
    u.heater = OPEN;
  },
  'fan-run-winding-open': (u) => {
    u.fan.mainDc = OPEN;
  },
  'fan-start-winding-open': (u) => {
    u.fan.auxDc = OPEN;
  },
  'fan-motor-grounded': (u, d) => toShell(u, u.fan, d),
  'fan-bearings-seized': (u) => {
    u.fan.stuck = true;
  },
  'defrost-fan-relay-open': (u) => {
    u.fanRelay = OPEN;
  },
  'transformer-dead': (u, d) => {
    if (d.yes(0.7)) u.primaryOhms = OPEN;
    else u.secondaryOhms = OPEN;
  },
  'control-fuse-open': (u) => {
    u.fuse24 = OPEN;
  },
  'control-short-Y-C': (u, d) => {
    u.shortYC = d.span(0, 0.4);
  },
  'control-short-R-C': (u, d) => {
    u.shortRC = d.span(0.1, 0.6);
  },
  'R-wire-broken': (u) => {
    u.wireR = OPEN;
  },
  'Y-wire-broken-indoors': (u) => {
    u.wireYin = OPEN;
  },
  'Y-wire-broken-outdoors': (u) => {
    u.wireYout = OPEN;
  },
  'C-wire-broken': (u) => {
    u.wireC = OPEN;
  },
  'G-wire-broken': (u) => {
    u.wireG = OPEN;
  },
  'thermostat-not-calling': (u, d) => {
    u.statCalls = false;
    u.statShowsCall = d.yes(0.5);
    u.statCallsFan = d.yes(0.3);
  },
  'thermostat-no-fan-call': (u) => {
    u.statCallsFan = false;
  },
  'O-wire-broken': (u) => {
    u.wireO = OPEN;
    u.reversed = true;
  },
  'delay-stays-open': (u) => {
    u.delay = OPEN;
  },
  'float-switch-open': (u) => {
    u.floatOhms = OPEN;
  },
  'high-switch-open': (u) => {
    u.high = OPEN;
  },
  'low-switch-open': (u) => {
    u.low = OPEN;
  },
  'door-switch-open': (u) => {
    u.door = OPEN;
  },
  'blower-motor-open': (u) => {
    u.blower.mainDc = OPEN;
  },
  'blower-seized': (u) => {
    u.blower.stuck = true;
  },
  'blower-relay-open': (u) => {
    u.blowerContact = false;
  },
  'blower-capacitor-weak': (u, d) => share(u.blower, 0, 0.75, d),
  'filter-dirty': (u, d) => {
    u.filterDirty = true;
    u.air *= d.span(0.35, 0.62);
    u.iced = d.yes(0.25);
  },
  'indoor-coil-iced': (u, d) => {
    u.iced = true;
    u.air *= d.span(0.15, 0.45);
  },
  'low-indoor-air': (u, d) => {
    u.air *= d.span(0.38, 0.62);
    u.iced = d.yes(0.12);
  },
  'low-charge': (u, d) => {
    u.charge = d.span(0.58, 0.82);
    u.oil = d.yes(0.4);
    u.iced = d.yes(0.2);
  },
  overcharge: (u, d) => {
    u.charge = d.span(1.25, 1.5);
  },
  'liquid-restriction': (u, d) => {
    u.restriction = d.span(0.5, 1);
  },
  'condenser-dirty': (u, d) => {
    u.outdoorDirty = true;
    u.condenser *= d.span(0.38, 0.65);
  },
  'non-condensables': (u, d) => {
    u.gas = d.span(0.5, 1.2);
  },
  'leaking-valves': (u, d) => {
    u.leak = d.span(0.3, 0.6);
  },
  'reversing-valve-stuck': (u) => {
    u.reversed = true;
  },
  'thermostat-no-second-stage': (u) => {
    u.statCallsTwo = false;
  },
  'Y2-wire-broken': (u) => {
    u.wireTwo = OPEN;
  },
  'unloader-solenoid-open': (u) => {
    u.unloaderR = OPEN;
  },
  'unloader-stuck-unloaded': (u) => {
    u.bypassSticks = true;
  },
};

/** Hides a fault in a healthy unit. */
export function hideFault(u: HiddenUnit, fault: FaultId, dice: Dice): void {
  if (fault === 'something-else' || fault === 'nothing-wrong') return;
  HIDE[fault](u, dice);
}

type Has = (ratings: Ratings) => boolean;
const ANY: Has = () => true;
const NONE: Has = () => false;
/** Units with two stages are drawn in a round of their own: half of it is of what they alone can have. */
const STAGE_OFTEN = 24;
const TWO_STAGES: Has = (r) => r.stages === 2;
const TWO_POLES: Has = (r) => r.poles === 2;

/**
 * How often each fault comes up, as rough shares of a summer's calls written for the simulator (common practice), and
 * in which units it can be at all.
 */
const CASES: Readonly<Record<FaultId, readonly [often: number, inUnit: Has]>> = {
  'supply-low': [0.8, ANY],
  'lost-utility-leg': [0.8, ANY],
  'breaker-tripped': [3, ANY],
  'breaker-pole-1-open': [0.8, ANY],
  'breaker-pole-2-open': [0.8, ANY],
  'disconnect-open': [0.8, ANY],
  'disconnect-blade-1-burnt': [0.5, ANY],
  'disconnect-blade-2-burnt': [0.5, ANY],
  'line-fuse-1-open': [0.8, ANY],
  'line-fuse-2-open': [0.8, ANY],
  'loose-lug-1': [0.8, ANY],
  'loose-lug-2': [0.8, ANY],
  'air-handler-no-power': [1.5, ANY],
  'contactor-pole-1-burnt': [2, ANY],
  'contactor-pole-2-burnt': [0.8, TWO_POLES],
  'contactor-pole-1-stuck-closed': [0.8, ANY],
  'contactor-pole-2-stuck-closed': [0.8, TWO_POLES],
  'contactor-stuck-closed': [0.8, TWO_POLES],
  'contactor-jammed-open': [0.8, ANY],
  'contactor-coil-open': [2, ANY],
  'contactor-coil-shorted': [0.8, ANY],
  'herm-capacitor-weak': [6, ANY],
  'herm-capacitor-open': [3, ANY],
  'herm-capacitor-shorted': [0.8, ANY],
  'fan-capacitor-weak': [7, ANY],
  'fan-capacitor-open': [3, ANY],
  'fan-capacitor-shorted': [0.8, ANY],
  'hard-start-failed': [0.8, (r) => r.kicker],
  'capacitor-lead-off': [0.4, ANY],
  'compressor-lead-burnt': [0.8, ANY],
  'fan-lead-off': [0.6, ANY],
  'compressor-run-winding-open': [0.8, ANY],
  'compressor-start-winding-open': [0.8, ANY],
  'compressor-grounded': [1.5, ANY],
  'compressor-overload-open': [0.8, ANY],
  'compressor-seized': [0.8, ANY],
  'crankcase-heater-open': [0.2, (r) => r.heater],
  'fan-run-winding-open': [0.8, ANY],
  'fan-start-winding-open': [0.8, ANY],
  'fan-motor-grounded': [0.8, ANY],
  'fan-bearings-seized': [1.5, ANY],
  'defrost-fan-relay-open': [0.8, (r) => r.heatPump],
  'transformer-dead': [2, ANY],
  'control-fuse-open': [2, ANY],
  'control-short-Y-C': [0.8, ANY],
  'control-short-R-C': [0.6, ANY],
  'R-wire-broken': [0.8, ANY],
  'Y-wire-broken-indoors': [0.8, ANY],
  'Y-wire-broken-outdoors': [0.8, ANY],
  'C-wire-broken': [0.8, ANY],
  'G-wire-broken': [0.8, ANY],
  'thermostat-not-calling': [2, ANY],
  'thermostat-no-fan-call': [0.4, ANY],
  'O-wire-broken': [0.4, (r) => r.heatPump],
  'delay-stays-open': [0.5, ANY],
  'float-switch-open': [3, (r) => r.floatIn !== 'none'],
  'high-switch-open': [0.8, (r) => r.switches],
  'low-switch-open': [0.8, (r) => r.switches],
  'door-switch-open': [0.8, ANY],
  'blower-motor-open': [0.8, ANY],
  'blower-seized': [0.8, ANY],
  'blower-relay-open': [0.8, ANY],
  'blower-capacitor-weak': [0.8, ANY],
  'filter-dirty': [3, ANY],
  'indoor-coil-iced': [0.8, ANY],
  'low-indoor-air': [1.5, ANY],
  'low-charge': [6, ANY],
  overcharge: [0.8, ANY],
  'liquid-restriction': [0.8, ANY],
  'condenser-dirty': [3, ANY],
  'non-condensables': [0.8, ANY],
  'leaking-valves': [0.8, ANY],
  'reversing-valve-stuck': [0.8, (r) => r.heatPump],
  'thermostat-no-second-stage': [STAGE_OFTEN, TWO_STAGES],
  'Y2-wire-broken': [STAGE_OFTEN, TWO_STAGES],
  'unloader-solenoid-open': [STAGE_OFTEN, TWO_STAGES],
  'unloader-stuck-unloaded': [STAGE_OFTEN, TWO_STAGES],
  'nothing-wrong': [0, NONE],
  'something-else': [0, NONE],
};
export const howOften = (fault: FaultId): number => CASES[fault][0];
/** Whether a unit with these ratings can have the fault at all. */
export const canHave = (fault: FaultId, ratings: Ratings): boolean => CASES[fault][1](ratings);
