import type { Dice } from '../../client/practice/plant/dice.ts';
import type { RefrigerantId } from '../../grammar/vocabulary/unit-profile.ts';
import { torque, type Windings, windingsFor } from './psc-motor.ts';

const OPEN = Number.POSITIVE_INFINITY;

/** A motor of the hidden unit. */
export interface HiddenMotor {
  windings: Windings;
  volts: number;
  microfarads: number;
  rated: number;
  /** Share of the healthy unit's starting torque that its load needs. */
  breakaway: number;
  /** Load torque, synchronous watts. */
  load: number;
  mainDc: number;
  auxDc: number;
  shellOhms: number;
  stuck: boolean;
  capShorted: boolean;
}

/** Ohms of the leads to a motor's common, run and start terminals. */
export interface Leads {
  C: number;
  R: number;
  S: number;
}

/** The true unit behind a case. Everything is drawn here on its own; the diagnosis never sees it. */
export interface HiddenUnit {
  threePhase: boolean;
  leg: number;
  lost: [boolean, boolean];
  bigLoads: number;
  smallLoads: [number, number];
  breaker: [number, number];
  feeder: [number, number];
  blade: [number, number];
  fuse: [number, number];
  whip: [number, number];
  strayFarads: number;
  handlerOn: boolean;
  poles: 1 | 2;
  pole: [number, number];
  welded: [boolean, boolean];
  jammed: boolean;
  coilR: number;
  coilX: number;
  pullIn: number;
  heater: number;
  overload: number;
  compressor: HiddenMotor;
  compressorLeads: Leads;
  /** From the contactor to the common of the dual capacitor. */
  capacitorLead: number;
  fanLeads: Leads;
  kicker: 'none' | 'good' | 'failed';
  kickerMicrofarads: number;
  /** A second stage: what the thermostat makes of it, its wire, its coil and what the coil moves. */
  stages: 1 | 2;
  statCallsTwo: boolean;
  wireTwo: number;
  unloaderR: number;
  unloaderX: number;
  bypassSticks: boolean;
  /** Share of what is pumped with the bypass closed that is pumped with it open. */
  lowStage: number;
  fan: HiddenMotor;
  fanRelay: number;
  door: number;
  blower: HiddenMotor;
  blowerContact: boolean;
  tap: number;
  primaryOhms: number;
  secondaryOhms: number;
  secondaryVolts: number;
  secondaryLeak: number;
  fuse24: number;
  floatIn: 'R' | 'Y' | 'none';
  floatOhms: number;
  grounded24: boolean;
  wireR: number;
  wireYin: number;
  wireYout: number;
  wireC: number;
  wireG: number;
  wireO: number;
  shortYC: number;
  shortRC: number;
  statCalls: boolean;
  statCallsFan: boolean;
  statShowsCall: boolean;
  statBatteries: boolean;
  switchesFitted: boolean;
  high: number;
  low: number;
  /** A timer or lockout in the condenser. */
  delay: number;
  heatPump: boolean;
  valve: boolean;
  fluid: RefrigerantId;
  tons: number;
  // air and refrigerant
  charge: number;
  air: number;
  condenser: number;
  restriction: number;
  gas: number;
  leak: number;
  reversed: boolean;
  iced: boolean;
  filterDirty: boolean;
  outdoorDirty: boolean;
  oil: boolean;
  outdoorF: number;
  indoorF: number;
  wetBulbF: number;
  approachF: number;
  evaporatorF: number;
  subcoolF: number;
  /** Where in its cycle the hot compressor happens to be. */
  restingNow: boolean;
  /** Without outdoor air the high pressure switch opens before the overload. */
  highFirst: boolean;
}

/** Ratings that a nameplate would carry. */
export interface Ratings {
  volts: 208 | 240;
  poles: 1 | 2;
  heater: boolean;
  heatPump: boolean;
  valve: boolean;
  fluid: RefrigerantId;
  tons: number;
  rla: number;
  lra: number;
  fla: number;
  herm: number;
  fanMicrofarads: number;
  blowerMicrofarads: number;
  floatIn: 'R' | 'Y' | 'none';
  switches: boolean;
  kicker: boolean;
  /** Left out: one. */
  stages?: 2;
  tap: 208 | 240;
  subcool: number;
}

/** Ratings drawn as a maker might choose them. */
export function drawRatings(dice: Dice): Ratings {
  const tons = dice.pick([1.5, 2, 2.5, 3, 3.5, 4, 5]);
  const rla = Math.round(tons * dice.leaning(4.4, 5.8) * 10) / 10;
  const volts = dice.yes(0.75) ? 240 : 208;
  const fla = Math.round(dice.leaning(0.8, 2) * 10) / 10;
  const fanMicrofarads = dice.pick(fla < 1.1 ? [3, 4] : fla < 1.4 ? [4, 5] : fla < 1.7 ? [5, 7.5] : [7.5, 10]);
  return {
    volts,
    poles: dice.yes(0.5) ? 1 : 2,
    heater: dice.yes(0.5),
    heatPump: dice.yes(0.4),
    valve: dice.yes(0.6),
    fluid: dice.pick(['R-410A', 'R-410A', 'R-22', 'R-32', 'R-454B', 'R-407C'] as const),
    tons,
    rla,
    lra: Math.round(rla * dice.leaning(4.6, 5.8)),
    fla,
    herm: dice.pick(tons < 2.5 ? [25, 30, 35] : tons < 4 ? [35, 40, 45, 50] : [55, 60, 70, 80]),
    fanMicrofarads,
    blowerMicrofarads: dice.pick([5, 7.5, 10]),
    floatIn: dice.pick(['R', 'Y', 'Y', 'none'] as const),
    switches: dice.yes(0.7),
    kicker: dice.yes(0.2),
    tap: volts === 240 || dice.yes(0.3) ? 240 : 208,
    subcool: Math.round(dice.leaning(7, 13)),
  };
}

function motor(dice: Dice, volts: number, turning: number, stopped: number, rated: number, turns: number): HiddenMotor {
  const windings = windingsFor(volts, turning, stopped, turns, dice.span(1, 1.6));
  return {
    windings,
    volts,
    microfarads: rated * dice.around(0.985, 0.02),
    rated,
    breakaway: dice.leaning(0.4, 0.8),
    load: 0,
    mainDc: windings.mainR * dice.span(0.85, 0.95),
    auxDc: windings.auxR * dice.span(0.85, 0.95),
    shellOhms: 10 ** dice.span(7.4, 9),
    stuck: false,
    capShorted: false,
  };
}

/** Drawn behind everything else: units with one stage stay what they were. */
function drawStages(r: Ratings, dice: Dice) {
  const two = r.stages === 2;
  return {
    stages: two ? 2 : 1,
    statCallsTwo: two,
    wireTwo: two ? dice.span(0.6, 2) : OPEN,
    unloaderR: two ? dice.span(25, 62) : OPEN,
    unloaderX: two ? dice.span(20, 45) : 0,
    bypassSticks: false,
    lowStage: two ? dice.span(0.6, 0.74) : 1,
  } as const;
}

/** The most a healthy motor can pull at any speed, synchronous watts. */
function pullOut(m: HiddenMotor): number {
  let most = 0;
  for (let slip = 0.02; slip <= 0.4; slip += 0.02) most = Math.max(most, torque(m.windings, m.volts, m.rated, slip));
  return most;
}

/** A healthy unit with those ratings. `spread` widens everything the nameplate does not fix. */
export function drawHiddenUnit(r: Ratings, dice: Dice, spread = 1): HiddenUnit {
  const wide = (low: number, high: number) => {
    const middle = (low + high) / 2;
    const reach = ((high - low) / 2) * spread;
    return dice.span(low > 0 ? Math.max(middle * 0.1, middle - reach) : middle - reach, middle + reach);
  };
  const compressor = motor(dice, r.volts, r.rla * wide(0.62, 0.88), r.lra * wide(0.92, 1.05), r.herm, wide(1.2, 1.4));
  compressor.load = Math.min(0.8 * r.volts * r.rla * wide(0.62, 0.88), 0.55 * pullOut(compressor));
  const fan = motor(dice, r.volts, r.fla * wide(0.7, 0.95), r.fla * wide(1.6, 2.4), r.fanMicrofarads, wide(1, 1.2));
  fan.load = Math.min(0.55 * r.volts * r.fla * wide(0.6, 0.85), 0.55 * pullOut(fan));
  const blowerAmps = wide(1.2, 3.2);
  const blower = motor(dice, r.volts, blowerAmps, blowerAmps * wide(1.7, 2.5), r.blowerMicrofarads, wide(1, 1.2));
  blower.load = Math.min(0.55 * r.volts * blowerAmps * 0.75, 0.55 * pullOut(blower));
  return {
    threePhase: r.volts === 208,
    leg: 120 * (1 + spread * dice.leaning(-0.045, 0.04)),
    lost: [false, false],
    bigLoads: 10 ** wide(1.3, 2.1),
    smallLoads: [10 ** wide(2, 3.3), 10 ** wide(2, 3.3)],
    breaker: [0, 0],
    feeder: [wide(0.03, 0.1), wide(0.03, 0.1)],
    blade: [0, 0],
    fuse: [0, 0],
    whip: [wide(0.01, 0.03), wide(0.01, 0.03)],
    strayFarads: 10 ** wide(-9.8, -8.6),
    handlerOn: true,
    poles: r.poles,
    pole: [0.008, 0.008],
    welded: [false, false],
    jammed: false,
    coilR: wide(9, 19),
    coilX: wide(38, 64),
    pullIn: wide(16.5, 19.5),
    heater: r.heater ? 240 ** 2 / wide(36, 90) : OPEN,
    overload: 0.02,
    compressor,
    compressorLeads: { C: 0, R: 0, S: 0 },
    capacitorLead: 0,
    fanLeads: { C: 0, R: 0, S: 0 },
    kicker: r.kicker ? 'good' : 'none',
    kickerMicrofarads: wide(90, 220),
    fan,
    fanRelay: 0.02,
    door: 0,
    blower,
    blowerContact: true,
    tap: r.tap,
    primaryOhms: wide(18, 60),
    secondaryOhms: wide(0.4, 1.6),
    secondaryVolts: wide(25.5, 28),
    secondaryLeak: wide(0.8, 2.4),
    fuse24: 0,
    floatIn: r.floatIn,
    floatOhms: 0,
    grounded24: dice.yes(0.5),
    wireR: wide(0.2, 0.8),
    wireYin: wide(0.2, 0.8),
    wireYout: wide(0.3, 1.2),
    wireC: wide(0.3, 1.2),
    wireG: wide(0.2, 0.8),
    wireO: 0.5,
    shortYC: OPEN,
    shortRC: OPEN,
    statCalls: true,
    statCallsFan: true,
    statShowsCall: true,
    statBatteries: dice.yes(0.4),
    switchesFitted: r.switches,
    high: 0,
    low: 0,
    delay: 0,
    heatPump: r.heatPump,
    valve: r.valve,
    fluid: r.fluid,
    tons: r.tons,
    charge: 1 + spread * dice.leaning(-0.03, 0.03),
    air: 1 + spread * dice.leaning(-0.08, 0.06),
    condenser: 1 + spread * dice.leaning(-0.08, 0.05),
    restriction: 0,
    gas: 0,
    leak: 0,
    reversed: false,
    iced: false,
    filterDirty: dice.yes(0.06),
    outdoorDirty: dice.yes(0.05),
    oil: dice.yes(0.03),
    outdoorF: dice.leaning(74, 104),
    indoorF: dice.leaning(73, 84),
    wetBulbF: dice.leaning(60, 70),
    approachF: wide(17, 24),
    evaporatorF: wide(42, 48),
    subcoolF: r.subcool + spread * dice.leaning(-2.5, 2.5),
    restingNow: dice.yes(0.3),
    highFirst: dice.yes(0.4),
    ...drawStages(r, dice),
  };
}
