import { build, type Plugin } from 'vite';

/** By this name the service worker imports it. */
export const SEND_WORKER_FILE = 'send-worker.js';

/**
 * Builds the part of the service worker that sends records into one script of its own: a service worker that is made
 * at build can take in scripts, and no modules.
 */
export function sendWorkerFile(entry: string): Plugin {
  return {
    name: 'readback-send-worker',
    apply: 'build',
    async generateBundle() {
      const built = await build({
        configFile: false,
        logLevel: 'warn',
        build: { write: false, lib: { entry, formats: ['iife'], name: 'readbackSendWorker' } },
      });
      const [bundle] = Array.isArray(built) ? built : [built];
      const chunk = bundle !== undefined && 'output' in bundle ? bundle.output[0] : undefined;
      if (chunk === undefined) throw new Error(`${entry} was not built`);
      this.emitFile({ type: 'asset', fileName: SEND_WORKER_FILE, source: chunk.code });
    },
  };
}
