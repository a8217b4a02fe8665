import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { SizeLimit } from '../database/size-limit.ts';
import { ServerError } from '../errors.ts';
import { openSqliteStore, RECORD_FILE, type SqliteStore } from '../store/sqlite-store.ts';
import { KEY_FILE, openReceiptSigner, type ReceiptSigner } from '../sync/receipt-signer.ts';
import { checkChains } from './check-chains.ts';
import { LOCK_FILE, lockFolder } from './folder-lock.ts';
import { GIVEN_UP_FILE } from './given-up.ts';
import { readHeads } from './heads-file.ts';
import { HEADS_FILE, HIGH_WATER_FILE, headsInFolder } from './heads-in-folder.ts';
import { type HeadKeeper, keepHeads, namedLosses } from './keep-heads.ts';
import { makeFolder } from './make-folder.ts';
import { lossesSince } from './take-head.ts';

/** So long a start may read chains, in milliseconds. */
export const CHAINS_MS = 2_000;

/** What tells that a folder was used. */
const TRACES = [HEADS_FILE, HIGH_WATER_FILE, KEY_FILE, GIVEN_UP_FILE];

export interface OpenedFolder {
  readonly store: SqliteStore;
  readonly signer: ReceiptSigner;
  readonly keeper: HeadKeeper;
  /** What whoever starts the server is to know: what was given up, and how much was checked. */
  readonly told: readonly string[];
  /** Lets the folder go; the process' end does the same. */
  readonly letGo: () => void;
}

export interface OpenOptions {
  /** Goes on where something was lost. */
  readonly acceptLoss: boolean;
  /** The record stops growing where this ends. */
  readonly limit?: SizeLimit | undefined;
}

/**
 * Opens a data folder for one server, and holds it against all that tells what it held. Where that is refused nothing was
 * made in it, no record and no key.
 *
 * @throws {ServerError} data-lost, key-gone, key-lost, heads-damaged, unless a loss is accepted; folder-in-use and what
 *   opening the record and the key throws.
 */
export async function openFolder(folder: string, { acceptLoss, limit }: OpenOptions): Promise<OpenedFolder> {
  makeFolder(folder);
  const gone = await recordGone(folder);
  if (gone !== undefined && !acceptLoss) throw gone;
  const path = join(folder, RECORD_FILE);
  const onlyLocked = gone === undefined && !existsSync(path) && existsSync(join(folder, LOCK_FILE));
  const letGo = lockFolder(folder);
  const store = openSqliteStore(path, {
    acceptLoss,
    ...(limit === undefined ? {} : { limit }),
  });
  try {
    const signed = existsSync(join(folder, HEADS_FILE)) || ((await store.lastArrival()) > 0 && !store.older);
    if (signed && !existsSync(join(folder, KEY_FILE)) && !acceptLoss) throw new ServerError('key-gone', folder);
    const chains = await checkChains(store, CHAINS_MS);
    const signer = openReceiptSigner(join(folder, KEY_FILE));
    const { findings } = chains;
    const keeper = await keepHeads({
      place: headsInFolder(folder),
      store,
      signer,
      clock: Date.now,
      acceptLoss,
      findings,
    });
    const told = [
      ...keeper.givenUp.map((one) => `Given up: ${one}`),
      ...(gone !== undefined && keeper.givenUp.length === 0 ? ['Given up: the record that was kept here before'] : []),
      ...(onlyLocked ? ['A server ran in this folder before, and no record is in it: a new one was begun'] : []),
      ...chainWords(chains),
    ];
    return { store, signer, keeper, told, letGo };
  } catch (error) {
    await store.close();
    letGo();
    throw error;
  }
}

export function chainWords({ checked, events }: Awaited<ReturnType<typeof checkChains>>): readonly string[] {
  if (events === 0) return [];
  if (checked === events)
    return [
      `Checked at this start: ${events === 1 ? 'the chain of the only event' : `the chain of all ${events} events`}`,
    ];
  return [
    `Checked at this start: the chain of ${checked} of ${events} events; not that of the others ("npm run verify" checks all)`,
  ];
}

/** What is lost where a used folder has no record any more; undefined where it has one, or was never used. */
async function recordGone(folder: string): Promise<ServerError | undefined> {
  const path = join(folder, RECORD_FILE);
  if (existsSync(path) && (statSync(path).size > 0 || existsSync(`${path}-wal`))) return undefined;
  const names = readdirSync(folder);
  const traces = names.filter((name) => TRACES.includes(name) || name.startsWith(`${HEADS_FILE}.`));
  if (traces.length === 0) return undefined;
  const nothing = { hashAt: async () => undefined, lastSeq: async () => 0 };
  const losses = await lossesSince(nothing, readHeads(join(folder, HEADS_FILE)).heads);
  if (losses.length > 0)
    return new ServerError('data-lost', `${folder} lost what was signed for. ${namedLosses(losses)}`);
  const missing = [RECORD_FILE, HEADS_FILE, HIGH_WATER_FILE].filter((name) => !traces.includes(name));
  return new ServerError('data-lost', `${folder} is gone: ${missing.join(', ')} missing beside ${traces.join(', ')}.`);
}
