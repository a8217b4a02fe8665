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

/**
 * The groups of files that import one another around a circle, `import type` included (the linter sees only imports
 * that are left when the program runs). Each group once, its files in order; a tree without circles has none.
 */
export function importCircles(lines: readonly ImportLine[]): readonly (readonly string[])[] {
  const graph = new Map<string, string[]>();
  for (const { from, to } of lines) graph.set(from, [...(graph.get(from) ?? []), to]);
  const reach = new Map<string, ReadonlySet<string>>();
  const reachOf = (file: string): ReadonlySet<string> => {
    const known = reach.get(file);
    if (known !== undefined) return known;
    const seen = new Set<string>();
    const open = [...(graph.get(file) ?? [])];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(...(graph.get(next) ?? []));
    }
    reach.set(file, seen);
    return seen;
  };
  const onCircle = [...graph.keys()].filter((file) => reachOf(file).has(file));
  const groups = onCircle.map((file) =>
    onCircle.filter((other) => reachOf(file).has(other) && reachOf(other).has(file)),
  );
  return [...new Set(groups.map((group) => group.sort().join('\n')))].map((group) => group.split('\n'));
}
