import { beside, minus, over, type Phasor, plus, scaled, size, times } from './phasor.ts';

/**
 * A motor with a main and an auxiliary winding a quarter turn apart, in double revolving field theory: the rotor is two
 * equivalent circuits, one turning with the field (slip s), one against it (slip 2 − s). Equations after C. Veinott,
 * "Theory and Design of Small Induction Motors", and A. Fitzgerald, "Electric Machinery" (from memory).
 */
export interface SplitPhaseMotor {
  /** Resistance of the windings, ohms: what an ohmmeter reads. */
  readonly mainOhms: number;
  readonly auxiliaryOhms: number;
  /** Leakage of each, rotor referred to the main winding, magnetising reactance: ohms. */
  readonly mainReactance: number;
  readonly auxiliaryReactance: number;
  readonly rotorOhms: number;
  readonly rotorReactance: number;
  readonly magnetising: number;
  /** Turns of the auxiliary winding to those of the main. */
  readonly turns: number;
}

/** The design of a motor from what its plate says. @param kind compressors slip little, fans of six poles much */
export function designMotor(volts: number, lockedAmps: number, kind: 'compressor' | 'fan'): SplitPhaseMotor {
  const z = volts / lockedAmps;
  const share = kind === 'compressor' ? { r: 0.27, rotor: 0.3, x: 0.41, m: 13, aux: 2.6, turns: 1.15 } : null;
  const { r, rotor, x, m, aux, turns } = share ?? { r: 0.42, rotor: 0.4, x: 0.36, m: 5, aux: 1.5, turns: 1.2 };
  return {
    mainOhms: r * z,
    auxiliaryOhms: r * z * aux,
    mainReactance: x * z,
    auxiliaryReactance: x * z * turns * turns,
    rotorOhms: rotor * z,
    rotorReactance: x * z,
    magnetising: m * z,
    turns,
  };
}

function fields(m: SplitPhaseMotor, slip: number): { forward: Phasor; backward: Phasor } {
  const field = (s: number): Phasor =>
    scaled(beside([0, m.magnetising], [m.rotorOhms / Math.max(s, 1e-4), m.rotorReactance]), 0.5);
  return { forward: field(slip), backward: field(2 - slip) };
}

/** Impedances of the pair: of main, of auxiliary, and what a current in one induces in the other; ohms. */
interface Pair {
  readonly main: Phasor;
  readonly auxiliary: Phasor;
  readonly auxiliaryOnMain: Phasor;
  readonly mainOnAuxiliary: Phasor;
}

function impedances(m: SplitPhaseMotor, slip: number): Pair {
  const { forward, backward } = fields(m, slip);
  const both = plus(forward, backward);
  const turning = times([0, m.turns], minus(forward, backward));
  return {
    main: plus([m.mainOhms, m.mainReactance], both),
    auxiliary: plus([m.auxiliaryOhms, m.auxiliaryReactance], scaled(both, m.turns ** 2)),
    auxiliaryOnMain: scaled(turning, -1),
    mainOnAuxiliary: turning,
  };
}

/** The pair turned round: currents for voltages, siemens, in the order main–main, main–aux, aux–main, aux–aux. */
export function admittances(m: SplitPhaseMotor, slip: number): readonly [Phasor, Phasor, Phasor, Phasor] {
  const z = impedances(m, slip);
  const d = minus(times(z.main, z.auxiliary), times(z.auxiliaryOnMain, z.mainOnAuxiliary));
  return [
    over(z.auxiliary, d),
    over(scaled(z.auxiliaryOnMain, -1), d),
    over(scaled(z.mainOnAuxiliary, -1), d),
    over(z.main, d),
  ];
}

/** Torque in synchronous watts. @param main,auxiliary currents, amperes */
export function torque(m: SplitPhaseMotor, slip: number, main: Phasor, auxiliary: Phasor): number {
  const { forward, backward } = fields(m, slip);
  const a = m.turns;
  const cross = main[0] * auxiliary[1] - main[1] * auxiliary[0];
  return (
    (forward[0] - backward[0]) * (size(main) ** 2 + (a * size(auxiliary)) ** 2) +
    2 * a * (forward[0] + backward[0]) * cross
  );
}

/** The pair at fixed voltages, the auxiliary behind a capacitor: what a test bench does. @param microfarads 0: none */
export function onBench(m: SplitPhaseMotor, volts: number, microfarads: number, slip: number) {
  const z = impedances(m, slip);
  const inSeries: Phasor = microfarads > 0 ? [0, -1e6 / (2 * Math.PI * 60 * microfarads)] : [1e9, 0];
  const auxiliary = plus(z.auxiliary, inSeries);
  const d = minus(times(z.main, auxiliary), times(z.auxiliaryOnMain, z.mainOnAuxiliary));
  const main = over(scaled(minus(auxiliary, z.auxiliaryOnMain), volts), d);
  const aux = over(scaled(minus(z.main, z.mainOnAuxiliary), volts), d);
  return { amps: size(plus(main, aux)), auxiliaryAmps: size(aux), torque: torque(m, slip, main, aux) };
}
