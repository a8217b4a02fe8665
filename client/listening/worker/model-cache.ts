/** Facts that the bundler puts in (see screens/node/vite.config.ts). */
declare const __MODEL_CACHE__: string;
declare const __MODEL_FILES__: readonly string[];

/** Where the recogniser asks for its models; the files are there as NAME.gz. */
export const MODEL_FOLDERS = { bundled: '/model/en-us', wideband: '/model/wideband' } as const;
const CACHE_PREFIX = 'readback-model-';

/** The wideband model's own files: it has no dictionary and no list of phones, and its features are in the program. */
const WIDEBAND_FILES = ['mdef', 'means', 'noisedict.txt', 'sendump', 'transition_matrices', 'variances'];

/** Whether one of the models has a file at this address. */
export function inModel(path: string): boolean {
  const has = (folder: string, files: readonly string[]) =>
    path.startsWith(`${folder}/`) && files.includes(path.slice(folder.length + 1));
  return has(MODEL_FOLDERS.bundled, __MODEL_FILES__) || has(MODEL_FOLDERS.wideband, WIDEBAND_FILES);
}

/**
 * One file of a model by its address, unpacked: from a cache that outlives the page and needs no service worker, else from the server.
 * @throws {Error} which names the file and says what the server answered.
 */
export async function openModelFile(file: string, network: typeof fetch): Promise<ArrayBuffer> {
  const path = `${file}.gz`;
  const response = (await kept(path)) ?? (await fetchAndKeep(path, network));
  if (response.body === null) throw new Error(`${path} is empty`);
  return new Response(response.body.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
}

/** Fetches what is not here yet, so that a visit can be heard without the server; throws away models of other versions. */
export async function fetchModelAhead(): Promise<void> {
  for (const name of __MODEL_FILES__) {
    const path = `${MODEL_FOLDERS.bundled}/${name}.gz`;
    if ((await kept(path)) === undefined) await fetchAndKeep(path, fetch);
  }
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(CACHE_PREFIX) && name !== __MODEL_CACHE__);
  await Promise.all(older.map((name) => caches.delete(name)));
}

async function kept(path: string): Promise<Response | undefined> {
  return (await openCache())?.match(path);
}

/** One at a time for each file, whoever asks: page and worker would else fetch it twice. */
function fetchAndKeep(path: string, network: typeof fetch): Promise<Response> {
  return navigator.locks.request(path, async () => {
    const meanwhile = await kept(path);
    if (meanwhile !== undefined) return meanwhile;
    const response = await network(path).catch(() => undefined);
    if (response === undefined) throw new Error(`${path}: the server cannot be reached`);
    if (!response.ok) throw new Error(`${path}: ${response.status} ${response.statusText}`);
    const cache = await openCache();
    // Where there is no room for it the visit goes on with what was fetched.
    await cache?.put(path, response.clone()).catch(() => undefined);
    return response;
  });
}

/** A private window may refuse one: the model is then fetched each time. */
async function openCache(): Promise<Cache | undefined> {
  return caches.open(__MODEL_CACHE__).catch(() => undefined);
}
