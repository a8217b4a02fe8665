import type { Amps } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { between, chance, logBetween, normal, type Random } from '../random.ts';
import type { Motor } from './motor.ts';
import type { Residuals, Unit } from './unit.ts';

/** A healthy contact, blade, fuse or short piece of wire, ohms. */
const HEALTHY = 0.01;

/** A plate is read wrongly, or the wiring is not what it says, this often (our figures). */
const DOUBT = { supply: 0.08, poles: 0.04 } as const;
/** Share of the draws that take the other value; they count for less accordingly. */
const OTHERWISE = 0.15;

/**
 * What the profile states, seldom the other value: draws that take it count as little as the doubt is small. Unknown
 * values are drawn by `usual`, the chance of the first.
 */
function stated<T>(value: T | undefined, both: readonly [T, T], usual: number, doubt: number, random: Random) {
  if (value === undefined) return { value: chance(random, usual) ? both[0] : both[1], weight: 1 };
  const other = chance(random, OTHERWISE);
  const weight = other ? doubt / OTHERWISE : (1 - doubt) / (1 - OTHERWISE);
  return { value: other ? (value === both[0] ? both[1] : both[0]) : value, weight };
}

function drawSupply(profile: UnitProfile, random: Random) {
  const given = profile.supply?.nominal as number | undefined;
  const known = given === undefined ? undefined : given < 225 ? 208 : 240;
  const drawn = stated<number>(known, [240, 208], 0.75, DOUBT.supply, random);
  // A 230 V plate is what the motors were made for; the supply behind it is 240 or 208.
  const nominal = drawn.value === known ? given! : drawn.value;
  // 208Y/120 has its legs a third of a turn apart; service range A of ANSI C84.1 is ±5 %.
  const threePhase = nominal < 225;
  return {
    drawWeight: drawn.weight,
    nominal,
    legVolts: 120 * between(random, 0.955, 1.04),
    legAngle: threePhase ? (2 * Math.PI) / 3 : Math.PI,
    legOhms: [0, 0] as [number, number],
    house240Ohms: logBetween(random, 15, 150),
    house120Ohms: [logBetween(random, 100, 3000), logBetween(random, 100, 3000)] as [number, number],
    breaker: [HEALTHY, HEALTHY] as [number, number],
    feeder: [between(random, 0.03, 0.1), between(random, 0.03, 0.1)] as [number, number],
    blade: [HEALTHY, HEALTHY] as [number, number],
    fuse: [HEALTHY, HEALTHY] as [number, number],
    whip: [between(random, 0.01, 0.03), between(random, 0.01, 0.03)] as [number, number],
    handlerFed: true,
    handlerAt120: chance(random, 0.3),
    strayEarth: logBetween(random, 2e-10, 4e-9),
    strayPair: logBetween(random, 1e-10, 2e-9),
  };
}

function drawCompressor(profile: UnitProfile, volts: number, random: Random): Motor {
  const tons = profile.tons ?? between(random, 2, 5);
  const rla = profile.compressor?.rla ?? tons * between(random, 4.2, 5.8);
  const lra = profile.compressor?.lra ?? rla * between(random, 4.5, 6);
  const stoppedOhms = volts / lra;
  const runOhms = stoppedOhms * between(random, 0.2, 0.35);
  return {
    ratedVolts: volts,
    turningAmps: rla * between(random, 0.6, 0.92),
    // A plate's figure is one for its kind, at its own volts: single ones lie apart by a fifth (ours).
    stoppedAmps: lra * between(random, 0.82, 1.22),
    ratedMicrofarads: profile.capacitor?.herm ?? between(random, 30, 60),
    windingRatio: between(random, 1.15, 1.4),
    runOhms,
    startOhms: runOhms * between(random, 2, 4),
    runOpen: false,
    startOpen: false,
    seized: false,
    capacitorLimit: between(random, 0.4, 0.9),
    voltageLimit: between(random, 0.54, 0.85),
    shellOhms: logBetween(random, 2e7, 1e9),
    shellAtRun: false,
  };
}

function drawFan(profile: UnitProfile, volts: number, random: Random): Motor {
  const fla = profile.fanMotor?.fla ?? between(random, 0.8, 2);
  const stoppedAmps = fla * between(random, 1.6, 2.4);
  const runOhms = (volts / stoppedAmps) * between(random, 0.3, 0.5);
  return {
    ratedVolts: volts,
    turningAmps: fla * between(random, 0.65, 0.95),
    stoppedAmps,
    ratedMicrofarads: profile.capacitor?.fan ?? between(random, 3, 10),
    windingRatio: between(random, 1.1, 1.35),
    runOhms,
    startOhms: runOhms * between(random, 1.3, 2.2),
    runOpen: false,
    startOpen: false,
    seized: false,
    capacitorLimit: between(random, 0.3, 0.85),
    voltageLimit: between(random, 0.55, 0.85),
    shellOhms: logBetween(random, 2e7, 1e9),
    shellAtRun: false,
  };
}

function drawBlower(profile: UnitProfile, volts: number, random: Random): Motor {
  // A sixth to three quarters of a horsepower at 240 V, seldom fully loaded; twice the amps on half the volts.
  const fla = (between(random, 0.9, 4) * (volts < 150 ? 2 : 1)) as Amps;
  return {
    ...drawFan({ id: '', fanMotor: { fla } }, volts, random),
    ratedMicrofarads: profile.blowerCapacitor ?? between(random, 5, 10),
  };
}

function drawControl(profile: UnitProfile, random: Random) {
  const breaks = { 'breaks-R': 'R', 'breaks-Y': 'Y', none: 'none' } as const;
  const drawnFloat = chance(random, 0.5) ? 'Y' : chance(random, 0.6) ? 'R' : 'none';
  return {
    transformerWorks: true,
    transformerPrimaryOhms: between(random, 20, 60),
    transformerSecondaryOhms: between(random, 0.4, 1.5),
    secondaryVolts: between(random, 25.5, 28.5),
    leakageOhms: between(random, 0.8, 2.5),
    controlFuse: HEALTHY,
    floatBreaks: profile.floatSwitch ? breaks[profile.floatSwitch] : (drawnFloat as 'R' | 'Y' | 'none'),
    float: HEALTHY,
    commonBonded: chance(random, 0.5),
    rWire: between(random, 0.2, 0.8),
    yWireIndoors: between(random, 0.2, 0.8),
    yWireOutdoors: between(random, 0.3, 1.2),
    cWire: between(random, 0.3, 1.2),
    gWire: between(random, 0.2, 0.8),
    oWire: between(random, 0.3, 1.2),
    shortYC: Number.POSITIVE_INFINITY,
    shortRC: Number.POSITIVE_INFINITY,
    thermostatCalls: true,
    thermostatCallsBlower: true,
    thermostatOhms: logBetween(random, 800, 8000),
    thermostatBatteries: chance(random, 0.4),
    hasPressureSwitches: profile.pressureSwitches ?? chance(random, 0.7),
    highSwitch: HEALTHY,
    lowSwitch: HEALTHY,
    delay: between(random, 0.2, 0.5),
    highStaysOut: chance(random, 0.5),
    highTripsWithoutFan: chance(random, 0.25),
    lowTripsWithoutBlower: chance(random, 0.3),
    tripsOnHead: false,
  };
}

/** How a healthy unit's figures scatter about what its conditions make expected, °F (common practice, our widths). */
export const HEALTHY_SCATTER: Readonly<Residuals> = {
  evaporating: 3,
  superheat: 3,
  condensing: 4,
  subcooling: 2.5,
  discharge: 10,
  condenserRise: 3.5,
  airDrop: 1.8,
  standing: 1.5,
};

/** A healthy unit sits where its conditions put it; its scatter belongs to the spread of a prediction. */
const NO_SHIFT: Readonly<Residuals> = {
  evaporating: 0,
  superheat: 0,
  condensing: 0,
  subcooling: 0,
  discharge: 0,
  condenserRise: 0,
  airDrop: 0,
  standing: 0,
};

/** A healthy unit that fits the profile; whatever the profile leaves open is drawn. */
export function drawUnit(profile: UnitProfile, random: Random): Unit {
  const supply = drawSupply(profile, random);
  const volts = supply.nominal;
  const poles = stated<1 | 2>(profile.contactorPoles, [1, 2], 0.5, DOUBT.poles, random);
  const compressor = drawCompressor(profile, volts, random);
  const fan = drawFan(profile, volts, random);
  const blower = drawBlower(profile, supply.handlerAt120 ? 120 : volts, random);
  const hasHeater = profile.crankcaseHeater ?? chance(random, 0.5);
  const hardStart = profile.hardStart ?? chance(random, 0.2);
  return {
    ...supply,
    drawWeight: supply.drawWeight * poles.weight,
    poles: poles.value,
    poleClosed: [logBetween(random, 0.002, 0.02), logBetween(random, 0.002, 0.02)],
    poleStuck: [false, false],
    armatureJammed: false,
    coilOhms: between(random, 9, 20),
    coilReactance: between(random, 35, 70),
    pickUpVolts: between(random, 17, 20),
    heaterOhms: hasHeater ? between(random, 600, 1600) : Number.POSITIVE_INFINITY,
    hermMicrofarads: compressor.ratedMicrofarads * normal(random, 0.99, 0.02),
    hermShorted: false,
    fanMicrofarads: fan.ratedMicrofarads * normal(random, 0.99, 0.025),
    fanCapShorted: false,
    hardStart,
    hardStartMicrofarads: hardStart ? between(random, 88, 230) : 0,
    capacitorLead: 0.01,
    fanSpunUp: false,
    compressorLeadOff: false,
    fanLeadOff: false,
    needsHardStart: false,
    compressor,
    overload: HEALTHY,
    leadsStayOn: chance(random, 0.3),
    overloadOpenWhenHot: chance(random, 0.4),
    fan,
    defrostRelay: HEALTHY,
    doorSwitch: HEALTHY,
    blower,
    blowerMicrofarads: blower.ratedMicrofarads * normal(random, 0.99, 0.03),
    blowerRelayWorks: true,
    transformerTap: supply.handlerAt120
      ? 120
      : (profile.transformerTap ?? (volts < 225 && chance(random, 0.6) ? 208 : 240)),
    ...drawControl(profile, random),
    heatPump: profile.heatPump ?? chance(random, 0.4),
    metering: profile.metering ?? (chance(random, 0.5) ? 'fixed-orifice' : 'thermostatic-valve'),
    refrigerant: profile.refrigerant ?? 'R-410A',
    residuals: { ...NO_SHIFT },
    filterDirty: chance(random, 0.1),
    coilIced: false,
    outdoorCoilDirty: chance(random, 0.08),
    oilAtJoint: chance(random, 0.04),
    reversed: false,
    ...drawSecondStage(profile, random),
  };
}

/** Drawn last and only where the unit has one: the draws of the others stay what they are. */
function drawSecondStage({ twoStage = false }: UnitProfile, random: Random) {
  return {
    twoStage,
    thermostatCallsSecond: true,
    y2WireIndoors: twoStage ? between(random, 0.2, 0.8) : Number.POSITIVE_INFINITY,
    y2WireOutdoors: twoStage ? between(random, 0.3, 1.2) : Number.POSITIVE_INFINITY,
    // Common practice for coils that plug on a compressor of 2 to 5 tons, from memory: tens of ohms.
    unloaderOhms: twoStage ? logBetween(random, 18, 75) : Number.POSITIVE_INFINITY,
    unloaderReactance: twoStage ? between(random, 15, 60) : 0,
    unloaderPullVolts: twoStage ? between(random, 14, 18.5) : 0,
    stuckUnloaded: false,
    // Unloaded it pumps two thirds and draws seven tenths (common practice, from memory; our widths).
    unloadedAmps: twoStage ? between(random, 0.58, 0.84) : 1,
    unloadedShift: twoStage ? between(random, 0.5, 1.5) : 0,
  };
}
