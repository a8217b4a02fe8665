import type { PromptOutcome } from '../../grammar/visit/inputs.ts';

/** A sentence to be spoken. `caution` cannot be talked over except by "stop", and then starts again whole. */
export interface Prompt {
  readonly id: string;
  readonly kind: 'readback' | 'question' | 'step' | 'caution' | 'answer' | 'warning';
  readonly text: string;
}

/** prompt → sound. Implementations: browser voice, offline voice, printed, silent. */
export interface Mouth {
  /** Resolves when the prompt was spoken whole, or shown whole where there is no voice, or was cut short. */
  speak(prompt: Prompt): Promise<PromptOutcome>;
  /** Cuts what is being spoken; cautions only when `evenCaution`. */
  hush(evenCaution: boolean): void;
}
