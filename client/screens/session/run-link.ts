import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { Prompt } from '../../speaking/mouth.ts';
import type { EarUtterance, Untimed, VisitEdges } from '../../visit/run/visit-run.ts';
import { VISIT } from '../../words/pages/visit-words.ts';
import type {
  Beginning,
  EdgeQuestion,
  EdgeValues,
  FromVisit,
  Given,
  ToVisit,
  VisitShown,
} from '../worker/visit-messages.ts';
import { AnswerWatch } from './answer-watch.ts';

const startWorker = () => new Worker(new URL('../worker/visit-worker.ts', import.meta.url), { type: 'module' });
let ahead: Worker | undefined;
let isTaken = false;

/** Fetches the visit's program before a visit begins: whoever opens one then does not wait for it. */
export function startVisitAhead(): void {
  if (!isTaken) ahead ??= startWorker();
}

/**
 * The visit in a worker of its own: the statechart, its rules and words run there, and the page is sent what it shows.
 * The edges stay in the page, and what the visit asks of them comes here.
 */
export class RunLink {
  readonly #worker: Worker;
  readonly #edges: VisitEdges;
  readonly #broke: (sentence: string) => void;
  readonly #listeners = new Set<(shown: VisitShown) => void>();
  readonly #settling = new Map<number, { resolve(): void; reject(error: Error): void }>();
  readonly #watch = new AnswerWatch(() => this.#break(VISIT.visitStopped));
  #shown: VisitShown | undefined;
  #number = 0;
  /** Hushes that the visit has not heeded yet: what it gives to be spoken meanwhile is cut. */
  readonly #hushes: boolean[] = [];
  #broken: string | undefined;
  #begun: { resolve(link: RunLink): void; reject(error: Error): void } | undefined;

  private constructor(edges: VisitEdges, broke: (sentence: string) => void) {
    this.#edges = edges;
    this.#broke = broke;
    this.#worker = ahead ?? startWorker();
    ahead = undefined;
    isTaken = true;
    this.#worker.onmessage = ({ data }: MessageEvent<FromVisit>) => this.#take(data);
    this.#worker.onerror = () => this.#break(VISIT.visitStopped);
  }

  /**
   * Begins a visit in its worker. Resolves once it stands there, before anything new was taken.
   *
   * @param broke is told why it ended by itself later on
   * @throws {Error} with the sentence that says why it cannot begin
   */
  static begin(edges: VisitEdges, beginning: Beginning, broke: (sentence: string) => void): Promise<RunLink> {
    const link = new RunLink(edges, broke);
    return new Promise((resolve, reject) => {
      link.#begun = { resolve, reject };
      link.#send({ begin: beginning });
    });
  }

  /** Where the visit stands. */
  get shown(): VisitShown {
    if (this.#shown === undefined) throw new Error('the visit has not begun');
    return this.#shown;
  }

  /** @returns what ends the telling */
  onView(listener: (shown: VisitShown) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  take(input: Untimed<VisitInput>): void {
    this.#send({ take: input });
  }

  hear(heard: EarUtterance): void {
    this.#send({ hear: heard });
  }

  touch(command: CommandId): void {
    this.#send({ touch: command });
  }

  /** Silence: at once here, and nothing that waits behind it is spoken. Cautions only when `evenCaution`. */
  hush(evenCaution: boolean): void {
    this.#hushes.push(evenCaution);
    this.#send({ hush: evenCaution });
    this.#edges.mouth.hush(evenCaution);
  }

  /** Resolves when nothing that was given is being taken, spoken or worked out. Rejects where the record was not written. */
  settled(): Promise<void> {
    if (this.#broken !== undefined) return Promise.reject(new Error(this.#broken));
    this.#number += 1;
    const number = this.#number;
    return new Promise((resolve, reject) => {
      this.#settling.set(number, { resolve, reject });
      this.#send({ settle: number });
    });
  }

  /** Nothing more comes of what was given. */
  end(): void {
    this.#watch.end();
    this.#worker.terminate();
    for (const { resolve } of this.#settling.values()) resolve();
    this.#settling.clear();
  }

  #send(given: Given): void {
    // Until it stands its program is on its way, which takes as long as the network does.
    const number = 'begin' in given ? 0 : this.#watch.sent();
    this.#worker.postMessage({ now: this.#edges.clock.now(), number, given } satisfies ToVisit);
  }

  #take(message: FromVisit): void {
    this.#watch.heard();
    if ('came' in message) this.#watch.confirmed(message.came);
    else if ('shown' in message) this.#show(message.shown);
    else if ('asks' in message) void this.#ask(message.asks, message.question);
    else if ('hush' in message) this.#edges.mouth.hush(message.hush);
    else if ('hushed' in message) this.#hushes.shift();
    else if ('failed' in message) this.#break(message.failed);
    else {
      const waiting = this.#settling.get(message.settled);
      this.#settling.delete(message.settled);
      if (message.sentence === undefined) waiting?.resolve();
      else waiting?.reject(new Error(message.sentence));
    }
  }

  #show(shown: VisitShown): void {
    this.#shown = shown;
    this.#begun?.resolve(this);
    this.#begun = undefined;
    for (const listener of this.#listeners) listener(shown);
  }

  async #ask(number: number, question: EdgeQuestion): Promise<void> {
    try {
      this.#send({ answered: number, value: await this.#askEdge(question) });
    } catch (error) {
      this.#send({ answered: number, sentence: error instanceof Error ? error.message : String(error) });
    }
  }

  async #askEdge(question: EdgeQuestion): Promise<EdgeValues[keyof EdgeValues]> {
    switch (question.edge) {
      case 'append':
        await this.#edges.append(question.bodies);
        return undefined;
      case 'understand':
        return this.#edges.understand(question.text, question.expectation, question.options);
      case 'diagnose':
        return this.#edges.diagnose(question.unit, question.evidence, question.parked);
      case 'wait':
        return new Promise((resolve) => this.#edges.clock.after(question.minutes, () => resolve(undefined)));
      case 'speak':
        return this.#isHushed(question.prompt) ? 'cut' : this.#edges.mouth.speak(question.prompt);
    }
  }

  #isHushed({ kind }: Prompt): boolean {
    return this.#hushes.some((evenCaution) => evenCaution || kind !== 'caution');
  }

  /** Whoever waits is told. Taken up again from its record, the visit goes on in another worker. */
  #break(sentence: string): void {
    this.#broken = sentence;
    this.#watch.end();
    this.#worker.terminate();
    if (this.#begun === undefined) this.#broke(sentence);
    else this.#begun.reject(new Error(sentence));
    this.#begun = undefined;
    for (const { reject } of this.#settling.values()) reject(new Error(sentence));
    this.#settling.clear();
  }
}
