import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/** The files of the recogniser's model that it asks for. */
export const MODEL_FILES = [
  'dict.txt',
  'feat_params.json',
  'mdef',
  'means',
  'noisedict.txt',
  'phoneset.json',
  'sendump',
  'transition_matrices',
  'variances',
];

/**
 * Puts the model into the build as model/en-us/NAME.gz: half the bytes on the way, unpacked by the browser itself.
 * The licence that must go with it is beside it.
 */
export function modelFiles(folder: string): Plugin {
  return {
    name: 'readback-model-files',
    apply: 'build',
    generateBundle() {
      for (const name of MODEL_FILES) {
        const source = gzipSync(readFileSync(join(folder, name)), { level: 9 });
        this.emitFile({ type: 'asset', fileName: `model/en-us/${name}.gz`, source });
      }
      this.emitFile({
        type: 'asset',
        fileName: 'model/en-us/README.txt',
        source: readFileSync(join(folder, 'README.txt')),
      });
    },
  };
}

/** Puts the offline voice into the build as voice/flite.wasm.gz, with its licence beside it. */
export function voiceFiles(folder: string): Plugin {
  return {
    name: 'readback-voice-files',
    apply: 'build',
    generateBundle() {
      const source = gzipSync(readFileSync(join(folder, 'flite.wasm')), { level: 6 });
      this.emitFile({ type: 'asset', fileName: 'voice/flite.wasm.gz', source });
      this.emitFile({ type: 'asset', fileName: 'voice/COPYING.txt', source: readFileSync(join(folder, 'COPYING')) });
    },
  };
}
