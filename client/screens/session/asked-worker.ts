import type { Numbered, NumberedReply } from '../worker/numbered.ts';
import { AnswerWatch } from './answer-watch.ts';

interface Open<Asked, Answer> {
  readonly asked: Asked;
  readonly resolve: (answer: Answer | Promise<Answer>) => void;
}

/**
 * A worker that answers one question at a time. It starts with the first. Where it cannot start, breaks, or goes without a
 * word, `here` answers in the page: nothing that was asked is lost.
 */
export class AskedWorker<Asked, Answer> {
  readonly #start: () => Worker;
  readonly #here: (asked: Asked) => Promise<Answer>;
  readonly #open = new Map<number, Open<Asked, Answer>>();
  #worker: Worker | undefined;
  #number = 0;
  #isBroken = false;
  readonly #watch = new AnswerWatch(() => this.#break());

  /** @param here is fetched only where it is wanted */
  constructor(start: () => Worker, here: (asked: Asked) => Promise<Answer>) {
    this.#start = start;
    this.#here = here;
  }

  ask(asked: Asked): Promise<Answer> {
    if (this.#isBroken) return this.#here(asked);
    this.#number += 1;
    const number = this.#number;
    return new Promise((resolve) => {
      this.#open.set(number, { asked, resolve });
      this.#watch.sent();
      this.ready().postMessage({ number, asked } satisfies Numbered<Asked>);
    });
  }

  /** Starts it where it has not: its first answer then comes sooner. */
  ready(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = this.#start();
    worker.onmessage = ({ data: { number, answer } }: MessageEvent<NumberedReply<Answer>>) => {
      this.#watch.heard();
      // One after the other: all before it are answered.
      this.#watch.confirmed(number);
      this.#open.get(number)?.resolve(answer);
      this.#open.delete(number);
    };
    worker.onerror = () => this.#break();
    this.#worker = worker;
    return worker;
  }

  end(): void {
    this.#watch.end();
    this.#worker?.terminate();
  }

  #break(): void {
    this.#isBroken = true;
    this.end();
    for (const { asked, resolve } of this.#open.values()) resolve(this.#here(asked));
    this.#open.clear();
  }
}
