import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';
import type { UnderstandQuestion, UnderstandReply } from '../worker/understand-messages.ts';

/**
 * The grammar in a worker of its own: the page carries neither its rules nor its words, and stays free while a long
 * sentence is taken apart. Where the worker cannot start or breaks, the page takes the grammar over: nothing that was
 * said is lost.
 */
export class UnderstandLink {
  readonly #worker = new Worker(new URL('../worker/understand-worker.ts', import.meta.url), { type: 'module' });
  readonly #open = new Map<number, (understanding: Promise<Understanding>) => void>();
  readonly #asked = new Map<number, UnderstandQuestion>();
  #number = 0;
  #isBroken = false;

  constructor() {
    this.#worker.onmessage = ({ data: { number, understanding } }: MessageEvent<UnderstandReply>) =>
      this.#settle(number, Promise.resolve(understanding));
    this.#worker.onerror = () => {
      this.#isBroken = true;
      for (const question of this.#asked.values()) this.#settle(question.number, understandHere(question));
    };
  }

  ask(text: string, expectation: Expectation, options: UnderstandOptions): Promise<Understanding> {
    this.#number += 1;
    const question: UnderstandQuestion = { number: this.#number, text, expectation, options };
    if (this.#isBroken) return understandHere(question);
    return new Promise((resolve) => {
      this.#open.set(question.number, resolve);
      this.#asked.set(question.number, question);
      this.#worker.postMessage(question);
    });
  }

  end(): void {
    this.#worker.terminate();
  }

  #settle(number: number, understanding: Promise<Understanding>): void {
    this.#open.get(number)?.(understanding);
    this.#open.delete(number);
    this.#asked.delete(number);
  }
}

async function understandHere({ text, expectation, options }: UnderstandQuestion): Promise<Understanding> {
  const { understand } = await import('../../../grammar/phrases/understand.ts');
  return understand(text, expectation, options);
}
