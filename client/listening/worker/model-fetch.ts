import { WIDEBAND_FEATURES } from '../recogniser/wideband-features.ts';
import { inModel, MODEL_FOLDERS, openModelFile } from './model-cache.ts';

/**
 * The `fetch` that the recogniser is given: its model comes from the cache, and its three decoders share what is
 * unpacked. All else goes to the network.
 */
export function modelFetch(network: typeof fetch): typeof fetch {
  const unpacked = new Map<string, Promise<ArrayBuffer>>();
  return async (input, init) => {
    const path = new URL(input instanceof Request ? input.url : input, self.location.href).pathname;
    if (!Object.values(MODEL_FOLDERS).some((folder) => path.startsWith(`${folder}/`))) return network(input, init);
    if (path === `${MODEL_FOLDERS.wideband}/feat_params.json`) return Response.json(WIDEBAND_FEATURES);
    // It also asks for files that some models have and this one has not.
    if (!inModel(path)) return new Response(null, { status: 404, statusText: 'Not Found' });
    const bytes = unpacked.get(path) ?? openModelFile(path, network);
    unpacked.set(path, bytes);
    return new Response((await bytes).slice(0));
  };
}
