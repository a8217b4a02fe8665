import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Ear, EarFault, Utterance } from '../ear.ts';
import type { EarNews, EarOrder } from '../worker/ear-messages.ts';
import captureUrl from './capture-worklet.ts?worker&url';
import type { MicrophoneState, PageEar } from './page-ear.ts';

type Callbacks = Parameters<Ear['start']>[0];

/** What is asked of the browser: the sound as it is, since the recogniser was made for untreated speech. */
const MICROPHONE: MediaStreamConstraints = {
  audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
};

/** Faults of this edge, each with what to do. */
const SENTENCES = {
  'no-microphone': 'No microphone was found: plug one in, or type and touch instead.',
  'permission-refused': 'This page may not use the microphone: allow it in the address bar, or type and touch instead.',
  'device-lost': 'The microphone is gone: plug it in again and switch the ear on, or type and touch instead.',
  'model-missing':
    'The recogniser could not be loaded ({detail}): connect to the server and switch the ear on again, or type and touch instead.',
} as const;

/**
 * The device's microphone through the offline recogniser: the sound goes from the audio thread to a worker, past the
 * page; here only starts, stops and what was heard pass.
 */
export class MicrophoneEar implements PageEar {
  readonly kind = 'offline';
  readonly #changed: () => void;
  #state: MicrophoneState = { ear: 'off' };
  #callbacks: Callbacks | undefined;
  #worker: Worker | undefined;
  #stream: MediaStream | undefined;
  #context: AudioContext | undefined;
  #expectation: Expectation = { readings: [] };

  constructor(changed: () => void) {
    this.#changed = changed;
  }

  state(): MicrophoneState {
    return this.#state;
  }

  /** Must be called from a tap or a key. Resolves when it listens, or has failed and said why. */
  async start(callbacks: Callbacks): Promise<void> {
    if (this.#state.ear !== 'off' && this.#state.ear !== 'failed') return;
    this.#callbacks = callbacks;
    this.#become({ ear: 'starting' });
    try {
      this.#stream = await openMicrophone();
      this.#stream.getAudioTracks()[0]?.addEventListener('ended', () => this.#fail('device-lost', ''));
      await this.#listen(this.#stream);
    } catch (error) {
      this.#fail(
        error instanceof EarError ? error.fault : 'model-missing',
        error instanceof Error ? error.message : String(error),
      );
    }
  }

  expect(expectation: Expectation): void {
    this.#expectation = expectation;
    this.#order({ order: 'expect', expectation });
  }

  heed(what: 'everything' | 'urgent'): void {
    this.#order({ order: 'heed', what });
  }

  async stop(): Promise<void> {
    await this.#release();
    this.#become({ ear: 'off' });
  }

  async #listen(stream: MediaStream): Promise<void> {
    const context = new AudioContext({ latencyHint: 'interactive' });
    this.#context = context;
    document.addEventListener('visibilitychange', this.#wake);
    await context.audioWorklet.addModule(captureUrl);
    const capture = new AudioWorkletNode(context, 'readback-capture', { numberOfOutputs: 0, channelCount: 1 });
    const { port1, port2 } = new MessageChannel();
    capture.port.postMessage(port1, [port1]);
    context.createMediaStreamSource(stream).connect(capture);
    await context.resume();
    await this.#startWorker(port2);
  }

  #startWorker(port: MessagePort): Promise<void> {
    const worker = new Worker(new URL('../worker/decoder-worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    return new Promise((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<EarNews>) => {
        if (data.news === 'ready') resolve();
        if (data.news === 'fault' && this.#state.ear === 'starting') reject(new EarError(data.fault, data.detail));
        else this.#take(data);
      };
      worker.onerror = (event) => {
        event.preventDefault();
        const error = new EarError('model-missing', event.message);
        if (this.#state.ear === 'starting') reject(error);
        else this.#fail(error.fault, error.message);
      };
      this.#order({ order: 'expect', expectation: this.#expectation });
      worker.postMessage({ order: 'listen', port } satisfies EarOrder, [port]);
    });
  }

  #take(news: EarNews): void {
    switch (news.news) {
      case 'ready':
        return this.#become({ ear: 'listening' });
      case 'utterance':
        return this.#deliver(news.utterance);
      case 'fault':
        return this.#fail(news.fault, news.detail);
      case 'speech':
        return this.#become({ ear: news.on ? 'hearing' : 'listening' });
      case 'no-sound':
        return this.#become({
          ear: 'failed',
          fault: 'No sound comes from the microphone: bring this page to the front.',
        });
      case 'sound-again':
        this.#become({ ear: 'listening' });
        this.#callbacks?.onFault('device-lost', `Listening was off for ${news.seconds} seconds. Listening again.`);
    }
  }

  #deliver(utterance: Utterance): void {
    this.#become({ ear: 'listening' });
    this.#callbacks?.onUtterance(utterance);
  }

  #fail(fault: EarFault, detail: string): void {
    const sentence =
      fault in SENTENCES ? SENTENCES[fault as keyof typeof SENTENCES].replace('{detail}', culprit(detail)) : detail;
    void this.#release();
    this.#become({ ear: 'failed', fault: sentence });
    this.#callbacks?.onFault(fault, sentence);
  }

  /** A phone that was locked leaves the sound suspended. */
  readonly #wake = () => {
    if (document.visibilityState === 'visible') void this.#context?.resume();
  };

  async #release(): Promise<void> {
    document.removeEventListener('visibilitychange', this.#wake);
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const track of this.#stream?.getTracks() ?? []) track.stop();
    this.#stream = undefined;
    const context = this.#context;
    this.#context = undefined;
    await context?.close();
  }

  #order(order: EarOrder): void {
    this.#worker?.postMessage(order);
  }

  #become(state: MicrophoneState): void {
    if (state.ear === this.#state.ear && state.fault === this.#state.fault) return;
    this.#state = state;
    this.#changed();
  }
}

class EarError extends Error {
  readonly fault: EarFault;

  constructor(fault: EarFault, detail: string) {
    super(detail);
    this.fault = fault;
  }
}

async function openMicrophone(): Promise<MediaStream> {
  // Without https (or this machine itself) a page has no microphone at all.
  if (navigator.mediaDevices === undefined) throw new EarError('no-microphone', '');
  return navigator.mediaDevices.getUserMedia(MICROPHONE).catch((error: DOMException) => {
    throw new EarError(MICROPHONE_FAULTS[error.name] ?? 'no-microphone', error.message);
  });
}

/** By the names that the W3C's Media Capture and Streams gives to what can go wrong. */
const MICROPHONE_FAULTS: Readonly<Record<string, EarFault>> = {
  NotAllowedError: 'permission-refused',
  SecurityError: 'permission-refused',
  NotReadableError: 'device-lost',
  AbortError: 'device-lost',
};

/** The file that is missing, where the detail names one. */
function culprit(detail: string): string {
  return /\/model\/\S+\.gz: [^)]*/.exec(detail)?.[0] ?? (detail === '' ? 'its program' : detail);
}
