import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder, whether this runs as it is written or as it was built. */
export const PROJECT_ROOT = rootAbove(dirname(fileURLToPath(import.meta.url)));

function rootAbove(folder: string): string {
  if (existsSync(join(folder, 'package-lock.json'))) return folder;
  if (dirname(folder) === folder) throw new Error('no package-lock.json above this file');
  return rootAbove(dirname(folder));
}
