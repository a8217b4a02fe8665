import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { headsInFolder } from '../../server/heads/heads-in-folder.ts';
import { keepHeads } from '../../server/heads/keep-heads.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { chainFor, streamOf } from './running-app.ts';

/** Milliseconds since 1970; any will do. */
export const BEGAN = 1_780_000_000_000;

export const bodyOf = (visit: string, index: number): string =>
  JSON.stringify({ type: 'note.taken', text: `${visit} ${index}` });

export const entriesOf = (visit: string, count: number) =>
  chainFor(
    streamOf(visit),
    Array.from({ length: count }, (_, index) => bodyOf(visit, index)),
  );

/**
 * A data folder as a server leaves it at its end, in this process.
 *
 * @param visits how many events of each
 */
export async function makeKeptFolder(folder: string, visits: Readonly<Record<string, number>>): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const store = openSqliteStore(join(folder, 'readback.sqlite'));
  const signer = openReceiptSigner(join(folder, 'receipt-key.pem'));
  const keeper = await keepHeads({
    place: headsInFolder(folder),
    store,
    signer,
    clock: () => BEGAN,
    acceptLoss: false,
  });
  for (const [visit, count] of Object.entries(visits)) {
    const entries = await entriesOf(visit, count);
    const stream = streamOf(visit);
    await store.commit(entries.map((entry, index) => ({ ...entry, stream, receivedAt: BEGAN + index })));
    await keeper.stored();
  }
  await keeper.close();
  await store.close();
}
