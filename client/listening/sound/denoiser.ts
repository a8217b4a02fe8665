import { DownByThree, RESAMPLE_DELAY, UpByThree } from './resample-by-three.ts';

/** What this room uses of the RNNoise module (@jitsi/rnnoise-wasm, BSD-3 inside Apache-2.0), however it was loaded. */
export interface NoiseModule {
  readonly HEAPF32: Float32Array;
  _malloc(bytes: number): number;
  _free(address: number): void;
  _rnnoise_create(): number;
  _rnnoise_process_frame(state: number, output: number, input: number): number;
  _rnnoise_destroy(state: number): void;
}

/** 10 ms at 16 kHz: what goes in and comes out at a time. */
export const FRAME = 160;
/** RNNoise works on 10 ms at 48 kHz, on the scale of 16-bit samples. */
const WIDE_FRAME = 480;
const SCALE = 32768;
/** RNNoise itself answers 20 ms late (measured by correlation); the two filters come on top. In samples at 16 kHz. */
export const DENOISER_DELAY = 320 + 2 * RESAMPLE_DELAY;

/** Takes the noise out of speech and says how likely each frame is speech. */
export class Denoiser {
  readonly #module: NoiseModule;
  readonly #state: number;
  readonly #buffer: number;
  readonly #up = new UpByThree();
  readonly #down = new DownByThree();

  constructor(module: NoiseModule) {
    this.#module = module;
    this.#state = module._rnnoise_create();
    this.#buffer = module._malloc(WIDE_FRAME * 4);
  }

  /**
   * @param frame 160 samples at 16 kHz
   * @returns 160 samples, `DENOISER_DELAY` late, and how likely this frame is speech, 0…1
   */
  push(frame: Float32Array): { readonly samples: Float32Array; readonly speech: number } {
    const { _rnnoise_process_frame: process } = this.#module;
    const wide = this.#up.push(frame);
    for (let index = 0; index < WIDE_FRAME; index += 1) wide[index]! *= SCALE;
    const at = this.#buffer >> 2;
    this.#module.HEAPF32.set(wide, at);
    const speech = process(this.#state, this.#buffer, this.#buffer);
    const clean = this.#module.HEAPF32.slice(at, at + WIDE_FRAME);
    for (let index = 0; index < WIDE_FRAME; index += 1) clean[index]! /= SCALE;
    return { samples: this.#down.push(clean), speech };
  }

  close(): void {
    this.#module._rnnoise_destroy(this.#state);
    this.#module._free(this.#buffer);
  }
}
