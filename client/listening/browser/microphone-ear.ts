import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Ear, EarFault, Utterance } from '../ear.ts';
import type { ModelChoice } from '../recogniser/speech-module.ts';
import type { EarNews, EarOrder } from '../worker/ear-messages.ts';
import captureUrl from './capture-worklet.ts?worker&url';
import type { MicrophoneState, PageEar } from './page-ear.ts';

/** Holds none of the words that are heeded while it is spoken. */
const SILENT = 'Nothing comes from the microphone: bring this page to the front.';

/** A recogniser that breaks down more often is not started again. */
const MOST_CRASHES = 3;
const DEVICE_SETTLES_MS = 500;

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
  readonly #models: ModelChoice;
  #state: MicrophoneState = { ear: 'off' };
  #callbacks: Callbacks | undefined;
  #worker: Worker | undefined;
  #stream: MediaStream | undefined;
  #context: AudioContext | undefined;
  #capture: AudioWorkletNode | undefined;
  #expectation: Expectation = { readings: [] };
  #heeds: 'everything' | 'urgent' = 'everything';
  #spoken = '';
  #attends = true;
  #givesSound = false;
  /** When listening broke off by itself; it is logged once it is whole again. */
  #brokeOffAt: number | undefined;
  #crashes = 0;

  constructor(changed: () => void, models: ModelChoice = 'both') {
    this.#changed = changed;
    this.#models = models;
  }

  state(): MicrophoneState {
    return this.#state;
  }

  /** Must be called from a tap or a key. Resolves when it listens, or has failed and said why. */
  async start(callbacks: Callbacks): Promise<void> {
    if (this.#state.ear !== 'off' && this.#state.ear !== 'failed') return;
    this.#callbacks = callbacks;
    this.#brokeOffAt = undefined;
    this.#crashes = 0;
    navigator.mediaDevices?.addEventListener('devicechange', this.#takeUpAgain);
    await this.#open();
  }

  expect(expectation: Expectation): void {
    this.#expectation = expectation;
    this.#order({ order: 'expect', expectation });
  }

  heed(what: 'everything' | 'urgent', spoken = ''): void {
    this.#heeds = what;
    this.#spoken = spoken;
    this.#order({ order: 'heed', what, spoken });
  }

  /** The mouth begins to play these samples, 16 kHz; none: it was cut short. What comes back of them is taken out. */
  plays(samples: Float32Array): void {
    this.#order({ order: 'plays', samples });
  }

  attend(on: boolean): void {
    this.#attends = on;
    this.#order({ order: 'attend', on });
  }

  /** Whether each utterance brings its sound along. */
  giveSound(on: boolean): void {
    this.#givesSound = on;
    this.#order({ order: 'give-sound', on });
  }

  /** Gives the sound to somebody else too, in blocks of 20 ms at 16 kHz, while the ear is on. */
  sound(): MessagePort | undefined {
    if (this.#capture === undefined) return undefined;
    const { port1, port2 } = new MessageChannel();
    this.#capture.port.postMessage(port1, [port1]);
    return port2;
  }

  async stop(): Promise<void> {
    navigator.mediaDevices?.removeEventListener('devicechange', this.#takeUpAgain);
    this.#callbacks = undefined;
    await this.#release();
    this.#become({ ear: 'off' });
  }

  async #open(): Promise<void> {
    this.#become({ ear: 'starting' });
    try {
      const stream = await openMicrophone();
      // Switched off while the browser asked.
      if (this.#callbacks === undefined) return endTracks(stream);
      this.#stream = stream;
      stream.getAudioTracks()[0]?.addEventListener('ended', () => {
        if (this.#stream === stream) this.#loseMicrophone();
      });
      await this.#listen(stream);
      this.#whole();
    } catch (error) {
      this.#fail(
        error instanceof EarError ? error.fault : 'model-missing',
        error instanceof Error ? error.message : String(error),
      );
    }
  }

  async #listen(stream: MediaStream): Promise<void> {
    const context = new AudioContext({ latencyHint: 'interactive' });
    this.#context = context;
    document.addEventListener('visibilitychange', this.#wake);
    // Another program's call suspends the sound, on some phones for good unless it is asked for.
    context.addEventListener('statechange', this.#wake);
    await context.audioWorklet.addModule(captureUrl);
    // Explicit: a microphone of two channels is mixed down; it may have its sound in one of them alone.
    const mono = { numberOfOutputs: 0, channelCount: 1, channelCountMode: 'explicit' } as const;
    this.#capture = new AudioWorkletNode(context, 'readback-capture', mono);
    context.createMediaStreamSource(stream).connect(this.#capture);
    await context.resume();
    await this.#startWorker();
  }

  #startWorker(): Promise<void> {
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
        else this.#startAnew(error);
      };
      this.#order({ order: 'expect', expectation: this.#expectation });
      this.#order({ order: 'heed', what: this.#heeds, spoken: this.#spoken });
      this.#order({ order: 'attend', on: this.#attends });
      this.#order({ order: 'give-sound', on: this.#givesSound });
      const port = this.sound();
      if (port === undefined) reject(new EarError('device-lost', ''));
      else worker.postMessage({ order: 'listen', port, models: this.#models } satisfies EarOrder, [port]);
    });
  }

  /** The recogniser broke down: another is started over the same sound. One that does so again and again is broken. */
  #startAnew(error: EarError): void {
    this.#worker?.terminate();
    this.#crashes += 1;
    if (this.#crashes > MOST_CRASHES) return this.#fail(error.fault, error.message);
    this.#brokeOffAt ??= performance.now();
    this.#become({ ear: 'starting' });
    this.#startWorker()
      .then(() => this.#whole())
      .catch((again: Error) => this.#fail('model-missing', again.message));
  }

  /** The microphone went: said at once, and the one that is there now is taken, whenever there is one. */
  #loseMicrophone(): void {
    this.#brokeOffAt ??= performance.now();
    this.#fail('device-lost', '');
    void this.#takeUpAgain();
  }

  readonly #takeUpAgain = async (): Promise<void> => {
    if (this.#brokeOffAt === undefined || this.#state.ear !== 'failed') return;
    // Browsers tell of the change before the new device answers.
    await new Promise((resolve) => setTimeout(resolve, DEVICE_SETTLES_MS));
    if (this.#callbacks !== undefined && this.#state.ear === 'failed') await this.#open();
  };

  /** Listens again: the gap is said and logged. */
  #whole(): void {
    if (this.#brokeOffAt === undefined) return;
    const seconds = Math.max(1, Math.round((performance.now() - this.#brokeOffAt) / 1000));
    this.#brokeOffAt = undefined;
    this.#tellGap(seconds);
  }

  #tellGap(seconds: number): void {
    this.#callbacks?.onFault('device-lost', `Listening was off for ${seconds} seconds. Listening again.`);
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
        this.#become({ ear: 'failed', fault: SILENT });
        this.#callbacks?.onFault('device-lost', SILENT);
        return;
      case 'sound-again':
        this.#become({ ear: 'listening' });
        this.#tellGap(news.seconds);
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

  /** A phone that was locked leaves the sound suspended; so does a call. */
  readonly #wake = () => {
    if (document.visibilityState !== 'visible' || this.#context?.state === 'closed') return;
    // Refused while another program has the sound: the next change of state asks again.
    void this.#context?.resume().catch(() => undefined);
  };

  async #release(): Promise<void> {
    document.removeEventListener('visibilitychange', this.#wake);
    this.#worker?.terminate();
    this.#worker = undefined;
    if (this.#stream !== undefined) endTracks(this.#stream);
    this.#stream = undefined;
    const context = this.#context;
    this.#context = undefined;
    this.#capture = undefined;
    context?.removeEventListener('statechange', this.#wake);
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

function endTracks(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
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
