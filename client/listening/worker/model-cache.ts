import type { ModelChoice, SpeechModel } from '../recogniser/speech-module.ts';

/** Facts that the bundler puts in (see screens/node/vite.config.ts). */
declare const __MODEL_CACHE__: string;
declare const __MODEL_FILES__: Readonly<Record<SpeechModel['id'], readonly string[]>>;

/** Where the recogniser asks for its models; the files are there as NAME.gz. */
export const MODEL_FOLDERS = { bundled: '/model/en-us', wideband: '/model/wideband' } as const;
const CACHE_PREFIX = 'readback-model-';

/** Whether one of the models has a file at this address. */
export function inModel(path: string): boolean {
  return [...filesOf('bundled'), ...filesOf('wideband')].includes(path);
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

/**
 * Fetches what is not here yet, so that a visit can be heard without the server; throws away models of other versions.
 * The 8 kHz one is fetched whole with either: it has the dictionary of both, and is what is left if the other fails.
 */
export async function fetchModelAhead(models: ModelChoice): Promise<void> {
  for (const file of [...filesOf('bundled'), ...(models === 'bundled' ? [] : filesOf('wideband'))]) {
    const path = `${file}.gz`;
    if ((await kept(path)) === undefined) await fetchAndKeep(path, fetch);
  }
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(CACHE_PREFIX) && name !== __MODEL_CACHE__);
  await Promise.all(older.map((name) => caches.delete(name)));
}

const filesOf = (model: SpeechModel['id']): readonly string[] =>
  __MODEL_FILES__[model].map((name) => `${MODEL_FOLDERS[model]}/${name}`);

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
