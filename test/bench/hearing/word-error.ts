import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Figure } from '../figures.ts';

/** What was said, and the best words that were heard; empty where nothing was. */
export interface SaidAndHeard {
  readonly said: string;
  readonly heard: string;
}

/** Words wrong, missing or too many for each word said, by NIST's sclite (Debian's sctk), where it is installed. */
export function wordError(name: string, pairs: readonly SaidAndHeard[]): Figure[] {
  const folder = mkdtempSync(join(tmpdir(), 'readback-words-'));
  try {
    const write = (kind: 'said' | 'heard'): string => {
      const file = join(folder, `${kind}.trn`);
      writeFileSync(file, pairs.map((pair, index) => `${pair[kind]} (one-${index})\n`).join(''));
      return file;
    };
    const args = [
      'sclite',
      '-r',
      write('said'),
      'trn',
      '-h',
      write('heard'),
      'trn',
      '-i',
      'swb',
      '-o',
      'rsum',
      'stdout',
    ];
    const { stdout } = spawnSync('sctk', args, { encoding: 'utf8' });
    // | Sum | sentences words | right substituted deleted inserted errors wrong-sentences |
    const sum = /\|\s*Sum\s*\|([\d\s|]+)\|/
      .exec(stdout ?? '')?.[1]
      ?.match(/\d+/g)
      ?.map(Number);
    const [words, errors] = [sum?.[1], sum?.[6]];
    if (words === undefined || errors === undefined) return [];
    return [
      { name: `${name}: word error (sclite)`, value: (100 * errors) / words, unit: '%', against: `${errors}/${words}` },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
