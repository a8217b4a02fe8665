import type { PromptOutcome } from '../../../grammar/visit/inputs.ts';
import type { Mouth, Prompt } from '../mouth.ts';
import { chooseDeviceVoice } from './device-voice.ts';
import type { Voice } from './voice.ts';

/**
 * A caution that no voice speaks stands for as long as it takes to read it: at 175 words a minute, the slow end of what
 * most adults read silently (Brysbaert 2019, doi 10.1016/j.jml.2019.104047, 175 to 300, from memory), after a second to
 * look up (our choice).
 */
const WORDS_A_MINUTE = 175;
const LOOKS_UP_MS = 1_000;
/** Browsers tell of the device's voices a while after the page was loaded. */
const VOICES_WITHIN_MS = 2_000;
/** A voice that is still being loaded is waited for so long before what it would say is only shown. Our choice. */
const LOADED_WITHIN_MS = 10_000;

/** How long words must stand to be read whole, in milliseconds. */
export function readingTime(text: string): number {
  const words = text.split(/\s+/).filter((word) => word !== '').length;
  return LOOKS_UP_MS + (words * 60_000) / WORDS_A_MINUTE;
}

export interface PageMouthState {
  /** The name of the voice, or none: prompts are then shown only. */
  readonly voice: string | undefined;
  /** There is none yet, and one is being looked for or loaded. */
  readonly isComing: boolean;
  readonly speaking: Prompt | undefined;
}

export interface PageMouthOptions {
  /** Fetches the voice for devices that have none; rejects where it cannot be had. */
  readonly loadVoice?: () => Promise<Voice>;
  /** Whether it speaks at all, and how fast; asked before each prompt. */
  readonly manner?: () => { readonly silent: boolean; readonly rate: number };
}

/**
 * Speaks with a voice of the device itself, else with the one that is fetched for it, and waits a while for one that is
 * on its way. Where there is none, or it fails, every prompt is still on the screen, and counts as shown there; a caution
 * once it stood for as long as it takes to read.
 */
export class PageMouth implements Mouth {
  readonly #synthesis: SpeechSynthesis | undefined;
  readonly #changed: (state: PageMouthState) => void;
  readonly #options: PageMouthOptions;
  #voice: Voice | undefined;
  #deviceFailed = false;
  #asked = false;
  /** Whether a voice may still come; and who waits for that to be known. */
  #isComing = true;
  /** It is being loaded, also when it is waited for no longer. */
  #isLoading = false;
  #awaiting: (() => void)[] = [];
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
    if (synthesis === undefined && options.loadVoice === undefined) this.#settleVoice();
    else setTimeout(() => this.#settleVoice(), LOADED_WITHIN_MS);
  }

  state(): PageMouthState {
    const silent = this.#silent();
    return {
      voice: silent ? undefined : this.#voice?.name,
      isComing: !silent && this.#voice === undefined && (this.#isComing || this.#isLoading),
      speaking: this.#speaking,
    };
  }

  /** To be called from a tap or key: browsers let a page speak only after one. */
  prime(): void {
    if (this.#voice !== undefined) this.#synthesis?.speak(new SpeechSynthesisUtterance(''));
    else this.#fetchVoice();
  }

  async speak(prompt: Prompt): Promise<PromptOutcome> {
    this.#speaking = prompt;
    this.#changed(this.state());
    try {
      if (!this.#silent() && this.#voice === undefined && this.#isComing && (await this.#isCutBefore())) return 'cut';
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

  /** Whether it was hushed while the voice that is to speak it was on its way. */
  #isCutBefore(): Promise<boolean> {
    const cut = new Promise<boolean>((resolve) => {
      this.#cut = () => resolve(true);
    });
    const come = new Promise<boolean>((resolve) => this.#awaiting.push(() => resolve(false)));
    return Promise.race([cut, come]);
  }

  /** Whether there is a voice is known now, or is waited for no longer. */
  #settleVoice(): void {
    const was = this.#isComing;
    this.#isComing = false;
    for (const go of this.#awaiting.splice(0)) go();
    if (was) this.#changed(this.state());
  }

  #show(prompt: Prompt): Promise<PromptOutcome> {
    if (prompt.kind !== 'caution') return Promise.resolve('shown');
    return new Promise((resolve) => {
      const shown = setTimeout(() => resolve('shown'), readingTime(prompt.text));
      this.#cut = () => {
        clearTimeout(shown);
        resolve('cut');
      };
    });
  }

  async #say(voice: Voice, prompt: Prompt): Promise<PromptOutcome> {
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
    if (this.#voice !== undefined) this.#settleVoice();
    this.#changed(this.state());
  }

  /** Only where the device has none, and once: a voice that failed is not fetched again. */
  #fetchVoice(): void {
    const { loadVoice } = this.#options;
    if (this.#voice !== undefined || this.#asked || this.#silent()) return;
    if (loadVoice === undefined) return this.#settleVoice();
    this.#asked = true;
    this.#isComing = true;
    this.#isLoading = true;
    this.#changed(this.state());
    setTimeout(() => this.#settleVoice(), LOADED_WITHIN_MS);
    loadVoice()
      .then(
        (voice) => {
          this.#voice ??= voice;
        },
        (error: unknown) => console.warn('No voice could be fetched, prompts are shown only:', error),
      )
      .finally(() => {
        this.#isLoading = false;
        this.#settleVoice();
        this.#changed(this.state());
      });
  }
}
