import type { VoiceNews, VoiceOrder } from '../worker/voice-messages.ts';
import type { Saying, Voice } from './voice.ts';

const RATE = 16_000;
/** Saying a sentence takes it a tenth of a second; a device that needs so long cannot. */
const MADE_WITHIN_MS = 8_000;

/** The program's own voice, for devices that have none: made in a worker, heard through Web Audio. */
export class OfflineVoice implements Voice {
  readonly name = 'offline voice';
  readonly #worker: Worker;
  readonly #waiting = new Map<number, (samples: Float32Array<ArrayBuffer>) => void>();
  readonly #context: () => AudioContext;
  readonly #plays: (samples: Float32Array) => void;
  #number = 0;

  private constructor(worker: Worker, context: () => AudioContext, plays: (samples: Float32Array) => void) {
    this.#worker = worker;
    this.#context = context;
    this.#plays = plays;
    worker.onmessage = ({ data }: MessageEvent<VoiceNews>) => {
      if (data.news !== 'said') return;
      this.#waiting.get(data.number)?.(data.samples);
      this.#waiting.delete(data.number);
    };
  }

  /**
   * Fetches the voice (14 MB, once: it is kept on the device) and makes it ready. Rejects where it cannot be had.
   *
   * @param context where it is heard; asked for at the first sentence
   * @param plays is given the samples of each sentence, 16 kHz, as it begins to sound, and none when it is cut short
   */
  static load(
    context: () => AudioContext,
    plays: (samples: Float32Array) => void = () => undefined,
  ): Promise<OfflineVoice> {
    const worker = new Worker(new URL('../worker/voice-worker.ts', import.meta.url), { type: 'module' });
    return new Promise((resolve, reject) => {
      const fail = (detail: string) => {
        worker.terminate();
        reject(new Error(detail));
      };
      worker.onmessage = ({ data }: MessageEvent<VoiceNews>) => {
        if (data.news === 'ready') resolve(new OfflineVoice(worker, context, plays));
        if (data.news === 'failed') fail(data.detail);
      };
      worker.onerror = (event) => {
        event.preventDefault();
        fail(event.message || 'the voice could not be loaded');
      };
    });
  }

  say(text: string, rate: number): Saying {
    let source: AudioBufferSourceNode | undefined;
    let isCut = false;
    const speak = async (): Promise<'spoken' | 'failed'> => {
      const samples = await this.#make(text, rate);
      if (isCut) return 'spoken';
      if (samples.length === 0) return 'failed';
      const context = this.#context();
      await context.resume();
      const buffer = context.createBuffer(1, samples.length, RATE);
      buffer.copyToChannel(samples, 0);
      const playing = context.createBufferSource();
      source = playing;
      playing.buffer = buffer;
      playing.connect(context.destination);
      return new Promise((resolve) => {
        playing.onended = () => resolve('spoken');
        playing.start();
        this.#plays(samples);
      });
    };
    return {
      outcome: speak().catch(() => 'failed'),
      cut: () => {
        isCut = true;
        source?.stop();
        if (source !== undefined) this.#plays(new Float32Array(0));
      },
    };
  }

  #make(text: string, rate: number): Promise<Float32Array<ArrayBuffer>> {
    this.#number += 1;
    const number = this.#number;
    return new Promise((resolve) => {
      const late = setTimeout(() => resolve(new Float32Array(0)), MADE_WITHIN_MS);
      this.#waiting.set(number, (samples) => {
        clearTimeout(late);
        resolve(samples);
      });
      this.#worker.postMessage({ number, text, rate } satisfies VoiceOrder);
    });
  }
}
