import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { PROJECT_ROOT } from './project-root.ts';

const ASSETS = join(PROJECT_ROOT, '.build/web/assets');

/** The built script of a name, with all that it imports before it runs; what it asks for later is not among them. */
export function scriptsOf(...names: readonly string[]): ReadonlySet<string> {
  const scripts = readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
  const found = new Set<string>();
  const take = (script: string) => {
    if (found.has(script)) return;
    found.add(script);
    const source = readFileSync(join(ASSETS, script), 'utf8');
    for (const [, imported = ''] of source.matchAll(/(?:from|import)\s*["']\.\/([\w.-]+\.js)["']/g)) take(imported);
  };
  for (const name of names) {
    const script = scripts.find((one) => one.startsWith(`${name}-`));
    if (script === undefined) throw new Error(`no script ${name} was built: run "npm run build:web" first`);
    take(script);
  }
  return found;
}

/** Kilobytes of built files, as they go over the wire compressed by gzip. */
export function zippedKilobytes(files: Iterable<string>): number {
  return (
    [...files].reduce((sum, name) => sum + gzipSync(readFileSync(join(ASSETS, name)), { level: 9 }).length, 0) / 1000
  );
}
