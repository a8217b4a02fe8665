import { FRAME } from './denoiser.ts';
import { emptySpectrum, Fourier, type Spectrum } from './fourier.ts';
import { lagOf, powerOf } from './lag.ts';

/** Longer than two frames, so that what a part of the path makes of the latest frame does not run round the end. */
const SIZE = 512;
const BINS = SIZE / 2 + 1;
/** The path from mouth to microphone in parts of one frame: what the device takes to play and record, and the room. */
const PARTS = 40;
/** How steady the path is taken to be from frame to frame. */
const STEADY = 0.998;
/** What is thought of each part of the path before anything was heard: squared, per bin. */
const UNKNOWN = 0.3;
/** How much the latest frame counts in the level of what is not echo. */
const LATEST = 0.15;
/** Share of the transform that a frame fills. */
const FILLED = FRAME / SIZE;
/** What stays of the echo, as a share of what was taken out, over the filter's own doubt. Our measuring in a made-up room. */
const LEFT = 0.2;
/** What may be echo is damped down to this. */
const LEAST = 0;
/** How fast a frame that holds nothing more is damped after one that did: the weak sounds of a word. */
const GIVES_WAY = 0.2;
/** So many frames of a prompt are compared with what was awaited, from where that is to be heard at all (a sum of squares). */
const BEGINNING = 30;
const AUDIBLE = 1e-3;
const BEGINNING_MOST = 100;
/** Parts of the path that are kept to their length in a frame, in turn: all in each would cost as much as the rest. */
const TIDIED = 4;

/**
 * Takes the program's own voice out of the microphone's sound, where the samples that are played are known: follows the
 * path between them with a Kalman filter in the frequency domain (partitioned as by F. Kuech, E. Mabande, G. Enzner,
 * ICASSP 2014), which holds still by itself while somebody else speaks, and damps the frames that hold little more than what
 * the filter may have left.
 */
export class EchoCanceller {
  readonly #fourier = new Fourier(SIZE);
  /** What was played, latest last. */
  readonly #played = new Float64Array(SIZE);
  /** Its spectra, by age in frames from `#latest` back. */
  readonly #spectra: Spectrum[] = Array.from({ length: PARTS }, () => emptySpectrum(SIZE));
  #latest = 0;
  readonly #path: Spectrum[] = Array.from({ length: PARTS }, () => emptySpectrum(SIZE));
  readonly #doubt: Float64Array[] = Array.from({ length: PARTS }, () => new Float64Array(BINS).fill(UNKNOWN));
  readonly #other = new Float64Array(BINS);
  readonly #echo = emptySpectrum(SIZE);
  readonly #error = emptySpectrum(SIZE);
  readonly #work = emptySpectrum(SIZE);
  #tidied = 0;
  #damping = 1;
  /** What came and what was awaited of it at the beginning of a prompt, until it is known how late it is. */
  #beginning: { readonly came: Float32Array[]; readonly awaited: Float32Array[] } | undefined;
  #beginningFrames = 0;
  #isKnown = false;
  #settling = 0;
  #lag = 0;
  /** Frames since something was played. */
  #silent = PARTS;

  /** Another prompt begins: nobody can say to the millisecond when. */
  begin(): void {
    this.#beginning = this.#isKnown ? { came: [], awaited: [] } : undefined;
    this.#beginningFrames = 0;
    this.#isKnown = true;
    // The end of another, which was laid right, says nothing of this one.
    this.#played.fill(0);
    for (const { re, im } of this.#spectra) {
      re.fill(0);
      im.fill(0);
    }
  }

  /** By how many samples the prompt turned out to be later than it was told, once; else 0. */
  takeLag(): number {
    const lag = this.#lag;
    this.#lag = 0;
    return lag;
  }

  /**
   * @param frame 10 ms of the microphone at 16 kHz
   * @param played what was played meanwhile, as long; undefined: nothing
   * @returns the frame without its echo
   */
  push(frame: Float32Array, played: Float32Array | undefined): Float32Array {
    this.#silent = played === undefined ? this.#silent + 1 : 0;
    if (this.#silent > PARTS) return frame;
    this.#follow(played);
    const echo = this.#echoNow();
    if (this.#beginning !== undefined) return this.#compared(frame, Float32Array.from(echo));
    const out = frame.map((sample, index) => sample - echo[index]!);
    // What was played before stands still in its old place.
    if (this.#settling > 0) this.#settling -= 1;
    else this.#learn(out);
    return this.#damped(out, echo);
  }

  /** What is awaited in the wrong place is not taken out, and nothing is learnt of it. */
  #compared(frame: Float32Array, echo: Float32Array): Float32Array {
    const beginning = this.#beginning!;
    if (beginning.came.length > 0 || powerOf(echo) > AUDIBLE) {
      beginning.came.push(frame.slice());
      beginning.awaited.push(echo);
    }
    if (beginning.came.length >= BEGINNING) {
      const lag = lagOf(joined(beginning.came), joined(beginning.awaited));
      this.#beginning = undefined;
      this.#lag = lag ?? 0;
      this.#settling = this.#lag === 0 ? 0 : PARTS;
      if (lag === undefined) this.#beginAnew();
    }
    // Nothing of the last prompt came back, as with a headset: this one may.
    this.#beginningFrames += 1;
    if (this.#beginningFrames > BEGINNING_MOST) this.#beginAnew();
    const out = frame.map((sample, index) => sample - echo[index]!);
    return powerOf(out) < powerOf(frame) ? out : frame;
  }

  /** The path is another than it was. */
  #beginAnew(): void {
    this.#beginning = undefined;
    for (const doubt of this.#doubt) doubt.fill(UNKNOWN);
  }

  #follow(played: Float32Array | undefined): void {
    this.#played.copyWithin(0, FRAME);
    if (played === undefined) this.#played.fill(0, SIZE - FRAME);
    else this.#played.set(played, SIZE - FRAME);
    this.#latest = (this.#latest + PARTS - 1) % PARTS;
    const spectrum = this.#spectra[this.#latest]!;
    spectrum.re.set(this.#played);
    spectrum.im.fill(0);
    this.#fourier.forward(spectrum);
  }

  #spectrumOf(part: number): Spectrum {
    return this.#spectra[(this.#latest + part) % PARTS]!;
  }

  /** What the path as it is known makes of what was played. */
  #echoNow(): Float64Array {
    const { re, im } = this.#echo;
    re.fill(0);
    im.fill(0);
    for (let part = 0; part < PARTS; part += 1) {
      const [x, w] = [this.#spectrumOf(part), this.#path[part]!];
      for (let bin = 0; bin < BINS; bin += 1) {
        re[bin]! += x.re[bin]! * w.re[bin]! - x.im[bin]! * w.im[bin]!;
        im[bin]! += x.re[bin]! * w.im[bin]! + x.im[bin]! * w.re[bin]!;
      }
    }
    mirror(this.#echo);
    this.#fourier.back(this.#echo);
    return re.slice(SIZE - FRAME);
  }

  #learn(error: Float32Array): void {
    const { re, im } = this.#error;
    re.fill(0);
    im.fill(0);
    re.set(error, SIZE - FRAME);
    this.#fourier.forward(this.#error);
    const explained = new Float64Array(BINS);
    for (let part = 0; part < PARTS; part += 1) {
      const [x, doubt] = [this.#spectrumOf(part), this.#doubt[part]!];
      for (let bin = 0; bin < BINS; bin += 1) explained[bin]! += doubt[bin]! * (x.re[bin]! ** 2 + x.im[bin]! ** 2);
    }
    for (let bin = 0; bin < BINS; bin += 1) {
      const power = re[bin]! ** 2 + im[bin]! ** 2;
      this.#other[bin]! += LATEST * (power - this.#other[bin]!);
      // Somebody else may have begun with this very frame.
      explained[bin]! += Math.max(power, this.#other[bin]!) / FILLED + 1e-9;
    }
    for (let part = 0; part < PARTS; part += 1) this.#correct(part, explained);
    for (let count = 0; count < TIDIED; count += 1) this.#tidy();
  }

  #correct(part: number, explained: Float64Array): void {
    const [x, w, doubt] = [this.#spectrumOf(part), this.#path[part]!, this.#doubt[part]!];
    const { re, im } = this.#error;
    for (let bin = 0; bin < BINS; bin += 1) {
      const gain = doubt[bin]! / explained[bin]!;
      const [a, b] = [x.re[bin]!, x.im[bin]!];
      w.re[bin]! += gain * (a * re[bin]! + b * im[bin]!);
      w.im[bin]! += gain * (a * im[bin]! - b * re[bin]!);
      const known = 1 - FILLED * gain * (a * a + b * b);
      doubt[bin] = STEADY ** 2 * known * doubt[bin]! + (1 - STEADY ** 2) * (w.re[bin]! ** 2 + w.im[bin]! ** 2);
    }
  }

  /** No part of the path is longer than a frame. */
  #tidy(): void {
    const path = this.#path[this.#tidied]!;
    this.#tidied = (this.#tidied + 1) % PARTS;
    const { re, im } = this.#work;
    re.set(path.re);
    im.set(path.im);
    mirror(this.#work);
    this.#fourier.back(this.#work);
    re.fill(0, FRAME);
    im.fill(0);
    this.#fourier.forward(this.#work);
    path.re.set(re);
    path.im.set(im);
  }

  #damped(out: Float32Array, echo: Float64Array): Float32Array {
    const [left, taken] = [powerOf(out), powerOf(echo)];
    const share = Math.max(LEAST ** 2, 1 - (LEFT * taken) / Math.max(left, 1e-12));
    // At once for somebody who speaks; back again over some frames.
    const goal = Math.sqrt(share);
    this.#damping = goal > this.#damping ? goal : this.#damping + GIVES_WAY * (goal - this.#damping);
    const by = this.#damping;
    return out.map((sample) => sample * by);
  }
}

const joined = (frames: readonly Float32Array[]): Float32Array => {
  const whole = new Float32Array(FRAME * frames.length);
  for (const [index, frame] of frames.entries()) whole.set(frame, FRAME * index);
  return whole;
};

/** The upper half of a real sound's spectrum. */
function mirror({ re, im }: Spectrum): void {
  im[0] = 0;
  im[SIZE / 2] = 0;
  for (let bin = 1; bin < SIZE / 2; bin += 1) {
    re[SIZE - bin] = re[bin]!;
    im[SIZE - bin] = -im[bin]!;
  }
}
