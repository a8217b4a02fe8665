import type { Mouth, Prompt } from '../mouth.ts';

/** How long a caution stays before it counts as given where no voice speaks it: a stray tap cannot pass it unseen. */
const SHOWN_CAUTION_MS = 1_500;
/** A voice that has not begun by then has failed. */
const BEGINS_WITHIN_MS = 4_000;
/** A slow voice, with room to spare; engines now and then forget to say that they have ended. */
const MS_A_CHARACTER = 120;

export interface PageMouthState {
  /** The name of the voice, or none: prompts are then shown only. */
  readonly voice: string | undefined;
  readonly speaking: Prompt | undefined;
}

/**
 * Speaks with a voice of the device itself (one that needs the network dies when it is gone, and in long sentences).
 * Where there is none, or it fails, every prompt is still on the screen, and counts as given there.
 */
export class PageMouth implements Mouth {
  readonly #synthesis: SpeechSynthesis | undefined;
  readonly #changed: (state: PageMouthState) => void;
  #voice: SpeechSynthesisVoice | undefined;
  #failed = false;
  #speaking: Prompt | undefined;
  #cut: (() => void) | undefined;

  constructor(synthesis: SpeechSynthesis | undefined, changed: (state: PageMouthState) => void) {
    this.#synthesis = synthesis;
    this.#changed = changed;
    this.#chooseVoice();
    synthesis?.addEventListener('voiceschanged', () => this.#chooseVoice());
  }

  state(): PageMouthState {
    return { voice: this.#failed ? undefined : this.#voice?.name, speaking: this.#speaking };
  }

  /** To be called from a tap or key: browsers let a page speak only after one. */
  prime(): void {
    if (this.#voice !== undefined) this.#synthesis?.speak(new SpeechSynthesisUtterance(''));
  }

  async speak(prompt: Prompt): Promise<'spoken' | 'cut'> {
    this.#speaking = prompt;
    this.#changed(this.state());
    try {
      return this.#voice === undefined || this.#failed ? await this.#show(prompt) : await this.#say(prompt);
    } finally {
      this.#speaking = undefined;
      this.#cut = undefined;
      this.#changed(this.state());
    }
  }

  hush(evenCaution: boolean): void {
    if (this.#speaking?.kind === 'caution' && !evenCaution) return;
    this.#cut?.();
  }

  #show(prompt: Prompt): Promise<'spoken' | 'cut'> {
    if (prompt.kind !== 'caution') return Promise.resolve('spoken');
    return new Promise((resolve) => {
      const shown = setTimeout(() => resolve('spoken'), SHOWN_CAUTION_MS);
      this.#cut = () => {
        clearTimeout(shown);
        resolve('cut');
      };
    });
  }

  #say(prompt: Prompt): Promise<'spoken' | 'cut'> {
    const { promise, resolve } = withResolvers<'spoken' | 'cut' | 'failed'>();
    const utterance = new SpeechSynthesisUtterance(prompt.text);
    if (this.#voice !== undefined) utterance.voice = this.#voice;
    utterance.lang = this.#voice?.lang ?? 'en-US';
    let watch = setTimeout(() => resolve('failed'), BEGINS_WITHIN_MS);
    utterance.onstart = () => {
      clearTimeout(watch);
      watch = setTimeout(() => resolve('spoken'), BEGINS_WITHIN_MS + prompt.text.length * MS_A_CHARACTER);
    };
    utterance.onend = () => resolve('spoken');
    utterance.onerror = () => resolve('failed');
    this.#cut = () => {
      resolve('cut');
      this.#synthesis?.cancel();
    };
    this.#synthesis?.speak(utterance);
    return promise.then((outcome) => {
      clearTimeout(watch);
      if (outcome !== 'failed') return outcome;
      this.#failed = true;
      this.#synthesis?.cancel();
      return this.#show(prompt);
    });
  }

  #chooseVoice(): void {
    const english = this.#synthesis?.getVoices().filter((voice) => voice.lang.startsWith('en') && voice.localService);
    this.#voice = english?.find((voice) => voice.default) ?? english?.[0];
    this.#changed(this.state());
  }
}

function withResolvers<T>(): { readonly promise: Promise<T>; readonly resolve: (value: T) => void } {
  let settle: (value: T) => void = () => undefined;
  const promise = new Promise<T>((resolve) => {
    settle = resolve;
  });
  return { promise, resolve: (value) => settle(value) };
}
