import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import type { Utterance } from '../../listening/ear.ts';
import { writeWav } from '../../listening/sound/write-wav.ts';
import { SAMPLE_RATE } from '../../listening/wav.ts';
import { handInFiles } from '../../record/browser/hand-in.ts';
import { keepFile, nameFiles, settleFiles } from '../../record/browser/kept-files.ts';
import type { VisitPart } from '../../record/browser/visit-keys.ts';
import type { Glance } from '../glance/glance.ts';

/**
 * The sound of what was heard, where it was agreed that it may be kept: sealed and on the disk before the record speaks of
 * it, sent once the record does. Without that word nothing is kept, and never what was taken for somebody else's talk.
 */
export class HeardSoundKeeper {
  readonly #part: VisitPart;
  readonly #settled: () => Promise<void>;

  /** @param settled resolves when the server holds the record as it is by now: no file is taken before its visit is there */
  constructor(part: VisitPart, settled: () => Promise<void>) {
    this.#part = part;
    this.#settled = settled;
  }

  async keep({ samples, accepted }: Utterance, keeping: Glance['keeping']): Promise<KeptSound | undefined> {
    if (samples === undefined || keeping === 'none' || !(accepted || keeping === 'dictated')) {
      return undefined;
    }
    try {
      const wav = writeWav(samples, SAMPLE_RATE);
      const sha256 = await keepFile(this.#part, wav, { kind: 'sound', media: 'audio/wav' });
      return { sha256, ms: Math.round((samples.length * 1000) / SAMPLE_RATE), sealed: true };
    } catch {
      // Without room for it the words go on alone, and the record speaks of no sound.
      return undefined;
    }
  }

  /** The events are in the record: what they name is sent as the network allows. */
  async named(events: readonly VisitEvent[]): Promise<void> {
    const hashes = events.flatMap(nameOf);
    if (hashes.length === 0) return;
    await nameFiles(hashes);
    await this.#settled();
    await handInFiles();
  }

  /** After a break: what was kept and never named is dropped, the rest is sent. */
  async settle(events: readonly VisitEvent[]): Promise<void> {
    await settleFiles(this.#part, new Set(events.flatMap(nameOf)));
    await this.#settled();
    await handInFiles();
  }
}

/** The file that an event is the first to name. */
function nameOf(event: VisitEvent): readonly string[] {
  if (event.type !== 'input.taken') return [];
  if (event.input.type === 'took.photo') return [event.input.sha256];
  if (event.input.type !== 'heard.utterance') return [];
  const { sound } = event.input.utterance;
  return sound?.sealed === true ? [sound.sha256] : [];
}
