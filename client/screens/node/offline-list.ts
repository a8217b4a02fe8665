import { statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { MODEL_FILES } from './model-files.ts';

/** The name under which the pages serve it: what a start without the server needs, by address, in bytes. */
export const OFFLINE_LIST = 'offline-files.json';

/**
 * Writes the list once the pages are built, from what the service worker will keep and the models beside it.
 *
 * @param outDir where the pages are built
 */
export function offlineList(outDir: string) {
  return <E extends { readonly url: string; readonly size: number }>(entries: E[]) => {
    const pages = entries.map(({ url, size }) => [`/${url}`, size] as const);
    const sizeOf = (file: string): number => statSync(join(outDir, file)).size;
    const model = (folder: string, names: readonly string[]) =>
      names.map((name) => [`/${folder}/${name}.gz`, sizeOf(`${folder}/${name}.gz`)] as const);
    const list = {
      pages: Object.fromEntries(pages),
      bundled: Object.fromEntries(model('model/en-us', MODEL_FILES.bundled)),
      wideband: Object.fromEntries(model('model/wideband', MODEL_FILES.wideband)),
    };
    writeFileSync(join(outDir, OFFLINE_LIST), JSON.stringify(list));
    return { manifest: entries, warnings: [] };
  };
}
