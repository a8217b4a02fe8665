import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Hearing } from '../hearing.ts';
import type { HeardSpeech } from '../hearing-parts.ts';
import { ListeningError } from '../listening-error.ts';
import type { ModelChoice } from '../recogniser/speech-module.ts';
import { SoundTail } from '../sound/sound-tail.ts';
import { toUtterance } from '../to-utterance.ts';
import { openVisitHearing } from '../visit-hearing.ts';
import { SAMPLE_RATE } from '../wav.ts';
import type { EarNews, EarOrder } from './ear-messages.ts';
import { readKeptVoice } from './kept-voice.ts';
import { withModels } from './load-models.ts';

declare const self: DedicatedWorkerGlobalScope;

/** No sound for so long means that the microphone was taken away: the phone was locked, or another call came. */
const SILENT_AFTER_MS = 1_500;

/** The end of the last word, after the key came up. */
const AFTER_KEY_MS = 300;

/** The longest dictation whose sound is held; before and behind it a little of what was around. Our choice. */
const TAIL_MS = 120_000;
const AROUND_MS = 250;

/** Blocks of 20 ms: as long as the longest utterance and what follows it. */
const KEPT_LAGS = 1_000;

/**
 * The recogniser's own thread: sound comes over a port from the audio thread, what was heard goes to the page.
 * Orders that come while the recogniser is loading are kept and carried out when it is there.
 */
class DecoderWorker {
  #hearing: Hearing | undefined;
  #expectation: Expectation = { readings: [] };
  #heeds: 'everything' | 'urgent' = 'everything';
  #spoken = '';
  #count = 0;
  #attends = true;
  #givesSound = false;
  #tail = new SoundTail(SAMPLE_RATE, TAIL_MS);
  /** Whether it attended when the sentence that is open, or was last, began. */
  #attendedToOpen = true;
  #closing: ReturnType<typeof setTimeout> | undefined;
  #speaking = false;
  #soundAt = 0;
  #silent = false;
  #missed = 0;
  /** For the sound of the last seconds: this thread's clock less the sound's own, in milliseconds. */
  #lags: number[] = [];
  readonly #session = crypto.randomUUID();

  take(order: EarOrder): void {
    switch (order.order) {
      case 'listen':
        void this.#listen(order.port, order.models);
        return;
      case 'expect':
        this.#expectation = order.expectation;
        this.#hearing?.expect(order.expectation);
        return;
      case 'heed':
        this.#heeds = order.what;
        this.#spoken = order.spoken;
        this.#hearing?.heed(this.#heedsNow(), this.#spoken);
        return;
      case 'plays':
        this.#hearing?.plays(order.samples);
        return;
      case 'attend':
        this.#attend(order.on);
        return;
      case 'give-sound':
        this.#givesSound = order.on;
        return;
    }
  }

  #heedsNow(): 'everything' | 'urgent' {
    return this.#attends ? this.#heeds : 'urgent';
  }

  #attend(on: boolean): void {
    if (on === this.#attends) return;
    this.#attends = on;
    this.#hearing?.heed(this.#heedsNow(), this.#spoken);
    clearTimeout(this.#closing);
    // Others may be talking when the key goes down: their sentence ends there. When it comes up, its own ends soon after.
    if (on) this.#closeSentence();
    else this.#closing = setTimeout(() => this.#closeSentence(), AFTER_KEY_MS);
  }

  #closeSentence(): void {
    const hearing = this.#hearing;
    if (hearing === undefined || !hearing.speaking) return;
    this.#deliver(() => hearing.flush());
    // The silence that closed it took no time.
    this.#lags = [];
    this.#tellSpeech(hearing.speaking);
  }

  async #listen(port: MessagePort, models: ModelChoice): Promise<void> {
    // What is said while the recogniser is loading is not heard: the page does not say "listening" yet.
    port.onmessage = () => undefined;
    try {
      const hearing = await openWith(models);
      hearing.expect(this.#expectation);
      hearing.heed(this.#heedsNow(), this.#spoken);
      this.#hearing = hearing;
      this.#soundAt = performance.now();
      port.onmessage = ({ data }: MessageEvent<Float32Array>) => this.#sound(hearing, data);
      setInterval(() => this.#watchSound(), SILENT_AFTER_MS / 2);
      tell({ news: 'ready' });
    } catch (error) {
      tellFault(error);
    }
  }

  #sound(hearing: Hearing, samples: Float32Array): void {
    this.#soundCame(hearing.audioMs + (samples.length * 1000) / SAMPLE_RATE);
    // What closed a sentence was no sound.
    this.#tail.padTo(hearing.audioMs);
    this.#tail.push(samples);
    this.#deliver(() => hearing.push(samples));
    this.#tellSpeech(hearing.speaking);
  }

  #deliver(hear: () => HeardSpeech[]): void {
    try {
      for (const heard of hear()) {
        if (!this.#attendedToOpen && heard.text !== 'stop') continue;
        this.#count += 1;
        const utterance = toUtterance(heard, 'offline', `${this.#session}-${this.#count}`);
        const verdictMs = this.#lags.length === 0 ? heard.verdictMs : this.#msSince(heard.endedMs);
        const samples = this.#givesSound ? { samples: this.#samplesOf(heard) } : {};
        tell({ news: 'utterance', utterance: { ...utterance, ...samples, verdictMs } });
      }
    } catch (error) {
      tellFault(error);
    }
  }

  #samplesOf({ startedMs, endedMs }: HeardSpeech): Float32Array {
    return this.#tail.cut(startedMs - AROUND_MS, endedMs + AROUND_MS);
  }

  #tellSpeech(speaking: boolean): void {
    if (speaking === this.#speaking) return;
    this.#speaking = speaking;
    if (speaking) this.#attendedToOpen = this.#attends;
    tell({ news: 'speech', on: speaking });
  }

  /**
   * How long ago the sound up to there was made. Sound waits in this thread's queue while it computes, so the time at
   * which it is taken is late by a changing amount: the least of the last seconds is what the way itself takes.
   */
  #msSince(audioMs: number): number {
    return performance.now() - Math.min(...this.#lags) - audioMs;
  }

  #soundCame(takenMs: number): void {
    const now = performance.now();
    if (this.#silent) {
      tell({ news: 'sound-again', seconds: Math.round((now - this.#soundAt) / 1000) });
      this.#lags = [];
    }
    this.#lags.push(now - takenMs);
    if (this.#lags.length > KEPT_LAGS) this.#lags.shift();
    this.#silent = false;
    this.#missed = 0;
    this.#soundAt = now;
  }

  /** Twice in a row: after a long computation the sound that came meanwhile is still to be taken. */
  #watchSound(): void {
    if (this.#silent || performance.now() - this.#soundAt < SILENT_AFTER_MS) return;
    this.#missed += 1;
    if (this.#missed < 2) return;
    this.#silent = true;
    tell({ news: 'no-sound' });
  }
}

/** A device that kept the 8 kHz model only, or cannot reach the other's files, hears with that one. */
async function openWith(models: ModelChoice): Promise<Hearing> {
  if (models === 'bundled') return await open(models);
  return await open(models).catch((error: unknown) => {
    if (error instanceof ListeningError && error.fault === 'model-missing') return open('bundled');
    throw error;
  });
}

async function open(models: ModelChoice): Promise<Hearing> {
  // Without what was learnt of the voice it hears as well as for anybody.
  const kept = await readKeptVoice().catch(() => undefined);
  return withModels(models, (parts) => {
    const fits = [parts.model, parts.second].some((model) => model?.id === kept?.profile.model);
    return openVisitHearing(kept === undefined || !fits ? parts : { ...parts, profile: kept.profile });
  });
}

function tell(news: EarNews): void {
  self.postMessage(news);
}

function tellFault(error: unknown): void {
  const detail = error instanceof Error ? error.message : String(error);
  tell({ news: 'fault', fault: error instanceof ListeningError ? error.fault : 'model-missing', detail });
}

const worker = new DecoderWorker();
self.onmessage = ({ data }: MessageEvent<EarOrder>) => worker.take(data);
