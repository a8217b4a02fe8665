import { type Cx, cx } from './mesh.ts';

/** A motor with a run capacitor as its maker's sheet tells of it. Volts, amps, watts, microfarads. */
export interface MotorSheet {
  volts: number;
  /** Watts taken at rated load. */
  watts: number;
  /** Amps of the main winding with the rotor held. */
  heldAmps: number;
  /** Turns of the start winding for each of the main one. */
  turns: number;
  microfarads: number;
  /** Breakdown torque in rated loads; the slip at which it is reached. */
  breakdown: number;
  breakdownSlip: number;
  /** Starting torque with everything right, in what breaks the rotor away. */
  start: number;
}

/** Share of breakdown torque that is left to a turning motor whose start winding does nothing (common practice). */
const ALONE = 0.6;

/** A motor as it stands: its sheet, what is wrong with it, and what it must carry. */
export interface Motor {
  readonly sheet: MotorSheet;
  /** Load in rated ones; infinite where it is seized. */
  load: number;
  mainOhms: number;
  startOhms: number;
  /** Share of the main winding's turns that is left: shorted turns take the rest. */
  turnsLeft: number;
}

/** Slip at which torque meets load (Kloss), with `help` of the start winding from 0 to 1; nothing where it stalls. */
export function slipOf(motor: Motor, volts: number, help: number): number | undefined {
  const { sheet } = motor;
  const strength = (volts / sheet.volts) ** 2 * (ALONE + (1 - ALONE) * Math.min(1, help)) * motor.turnsLeft ** 2;
  const margin = (sheet.breakdown * strength) / motor.load;
  if (!(margin >= 1)) return undefined;
  return sheet.breakdownSlip * (margin - Math.sqrt(margin * margin - 1));
}

/** Impedance of the held main winding; its copper is a third of it. */
export function heldOhms({ sheet, turnsLeft }: Motor): Cx {
  const size = (sheet.volts / sheet.heldAmps) * turnsLeft ** 2;
  return [0.55 * size, 0.835 * size];
}

/** Impedance that the main winding shows while it turns: watts for the load, vars for the field and for slip. */
export function turningOhms(motor: Motor, volts: number, slip: number, help: number): Cx {
  const { sheet } = motor;
  const share = 1 - 0.3 * Math.min(1, help);
  const watts = sheet.watts * motor.load * share * (1 + 1.5 * slip);
  const field = 0.45 * sheet.watts * (volts / sheet.volts) ** 2 * motor.turnsLeft ** -2;
  const strain = sheet.watts * (slip / sheet.breakdownSlip) ** 2;
  const per = Math.max(volts, 1) ** 2;
  return cx.over([1, 0], [watts / per, -(field + strain) / per]);
}

/** Impedance of the start winding: longer, of thinner wire. */
export function startWindingOhms(motor: Motor): Cx {
  const [re, im] = heldOhms({ ...motor, turnsLeft: 1 });
  return [1.5 * motor.sheet.turns ** 2 * re, 0.8 * motor.sheet.turns ** 2 * im];
}

/** Volts a turning rotor makes in the start winding for each of the main one: a quarter turn ahead. */
export const speedVolts = ({ sheet }: Motor, slip: number): Cx => [0, 0.95 * sheet.turns * (1 - slip)];

/** Torque of a held rotor against what breaks it away: crossed currents of both windings, one where the sheet says so. */
export function startTorque(motor: Motor, main: Cx, start: Cx): number {
  const { sheet } = motor;
  const crossed = main[0] * start[1] - main[1] * start[0];
  return (sheet.start * crossed) / crossedAtBest(sheet);
}

/** Crossed currents at rated volts with the rated capacitor. */
function crossedAtBest(sheet: MotorSheet): number {
  const sound: Motor = { sheet, load: 1, mainOhms: 1, startOhms: 1, turnsLeft: 1 };
  const main = cx.over([sheet.volts, 0], heldOhms(sound));
  const path = cx.add(startWindingOhms(sound), [0, -1e6 / (377 * sheet.microfarads)]);
  const start = cx.over([sheet.volts, 0], path);
  return main[0] * start[1] - main[1] * start[0];
}
