/** How often it is looked for an answer, in milliseconds. */
const LOOK_MS = 500;
/** Looks in a row without a word from the worker until it counts as gone: 6 s of a page that runs. Our choice. */
const LOOKS = 12;

/**
 * Notices a worker that went without a word: closed, or ended by the system, which tells nobody. Each message is due to
 * be confirmed. Only looks count, each at least its time after the one before: while the page itself is held up or
 * asleep none is made, and whatever lies in its queue is read before the next.
 */
export class AnswerWatch {
  readonly #gone: () => void;
  #sent = 0;
  #confirmed = 0;
  #silent = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(gone: () => void) {
    this.#gone = gone;
  }

  /** A message was sent. @returns its number, which is to be confirmed */
  sent(): number {
    this.#sent += 1;
    if (this.#timer === undefined) {
      this.#silent = 0;
      this.#timer = setTimeout(this.#look, LOOK_MS);
    }
    return this.#sent;
  }

  /** Something came from the worker. */
  heard(): void {
    this.#silent = 0;
  }

  /** It has the message of this number, and all before it. */
  confirmed(number: number): void {
    this.#confirmed = number;
  }

  end(): void {
    clearTimeout(this.#timer);
  }

  readonly #look = (): void => {
    this.#timer = undefined;
    if (this.#confirmed === this.#sent) return;
    this.#silent += 1;
    if (this.#silent < LOOKS) this.#timer = setTimeout(this.#look, LOOK_MS);
    else this.#gone();
  };
}
