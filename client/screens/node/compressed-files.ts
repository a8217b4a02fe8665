import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

const WORTH_IT = /\.(js|css|html|wasm|svg|webmanifest|txt)$/;

/** Puts NAME.br and NAME.gz beside what compresses well; the server sends whichever the browser takes. */
export function compressedFiles(): Plugin {
  return {
    name: 'readback-compressed-files',
    apply: 'build',
    writeBundle({ dir = '' }, bundle) {
      for (const name of Object.keys(bundle).filter((file) => WORTH_IT.test(file))) {
        const source = readFileSync(join(dir, name));
        writeFileSync(join(dir, `${name}.br`), brotliCompressSync(source));
        writeFileSync(join(dir, `${name}.gz`), gzipSync(source, { level: 9 }));
      }
    },
  };
}
