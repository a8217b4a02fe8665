import { inModel, MODEL_FOLDER, openModelFile } from './model-cache.ts';

/**
 * The `fetch` that the recogniser is given: its model comes from the cache, and its three decoders share what is
 * unpacked. All else goes to the network.
 */
export function modelFetch(network: typeof fetch): typeof fetch {
  const unpacked = new Map<string, Promise<ArrayBuffer>>();
  return async (input, init) => {
    const name = modelFile(input);
    if (name === undefined) return network(input, init);
    // It also asks for files that some models have and this one has not.
    if (!inModel(name)) return new Response(null, { status: 404, statusText: 'Not Found' });
    const bytes = unpacked.get(name) ?? openModelFile(name, network);
    unpacked.set(name, bytes);
    return new Response((await bytes).slice(0));
  };
}

function modelFile(input: RequestInfo | URL): string | undefined {
  const path = new URL(input instanceof Request ? input.url : input, self.location.href).pathname;
  return path.startsWith(`${MODEL_FOLDER}/`) ? path.slice(MODEL_FOLDER.length + 1) : undefined;
}
