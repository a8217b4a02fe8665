import type { Page } from 'playwright-core';

/** A sound or photo as this browser keeps it beside the record. */
export interface FileHere {
  readonly sha256: string;
  readonly kind: string;
  readonly named: boolean;
  /** Whether its bytes are still here. */
  readonly here: boolean;
  readonly received: boolean;
}

/** All of them, the oldest first. */
export function filesOf(page: Page): Promise<readonly FileHere[]> {
  return page.evaluate(async () => {
    const names = (await indexedDB.databases()).map(({ name }) => name);
    if (!names.includes('readback-personal')) return [];
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const asked = indexedDB.open('readback-personal');
      asked.onsuccess = () => resolve(asked.result);
      asked.onerror = () => reject(asked.error);
    });
    // biome-ignore lint/suspicious/noExplicitAny: rows as the page wrote them.
    const rows = await new Promise<any[]>((resolve, reject) => {
      const asked = database.transaction('files').objectStore('files').getAll();
      asked.onsuccess = () => resolve(asked.result);
      asked.onerror = () => reject(asked.error);
    });
    database.close();
    return rows
      .sort((a, b) => a.keptAt - b.keptAt)
      .map(({ sha256, kind, named, file, receipt }) => ({
        sha256,
        kind,
        named,
        here: file !== undefined,
        received: receipt !== undefined,
      }));
  });
}

/** Waits until the server has given its receipt for each file that an event names. */
export async function handedIn(page: Page): Promise<readonly FileHere[]> {
  for (let tries = 0; tries < 100; tries += 1) {
    const files = await filesOf(page);
    if (files.length > 0 && files.every(({ named, here }) => named && !here)) return files;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`not handed in: ${JSON.stringify(await filesOf(page))}`);
}
