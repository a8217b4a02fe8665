import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { TOP } from './import-graph.ts';
import type { PlantedRow } from './planted-rows.ts';

/** One error of the compiler. */
export interface CompileError {
  readonly file: string;
  readonly code: string;
  readonly text: string;
}

/** A copy of the tree that may be spoilt and compiled. */
export class CompileCopy {
  readonly #folder = mkdtempSync(join(tmpdir(), 'readback-copy-'));

  constructor(names: readonly string[]) {
    for (const name of [...names, 'tsconfig.json', 'package.json'])
      cpSync(join(TOP, name), join(this.#folder, name), { recursive: true });
    symlinkSync(join(TOP, 'node_modules'), join(this.#folder, 'node_modules'));
  }

  /** Puts a row in; the answer takes it out again. */
  plant({ file, before, row }: PlantedRow): () => void {
    const path = join(this.#folder, file);
    const text = readFileSync(path, 'utf8');
    const place = text.lastIndexOf(before);
    if (place < 0) throw new Error(`${file} holds no ${before}`);
    writeFileSync(path, text.slice(0, place) + row + text.slice(place));
    return () => writeFileSync(path, text);
  }

  /** Builds the rooms and whatever they stand on; every error, also behind the first room that fails. */
  build(...rooms: readonly string[]): readonly CompileError[] {
    const compiler = join(TOP, 'node_modules/typescript/bin/tsc');
    const built = spawnSync(process.execPath, [compiler, '-b', ...rooms], { cwd: this.#folder, encoding: 'utf8' });
    // What an error is explained by is set in below its line.
    return built.stdout.split(/\n(?=\S)/).flatMap((block) => {
      const [, file, code] = /^([^\s(]+)\(\d+,\d+\): error (TS\d+)/.exec(block) ?? [];
      return file === undefined || code === undefined ? [] : [{ file, code, text: block }];
    });
  }

  remove(): void {
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
