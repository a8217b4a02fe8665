import { Dice } from './dice.ts';
import { type Build, CONTACTS, type Contact, type Drive, OPEN, type Plant, type SecondStage } from './plant.ts';
import { designMotor, onBench, type SplitPhaseMotor } from './split-phase-motor.ts';

/** Compressors and fans of split systems, from plates that are common (common practice). */
const SIZES = [
  { tons: 2, rla: 9.6, lra: 54, fla: 0.7, herm: 30, fan: 3 },
  { tons: 2.5, rla: 12.2, lra: 64, fla: 0.8, herm: 35, fan: 5 },
  { tons: 3, rla: 15.1, lra: 78, fla: 1.1, herm: 40, fan: 5 },
  { tons: 3.5, rla: 17.4, lra: 94, fla: 1.3, herm: 45, fan: 5 },
  { tons: 4, rla: 19.9, lra: 109, fla: 1.5, herm: 55, fan: 7.5 },
  { tons: 5, rla: 25.0, lra: 134, fla: 2.0, herm: 70, fan: 7.5 },
];

/**
 * A build with its wiring as installers leave it.
 * @param twoStage with a second stage; no draw depends on it
 */
export function drawBuild(seed: number, twoStage = false): Build {
  const dice = new Dice(seed);
  const size = dice.pick(SIZES);
  const heatPump = dice.yes(0.35);
  const supply = dice.yes(0.8) ? 240 : 208;
  const poles = dice.yes(0.55) ? 2 : 1;
  const heater = dice.yes(heatPump ? 0.7 : 0.25);
  return {
    tons: size.tons,
    refrigerant: dice.yes(0.8) ? 'R-410A' : 'R-22',
    valve: dice.yes(0.55),
    heatPump,
    fused: dice.yes(0.65),
    supply,
    legVolts: dice.around(supply === 240 ? 121 : 120, 2),
    tap: supply === 208 && dice.yes(0.7) ? 208 : 240,
    handlerAt120: dice.yes(0.12),
    poles,
    switchedPole: dice.yes(0.9) ? 1 : 2,
    commonOn: dice.yes(0.6) ? 1 : 2,
    heater,
    heaterAcrossPole: heater && poles === 1 && dice.yes(0.4),
    float: dice.weighted([
      ['breaks-R', 0.4],
      ['breaks-Y', 0.35],
      ['none', 0.25],
    ]),
    pressureSwitches: dice.yes(0.65),
    hardStart: dice.yes(0.2),
    twoStage,
    commonGrounded: dice.yes(0.6),
    thermostatOnBattery: dice.yes(0.35),
    thermostatHasC: dice.yes(0.75),
    electronicBlower: dice.yes(0.3),
    coilOhms: dice.span(8, 20),
    coilReactance: dice.span(50, 90),
    plate: {
      herm: size.herm,
      fan: size.fan,
      blower: dice.pick([5, 7.5, 10]),
      rla: size.rla,
      lra: size.lra,
      fla: size.fla,
      subcooling: dice.pick([8, 10, 12]),
    },
  };
}

function drive(motor: SplitPhaseMotor, volts: number, microfarads: number, slip: number, sticking: number): Drive {
  return {
    motor,
    load: onBench(motor, volts, microfarads, slip).torque,
    breakaway: sticking * onBench(motor, volts, microfarads, 1).torque,
    seized: false,
  };
}

/** Ohms of good contacts of each kind: a fuse and a coil of wire have more than a lug. */
function goodContacts(dice: Dice): Record<Contact, number> {
  const contacts = Object.fromEntries(CONTACTS.map((c) => [c, dice.span(0.002, 0.015)])) as Record<Contact, number>;
  for (const c of ['wireR', 'wireYIndoors', 'wireYOutdoors', 'wireC', 'wireG', 'wireO'] as const)
    contacts[c] = dice.span(0.1, 0.6);
  for (const c of ['thermostatY', 'thermostatG', 'thermostatO', 'float', 'highSwitch', 'lowSwitch'] as const)
    contacts[c] = dice.span(0.02, 0.2);
  contacts.controlFuse = dice.span(0.02, 0.06);
  return contacts;
}

/** A healthy unit of that build on a day on which somebody calls. */
export function drawPlant(build: Build, dice: Dice): Plant {
  const { plate } = build;
  const volts = 230;
  const spread = () => dice.around(1, 0.03);
  const blowerVolts = build.handlerAt120 ? 115 : volts;
  const blowerAmps = (1.6 + 0.5 * build.tons) * (230 / blowerVolts);
  const compressor = designMotor(volts, plate.lra * spread(), 'compressor');
  const fan = designMotor(volts, plate.fla * 2.3 * spread(), 'fan');
  const blower = designMotor(blowerVolts, blowerAmps * 2.3 * spread(), 'fan');
  return {
    build,
    contacts: goodContacts(dice),
    shorts: {
      compressorToShell: dice.span(5e7, 1e9),
      fanToFrame: dice.span(5e7, 1e9),
      hermSection: 1e8,
      fanSection: 1e8,
      coilTurns: 1e8,
      YToC: 1e8,
      RToC: 1e8,
      pole1: 1e9,
      pole2: 1e9,
    },
    drives: {
      compressor: drive(compressor, volts, plate.herm, dice.span(0.022, 0.03), dice.span(0.4, 0.72)),
      fan: drive(fan, volts, plate.fan, dice.span(0.07, 0.11), dice.span(0.08, 0.2)),
      blower: drive(blower, blowerVolts, plate.blower, dice.span(0.07, 0.12), dice.span(0.08, 0.2)),
    },
    microfarads: {
      herm: plate.herm * dice.span(0.95, 1.04),
      fan: plate.fan * dice.span(0.95, 1.04),
      blower: plate.blower * dice.span(0.95, 1.04),
      start: dice.span(120, 180),
    },
    cycle: {
      charge: dice.around(1, 0.03),
      opening: dice.around(1, 0.03),
      outdoorAir: dice.around(1, 0.04),
      indoorAir: dice.around(1, 0.06),
      foreignGas: 0,
      leak: 0,
      reversed: false,
      outdoorF: dice.span(78, 102),
      returnF: dice.span(74, 84),
      wetBulbF: dice.span(60, 69),
    },
    armature: 'free',
    pullIn: dice.span(14, 18),
    seen: new Set(),
    supplyShare: 1,
    transformerHealth: 1,
    iced: false,
    disconnectOut: false,
    // Last: the draws of a unit without it stay what they are.
    stage: drawStage(build, dice),
  };
}

function drawStage({ twoStage }: Build, dice: Dice): SecondStage {
  const good = { thermostat: 0.05, wireIndoors: 0.3, wireOutdoors: 0.4, coil: 0.01, portsStick: false };
  if (!twoStage) return { ...good, rectified: false, coilOhms: OPEN, coilReactance: 0, pullIn: 0, strokeLeft: 1 };
  const rectified = dice.yes(0.4);
  return {
    ...good,
    rectified,
    coilOhms: rectified ? dice.span(28, 45) : dice.span(16, 34),
    coilReactance: rectified ? 0 : dice.span(18, 40),
    pullIn: dice.span(13, 17),
    strokeLeft: dice.span(0.6, 0.72),
  };
}
