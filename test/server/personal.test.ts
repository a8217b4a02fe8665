import { spawnSync } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { attachmentText } from '../../grammar/visit/device-texts.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { NOT_READABLE, sealBody } from '../../grammar/visit/personal.ts';
import { openFolder } from '../../server/heads/open-folder.ts';
import { verifyFolder } from '../../server/heads/verify-all.ts';
import { openSqlitePeopleStore, PEOPLE_FILE } from '../../server/people/sqlite-people-store.ts';
import { openSqlitePersonalStore, PERSONAL_FILE } from '../../server/personal/sqlite-personal-store.ts';
import { INDEX_FILE, openSqliteVisitIndex } from '../../server/store/sqlite-visit-index.ts';
import { verifierOf } from '../../server/sync/receipt-signer.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { type DeviceCipher, deviceCipher } from './device-cipher.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

/** Two visits of the library's customer, one of another's; each with a sound beside its first words. */
const bodies = readFileSync(new URL('../../fixtures/visits/library/events.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const SITE = JSON.parse(bodies[0] as string).input.site as string;
const DAY = 86_400_000;
const scratch = scratchFolder();
const folder = join(scratch.path, 'data');
let program: string;
let now = Date.UTC(2026, 6, 14);
let server: RunningApp;
let letGo: () => void;

async function start(retention?: { soundDays?: number; personalDays?: number }): Promise<void> {
  const opened = await openFolder(folder, { acceptLoss: false });
  letGo = opened.letGo;
  server = await runApp({
    store: opened.store,
    signer: opened.signer,
    keeper: opened.keeper,
    peopleStore: await openSqlitePeopleStore(join(folder, PEOPLE_FILE)),
    personalStore: await openSqlitePersonalStore(join(folder, PERSONAL_FILE)),
    index: await openSqliteVisitIndex(join(folder, INDEX_FILE)),
    clock: () => now,
    ...(retention === undefined ? {} : { retention }),
  });
}
async function stop(): Promise<void> {
  await server.stop();
  letGo();
}

const origin = () => ({ origin: server.url });
const put = (path: string, body: Uint8Array<ArrayBuffer>) =>
  fetch(`${server.url}${path}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream', ...origin() },
    body,
  });
const bytesOf = (buffer: Buffer) => new Uint8Array(buffer);
const get = (path: string) => fetch(`${server.url}${path}`);
const errorOf = async (response: Response) => ((await response.json()) as { error: string }).error;

interface Written {
  readonly cipher: DeviceCipher;
  readonly sound: Buffer;
  readonly sha256: string;
}

/** A visit as a device writes and sends it: its key first, sealed events, then the sound that one of them names. */
async function write(visit: string, site: string): Promise<Written> {
  const cipher = deviceCipher();
  const sound = randomBytes(300_000);
  const { sealed, sha256 } = cipher.sealFile(sound);
  const plain = bodies.map((body) => body.replaceAll(SITE, site));
  const [first, ...rest] = plain as [string, ...string[]];
  const stream = streamOf(visit);
  const named = JSON.parse(rest.find((body) => body.includes('heard.utterance')) as string);
  named.input.utterance.sound = { sha256, ms: 9_000, sealed: true };
  const chain = await chainFor(
    stream,
    await Promise.all([first, JSON.stringify(named), ...rest].map((body) => sealBody(body, cipher))),
  );
  expect((await put(`/api/visits/${visit}/devices/phone/key`, bytesOf(cipher.key))).status).toBe(204);
  const client = await RawClient.open(server.url);
  await client.hello(stream);
  for (let acknowledged = 0; acknowledged < chain.length; ) {
    for (const entry of chain.slice(acknowledged, acknowledged + 64)) client.say({ kind: 'append', ...entry });
    const until = Math.min(acknowledged + 64, chain.length);
    while (acknowledged < until) {
      const message = await client.hear();
      if (message.kind === 'ack') acknowledged = message.seq;
    }
  }
  client.socket.close();
  await send(visit, sealed, sha256);
  return { cipher, sound, sha256 };
}

const address = (visit: string, sha256: string, at: number, of: number) =>
  `/api/visits/${visit}/devices/phone/attachments/${sha256}?at=${at}&of=${of}&kind=sound&media=audio%2Fwav`;

/** In pieces of 100 kB, the first of them twice, as after a lost answer. */
async function send(visit: string, sealed: Buffer, sha256: string): Promise<void> {
  const piece = (at: number) => bytesOf(sealed.subarray(at, at + 100_000));
  const answers = [];
  for (const at of [0, 0, 100_000, 200_000, 300_000]) {
    const response = await put(address(visit, sha256, at, sealed.length), piece(at));
    expect(response.status).toBe(200);
    answers.push((await response.json()) as { held: number; receipt?: { time: number; signature: string } });
  }
  expect(answers.map(({ held }) => held)).toEqual([100_000, 100_000, 200_000, 300_000, sealed.length]);
  expect(answers.map(({ receipt }) => receipt === undefined)).toEqual([true, true, true, true, false]);
  const { receipt } = answers.at(-1) as { receipt: { time: number; signature: string } };
  const { receiptKey } = (await (await get('/api/health')).json()) as { receiptKey: string };
  const of = { company: 'local', visit, device: 'phone', sha256, bytes: sealed.length, time: receipt.time };
  expect(verifierOf(receiptKey).verifies(attachmentText(of), receipt.signature)).toBe(true);
  expect(verifierOf(receiptKey).verifies(attachmentText({ ...of, bytes: 1 }), receipt.signature)).toBe(false);
}

/** Read from a copy that another program made: a process that closes a file of its own database loses its locks on it. */
function filesOf(data: string): readonly Buffer[] {
  copies += 1;
  const copy = join(scratch.path, `copy-${copies}`);
  expect(spawnSync('cp', ['-r', data, copy]).status).toBe(0);
  return readdirSync(copy).map((name) => readFileSync(join(copy, name)));
}
let copies = 0;

async function trail(): Promise<readonly string[]> {
  const { lines } = (await (await get('/api/audit?limit=1000')).json()) as {
    lines: readonly { deed: string; detail: string }[];
  };
  return lines.map(({ deed, detail }) => `${deed}: ${detail}`);
}

function run(tool: string, ...args: readonly string[]) {
  const path = program.replace('main.js', `tools/${tool}.js`);
  const { status, stdout, stderr } = spawnSync(process.execPath, [path, ...args], {
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, stdout, stderr };
}

const written = new Map<string, Written>();
beforeAll(async () => {
  program = buildServer();
  mkdirSync(folder);
  await start();
  written.set('one', await write('one', SITE));
  written.set('two', await write('two', SITE));
  written.set('else', await write('else', '9 Other Street'));
}, 120_000);
afterAll(async () => {
  await stop();
  scratch.remove();
});

describe('what is personal of a visit', () => {
  test('lies on the disk sealed: neither the site, nor a word that was heard, nor the sound is found there', async () => {
    const files = filesOf(folder);
    const { sound } = written.get('one') as Written;
    for (const mark of [SITE, '9 Other Street', 'two thirty eight', sound.subarray(1_000, 1_032)]) {
      for (const file of files) expect(file.includes(mark)).toBe(false);
    }
    // What tells of the unit alone is there in the open.
    expect(files.some((file) => file.includes('reading.logged'))).toBe(true);
  });

  test('is read by whoever may read the visit', async () => {
    const record = (await (await get('/api/visits/one/record.json')).json()) as { site: string };
    expect(record.site).toBe(SITE);
    const { keys } = (await (await get('/api/visits/one/keys')).json()) as { keys: readonly { key: string }[] };
    expect(keys.map(({ key }) => key)).toEqual([written.get('one')?.cipher.key.toString('base64url')]);
  });

  test('a sound is heard as it was, and that is put on the trail', async () => {
    const { sound, sha256 } = written.get('one') as Written;
    const answer = await get(`/api/visits/one/attachments/${sha256}`);
    expect(answer.headers.get('content-type')).toBe('audio/wav');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(Buffer.from(await answer.arrayBuffer()).equals(sound)).toBe(true);
    expect(await trail()).toContain(`sound opened: one ${sha256.slice(0, 16)}`);
    expect(await errorOf(await get(`/api/visits/one/attachments/${'0'.repeat(64)}`))).toBe('attachment-unknown');
  });

  test('another key for the same part is refused, and one that is none', async () => {
    const path = '/api/visits/one/devices/phone/key';
    expect(await errorOf(await put(path, bytesOf(randomBytes(32))))).toBe('key-differs');
    expect(await errorOf(await put(path, bytesOf(randomBytes(31))))).toBe('request-wrong');
  });

  test('a sound whose bytes are not what its hash says has no receipt, and is taken when it comes right', async () => {
    const good = bytesOf(randomBytes(5_000));
    const sha256 = createHash('sha256').update(good).digest('hex');
    const bad = good.slice();
    bad[4_000] = (bad[4_000] as number) ^ 1;
    const path = address('one', sha256, 0, 5_000);
    expect(await errorOf(await put(path, bad))).toBe('attachment-wrong');
    expect(await errorOf(await put(address('one', sha256, 0, 4_999), good))).toBe('attachment-wrong');
    expect((await (await put(path, new Uint8Array(0))).json()) as object).toEqual({ held: 0 });
    expect((await (await put(path, good)).json()) as object).toMatchObject({ held: 5_000, receipt: { time: now } });
    // Sealed by no key of this visit: it is not opened.
    expect(await errorOf(await get(`/api/visits/one/attachments/${sha256}`))).toBe('attachment-wrong');
  });

  test('is not larger than it may be, nor any other kind of file', async () => {
    const sha256 = 'a'.repeat(64);
    const one = bytesOf(randomBytes(1));
    expect((await put(address('one', sha256, 0, 20_000_001), one)).status).toBe(400);
    expect((await put(address('one', sha256, 0, 5).replace('audio%2Fwav', 'text%2Fhtml'), one)).status).toBe(400);
    expect((await put(address('one', sha256, 0, 400_000), bytesOf(randomBytes(300_001)))).status).toBe(413);
  });
});

describe('all of one customer', () => {
  test('is written out in the open, and nothing of others', () => {
    const to = join(scratch.path, 'customer');
    const { status, stdout } = run(
      'export-customer',
      '--data',
      folder,
      '--site',
      `  ${SITE.toUpperCase()} `,
      '--to',
      to,
    );
    expect([status, stdout]).toEqual([0, `2 visits and 2 files in ${to}\n`]);
    expect(readdirSync(to).toSorted()).toEqual(['one', 'two']);
    for (const visit of ['one', 'two']) {
      const { sound, sha256 } = written.get(visit) as Written;
      expect(readFileSync(join(to, visit, `${sha256}.wav`)).equals(sound)).toBe(true);
      expect(JSON.parse(readFileSync(join(to, visit, 'record.json'), 'utf8')).site).toBe(SITE);
      const events = readFileSync(join(to, visit, 'events.jsonl'), 'utf8');
      expect(events.trim().split('\n')).toHaveLength(bodies.length + 1);
      expect(events).toContain(SITE);
      expect(events).not.toContain('sealed1:');
    }
    expect(run('export-customer', '--data', folder, '--site', SITE, '--to', to)).toMatchObject({ status: 2 });
  });

  test('a site that is not known is told, and the trail tells of the export', async () => {
    const to = join(scratch.path, 'nobody');
    const { status, stderr } = run('export-customer', '--data', folder, '--site', 'nowhere', '--to', to);
    expect([status, stderr]).toEqual([2, expect.stringContaining('No visit at the site "nowhere"')]);
    expect(await trail()).toContain('customer exported: two one');
  });

  test('what stands in place of erased names is nobody’s name, and neither is none', () => {
    const to = join(scratch.path, 'erased');
    const asked = (site: string) => run('export-customer', '--data', folder, '--site', site, '--to', to);
    for (const site of [NOT_READABLE, ` ${NOT_READABLE.toUpperCase()} `]) {
      expect(asked(site)).toMatchObject({ status: 2, stderr: expect.stringContaining('is no customer') });
    }
    expect(asked(' ')).toMatchObject({ status: 2, stderr: expect.stringContaining('Give --site and --to') });
    expect(existsSync(to)).toBe(false);
  });
});

/** The visits that are found by the name of the site. */
async function found(): Promise<readonly string[]> {
  const { visits } = (await (await get(`/api/list?words=${encodeURIComponent(SITE)}`)).json()) as {
    visits: readonly { visit: string; site: string }[];
  };
  return visits
    .filter(({ site }) => site === SITE)
    .map(({ visit }) => visit)
    .toSorted();
}

describe('erasing', () => {
  test('by a keeper: texts and sound are gone, on every way; readings stay, and the record is what was written', async () => {
    const before = (await (await get('/api/visits/one/events')).json()) as object;
    expect(await found()).toEqual(['one', 'two']);
    const response = await fetch(`${server.url}/api/visits/one/erase`, { method: 'POST', headers: origin() });
    expect(await response.json()).toEqual({ keys: 1, files: 2, open: 0, left: [] });
    expect(await (await get('/api/visits/one/events')).json()).toEqual(before);
    const record = (await (await get('/api/visits/one/record.json')).json()) as {
      site: string;
      readings: readonly object[];
    };
    expect(record.site).toBe(NOT_READABLE);
    expect(record.readings.length).toBeGreaterThan(5);
    const { sha256, cipher } = written.get('one') as Written;
    expect(await errorOf(await get(`/api/visits/one/attachments/${sha256}`))).toBe('visit-erased');
    expect(await (await get('/api/visits/one/keys')).json()).toEqual({ keys: [{ device: 'phone', erasedAt: now }] });
    // The device is told so, and does not bring it back.
    const again = await put('/api/visits/one/devices/phone/key', bytesOf(cipher.key));
    expect([again.status, await errorOf(again)]).toEqual([410, 'visit-erased']);
    const { sealed } = cipher.sealFile(randomBytes(10));
    expect((await put(address('one', sha256, 0, 300_028), bytesOf(sealed))).status).toBe(410);
    expect((await (await get('/api/visits/one/check')).json()) as object).toMatchObject({ findings: [] });
    expect((await trail())[0]).toBe('visit erased: one');
    expect(await found()).toEqual(['two']);
  });

  test('by hand, beside the server; the folder is verified, and says what was erased', async () => {
    const args = ['--data', folder, '--visit', 'two', '--why', 'asked by the customer'];
    const { status, stdout } = run('erase', ...args);
    expect([status, stdout]).toEqual([0, 'Erased of two: 1 key and 1 file. Its events stand as they were written.\n']);
    expect(await trail()).toContain('visit erased: two asked by the customer');
    expect(await found()).toEqual([]);
    const listed = (await (await get('/api/list')).json()) as { visits: readonly { visit: string; site: string }[] };
    for (const visit of ['one', 'two'])
      expect(listed.visits).toContainEqual(expect.objectContaining({ visit, site: '' }));
    expect(run('erase', '--data', folder, '--visit', 'nothing')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('There is no visit "nothing"'),
    });
    const { findings, notes } = await verifyFolder(folder, []);
    expect(findings).toEqual([]);
    for (const visit of ['one', 'two']) {
      expect(notes.join('\n')).toMatch(new RegExp(`local, visit ${visit}: what is personal was erased on \\d{4}-`));
    }
    expect(notes.join('\n')).not.toContain('visit else');
    const told = run('verify', '--data', folder);
    expect([told.status, told.stdout]).toEqual([0, expect.stringContaining('visit two: what is personal was erased')]);
  });

  test('is found in no file of the folder: no key, no sound, no name of the site', async () => {
    await stop();
    const files = filesOf(folder);
    for (const visit of ['one', 'two']) {
      const { cipher, sound } = written.get(visit) as Written;
      for (const file of files) {
        expect(file.includes(cipher.key)).toBe(false);
        expect(file.includes(sound.subarray(0, 32))).toBe(false);
        expect(file.includes(SITE)).toBe(false);
        expect(file.includes(SITE.toLowerCase().replaceAll(/[^a-z0-9]/g, ''))).toBe(false);
      }
    }
    await start();
  });
});

describe('an erasing that nobody could be told of', () => {
  test('takes the words out of the lists at the next start all the same', async () => {
    await write('unheard', SITE);
    await expect.poll(found, { timeout: 10_000 }).toEqual(['unheard']);
    await stop();
    // As where the server was killed behind it, or another server did it: the keys are gone, the index was not told.
    const personal = await openSqlitePersonalStore(join(folder, PERSONAL_FILE));
    await personal.eraseVisit('local', 'unheard', ['phone'], now);
    await personal.close();
    await start();
    await expect.poll(found, { timeout: 10_000 }).toEqual([]);
  });
});

describe('what is kept for so many days', () => {
  const eventsOf = async (visit: string) =>
    ((await (await get(`/api/visits/${visit}/events`)).json()) as { events: readonly { body: string }[] }).events.map(
      ({ body }) => JSON.parse(body) as VisitEvent,
    );

  test('sounds go first, at a start; what was said stays to be read', async () => {
    now += 91 * DAY;
    await stop();
    await start({ soundDays: 92 });
    const { sha256 } = written.get('else') as Written;
    expect((await get(`/api/visits/else/attachments/${sha256}`)).status).toBe(200);
    await stop();
    await start({ soundDays: 90 });
    expect((await get(`/api/visits/else/attachments/${sha256}`)).status).toBe(410);
    expect(((await (await get('/api/visits/else/record.json')).json()) as { site: string }).site).toBe(
      '9 Other Street',
    );
    expect((await trail())[0]).toBe('sounds deleted: 1 of 1 visit, kept for 90 days');
  });

  test('then what is personal of the visit, by when it last grew; the record is verified all the same', async () => {
    const before = await eventsOf('else');
    await stop();
    await start({ soundDays: 90, personalDays: 91 });
    expect(((await (await get('/api/visits/else/record.json')).json()) as { site: string }).site).toBe(
      '9 Other Street',
    );
    now += DAY;
    await stop();
    await start({ soundDays: 90, personalDays: 91 });
    expect(((await (await get('/api/visits/else/record.json')).json()) as { site: string }).site).toBe(NOT_READABLE);
    expect((await trail())[0]).toBe('visit erased: else kept for 91 days');
    expect(await eventsOf('else')).toEqual(before);
    expect((await verifyFolder(folder, [])).findings).toEqual([]);
  });
});
