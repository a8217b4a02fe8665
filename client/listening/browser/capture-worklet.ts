import { Resampler } from '../sound/resample.ts';

/** What the audio thread's global scope offers; no library of TypeScript's describes it. */
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

const HEARD_RATE = 16_000;
/** 20 ms: short beside the endpoint's own wait, few enough messages. */
const BLOCK = 320;

/**
 * Runs on the audio thread: takes the microphone's sound, brings it to 16 kHz and hands it on in blocks of 20 ms over
 * the ports it is given, past the page, so that a busy page does not hold the sound up.
 */
class Capture extends AudioWorkletProcessor {
  readonly #resampler = new Resampler(sampleRate, HEARD_RATE);
  #block = new Float32Array(BLOCK);
  #filled = 0;
  readonly #to: MessagePort[] = [];

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort>) => this.#to.push(data);
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const channel = inputs[0]?.[0];
    if (channel !== undefined) this.#take(this.#resampler.push(channel));
    return true;
  }

  #take(samples: Float32Array): void {
    for (const sample of samples) {
      this.#block[this.#filled] = sample;
      this.#filled += 1;
      if (this.#filled < BLOCK) continue;
      for (const port of this.#to) port.postMessage(this.#block);
      this.#filled = 0;
    }
  }
}

registerProcessor('readback-capture', Capture);
