import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { type Earcon, playEarcon } from '../../speaking/browser/earcons.ts';
import { readSoundSettings } from './sound-settings.ts';

/** Everything of the page that is heard goes through one audio context; the device's own voice has its own way. */
export class PageSounds {
  #context: AudioContext | undefined;

  /** Browsers let it sound only after a tap or a key; until then nothing is heard. */
  context(): AudioContext {
    this.#context ??= new AudioContext();
    return this.#context;
  }

  prime(): void {
    void this.context().resume();
  }

  play(earcon: Earcon): void {
    if (this.#context?.state === 'running' && !speakingManner().silent) playEarcon(this.#context, earcon);
  }

  /** The sign for what has just come into the record: asked comes before logged. */
  tell(events: readonly VisitEvent[]): void {
    if (events.some(({ type }) => type === 'reading.asked')) this.play('asked');
    else if (events.some(({ type }) => type === 'reading.logged')) this.play('logged');
  }

  end(): void {
    void this.#context?.close();
    this.#context = undefined;
  }
}

export function speakingManner(): { readonly silent: boolean; readonly rate: number } {
  const { voice, rate } = readSoundSettings();
  return { silent: voice === 'silent', rate };
}
