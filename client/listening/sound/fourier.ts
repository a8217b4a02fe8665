/** Complex numbers of one spectrum, side by side. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export const emptySpectrum = (size: number): Spectrum => ({
  re: new Float64Array(size),
  im: new Float64Array(size),
});

/** The fast Fourier transform of one size, a power of two, in place (J. W. Cooley and J. W. Tukey, 1965). */
export class Fourier {
  readonly size: number;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  readonly #swap: Uint16Array;

  constructor(size: number) {
    this.size = size;
    const angle = (index: number): number => (2 * Math.PI * index) / size;
    this.#cos = Float64Array.from({ length: size / 2 }, (_, index) => Math.cos(angle(index)));
    this.#sin = Float64Array.from({ length: size / 2 }, (_, index) => Math.sin(angle(index)));
    const bits = Math.log2(size);
    this.#swap = Uint16Array.from({ length: size }, (_, index) => {
      let turned = 0;
      for (let bit = 0; bit < bits; bit += 1) turned |= ((index >> bit) & 1) << (bits - 1 - bit);
      return turned;
    });
  }

  forward({ re, im }: Spectrum): void {
    const { size } = this;
    for (let index = 0; index < size; index += 1) {
      const other = this.#swap[index]!;
      if (other <= index) continue;
      [re[index], re[other]] = [re[other]!, re[index]!];
      [im[index], im[other]] = [im[other]!, im[index]!];
    }
    for (let half = 1; half < size; half *= 2) {
      const step = size / (2 * half);
      for (let from = 0; from < size; from += 2 * half)
        for (let at = 0; at < half; at += 1) {
          const [cos, sin] = [this.#cos[at * step]!, this.#sin[at * step]!];
          const [low, high] = [from + at, from + at + half];
          const [a, b] = [re[high]! * cos + im[high]! * sin, im[high]! * cos - re[high]! * sin];
          re[high] = re[low]! - a;
          im[high] = im[low]! - b;
          re[low]! += a;
          im[low]! += b;
        }
    }
  }

  /** Undoes `forward`. */
  back({ re, im }: Spectrum): void {
    this.forward({ re: im, im: re });
    for (let index = 0; index < this.size; index += 1) {
      re[index]! /= this.size;
      im[index]! /= this.size;
    }
  }
}
