import { renameSync } from 'node:fs';
import { join } from 'node:path';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore } from '../store/event-store.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import { appendHead, type KeptHeads, readHeads } from './heads-file.ts';
import { highWaterSentence, openHighWater } from './high-water.ts';
import { lossesSince, takeHead } from './take-head.ts';

export const HEADS_FILE = 'heads.jsonl';
export const HIGH_WATER_FILE = 'acknowledged';
const DAY_MS = 86_400_000;
/** So many losses are named; the rest is counted. */
const NAMED = 5;

/** The server's own memory of what it held: a signed head at each start, each day and at the end. */
export interface HeadKeeper {
  readonly heads: () => readonly SignedHead[];
  /** Called once events are on the disk, before they are acknowledged. */
  readonly stored: () => Promise<void>;
  /** Signs where all streams stand now, if anything moved. */
  readonly take: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A store, and where it is known, whether it was closed as it should be. */
type KeptStore = EventStore & { readonly leftInOrder?: boolean };

export interface KeepOptions {
  readonly folder: string;
  readonly store: KeptStore;
  readonly signer: ReceiptSigner;
  readonly clock: () => number;
  /** Goes on where something was lost, and begins the heads anew. */
  readonly acceptLoss: boolean;
}

/**
 * Holds the store against what was signed and acknowledged before, then signs anew each day.
 * @throws {ServerError} data-lost, heads-damaged, key-lost, unless a loss is accepted; data-unwritable.
 */
export async function keepHeads({ folder, store, signer, clock, acceptLoss }: KeepOptions): Promise<HeadKeeper> {
  const path = join(folder, HEADS_FILE);
  const waterPath = join(folder, HIGH_WATER_FILE);
  const kept = readHeads(path, signer);
  const lost = await whatIsLost(kept, folder, store, signer, waterPath);
  if (lost !== undefined && !acceptLoss) throw lost;
  // What is not as it was signed is kept apart, and begun anew.
  if (kept.sentence !== undefined) renameSync(path, `${path}.set-aside-${clock()}`);
  let heads = kept.sentence === undefined ? kept.heads : [];
  const water = openHighWater(waterPath, await store.lastArrival());
  const take = async (anew?: true): Promise<void> => {
    const head = await takeHead(store, heads, signer, clock(), anew);
    if (head === undefined) return;
    appendHead(path, head);
    heads = [...heads, head];
  };
  await take(lost === undefined ? undefined : true);
  const daily = setInterval(() => take().catch(reportFault), DAY_MS);
  daily.unref();
  return {
    heads: () => heads,
    stored: async () => water.reached(await store.lastArrival()),
    take: () => take(),
    close: async () => {
      clearInterval(daily);
      await take();
      water.reached(await store.lastArrival());
      water.close();
    },
  };
}

async function whatIsLost(
  kept: KeptHeads,
  folder: string,
  store: KeptStore,
  signer: ReceiptSigner,
  waterPath: string,
): Promise<ServerError | undefined> {
  if (kept.sentence !== undefined) return new ServerError('heads-damaged', kept.sentence);
  const latest = kept.heads.at(-1);
  if (latest !== undefined && latest.key !== signer.keyName) return new ServerError('key-lost', folder);
  const losses = await lossesSince(store, kept.heads);
  if (losses.length > 0) return new ServerError('data-lost', `${folder} lost what was signed for. ${named(losses)}`);
  const last = await store.lastArrival();
  const sentence = highWaterSentence(waterPath, () => last, store.leftInOrder === true);
  return sentence === undefined
    ? undefined
    : new ServerError('data-lost', `${folder} is not as it was left. ${sentence}`);
}

function named(losses: readonly { readonly sentence: string }[]): string {
  const more = losses.length > NAMED ? ` And ${losses.length - NAMED} more.` : '';
  return `${losses
    .slice(0, NAMED)
    .map(({ sentence }) => sentence)
    .join(' ')}${more}`;
}
