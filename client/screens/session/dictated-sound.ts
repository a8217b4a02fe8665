import type { Understanding } from '../../../grammar/phrases/meaning.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import { keepsSound } from '../../../grammar/visit/standing.ts';
import { writeWav } from '../../listening/sound/write-wav.ts';
import { SAMPLE_RATE } from '../../listening/wav.ts';
import type { KeptSounds } from '../../record/browser/kept-sounds.ts';
import type { VisitContext } from '../../visit/chart/context.ts';

/** The sound of what is dictated: on the disk before the record speaks of it, and gone again where nothing came of it. */
export class DictatedSound {
  readonly #sounds: KeptSounds;
  readonly #understand: (text: string) => Promise<Understanding>;

  constructor(sounds: KeptSounds, understand: (text: string) => Promise<Understanding>) {
    this.#sounds = sounds;
    this.#understand = understand;
  }

  /** Keeps the sound of an utterance, where that was agreed to and it may be dictated; no other sound is ever kept. */
  async keep(samples: Float32Array, text: string, context: VisitContext): Promise<KeptSound | undefined> {
    if (!keepsSound(context) || !(await this.#mayBeDictated(text, context))) return undefined;
    try {
      const sha256 = await this.#sounds.keep(writeWav(samples, SAMPLE_RATE));
      return { sha256, ms: Math.round((samples.length * 1000) / SAMPLE_RATE) };
    } catch {
      // Without room for it the words go on alone, and the record speaks of no sound.
      return undefined;
    }
  }

  /** A sound that no event speaks of but the one that brought it is dropped. */
  async dropUnused({ sha256 }: KeptSound, events: readonly VisitEvent[]): Promise<void> {
    if (events.some((event) => 'sound' in event && event.sound?.sha256 === sha256)) return;
    await this.#sounds.drop(sha256).catch(() => undefined);
  }

  /** A heading, or the words behind one. */
  async #mayBeDictated(text: string, { dictating }: VisitContext): Promise<boolean> {
    if (dictating !== undefined) return true;
    const { kind } = (await this.#understand(text)).meaning;
    return kind === 'note' || kind === 'dictated';
  }
}
