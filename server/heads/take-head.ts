import { createHash } from 'node:crypto';
import { parseStreamText, streamText } from '../../grammar/visit/envelope.ts';
import {
  followsText,
  headText,
  type KeptStream,
  NO_HEAD_BEFORE,
  type SignedHead,
  standBy,
} from '../../grammar/visit/signed-head.ts';
import type { EventStore, StreamEnd } from '../store/event-store.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import { headHash } from './heads-file.ts';

const STREAMS_A_TURN = 50;

/**
 * The next head over all streams of the store; undefined where nothing moved since the latest.
 *
 * @param anew lists every stream, whatever stood before
 */
export async function takeHead(
  store: EventStore,
  heads: readonly SignedHead[],
  signer: ReceiptSigner,
  time: number,
  anew = heads.length === 0,
): Promise<SignedHead | undefined> {
  const stood = anew ? new Map<string, KeptStream>() : standBy(heads);
  const streams: KeptStream[] = [];
  for (const end of await store.ends()) {
    const text = streamText(end.stream);
    const before = stood.get(text);
    if (before?.hash === end.head.hash && before.forks === end.forks) continue;
    streams.push(await keptStream(store, text, end));
    // A head over very many streams holds up nobody.
    if (streams.length % STREAMS_A_TURN === 0) await new Promise((resolve) => setImmediate(resolve));
  }
  if (streams.length === 0 && heads.length > 0 && !anew) return undefined;
  const before = heads.at(-1);
  const head = {
    number: (before?.number ?? 0) + 1,
    time,
    previous: before === undefined ? NO_HEAD_BEFORE : headHash(before),
    anew,
    streams,
  };
  return { ...head, ...signer.signText(headText(head)) };
}

async function keptStream(
  store: EventStore,
  text: string,
  { stream, head, forks, follows }: StreamEnd,
): Promise<KeptStream> {
  const received = await store.receivedTimes(stream, head.seq);
  return {
    stream: text,
    seq: head.seq,
    hash: head.hash,
    received: receivedHash(received),
    forks,
    follows: followsText(follows),
  };
}

/** SHA-256 over times of receipt, in milliseconds, one a line. */
export function receivedHash(times: readonly number[]): string {
  return createHash('sha256')
    .update(times.map((time) => `${time}\n`).join(''))
    .digest('hex');
}

/** What a store no longer holds of what was signed. `visit` names where it was; `sentence` says what is not there. */
export interface Loss {
  readonly stream: string;
  readonly sentence: string;
}

/** Holds the ends of all streams against the heads that were kept: what is missing, ends early or was written anew. */
export async function lossesSince(
  store: Pick<EventStore, 'hashAt' | 'lastSeq'>,
  heads: readonly SignedHead[],
): Promise<readonly Loss[]> {
  const losses: Loss[] = [];
  const signedFor = [...standBy(heads).values()];
  for (let at = 0; at < signedFor.length; at += STREAMS_A_TURN) {
    const some = await Promise.all(signedFor.slice(at, at + STREAMS_A_TURN).map((kept) => lossOf(store, kept)));
    losses.push(...some.flat());
  }
  return losses;
}

async function lossOf(store: Pick<EventStore, 'hashAt' | 'lastSeq'>, kept: KeptStream): Promise<readonly Loss[]> {
  const stream = parseStreamText(kept.stream);
  const held = stream === undefined ? undefined : await store.hashAt(stream, kept.seq);
  if (held === kept.hash) return [];
  const last = stream === undefined ? 0 : await store.lastSeq(stream);
  return [{ stream: kept.stream, sentence: lossSentence(kept, last) }];
}

function lossSentence({ stream, seq }: KeptStream, last: number): string {
  const visit = `Visit ${stream.split('/')[1]} (${stream.split('/')[2]})`;
  if (last === 0)
    return seq === 1 ? `${visit}: its only event is missing.` : `${visit}: all its ${seq} events are missing.`;
  if (last < seq) return `${visit}: it ends at event ${last}, ${seq} were signed for.`;
  return `${visit}: event ${seq} is not the one that was signed for.`;
}
