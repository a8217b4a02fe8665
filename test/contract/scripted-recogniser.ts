import type { BrowserEarOptions } from '../../client/listening/browser/browser-ear.ts';

interface Handlers {
  onstart?: (event: object) => void;
  onend?: (event: object) => void;
  onspeechstart?: (event: object) => void;
  onspeechend?: (event: object) => void;
  onresult?: (event: object) => void;
  onerror?: (event: object) => void;
}

export interface Script {
  readonly sessions: ScriptedSession[];
  current(): ScriptedSession;
  asBrowser(): NonNullable<BrowserEarOptions['recogniser']>;
}

/** One session as the W3C's Web Speech API describes it: results are counted from 0, and stay in the list. */
export class ScriptedSession {
  readonly handlers = this as unknown as Handlers;
  readonly results: (Readonly<Record<number, object>> & { isFinal: boolean; length: number })[] = [];
  begins = true;
  aborted = false;
  processLocally = false;
  maxAlternatives = 1;

  start(): void {
    if (this.begins) queueMicrotask(() => this.handlers.onstart?.({}));
  }

  abort(): void {
    this.aborted = true;
  }

  /** A whole sentence with its hypotheses, best first. */
  say(hypotheses: readonly string[]): void {
    this.handlers.onspeechstart?.({});
    this.handlers.onspeechend?.({});
    this.result(this.results.length, hypotheses, true);
  }

  result(index: number, hypotheses: readonly string[], isFinal: boolean): void {
    const list = hypotheses.map((transcript, rank) => ({ transcript: ` ${transcript}`, confidence: 0.9 - rank / 10 }));
    this.results[index] = { ...list, isFinal, length: list.length };
    this.deliver(index);
  }

  /** The list from there on, as it stands: a second delivery of the same results is such a call too. */
  deliver(resultIndex: number): void {
    this.handlers.onresult?.({ resultIndex, results: this.results });
  }

  error(code: string): void {
    this.handlers.onerror?.({ error: code, message: '' });
  }

  end(): void {
    this.handlers.onend?.({});
  }
}

export interface Language {
  readonly available: string;
  readonly installs: boolean;
}

/** Stands for a browser's recogniser and does as it is told. */
export const ScriptedRecogniser = {
  fresh({ begins = true, language }: { readonly begins?: boolean; readonly language?: Language } = {}): Script {
    const sessions: ScriptedSession[] = [];
    class Recogniser extends ScriptedSession {
      constructor() {
        super();
        this.begins = begins;
        sessions.push(this);
      }
    }
    const pack = language && {
      available: async () => language.available,
      install: async () => language.installs,
    };
    Object.defineProperty(Recogniser.prototype, 'processLocally', { value: false, writable: true });
    return {
      sessions,
      current: () => sessions.at(-1) ?? new ScriptedSession(),
      asBrowser: () => Object.assign(Recogniser, pack) as unknown as NonNullable<BrowserEarOptions['recogniser']>,
    };
  },
};
