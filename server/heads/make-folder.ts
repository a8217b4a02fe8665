import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { ServerError } from '../errors.ts';

/**
 * Makes a folder and those above it, one after the other: asked to make all at once, Node never comes back where a file
 * system refuses new folders in a way of its own, as /proc does.
 *
 * @returns the topmost folder that was made; undefined where it was there
 * @throws {ServerError} data-unwritable.
 */
export function makeFolder(path: string): string | undefined {
  const missing: string[] = [];
  let at = resolve(path);
  for (; !existsSync(at); at = dirname(at)) missing.unshift(at);
  try {
    // Also where it is there: a file is no folder.
    if (missing.length === 0) mkdirSync(at, { recursive: true });
    for (const one of missing) mkdirSync(one);
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
  return missing[0];
}
