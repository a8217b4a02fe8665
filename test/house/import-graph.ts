import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const TOP = fileURLToPath(new URL('../..', import.meta.url));

export interface ImportLine {
  readonly from: string;
  readonly to: string;
}

/** Every source file of a folder, as paths from the top level. */
export function sourceFiles(folder: string): readonly string[] {
  return readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(TOP, join(entry.parentPath, entry.name)));
}

/** Every import between our own files (both ends as paths from the top level) and of packages (bare name). */
export function importsOf(file: string): readonly ImportLine[] {
  const text = readFileSync(join(TOP, file), 'utf8');
  const specifiers = [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => match[1] ?? '');
  return specifiers.map((specifier) => ({
    from: file,
    to: specifier.startsWith('.') ? relative(TOP, resolve(TOP, dirname(file), specifier)) : specifier,
  }));
}
