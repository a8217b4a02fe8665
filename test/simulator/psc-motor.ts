import { type Complex, cx, minus, over, plus, scale, size, times } from './complex.ts';

/**
 * A capacitor-run motor as two unlike windings on one rotor (double revolving field; Fitzgerald, Kingsley and Umans,
 * "Electric Machinery", chapter on single- and two-phase motors, from memory). Ohms, referred to the main winding.
 */
export interface Windings {
  readonly mainR: number;
  readonly mainX: number;
  readonly auxR: number;
  readonly auxX: number;
  /** Turns of the auxiliary over the main winding. */
  readonly turns: number;
  readonly rotorR: number;
  readonly rotorX: number;
  readonly magnetising: number;
}

/** Windings of a motor that draws about these amps turning and stopped. */
export function windingsFor(
  volts: number,
  turning: number,
  stopped: number,
  turns: number,
  auxShare: number,
): Windings {
  const lock = volts / stopped;
  return {
    mainR: 0.26 * lock,
    mainX: 0.42 * lock,
    auxR: 0.26 * lock * turns * turns * auxShare,
    auxX: 0.42 * lock * turns * turns,
    turns,
    rotorR: 0.3 * lock,
    rotorX: 0.42 * lock,
    magnetising: (1.7 * volts) / turning,
  };
}

function fields(w: Windings, slip: number): { f: Complex; b: Complex } {
  const half = (s: number) => {
    const rotor = cx(w.rotorR / s, w.rotorX);
    const magnet = cx(0, w.magnetising);
    return scale(over(times(rotor, magnet), plus(rotor, magnet)), 0.5);
  };
  return { f: half(slip), b: half(2 - slip) };
}

/** The two windings as seen from their terminals: V = Z·I for main and auxiliary. */
export function terminalMatrix(w: Windings, slip: number): readonly [Complex, Complex, Complex, Complex] {
  const { f, b } = fields(w, slip);
  const cross = times(cx(0, w.turns), minus(f, b));
  const main = plus(cx(w.mainR, w.mainX), plus(f, b));
  const aux = plus(cx(w.auxR, w.auxX), scale(plus(f, b), w.turns * w.turns));
  return [main, scale(cross, -1), cross, aux];
}

/** Torque, in synchronous watts, on so many volts with a capacitor in the auxiliary winding. */
export function torque(w: Windings, volts: number, microfarads: number, slip: number): number {
  const [z11, z12, z21, z22] = terminalMatrix(w, slip);
  const reactance = microfarads > 0.01 ? 1e6 / (2 * Math.PI * 60 * microfarads) : 1e9;
  const aux = plus(z22, cx(0, -reactance));
  const det = minus(times(z11, aux), times(z12, z21));
  const main = over(minus(times(cx(volts), aux), times(z12, cx(volts))), det);
  const start = over(minus(times(z11, cx(volts)), times(z21, cx(volts))), det);
  const { f, b } = fields(w, slip);
  const angle = Math.atan2(start.im, start.re) - Math.atan2(main.im, main.re);
  const a = w.turns * size(start);
  const m = size(main);
  return (m * m + a * a) * (f.re - b.re) + 2 * a * m * (f.re + b.re) * Math.sin(angle);
}
