import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The server program as users run it. A child process runs JavaScript, so it is built first where it is out of date. */
export function buildServer(): string {
  return buildRoom('server', 'main.js');
}

/** A file of a room as JavaScript, for a process that is not this one. */
export function buildRoom(room: string, file: string): string {
  execFileSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', room], {
    cwd: root,
    stdio: 'inherit',
  });
  return join(root, '.build', room, file);
}

/** A folder of its own for one test file; `remove` takes it away again. */
export function scratchFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'readback-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
