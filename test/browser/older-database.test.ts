import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { prepareEntries } from '../../client/record/visit-log.ts';
import { emptyHead, LOCAL_COMPANY, type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

const STREAM: StreamId = { company: LOCAL_COMPANY, visit: 'test-visit', device: 'page-older', epoch: 1 };

test('a record that the version before kept is there, goes on, and its database takes sounds', async () => {
  const bodies = readFileSync('fixtures/visits/library/events.jsonl', 'utf8').split('\n').slice(0, 12);
  const entries = await prepareEntries(await emptyHead(STREAM, sha256), bodies, sha256);
  // The first form of the database, as it was written down then: from a page of the same address that opens none.
  const page = await browser.page(`${server.url}/third-party-notices.txt`);
  await page.evaluate(
    async ({ stream, key, rows }) => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const asked = indexedDB.open('readback', 1);
        asked.onupgradeneeded = () => {
          asked.result.createObjectStore('streams', { keyPath: 'key' });
          asked.result.createObjectStore('events', { keyPath: ['key', 'seq'] });
          asked.result.createObjectStore('scratch');
        };
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = () => reject(asked.error);
      });
      const writing = database.transaction(['streams', 'events'], 'readwrite');
      writing.objectStore('streams').add({ key, stream, begunAt: 0 });
      for (const row of rows) writing.objectStore('events').add({ key, ...row });
      await new Promise((resolve) => {
        writing.oncomplete = resolve;
      });
      database.close();
    },
    { stream: { ...STREAM }, key: streamText(STREAM), rows: [...entries] },
  );
  await page.goto(server.url);
  await page.locator('main.visit').waitFor();
  expect(await page.locator('h1').textContent()).toContain('reading room');
  const stores = await page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const asked = indexedDB.open('readback');
      asked.onsuccess = () => resolve(asked.result);
    });
    const found = { version: database.version, names: [...database.objectStoreNames] };
    database.close();
    return found;
  });
  expect(stores).toEqual({ version: 2, names: ['events', 'scratch', 'sounds', 'streams'] });
});
