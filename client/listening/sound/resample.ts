/**
 * Brings sound of any rate to another, block by block, with a windowed-sinc filter (Kaiser window, about 80 dB down
 * where it could fold back into speech). State is kept between blocks: the output is the same however it was cut.
 */
export class Resampler {
  readonly #up: number;
  readonly #down: number;
  /** One row of taps a phase; `#taps` each. */
  readonly #rows: readonly Float32Array[];
  readonly #taps: number;
  #held: Float32Array;
  #heldLength: number;
  /** Phase of the next output sample within the input sample it begins at. */
  #phase = 0;

  /**
   * @param from samples a second that come in
   * @param to samples a second that go out
   * @throws RangeError where one of them is no whole number above 0
   */
  constructor(from: number, to: number) {
    if (!Number.isInteger(from) || !Number.isInteger(to) || from <= 0 || to <= 0) {
      throw new RangeError(`cannot bring ${from} samples a second to ${to}`);
    }
    const narrower = Math.min(1, to / from);
    const shared = greatestCommonDivisor(from, to);
    this.#up = to / shared;
    this.#down = from / shared;
    this.#taps = from === to ? 1 : Math.ceil(TAPS_AT_EQUAL_RATE / narrower);
    this.#rows = from === to ? [Float32Array.of(1)] : designRows(this.#up, this.#taps, narrower);
    this.#held = new Float32Array(this.#taps * 2 + 4_096);
    // Half a filter of silence before the first sample, so that output and input begin together.
    this.#heldLength = Math.floor((this.#taps - 1) / 2);
  }

  /** The samples that can be given for what has come in so far. */
  push(block: Float32Array): Float32Array {
    this.#take(block);
    const out = new Float32Array(Math.ceil((this.#heldLength * this.#up) / this.#down) + 1);
    let count = 0;
    let at = 0;
    while (at + this.#taps <= this.#heldLength) {
      out[count] = dot(this.#rows[this.#phase] as Float32Array, this.#held, at);
      count += 1;
      this.#phase += this.#down;
      at += Math.floor(this.#phase / this.#up);
      this.#phase %= this.#up;
    }
    this.#held.copyWithin(0, at, this.#heldLength);
    this.#heldLength -= at;
    return out.subarray(0, count);
  }

  #take(block: Float32Array): void {
    const length = this.#heldLength + block.length;
    if (length > this.#held.length) {
      const larger = new Float32Array(length * 2);
      larger.set(this.#held.subarray(0, this.#heldLength));
      this.#held = larger;
    }
    this.#held.set(block, this.#heldLength);
    this.#heldLength = length;
  }
}

const TAPS_AT_EQUAL_RATE = 50;
const KAISER_BETA = 8;
/** Share of the lower rate's band that passes unharmed. */
const PASS = 0.9;

function designRows(up: number, taps: number, ratio: number): readonly Float32Array[] {
  const centre = (taps - 1) / 2;
  return Array.from({ length: up }, (_, phase) => {
    const row = new Float32Array(taps);
    let sum = 0;
    for (let tap = 0; tap < taps; tap += 1) {
      const distance = tap - Math.floor(centre) - phase / up;
      const value = sinc(distance * ratio * PASS) * kaiser(distance / (centre + 1));
      row[tap] = value;
      sum += value;
    }
    return row.map((value) => value / sum);
  });
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}

function kaiser(x: number): number {
  return Math.abs(x) > 1 ? 0 : bessel(KAISER_BETA * Math.sqrt(1 - x * x)) / bessel(KAISER_BETA);
}

/** Modified Bessel function of the first kind, order zero, by its power series. */
function bessel(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-12; k += 1) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

function dot(row: Float32Array, samples: Float32Array, at: number): number {
  let sum = 0;
  for (let tap = 0; tap < row.length; tap += 1) sum += (row[tap] as number) * (samples[at + tap] as number);
  return sum;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
