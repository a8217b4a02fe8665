import type { WakeNews, WakeOrder, WakeParts } from '../worker/wake-messages.ts';

/** What was wrong, in one line that says whose words they are. */
const MOST_CHARACTERS = 160;
/** The engine asks its maker's host about the key; a network that swallows the question must not hold the ear up. */
const READY_WITHIN_MS = 15_000;

/** Listens for the user's wake word in a worker of its own. */
export class WakeWord {
  readonly #worker = new Worker(new URL('../worker/wake-worker.ts', import.meta.url), { type: 'module' });

  /**
   * @param sound where its sound comes from: blocks of 16 kHz samples
   * @param woken the word was said
   * @param failed it does not listen: one line that says why
   */
  constructor(parts: WakeParts, sound: MessagePort, woken: () => void, failed: (sentence: string) => void) {
    const fail = (detail: string) => {
      clearTimeout(late);
      this.end();
      failed(oneLine(detail));
    };
    const late = setTimeout(() => fail('its maker’s host does not answer'), READY_WITHIN_MS);
    this.#worker.onmessage = ({ data }: MessageEvent<WakeNews>) => {
      if (data.news === 'ready') clearTimeout(late);
      if (data.news === 'woken') woken();
      if (data.news === 'failed') fail(data.detail);
    };
    this.#worker.onerror = (event) => {
      event.preventDefault();
      fail(event.message || 'its program could not be loaded');
    };
    this.#worker.postMessage({ parts, port: sound } satisfies WakeOrder, [sound]);
  }

  end(): void {
    this.#worker.terminate();
  }
}

function oneLine(detail: string): string {
  const line = detail.replace(/\s+/g, ' ').trim();
  return line.length > MOST_CHARACTERS ? `${line.slice(0, MOST_CHARACTERS)}…` : line;
}
