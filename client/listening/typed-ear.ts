import type { Expectation } from '../../grammar/phrases/meaning.ts';
import type { Ear, EarFault, Utterance } from './ear.ts';

/** An ear for typed lines: what is typed is taken as it stands. */
export class TypedEar implements Ear {
  readonly kind = 'typed';
  readonly #now: () => number;
  #deliver: ((utterance: Utterance) => void) | undefined;
  #count = 0;

  /** @param now any clock in milliseconds */
  constructor(now: () => number) {
    this.#now = now;
  }

  async start(callbacks: {
    onUtterance(utterance: Utterance): void;
    onFault(fault: EarFault, detail: string): void;
  }): Promise<void> {
    this.#deliver = (utterance) => callbacks.onUtterance(utterance);
  }

  /** Typed words need no grammar. */
  expect(_expectation: Expectation): void {}

  /** A line was typed. Blank ones are nothing. */
  type(line: string): void {
    const text = line.trim();
    if (text === '' || this.#deliver === undefined) return;
    this.#count += 1;
    const at = this.#now();
    this.#deliver({
      id: `typed-${this.#count}`,
      ear: 'typed',
      text,
      alternatives: [],
      confidence: 1,
      accepted: true,
      startedMs: at,
      endedMs: at,
      verdictMs: 0,
      realTimeFactor: 0,
    });
  }

  async stop(): Promise<void> {
    this.#deliver = undefined;
  }
}
