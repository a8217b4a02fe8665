import { DENOISER_DELAY, Denoiser, FRAME, type NoiseModule } from './denoiser.ts';
import { EchoCanceller } from './echo-canceller.ts';

/** Share of denoised sound; the rest is the sound as it came. */
const WET = 0.8;

export interface Cleaned {
  readonly samples: Float32Array;
  readonly speech: number;
}

/** The microphone's sound without the program's own voice, where that is known, and with most of its noise taken out. */
export class CleanSound {
  readonly #denoiser: Denoiser;
  readonly #echo = new EchoCanceller();
  /** What is being played and was not yet due. */
  #playing: Float32Array = new Float32Array(0);
  /** The sound as it came, waiting for its denoised self. */
  readonly #delayed = new Float32Array(DENOISER_DELAY + FRAME);

  constructor(rnnoise: NoiseModule) {
    this.#denoiser = new Denoiser(rnnoise);
  }

  /** The mouth begins to play this now, in the stead of what it played; nothing: it is quiet. 16 kHz, -1…1. */
  plays(samples: Float32Array): void {
    this.#playing = samples;
    if (samples.length > 0) this.#echo.begin();
  }

  /**
   * @param frame 10 ms at 16 kHz
   * @returns as much, `DENOISER_DELAY` late, and how likely it is speech, 0…1
   */
  push(frame: Float32Array): Cleaned {
    const near = this.#echo.push(frame, this.#playedNow());
    this.#shift(this.#echo.takeLag());
    return this.#denoised(near);
  }

  /** The same of silence that no microphone gave: nothing is played meanwhile. */
  pushSilence(): Cleaned {
    return this.#denoised(new Float32Array(FRAME));
  }

  close(): void {
    this.#denoiser.close();
  }

  #denoised(near: Float32Array): Cleaned {
    const { samples, speech } = this.#denoiser.push(near);
    const dry = this.#delayed;
    dry.copyWithin(0, FRAME);
    dry.set(near, DENOISER_DELAY);
    for (let index = 0; index < FRAME; index += 1) samples[index] = WET * samples[index]! + (1 - WET) * dry[index]!;
    return { samples, speech };
  }

  /** What is still to be played comes so many samples later than it was told. */
  #shift(lag: number): void {
    const later = new Float32Array(Math.max(0, this.#playing.length + lag));
    if (lag > 0) later.set(this.#playing, lag);
    else later.set(this.#playing.subarray(-lag));
    if (lag !== 0) this.#playing = later;
  }

  #playedNow(): Float32Array | undefined {
    if (this.#playing.length === 0) return undefined;
    const frame = new Float32Array(FRAME);
    frame.set(this.#playing.subarray(0, FRAME));
    this.#playing = this.#playing.subarray(FRAME);
    return frame;
  }
}
