import { browserLogStore } from '../../../client/record/browser/browser-log-store.ts';
import { openIndexedDbLog } from '../../../client/record/browser/indexed-db-log.ts';
import { claimWriter } from '../../../client/record/browser/one-writer.ts';
import { RecordDatabase } from '../../../client/record/browser/record-database.ts';
import { sha256 } from '../../../client/record/browser/sha256.ts';
import { openTabNews } from '../../../client/record/browser/tab-news.ts';
import type { RecordError } from '../../../client/record/errors.ts';
import { verifyChain } from '../../../grammar/visit/verify-chain.ts';
import { LOG_CONTRACT } from './log-contract.ts';

/** What the test asks of a page; everything runs on the browser's own database, locks and channels. */
const stream = { company: 'local', visit: 'v-page', device: 'page', epoch: 1 };
const openPageLog = () => openIndexedDbLog(new RecordDatabase(), stream);

/** The browser severs the connection under the next transaction, as a phone does to a page in the background. */
function severNextTransaction(how: 'before' | 'during'): void {
  const real = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...parts: Parameters<typeof real>) {
    IDBDatabase.prototype.transaction = real;
    if (how === 'before') {
      this.close();
      return real.apply(this, parts);
    }
    const transaction = real.apply(this, parts);
    queueMicrotask(() => transaction.abort());
    return transaction;
  };
}

const page = {
  empty: () =>
    new Promise((resolve) => {
      indexedDB.deleteDatabase('readback').onsuccess = resolve;
    }),

  contractNames: () => LOG_CONTRACT.map(({ name }) => name),

  async runContract(name: string): Promise<string> {
    const database = new RecordDatabase('contract');
    const found = LOG_CONTRACT.find((each) => each.name === name);
    try {
      await found?.run((id, follows) => openIndexedDbLog(database, id, follows), sha256);
      return found === undefined ? 'no such case' : 'held';
    } catch (error) {
      return String(error);
    } finally {
      await database.close();
    }
  },

  async append(bodies: readonly string[]): Promise<number> {
    const log = await openPageLog();
    await log.append(bodies);
    return log.head().seq;
  },

  /** Appends once no earlier crash can harm what is written. */
  async appendSettled(bodies: readonly string[]): Promise<number> {
    const database = new RecordDatabase();
    await database.settled();
    const log = await openIndexedDbLog(database, stream);
    await log.append(bodies);
    return log.head().seq;
  },

  /** Appends one event after another for ever, telling each number once it is said to be kept. */
  async appendWithoutEnd(tell: (seq: number) => void): Promise<void> {
    const log = await openPageLog();
    for (;;) {
      const [entry] = await log.append([`{"at":${log.head().seq}}`]);
      tell(entry?.seq ?? 0);
    }
  },

  async check(): Promise<{ intact: boolean; count: number }> {
    const entries = await (await openPageLog()).read(1);
    return { intact: (await verifyChain(stream, entries, sha256)).intact, count: entries.length };
  },

  async appendOverSevered(how: 'before' | 'during'): Promise<number> {
    const log = await openPageLog();
    await log.append(['{"before":true}']);
    severNextTransaction(how);
    await log.append(['{"after":true}']);
    severNextTransaction('before');
    return (await log.read(1)).length;
  },

  /** Fills the store; the code and sentence of the refusal, and how many events were kept before and after it. */
  async fill(body: string): Promise<{ code: string; message: string; before: number; after: number }> {
    const log = await openPageLog();
    for (;;) {
      const before = log.head().seq;
      try {
        await log.append([body]);
      } catch (error) {
        const { code, message } = error as RecordError;
        return { code, message, before, after: (await log.refresh()).seq };
      }
    }
  },

  async twoViewsOfOneStream(): Promise<{ code: string; kept: readonly string[] }> {
    const [one, other] = [await openPageLog(), await openPageLog()];
    await one.append(['one']);
    const code = await other.append(['other']).then(
      () => 'taken',
      (error: RecordError) => error.code,
    );
    await other.refresh();
    await other.append(['after looking']);
    return { code, kept: (await one.read(1)).map((entry) => entry.body) };
  },

  async newestEpochs(): Promise<(number | undefined)[]> {
    const store = browserLogStore(new RecordDatabase('epochs'));
    const found = [await store.newestEpoch(stream)];
    for (const epoch of [1, 3, 2]) {
      await store.open({ ...stream, epoch });
      found.push(await store.newestEpoch(stream));
    }
    found.push(await store.newestEpoch({ ...stream, device: 'other' }));
    return found;
  },

  async openNewer(): Promise<string> {
    const database = new RecordDatabase('newer');
    await openIndexedDbLog(database, stream);
    await new Promise((resolve, reject) => {
      const request = indexedDB.open('newer', 99);
      request.onsuccess = resolve;
      request.onerror = reject;
    });
    return openIndexedDbLog(database, stream).then(
      () => 'opened',
      (error: RecordError) => error.code,
    );
  },

  parts: [] as string[],
  release: (): void => undefined,
  claim(visit: string): void {
    const { release } = claimWriter(visit, {
      writing: () => page.parts.push('writing'),
      waiting: () => page.parts.push('waiting'),
    });
    page.release = release;
  },

  /** Follows the record as another tab writes it. */
  seen: [] as string[],
  async follow(): Promise<void> {
    const log = await openPageLog();
    openTabNews(stream.visit, async () => {
      const before = log.head().seq;
      await log.refresh();
      for (const { body } of await log.read(before + 1)) page.seen.push(body);
    });
  },
  async appendAndTell(bodies: readonly string[]): Promise<void> {
    const log = await openPageLog();
    const news = openTabNews(stream.visit, () => undefined);
    await log.append(bodies);
    news.tellGrown();
    // The message goes out before the channel closes: both are queued in order.
    news.close();
  },
};

export type LogPage = typeof page;
Object.assign(globalThis, { page });
