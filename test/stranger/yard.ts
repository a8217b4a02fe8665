import type { Chance } from './chance.ts';
import { FLUIDS, type Fluid, type Loop, type Weather } from './loop.ts';
import type { Motor, MotorSheet } from './sheet-motor.ts';

/** What stands in a yard and what its plates say. Drawn once for all its visits. */
export interface Design {
  readonly volts: 208 | 240;
  readonly poles: 1 | 2;
  readonly heatPump: boolean;
  readonly heater: boolean;
  readonly fused: boolean;
  readonly switches: boolean;
  /** The low pressure switch comes first in the chain, or the high one. */
  readonly lowFirst: boolean;
  readonly float: 'breaks-R' | 'breaks-Y' | 'none';
  readonly valve: boolean;
  readonly fluid: Fluid;
  readonly tons: number;
  readonly herm: number;
  readonly fanMicrofarads: number;
  readonly blowerMicrofarads: number;
  readonly rla: number;
  readonly lra: number;
  readonly fla: number;
  readonly blowerOn120: boolean;
  readonly drivenBlower: boolean;
  readonly hardStart: boolean;
  readonly wiredCommon: boolean;
  readonly batteries: boolean;
  readonly grounded24: boolean;
  readonly delay: boolean;
  /** The thermostat's display blanks, or the panel has a ground fault breaker. */
  readonly groundFaultBreaker: boolean;
  /** A second stage; its coil may hang behind a contact that the contactor brings along. */
  readonly stages: 1 | 2;
  readonly stageBehindContactor: boolean;
}

const tonnage = [
  [1.5, 30, 48],
  [2, 35, 56],
  [2.5, 40, 68],
  [3, 45, 80],
  [3.5, 45, 95],
  [4, 50, 108],
  [5, 70, 140],
] as const;

/** A design as one meets them (common practice). @param stages no other draw depends on them */
export function drawDesign(chance: Chance, stages: 1 | 2 = 1): Design {
  const [tons, herm, lra] = chance.pick(tonnage);
  const heatPump = chance.yes(0.35);
  return {
    volts: chance.yes(0.2) ? 208 : 240,
    poles: heatPump || chance.yes(0.5) ? 2 : 1,
    heatPump,
    heater: heatPump || chance.yes(0.2),
    fused: chance.yes(0.45),
    switches: chance.yes(0.6),
    lowFirst: chance.yes(0.5),
    float: chance.weighted([
      ['breaks-R', 0.4],
      ['breaks-Y', 0.35],
      ['none', 0.25],
    ] as const),
    valve: chance.yes(0.5),
    fluid: chance.weighted(FLUIDS.map((f) => [f, f === 'R-410A' ? 6 : 1] as const)),
    tons,
    herm,
    fanMicrofarads: chance.pick([5, 5, 7.5]),
    blowerMicrofarads: chance.pick([5, 7.5, 10]),
    rla: Math.round(52 * tons) / 10,
    lra,
    fla: Math.round(10 * chance.span(0.6, 1.6)) / 10,
    blowerOn120: chance.yes(0.3),
    drivenBlower: chance.yes(0.3),
    hardStart: chance.yes(0.15),
    wiredCommon: chance.yes(0.65),
    batteries: chance.yes(0.4),
    grounded24: chance.yes(0.5),
    delay: chance.yes(0.3),
    groundFaultBreaker: chance.yes(0.15),
    stages,
    stageBehindContactor: stages === 2 && chance.yes(0.35),
  };
}

/** Conductors, contacts, fuses and switches by name, with the ohms that a sound one has. */
export const LINKS = {
  breaker1: ['service-1', 'breaker-1', 0.004],
  breaker2: ['service-2', 'breaker-2', 0.004],
  feed1: ['breaker-1', 'disconnect-line-1', 0.06],
  feed2: ['breaker-2', 'disconnect-line-2', 0.06],
  blade1: ['disconnect-line-1', 'fuse-1-line', 0.003],
  blade2: ['disconnect-line-2', 'fuse-2-line', 0.003],
  fuse1: ['fuse-1-line', 'fuse-1-load', 0.004],
  fuse2: ['fuse-2-line', 'fuse-2-load', 0.004],
  whip1: ['fuse-1-load', 'L1', 0.02],
  whip2: ['fuse-2-load', 'L2', 0.02],
  leadC: ['T2', 'comp-C', 0.004],
  leadR: ['T1', 'comp-R', 0.004],
  leadS: ['cap-HERM', 'comp-S', 0.004],
  leadCap: ['T1', 'cap-C', 0.004],
  overload: ['comp-C', 'windings', 0.01],
  defrostRelay: ['T2', 'fan-feed', 0.01],
  leadFan: ['fan-feed', 'fan-C', 0.01],
  door: ['handler-L1', 'door-switch-2', 0.01],
  controlFuse: ['hot-24', 'control-fuse-2', 0.02],
  floatR: ['control-fuse-2', 'R@air-handler', 0.03],
  wireR: ['R@air-handler', 'R@thermostat', 0.4],
  wireC: ['C@air-handler', 'C@thermostat', 0.4],
  callY: ['R@thermostat', 'Y@thermostat', 0.15],
  callG: ['R@thermostat', 'G@thermostat', 0.15],
  callO: ['R@thermostat', 'O@thermostat', 0.15],
  wireY: ['Y@thermostat', 'Y@air-handler', 0.4],
  wireG: ['G@thermostat', 'G@air-handler', 0.4],
  wireO: ['O@thermostat', 'O@air-handler', 0.4],
  floatY: ['Y@air-handler', 'Y-out', 0.03],
  outY: ['Y-out', 'Y@condenser', 0.7],
  outC: ['C@air-handler', 'C@condenser', 0.7],
  outR: ['R@air-handler', 'R@condenser', 0.7],
  outO: ['O@air-handler', 'O@condenser', 0.7],
  firstSwitch: ['Y@condenser', 'Y-between', 0.02],
  secondSwitch: ['Y-between', 'Y-safe', 0.02],
  delay: ['Y-safe', 'coil-1', 0.05],
} as const satisfies Readonly<Record<string, readonly [string, string, number]>>;
export type LinkName = keyof typeof LINKS;

/** A yard on the day of a visit: all that may be wrong with it is written in here. */
export interface Yard {
  readonly design: Design;
  weather: Weather;
  readonly ohms: Record<LinkName, number>;
  /** Ohms of what should not conduct, by its ends; added by what is wrong. */
  readonly shorts: { readonly a: string; readonly b: string; readonly ohms: number }[];
  legs: [number, number];
  legOhms: [number, number];
  neutralOhms: number;
  house: [number, number, number];
  handlerFed: boolean;
  contact: [closed: number, closed2: number];
  welded: [boolean, boolean];
  jammed: boolean;
  /** Y2: its way indoors and out, the coil that it feeds, and whether the coil's plunger moves. Ohms. */
  stage: { calls: boolean; indoors: number; outdoors: number; coil: number; plunger: boolean; spills: number };
  coilOhms: number;
  /** Share of the coil's turns that are left. */
  coilTurns: number;
  pullsAt: number;
  tap: number;
  transformer: { works: boolean; primaryOhms: number; secondaryOhms: number; stiff: number };
  thermostatOff: boolean;
  closes: { Y: boolean; G: boolean };
  herm: number;
  hermShorted: boolean;
  fanCap: number;
  fanCapShorted: boolean;
  blowerCap: number;
  startCap: number;
  needsStart: boolean;
  heaterOhms: number;
  compressor: Motor;
  fan: Motor;
  blower: Motor;
  blowerRelay: boolean;
  fanBackwards: boolean;
  loop: Loop;
  look: { filter: boolean; outdoorCoil: boolean; oil: boolean; ice: boolean; pan: boolean };
  switchSet: { high: number; low: number; latches: boolean };
  breakerTripped: boolean;
  disconnectOut: boolean;
}

const sheetOf = (volts: number, watts: number, heldAmps: number, turns: number, microfarads: number): MotorSheet => ({
  volts,
  watts,
  heldAmps,
  turns,
  microfarads,
  breakdown: 2.3,
  breakdownSlip: 0.2,
  start: 2,
});

const sound = (sheet: MotorSheet, mainOhms: number, startOhms: number): Motor => ({
  sheet,
  load: 1,
  mainOhms,
  startOhms,
  turnsLeft: 1,
});

/** A sound yard of a design: parts as they scatter, the weather of the day. */
export function drawYard(design: Design, chance: Chance): Yard {
  const near = (value: number, share = 0.04) => value * chance.around(1, share);
  const ohms = {} as Record<LinkName, number>;
  for (const name of Object.keys(LINKS) as LinkName[]) ohms[name] = LINKS[name][2] * chance.span(0.6, 1.8);
  if (!design.delay) ohms.delay = 0.005;
  const comp = sheetOf(230, 0.86 * design.rla * 230, near(0.92 * design.lra), near(1.25), design.herm);
  const fan = sheetOf(230, 150 * design.fla, 2 * design.fla, near(1.2), design.fanMicrofarads);
  fan.breakdownSlip = 0.35;
  const onVolts = design.blowerOn120 ? 115 : 230;
  const blower = sheetOf(onVolts, 420, design.blowerOn120 ? 9 : 4.5, near(1.2), design.blowerMicrofarads);
  blower.breakdownSlip = 0.35;
  const held = comp.volts / comp.heldAmps;
  const indoors = chance.span(74, 84);
  return {
    design,
    weather: { outdoors: chance.span(78, 102), return: indoors, wetBulb: indoors - chance.span(10, 17) },
    ohms,
    shorts: [],
    legs: [near(120, 0.012), near(120, 0.012)],
    legOhms: [chance.span(0.02, 0.05), chance.span(0.02, 0.05)],
    neutralOhms: 0.02,
    house: [chance.span(8, 60), chance.span(8, 60), chance.span(12, 200)],
    handlerFed: true,
    contact: [0.006 * chance.span(0.5, 3), 0.006 * chance.span(0.5, 3)],
    welded: [false, design.poles === 1],
    jammed: false,
    coilOhms: near(13, 0.12),
    coilTurns: 1,
    pullsAt: chance.span(15.5, 19),
    tap: design.blowerOn120 ? 120 : design.volts,
    transformer: {
      works: true,
      primaryOhms: near(design.blowerOn120 ? 14 : 45, 0.1),
      secondaryOhms: near(0.9, 0.15),
      stiff: near(2.2, 0.15),
    },
    thermostatOff: false,
    closes: { Y: true, G: true },
    herm: near(design.herm, 0.02),
    hermShorted: false,
    fanCap: near(design.fanMicrofarads, 0.02),
    fanCapShorted: false,
    blowerCap: near(design.blowerMicrofarads, 0.02),
    startCap: design.hardStart ? near(145, 0.06) : 0,
    needsStart: design.hardStart && chance.yes(0.5),
    heaterOhms: near(1300, 0.15),
    compressor: sound(comp, near(0.3 * held, 0.08), near(1.05 * held, 0.08)),
    fan: sound(fan, near(30 / design.fla, 0.15), near(48 / design.fla, 0.15)),
    blower: sound(blower, near(design.blowerOn120 ? 4 : 14, 0.1), near(design.blowerOn120 ? 9 : 26, 0.1)),
    blowerRelay: true,
    fanBackwards: false,
    loop: {
      fluid: design.fluid,
      valve: design.valve,
      charge: near(1, 0.03),
      foreignPsi: 0,
      indoorAir: near(1, 0.06),
      indoorSurface: near(1, 0.04),
      outdoorAir: near(1, 0.04),
      outdoorSurface: near(1, 0.04),
      liquidWay: 1,
      valveReach: 1,
      valveStuckOpen: false,
      pumping: near(1, 0.03),
      reversed: false,
      breathesAgain: chance.span(0, 2),
    },
    look: { filter: false, outdoorCoil: false, oil: chance.yes(0.04), ice: false, pan: false },
    switchSet: {
      high: near(design.fluid === 'R-22' || design.fluid === 'R-407C' ? 420 : 625, 0.02),
      low: near(design.fluid === 'R-22' ? 24 : 45, 0.1),
      latches: chance.yes(0.3),
    },
    breakerTripped: false,
    disconnectOut: false,
    stage: {
      calls: true,
      indoors: 0.5,
      outdoors: 0.8,
      coil: design.stages === 2 ? chance.span(22, 70) : Number.POSITIVE_INFINITY,
      plunger: true,
      // What the open bypass sends back: a third, some more or less (common practice, from memory).
      spills: design.stages === 2 ? chance.span(0.28, 0.4) : 0,
    },
  };
}
