import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { type ShippedPackage, shippedPackages } from './shipped-packages.ts';
import { WORKS_INSIDE, type WorkInside } from './works-inside.ts';

/** The name under which the pages serve it. */
export const NOTICES_FILE = 'third-party-notices.txt';

const HEADING = `Third-party notices of Readback

Readback is made with the works below, and hands them on: in its pages, in what a page fetches (the recogniser with
its models and dictionary, the noise filter, the voice, the wake word's program), or as what its server runs on. Each
is listed with its licence as its package says it, where its source is, and the texts of its licences. The list is
made from the lock file of the packages each time the pages are built.
`;

const LICENCE_FILE = /^(licen[cs]e|copying|notice)/i;
const RULE = '='.repeat(100);

/** Puts the notices into the build; kept on the device with the pages. */
export function noticesFile(root: string): Plugin {
  return {
    name: 'readback-third-party-notices',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: NOTICES_FILE, source: thirdPartyNotices(root) });
    },
  };
}

/**
 * The notices for all that the project in `root` ships, as plain text: a list, then one section a package. Throws where
 * a package has no licence text, so that none is shipped without.
 */
export function thirdPartyNotices(root: string): string {
  const packages = shippedPackages(root);
  const list = packages.map(({ name, version, licence }) => `${name} ${version}: ${licence}`).join('\n');
  return `${HEADING}\n${list}\n${packages.map((one) => section(one, root)).join('')}`;
}

function section(shipped: ShippedPackage, root: string): string {
  const { name, version, licence, source } = shipped;
  const texts = [...ownTexts(shipped), ...(WORKS_INSIDE[name] ?? []).map((work) => workText(work, shipped, root))];
  if (texts.length === 0)
    throw new Error(
      `${name} has no licence file: look its text up at ${source ?? 'its source'}, keep it, and list it in works-inside.ts`,
    );
  const head = [
    RULE,
    `${name} ${version}`,
    `Licence: ${licence}`,
    ...(source === undefined ? [] : [`Source: ${source}`]),
  ];
  return `\n${head.join('\n')}\n\n${texts.join('\n\n')}\n`;
}

/** The licence files of the package itself. */
function ownTexts({ folder }: ShippedPackage): readonly string[] {
  const files = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
  return files
    .filter(({ name }) => LICENCE_FILE.test(name))
    .map(({ name }) => name)
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8').trim());
}

function workText({ work, licence, source, text }: WorkInside, { folder }: ShippedPackage, root: string): string {
  const path = 'kept' in text ? join(root, 'client/screens/node/licences', text.kept) : join(folder, text.inPackage);
  return `In it: ${work}\nLicence: ${licence}\nSource: ${source}\n\n${readFileSync(path, 'utf8').trim()}`;
}
