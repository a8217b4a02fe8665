/**
 * A permanent-split-capacitor motor: run winding across the line, start winding behind its capacitor. Turning, the
 * start winding carries a back-emf a quarter turn ahead; stopped, both windings are plain impedances.
 */
export interface Motor {
  /** Line to line volts it was made for. */
  ratedVolts: number;
  /** Line current when turning at its usual load, and when stopped. */
  turningAmps: number;
  stoppedAmps: number;
  /** Rated microfarads of its capacitor. */
  ratedMicrofarads: number;
  /** Voltage of the start winding over that of the run winding when turning: about 1.2–1.4. */
  windingRatio: number;
  /** Direct-current resistance of the windings, ohms. */
  runOhms: number;
  startOhms: number;
  runOpen: boolean;
  startOpen: boolean;
  /** Cannot turn: bearings, slugged or seized. */
  seized: boolean;
  /** Below this share of its rated capacitor it does not start. */
  capacitorLimit: number;
  /** Below this share of its rated voltage it does not start. */
  voltageLimit: number;
  /** Winding to shell, ohms. */
  shellOhms: number;
  /** Where it touches: at the run terminal, which is on T1, or at the common one. */
  shellAtRun: boolean;
}

export type MotorState = 'turning' | 'stopped';

/** Admittances of both windings (siemens) and the gain of the back-emf. */
export interface MotorAdmittance {
  readonly run: readonly [number, number];
  readonly start: readonly [number, number];
  readonly gain: readonly [number, number];
}

const OMEGA = 2 * Math.PI * 60;
const OPEN: readonly [number, number] = [0, 0];

function inverse(re: number, im: number): [number, number] {
  const d = re * re + im * im;
  return [re / d, -im / d];
}

/**
 * Winding admittances of a motor for its state. `capacitorShare` is the present over the rated capacitance: a weak
 * capacitor makes the run winding carry more (common practice: up to about a quarter more).
 */
export function motorAdmittance(motor: Motor, state: MotorState, capacitorShare: number): MotorAdmittance {
  const startRe = motor.startOhms * 1.1;
  const startIm = motor.startOhms * 2;
  const start = motor.startOpen ? OPEN : inverse(startRe, startIm);
  if (state === 'stopped') {
    const z = motor.ratedVolts / motor.stoppedAmps;
    return { run: motor.runOpen ? OPEN : inverse(0.6 * z, 0.8 * z), start, gain: OPEN };
  }
  const y = motor.turningAmps / motor.ratedVolts;
  const b = OMEGA * motor.ratedMicrofarads * 1e-6;
  const a = motor.windingRatio;
  const strain = 1 + 0.25 * Math.max(0, 1 - capacitorShare);
  // Line current at power factor 0.95 lagging, less what the start winding draws: b·(a + j) per volt.
  const runRe = Math.max(0.15 * y, 0.95 * y - b * a) * strain;
  const runIm = -(0.31 * y + b) * strain;
  const gain: [number, number] = [-b * (startRe * a - startIm), a - b * (startRe + startIm * a)];
  return { run: motor.runOpen ? OPEN : [runRe, runIm], start, gain };
}
