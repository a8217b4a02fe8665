/** A phasor or impedance: real and imaginary part, r.m.s. */
export type Phasor = readonly [re: number, im: number];

export const plus = (a: Phasor, b: Phasor): Phasor => [a[0] + b[0], a[1] + b[1]];
export const minus = (a: Phasor, b: Phasor): Phasor => [a[0] - b[0], a[1] - b[1]];
export const times = (a: Phasor, b: Phasor): Phasor => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
export const scaled = (a: Phasor, k: number): Phasor => [a[0] * k, a[1] * k];
export const size = (a: Phasor): number => Math.hypot(a[0], a[1]);

export function over(a: Phasor, b: Phasor): Phasor {
  const d = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / d, (a[1] * b[0] - a[0] * b[1]) / d];
}

/** Two impedances side by side. */
export const beside = (a: Phasor, b: Phasor): Phasor => over(times(a, b), plus(a, b));
