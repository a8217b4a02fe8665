/** A complex number of the simulator: plain, slow, and nobody else's. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const cx = (re: number, im = 0): Complex => ({ re, im });
export const plus = (a: Complex, b: Complex): Complex => cx(a.re + b.re, a.im + b.im);
export const minus = (a: Complex, b: Complex): Complex => cx(a.re - b.re, a.im - b.im);
export const times = (a: Complex, b: Complex): Complex => cx(a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re);
export const scale = (a: Complex, k: number): Complex => cx(a.re * k, a.im * k);
export const size = (a: Complex): number => Math.hypot(a.re, a.im);
export function over(a: Complex, b: Complex): Complex {
  const d = b.re * b.re + b.im * b.im;
  return cx((a.re * b.re + a.im * b.im) / d, (a.im * b.re - a.re * b.im) / d);
}
