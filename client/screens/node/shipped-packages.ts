import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A package of which something is handed on: in the pages, or run by the server. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  /** As the package says it, an SPDX expression. */
  readonly licence: string;
  /** Where its source is, as an address. */
  readonly source: string | undefined;
  /** Where it is unpacked. */
  readonly folder: string;
}

interface LockedPackage {
  readonly version?: string;
  readonly dev?: boolean;
  /** A part for one kind of machine, of a package that is listed itself, and speaks for it. */
  readonly optional?: boolean;
}

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly licenses?: readonly { readonly type: string }[];
  readonly repository?: string | { readonly url: string };
  readonly homepage?: string;
}

/** Of the packages that only build: these leave their code in the service worker. */
const BUILT_INTO_THE_PAGES = ['workbox-core', 'workbox-precaching', 'workbox-routing', 'workbox-strategies'];

/**
 * Every package that the lock file of the project in `root` lists for production, and those that the build leaves in
 * the pages, by name, each version once. Throws where one of them is not installed.
 */
export function shippedPackages(root: string): readonly ShippedPackage[] {
  const { packages } = readJson(join(root, 'package-lock.json')) as { packages: Record<string, LockedPackage> };
  const folders = Object.entries(packages)
    .filter(([folder, { dev = false, optional = false }]) => folder !== '' && !dev && !optional)
    .map(([folder]) => folder);
  const built = BUILT_INTO_THE_PAGES.map((name) => `node_modules/${name}`);
  const shipped = [...folders, ...built].map((folder) => shippedPackage(join(root, folder)));
  const once = new Map(shipped.map((one) => [`${one.name} ${one.version}`, one]));
  return [...once.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

function shippedPackage(folder: string): ShippedPackage {
  const manifest = readJson(join(folder, 'package.json')) as Manifest;
  const licence = manifest.license ?? manifest.licenses?.map(({ type }) => type).join(' OR ');
  if (!licence) throw new Error(`${manifest.name} does not say its licence`);
  return { name: manifest.name, version: manifest.version, licence, source: sourceOf(manifest), folder };
}

/** From the forms in which packages write it: an object, `git+https://…`, `git://…`, `owner/name`. */
function sourceOf({ repository, homepage }: Manifest): string | undefined {
  const written = typeof repository === 'string' ? repository : repository?.url;
  if (written === undefined) return homepage;
  const address = written
    .replace(/^git\+/, '')
    .replace(/^git:\/\//, 'https://')
    .replace(/^ssh:\/\/git@/, 'https://');
  const plain = address.replace(/^git@([^:]+):/, 'https://$1/').replace(/\.git$/, '');
  if (/^https?:/.test(plain)) return plain;
  return `https://github.com/${plain.replace(/^github:/, '')}`;
}

function readJson(path: string): unknown {
  return JSON.parse(readFileSync(path, 'utf8'));
}
