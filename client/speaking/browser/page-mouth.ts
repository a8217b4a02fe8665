import type { Mouth, Prompt } from '../mouth.ts';
import { chooseDeviceVoice } from './device-voice.ts';
import type { Voice } from './voice.ts';

/** How long a caution stays before it counts as given where no voice speaks it: a stray tap cannot pass it unseen. */
const SHOWN_CAUTION_MS = 1_500;
/** Browsers tell of the device's voices a while after the page was loaded. */
const VOICES_WITHIN_MS = 2_000;

export interface PageMouthState {
  /** The name of the voice, or none: prompts are then shown only. */
  readonly voice: string | undefined;
  readonly speaking: Prompt | undefined;
}

export interface PageMouthOptions {
  /** Fetches the voice for devices that have none; rejects where it cannot be had. */
  readonly loadVoice?: () => Promise<Voice>;
  /** Whether it speaks at all, and how fast; asked before each prompt. */
  readonly manner?: () => { readonly silent: boolean; readonly rate: number };
}

/**
 * Speaks with a voice of the device itself, else with the one that is fetched for it. Where there is none, or it fails,
 * every prompt is still on the screen, and counts as given there.
 */
export class PageMouth implements Mouth {
  readonly #synthesis: SpeechSynthesis | undefined;
  readonly #changed: (state: PageMouthState) => void;
  readonly #options: PageMouthOptions;
  #voice: Voice | undefined;
  #deviceFailed = false;
  #asked = false;
  #speaking: Prompt | undefined;
  #cut: (() => void) | undefined;

  constructor(
    synthesis: SpeechSynthesis | undefined,
    changed: (state: PageMouthState) => void,
    options: PageMouthOptions = {},
  ) {
    this.#synthesis = synthesis;
    this.#changed = changed;
    this.#options = options;
    this.#chooseVoice();
    synthesis?.addEventListener('voiceschanged', () => this.#chooseVoice());
    if (this.#voice === undefined) setTimeout(() => this.#fetchVoice(), VOICES_WITHIN_MS);
  }

  state(): PageMouthState {
    return { voice: this.#silent() ? undefined : this.#voice?.name, speaking: this.#speaking };
  }

  /** To be called from a tap or key: browsers let a page speak only after one. */
  prime(): void {
    if (this.#voice !== undefined) this.#synthesis?.speak(new SpeechSynthesisUtterance(''));
    else this.#fetchVoice();
  }

  async speak(prompt: Prompt): Promise<'spoken' | 'cut'> {
    this.#speaking = prompt;
    this.#changed(this.state());
    try {
      const voice = this.#silent() ? undefined : this.#voice;
      return voice === undefined ? await this.#show(prompt) : await this.#say(voice, prompt);
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

  #silent(): boolean {
    return this.#options.manner?.().silent === true;
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

  async #say(voice: Voice, prompt: Prompt): Promise<'spoken' | 'cut'> {
    const saying = voice.say(prompt.text, this.#options.manner?.().rate ?? 1);
    const cut = new Promise<'cut'>((resolve) => {
      this.#cut = () => {
        resolve('cut');
        saying.cut();
      };
    });
    const outcome = await Promise.race([cut, saying.outcome]);
    if (outcome !== 'failed') return outcome;
    saying.cut();
    this.#voice = undefined;
    this.#deviceFailed = true;
    this.#fetchVoice();
    return this.#show(prompt);
  }

  #chooseVoice(): void {
    if (this.#deviceFailed) return;
    this.#voice = chooseDeviceVoice(this.#synthesis) ?? this.#voice;
    this.#changed(this.state());
  }

  /** Only where the device has none, and once: a voice that failed is not fetched again. */
  #fetchVoice(): void {
    const { loadVoice } = this.#options;
    if (this.#voice !== undefined || this.#asked || loadVoice === undefined || this.#silent()) return;
    this.#asked = true;
    loadVoice().then(
      (voice) => {
        this.#voice ??= voice;
        this.#changed(this.state());
      },
      (error: unknown) => console.warn('No voice could be fetched, prompts are shown only:', error),
    );
  }
}
