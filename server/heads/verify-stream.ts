import { createHash } from 'node:crypto';
import { type Entry, parseStreamText, type Sha256 } from '../../grammar/visit/envelope.ts';
import type { KeptStream } from '../../grammar/visit/signed-head.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';
import { receivedHash } from './take-head.ts';

/** What is held of one stream, with the times at which its events came. */
export interface HeldStream {
  /** `company/visit/device/epoch`. */
  readonly stream: string;
  readonly events: readonly (Entry & { readonly receivedAt: number; readonly arrival: number })[];
  readonly forks: number;
  /** The older stream that it carries on, as a head writes it. */
  readonly follows: string;
  /** How many events its device said that it has, where that is more than are held. */
  readonly said?: number | undefined;
}

/** Something that is not as it was. `seq` names the first event, where it is known. */
export interface Finding {
  readonly stream: string;
  readonly seq?: number;
  readonly sentence: string;
}

/**
 * Holds one stream against its own chain and against the head that was signed for it.
 *
 * @param kept where it stood by the latest signed head that names it
 */
export async function verifyStream(
  held: HeldStream,
  kept: KeptStream | undefined,
  hash: Sha256 = sha256,
): Promise<readonly Finding[]> {
  return [...(await changesIn(held, kept, hash)), ...contradictions(held)];
}

/** What is kept of a stream beside its chain, and speaks against it. */
function contradictions({ stream, events, forks, said }: HeldStream): readonly Finding[] {
  const last = events.at(-1)?.seq ?? 0;
  const found: Finding[] = [];
  if (forks > 0) {
    const what = forks === 1 ? '1 event that contradicts it is' : `${forks} events that contradict it are`;
    found.push({ stream, sentence: `${what} kept beside it: two claim one number.` });
  }
  if (said !== undefined && said > last) {
    found.push({ stream, seq: last + 1, sentence: `Not complete: ${last} held, its device said that it has ${said}.` });
  }
  return found;
}

async function changesIn(held: HeldStream, kept: KeptStream | undefined, hash: Sha256): Promise<readonly Finding[]> {
  const { stream, events, forks } = held;
  const id = parseStreamText(stream);
  if (id === undefined) return [{ stream, sentence: 'Its name is none that a stream can have.' }];
  const verdict = await verifyChain(id, events, hash, kept);
  if (!verdict.intact) return [{ stream, seq: verdict.seq, sentence: verdict.sentence }];
  const early = events.find(({ arrival }, at) => arrival <= (events[at - 1]?.arrival ?? 0));
  if (early !== undefined) {
    const sentence = `Event ${early.seq} stands before the one that it follows: their order of arrival was changed.`;
    return [{ stream, seq: early.seq, sentence }];
  }
  if (kept === undefined) return [];
  const found: Finding[] = [];
  const times = events.slice(0, kept.seq).map(({ receivedAt }) => receivedAt);
  if (receivedHash(times) !== kept.received) {
    found.push({ stream, sentence: `A time of receipt was changed among events 1 to ${kept.seq}.` });
  }
  if (forks < kept.forks) {
    found.push({ stream, sentence: `${kept.forks - forks} of its contradicting events are gone.` });
  }
  if (held.follows !== kept.follows) {
    found.push({ stream, sentence: 'The stream that it carries on is not the one that was signed for.' });
  }
  return found;
}

/** Where the times of receipt go back: the server's clock did, or they were changed. */
export function receivedBackwards({ events }: HeldStream): number | undefined {
  return events.find(({ receivedAt }, at) => receivedAt < (events[at - 1]?.receivedAt ?? 0))?.seq;
}

export function sha256(bytes: Uint8Array): Uint8Array {
  return createHash('sha256').update(bytes).digest();
}

/** "1 event", "2 events". */
export const eventsWords = (count: number): string => `${count} ${count === 1 ? 'event' : 'events'}`;

/** "library, phone": a stream as people name it; a later epoch says so. */
export function streamWords(text: string): string {
  const id = parseStreamText(text);
  // A name that no stream can have is shown as it stands.
  return id === undefined ? text : `${id.visit}, ${id.device}${id.epoch > 1 ? `, its stream ${id.epoch}` : ''}`;
}
