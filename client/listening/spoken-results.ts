import type { Utterance } from './ear.ts';

/** One result of the browser's recogniser as the W3C's Web Speech API has it: hypotheses, best first. */
export interface SpokenResult {
  readonly isFinal: boolean;
  readonly hypotheses: readonly { readonly transcript: string; readonly confidence: number }[];
}

/** Below this a hypothesis is not believed. Zero means that the browser tells no confidence, not that there is none. */
const BELIEVED = 0.3;
/** What is taken where the browser tells none. */
const UNTOLD = 0.7;

/**
 * Turns the results of one recogniser, session by session, into utterances: each final result once, however often and
 * late it is delivered; what was cut off by the end of a session is delivered too, but not to be believed.
 */
export class SpokenResults {
  readonly #name: string;
  readonly #delivered = new Set<string>();
  #session = 0;
  #beganMs: number | undefined;
  #spokeMs = 0;
  #open: { readonly id: string; readonly result: SpokenResult } | undefined;

  /** @param name unique for this recogniser: ids begin with it */
  constructor(name: string) {
    this.#name = name;
  }

  /** The recogniser was started anew: it counts its results from 0 again. */
  begin(): void {
    this.#session += 1;
    this.#open = undefined;
    this.#beganMs = undefined;
  }

  speechBegan(nowMs: number): void {
    this.#beganMs ??= nowMs;
  }

  speechEnded(nowMs: number): void {
    this.#spokeMs = nowMs;
  }

  /**
   * @param from the first result that changed
   * @param nowMs any clock in milliseconds, the same as for the other calls
   */
  take(results: readonly SpokenResult[], from: number, nowMs: number): readonly Utterance[] {
    const utterances: Utterance[] = [];
    for (const [index, result] of results.entries()) {
      const id = `${this.#name}-${this.#session}-${index}`;
      if (index < from || this.#delivered.has(id)) continue;
      this.#beganMs ??= nowMs;
      if (result.isFinal) utterances.push(...this.#deliver(id, result, nowMs, true));
      else this.#open = { id, result };
    }
    return utterances;
  }

  /** The session is over. What it had not made up its mind about was still said. */
  end(nowMs: number): readonly Utterance[] {
    const open = this.#open;
    return open === undefined ? [] : this.#deliver(open.id, open.result, nowMs, false);
  }

  #deliver(id: string, { hypotheses }: SpokenResult, nowMs: number, whole: boolean): readonly Utterance[] {
    this.#delivered.add(id);
    this.#open = undefined;
    const startedMs = this.#beganMs ?? nowMs;
    const endedMs = Math.max(startedMs, Math.min(nowMs, this.#spokeMs < startedMs ? nowMs : this.#spokeMs));
    this.#beganMs = undefined;
    const told = hypotheses.map(({ transcript, confidence }) => ({ text: plainWords(transcript), confidence }));
    const [best, ...others] = told.filter(({ text }) => text !== '');
    if (best === undefined) return [];
    const confidence = best.confidence === 0 ? UNTOLD : Math.min(1, best.confidence);
    return [
      {
        id,
        ear: 'browser',
        text: best.text,
        alternatives: [...new Set(others.map(({ text }) => text))].filter((text) => text !== best.text),
        confidence: whole ? confidence : confidence / 2,
        accepted: whole && confidence >= BELIEVED,
        startedMs,
        endedMs,
        verdictMs: nowMs - endedMs,
        // It computes elsewhere, as the sound comes.
        realTimeFactor: 0,
      },
    ];
  }
}

function plainWords(transcript: string): string {
  return transcript.trim().replace(/\s+/g, ' ').toLowerCase();
}
