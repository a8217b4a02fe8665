import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { urgentWhile } from '../../../grammar/vocabulary/urgent-words.ts';
import type { Ear, EarFault, Utterance } from '../ear.ts';
import { ListeningError } from '../listening-error.ts';
import { type SpokenResult, SpokenResults } from '../spoken-results.ts';
import type { MicrophoneState, PageEar } from './page-ear.ts';

type Callbacks = Parameters<Ear['start']>[0];
type Recogniser = typeof SpeechRecognition;

export interface BrowserEarOptions {
  /** The browser's recogniser; undefined where it has none. */
  readonly recogniser: Recogniser | undefined;
  /** Whether the sound must stay on this device: the browser then needs its language pack, and loads it once. */
  readonly onlyHere: boolean;
  readonly changed: () => void;
  /** Any clock in milliseconds. */
  readonly now: () => number;
}

const LANGUAGE = 'en-US';
/** A recogniser that has not begun by then never will: without a service behind it some browsers say nothing at all. */
const BEGINS_WITHIN_MS = 4_000;
/** Somebody spoke, and neither words nor an error came. */
const ANSWERS_WITHIN_MS = 10_000;
/** Ends in a row without anything heard: it is not asked for more often than this. */
const RESTART_MS = [0, 0, 250, 500, 1_000] as const;

/** By the error codes of the W3C's Web Speech API. What is not here passes: the recogniser is started anew. */
const FAULTS: Readonly<Record<string, EarFault>> = {
  'not-allowed': 'permission-refused',
  'service-not-allowed': 'recogniser-refused',
  'audio-capture': 'no-microphone',
  network: 'recogniser-unreachable',
  'language-not-supported': 'language-missing',
};

/**
 * The browser's own recogniser. It stops by itself after a silence and is started again; it may send the sound away
 * unless `onlyHere`; it may fail without a word, which is found out.
 */
export class BrowserEar implements PageEar {
  readonly kind = 'browser';
  readonly #options: BrowserEarOptions;
  readonly #results = new SpokenResults(`browser-${crypto.randomUUID()}`);
  #state: MicrophoneState = { ear: 'off' };
  #callbacks: Callbacks | undefined;
  #running: SpeechRecognition | undefined;
  #heeds: 'everything' | 'urgent' = 'everything';
  #spoken = '';
  #attends = true;
  #silentEnds = 0;
  #watch: ReturnType<typeof setTimeout> | undefined;
  #restart: ReturnType<typeof setTimeout> | undefined;

  constructor(options: BrowserEarOptions) {
    this.#options = options;
  }

  state(): MicrophoneState {
    return this.#state;
  }

  /** Resolves when it has begun to listen, or has failed and said why. */
  async start(callbacks: Callbacks): Promise<void> {
    if (this.#state.ear !== 'off' && this.#state.ear !== 'failed') return;
    this.#callbacks = callbacks;
    this.#become({ ear: 'starting' });
    const { recogniser, onlyHere } = this.#options;
    if (recogniser === undefined) return this.#fail('recogniser-missing');
    if (onlyHere && !(await languageIsHere(recogniser))) return this.#fail('language-missing');
    if (this.#callbacks === undefined) return;
    await new Promise<void>((begun) => this.#listen(recogniser, begun));
  }

  /** It hears any words; the matcher knows what is expected. */
  expect(_expectation: Expectation): void {}

  heed(what: 'everything' | 'urgent', spoken = ''): void {
    this.#heeds = what;
    this.#spoken = spoken;
  }

  attend(on: boolean): void {
    this.#attends = on;
  }

  async stop(): Promise<void> {
    this.#release();
    this.#callbacks = undefined;
    this.#become({ ear: 'off' });
  }

  /** Starts one session. `settled` is called when it has begun or the ear has failed, once. */
  #listen(Recogniser: Recogniser, settled: () => void): void {
    const one = new Recogniser();
    one.continuous = true;
    one.interimResults = true;
    one.maxAlternatives = 5;
    one.lang = LANGUAGE;
    if (this.#options.onlyHere) one.processLocally = true;
    this.#running = one;
    this.#results.begin();
    const own = <E>(act: (event: E) => void) => {
      return (event: E) => {
        if (this.#running === one) act(event);
      };
    };
    const fail = (fault: EarFault) => {
      this.#fail(fault);
      settled();
    };
    this.#answerWithin(BEGINS_WITHIN_MS, () => fail('recogniser-silent'));
    one.onstart = own(() => {
      clearTimeout(this.#watch);
      this.#become({ ear: 'listening' });
      settled();
    });
    one.onspeechstart = own(() => {
      this.#results.speechBegan(this.#options.now());
      this.#become({ ear: 'hearing' });
      this.#answerWithin(ANSWERS_WITHIN_MS, () => fail('recogniser-silent'));
    });
    one.onspeechend = own(() => this.#results.speechEnded(this.#options.now()));
    one.onresult = own((event) => this.#take(event));
    one.onnomatch = own(() => this.#answered());
    one.onerror = own(({ error }) => {
      const fault = FAULTS[error];
      if (fault !== undefined) fail(fault);
      else this.#answered();
    });
    one.onend = own(() => {
      this.#deliver(this.#results.end(this.#options.now()));
      this.#again(Recogniser, settled);
    });
    try {
      one.start();
    } catch {
      fail('recogniser-refused');
    }
  }

  /** It has ended by itself: at once after something was heard, in growing steps where nothing ever is. */
  #again(recogniser: Recogniser, settled: () => void): void {
    clearTimeout(this.#watch);
    const wait = RESTART_MS[Math.min(this.#silentEnds, RESTART_MS.length - 1)] ?? 0;
    this.#silentEnds += 1;
    this.#restart = setTimeout(() => this.#listen(recogniser, settled), wait);
  }

  #take(event: SpeechRecognitionEvent): void {
    const results = Array.from({ length: event.results.length }, (_, index) => spoken(event.results[index]));
    const utterances = this.#results.take(results, event.resultIndex, this.#options.now());
    if (utterances.length === 0) this.#answerWithin(ANSWERS_WITHIN_MS, () => this.#fail('recogniser-silent'));
    else this.#answered();
    this.#deliver(utterances);
  }

  #answered(): void {
    clearTimeout(this.#watch);
    this.#become({ ear: 'listening' });
  }

  #deliver(utterances: readonly Utterance[]): void {
    if (utterances.length > 0) this.#silentEnds = 0;
    for (const utterance of utterances) {
      if (this.#heedsNow(utterance.text)) this.#callbacks?.onUtterance(utterance);
    }
  }

  #heedsNow(text: string): boolean {
    if (!this.#attends) return text === 'stop';
    return this.#heeds === 'everything' || urgentWhile(this.#spoken).includes(text);
  }

  #answerWithin(ms: number, otherwise: () => void): void {
    clearTimeout(this.#watch);
    this.#watch = setTimeout(otherwise, ms);
  }

  #fail(fault: EarFault): void {
    const sentence = new ListeningError(fault).message;
    this.#release();
    this.#become({ ear: 'failed', fault: sentence });
    this.#callbacks?.onFault(fault, sentence);
  }

  #release(): void {
    clearTimeout(this.#watch);
    clearTimeout(this.#restart);
    const running = this.#running;
    this.#running = undefined;
    running?.abort();
  }

  #become(state: MicrophoneState): void {
    if (state.ear === this.#state.ear && state.fault === this.#state.fault) return;
    this.#state = state;
    this.#options.changed();
  }
}

/** The recogniser of this browser, under its standard or its older name. */
export function browserRecogniser(): Recogniser | undefined {
  return globalThis.SpeechRecognition ?? globalThis.webkitSpeechRecognition;
}

/** Whether the language pack is on the device, loading it where the browser can. */
async function languageIsHere(recogniser: Recogniser): Promise<boolean> {
  if (!('available' in recogniser) || !('processLocally' in recogniser.prototype)) return false;
  const wanted = { langs: [LANGUAGE], processLocally: true };
  try {
    const here = await recogniser.available(wanted);
    if (here === 'available') return true;
    return here === 'unavailable' ? false : await recogniser.install(wanted);
  } catch {
    return false;
  }
}

function spoken(result: SpeechRecognitionResult | undefined): SpokenResult {
  const hypotheses = Array.from({ length: result?.length ?? 0 }, (_, index) => ({
    transcript: result?.[index]?.transcript ?? '',
    confidence: result?.[index]?.confidence ?? 0,
  }));
  return { isFinal: result?.isFinal ?? false, hypotheses };
}
