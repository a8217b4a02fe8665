/** Facts that the bundler puts in (see screens/bundle/vite.config.ts). */
declare const __MODEL_CACHE__: string;
declare const __MODEL_FILES__: readonly string[];

const CACHE_PREFIX = 'readback-model-';

/** Where the recogniser asks for its model; the files are there as NAME.gz. */
export const MODEL_FOLDER = '/model/en-us';

/**
 * The `fetch` that the recogniser is given. Its model is taken from a cache that outlives the page and needs no service
 * worker, else from the server once; the three decoders share what is unpacked. All else goes to the network.
 */
export function keepingFetch(network: typeof fetch): typeof fetch {
  const unpacked = new Map<string, Promise<ArrayBuffer>>();
  return async (input, init) => {
    const name = modelFile(input);
    if (name === undefined) return network(input, init);
    // It also asks for files that some models have and this one has not.
    if (!__MODEL_FILES__.includes(name)) return new Response(null, { status: 404, statusText: 'Not Found' });
    const bytes = unpacked.get(name) ?? openModelFile(name, network);
    unpacked.set(name, bytes);
    return new Response((await bytes).slice(0));
  };
}

function modelFile(input: RequestInfo | URL): string | undefined {
  const path = new URL(input instanceof Request ? input.url : input, self.location.href).pathname;
  return path.startsWith(`${MODEL_FOLDER}/`) ? path.slice(MODEL_FOLDER.length + 1) : undefined;
}

async function openModelFile(name: string, network: typeof fetch): Promise<ArrayBuffer> {
  const path = `${MODEL_FOLDER}/${name}.gz`;
  const response = (await kept(path)) ?? (await fetchAndKeep(path, network));
  if (response.body === null) throw new Error(`${path} is empty`);
  return new Response(response.body.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
}

/** Without a cache (a private window may refuse one) the model is fetched each time. */
async function kept(path: string): Promise<Response | undefined> {
  return (await openCache())?.match(path);
}

async function fetchAndKeep(path: string, network: typeof fetch): Promise<Response> {
  const response = await network(path).catch(() => undefined);
  if (response === undefined) throw new Error(`${path} cannot be fetched without the server`);
  if (!response.ok) throw new Error(`${path}: ${response.status} ${response.statusText}`);
  const cache = await openCache();
  // Where there is no room for it the visit goes on with what was fetched.
  await cache?.put(path, response.clone()).catch(() => undefined);
  return response;
}

async function openCache(): Promise<Cache | undefined> {
  return caches.open(__MODEL_CACHE__).catch(() => undefined);
}

/** Throws away the models of other versions. */
export async function forgetOlderModels(): Promise<void> {
  const names = await caches.keys().catch(() => []);
  const older = names.filter((name) => name.startsWith(CACHE_PREFIX) && name !== __MODEL_CACHE__);
  await Promise.all(older.map((name) => caches.delete(name)));
}
