import { createHash, randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sealBody } from '../../grammar/visit/personal.ts';
import { deviceCipher } from './device-cipher.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';
import { ON_POSTGRES } from './stores-of-run.ts';
import { LIBRARY, LIBRARY_SITE, writeBodies } from './write-visit.ts';

/** The first words of a real visit: who and where, what was heard, what it was taken for. */
const BODIES = LIBRARY.slice(0, 40);
let server: RunningApp;
beforeAll(async () => {
  server = await runApp();
});
afterAll(() => server.stop());

const write = (visit: string, bodies: readonly string[], device = 'phone', url = server.url) =>
  writeBodies(url, visit, bodies, device);

interface Answer {
  readonly status: number;
  readonly error?: string;
  readonly sentence?: string;
  readonly held?: number;
  readonly receipt?: object;
  readonly keys?: number;
  readonly files?: number;
  readonly open?: number;
}
async function ask(method: string, path: string, body?: Buffer, url = server.url): Promise<Answer> {
  const response = await fetch(`${url}${path}`, {
    method,
    headers: { origin: url, ...(body === undefined ? {} : { 'content-type': 'application/octet-stream' }) },
    ...(body === undefined ? {} : { body: new Uint8Array(body) }),
  });
  const answered = response.status === 204 ? {} : ((await response.json()) as object);
  return { status: response.status, ...answered };
}
const key = (visit: string, bytes: Buffer, device = 'phone', url = server.url) =>
  ask('PUT', `/api/visits/${visit}/devices/${device}/key`, bytes, url);
const hashOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

interface Sent {
  readonly visit: string;
  readonly bytes: Buffer;
  readonly device?: string;
  readonly sha256?: string;
  readonly at?: number;
  readonly of?: number;
  readonly url?: string;
}
function file({ visit, bytes, device = 'phone', sha256 = hashOf(bytes), at = 0, of = bytes.length, url }: Sent) {
  const query = `at=${at}&of=${of}&kind=sound&media=audio%2Fwav`;
  return ask('PUT', `/api/visits/${visit}/devices/${device}/attachments/${sha256}?${query}`, bytes, url);
}
const attachments = async (visit: string) =>
  (
    (await (await fetch(`${server.url}/api/visits/${visit}/attachments`)).json()) as {
      readonly attachments: readonly {
        readonly device: string;
        readonly sha256: string;
        readonly receivedAt?: number;
      }[];
    }
  ).attachments;

describe('a sound or photo', () => {
  test('is taken once its device writes in the visit, and not before: no visit, no file', async () => {
    const bytes = randomBytes(900);
    expect((await key('early', randomBytes(32))).status).toBe(204);
    expect(await file({ visit: 'early', bytes })).toMatchObject({ status: 404, error: 'visit-unknown' });
    expect(await file({ visit: 'early', bytes: Buffer.alloc(0), sha256: hashOf(bytes), of: 900 })).toMatchObject({
      status: 404,
    });
    // Another device's words are not its own.
    await write('early', BODIES.slice(0, 1), 'tablet');
    expect(await file({ visit: 'early', bytes })).toMatchObject({ status: 404, error: 'visit-unknown' });
    expect(await attachments('early')).toEqual([]);
    await write('early', BODIES.slice(0, 1));
    expect(await file({ visit: 'early', bytes })).toMatchObject({ status: 200, held: 900, receipt: {} });
  });

  test('is not taken of a visit that was erased, also one of which nothing was said before', async () => {
    await write('gone', BODIES.slice(0, 1));
    const begun = randomBytes(400);
    expect(await file({ visit: 'gone', bytes: begun.subarray(0, 100), sha256: hashOf(begun), of: 400 })).toMatchObject({
      held: 100,
    });
    expect(await ask('POST', '/api/visits/gone/erase')).toMatchObject({ status: 200, files: 1 });
    for (const bytes of [begun, randomBytes(400)]) {
      expect(await file({ visit: 'gone', bytes })).toMatchObject({ status: 410, error: 'visit-erased' });
    }
    // Nor of a device that comes to it afterwards.
    await write('gone', BODIES.slice(0, 1), 'tablet');
    expect(await file({ visit: 'gone', bytes: randomBytes(9), device: 'tablet' })).toMatchObject({ status: 410 });
    expect(await attachments('gone')).toHaveLength(1);
  });

  test('is not held up by another device that begins the same hash first; what is opened is the one that is whole', async () => {
    const cipher = deviceCipher();
    const sound = randomBytes(5_000);
    const { sealed, sha256 } = cipher.sealFile(sound);
    for (const device of ['phone', 'tablet']) await write('shared', BODIES.slice(0, 1), device);
    expect((await key('shared', cipher.key)).status).toBe(204);
    expect((await key('shared', randomBytes(32), 'tablet')).status).toBe(204);
    // The other one takes the name, for other bytes and another length.
    const junk = { visit: 'shared', device: 'tablet', sha256 };
    expect(await file({ ...junk, bytes: randomBytes(10), of: 20 })).toMatchObject({ status: 200, held: 10 });
    const sent = await file({ visit: 'shared', bytes: sealed });
    expect(sent).toMatchObject({ status: 200, held: sealed.length, receipt: {} });
    const open = () => fetch(`${server.url}/api/visits/shared/attachments/${sha256}`);
    expect(Buffer.from(await (await open()).arrayBuffer()).equals(sound)).toBe(true);
    // A third has the same bytes whole and no key that opens them: whoever's key opens it is taken.
    await write('shared', BODIES.slice(0, 1), 'another');
    expect((await key('shared', randomBytes(32), 'another')).status).toBe(204);
    expect(await file({ visit: 'shared', bytes: sealed, device: 'another' })).toMatchObject({ receipt: {} });
    expect(Buffer.from(await (await open()).arrayBuffer()).equals(sound)).toBe(true);
    expect((await attachments('shared')).map(({ device }) => device).toSorted()).toEqual([
      'another',
      'phone',
      'tablet',
    ]);
  });
});

describe('what was written in the open', () => {
  test('is counted when it is erased, and named by the check', async () => {
    const cipher = deviceCipher();
    await key('mixed', cipher.key);
    await write('mixed', await Promise.all(BODIES.map((body) => sealBody(body, cipher))));
    const check = async (visit: string) =>
      (await (await fetch(`${server.url}/api/visits/${visit}/check`)).json()) as { readonly notes: readonly string[] };
    expect((await check('mixed')).notes).toEqual([]);
    // A client that does not seal: of forty entries these hold who and where, or somebody's words.
    const personal = BODIES.filter((body) => /"(site|heard|taken|text|words|alternatives|said)":["[]/.test(body));
    expect(personal.length).toBeGreaterThan(5);
    await write('mixed', BODIES, 'terminal');
    const [note, ...more] = (await check('mixed')).notes;
    const [, counted] = /^local, visit mixed: (\d+) entries were written in the open/.exec(note ?? '') ?? [];
    expect(more).toEqual([]);
    expect(Number(counted)).toBeGreaterThan(5);
    expect(Number(counted)).toBeLessThanOrEqual(personal.length);
    expect(await ask('POST', '/api/visits/mixed/erase')).toMatchObject({ keys: 1, open: Number(counted) });
    // The site still stands there, as the count says.
    const kept = await (await fetch(`${server.url}/api/visits/mixed/events`)).text();
    expect(kept).toContain(LIBRARY_SITE);
  });
});

describe('what is larger than is taken', () => {
  test.each([
    [
      'a part of a sound',
      'PUT',
      `/api/visits/v/devices/d/attachments/${'a'.repeat(64)}?at=0&of=9&kind=sound&media=audio%2Fwav`,
      300_001,
    ],
    ['a key', 'PUT', '/api/visits/v/devices/d/key', 1_100_000],
    ['a word of somebody', 'POST', '/api/sign-in', 1_100_000],
  ])('%s is answered with 413 and what to do', async (_what, method, path, size) => {
    const json = path === '/api/sign-in';
    const response = await fetch(`${server.url}${path}`, {
      method,
      headers: { origin: server.url, 'content-type': json ? 'application/json' : 'application/octet-stream' },
      body: json ? JSON.stringify({ login: 'x'.repeat(size) }) : new Uint8Array(size),
    });
    expect([response.status, await response.json()]).toEqual([
      413,
      { error: 'request-large', sentence: 'The request is larger than is taken here: send less at once.' },
    ]);
  });
});

// The limit is of a folder.
if (!ON_POSTGRES)
  describe('a record that may grow no more', () => {
    test('takes no more of a sound than there is room for, says so, and goes on where it ended', async () => {
      const small = await runApp({ maxBytes: 900_000 });
      const { url } = small;
      try {
        await write('full', BODIES.slice(0, 1), 'phone', url);
        const bytes = randomBytes(2_000_000);
        const sent = { visit: 'full', sha256: hashOf(bytes), of: bytes.length, url };
        let held = 0;
        let answer: Answer = { status: 0 };
        for (let tries = 0; tries < 10; tries += 1) {
          answer = await file({ ...sent, bytes: bytes.subarray(held, held + 100_000), at: held });
          if (answer.status !== 200) break;
          held = answer.held ?? 0;
        }
        expect(answer).toMatchObject({
          status: 507,
          error: 'data-full',
          sentence: expect.stringMatching(/^The disk is full/),
        });
        expect(held).toBeGreaterThanOrEqual(300_000);
        expect(await file({ ...sent, bytes: Buffer.alloc(0), at: 0 })).toMatchObject({ status: 200, held });
        // Nor has the record any room then; erasing asks for none.
        const client = await RawClient.open(url);
        await client.hello(streamOf('full', 'tablet'));
        const [entry] = await chainFor(streamOf('full', 'tablet'), ['x'.repeat(60_000)]);
        client.say({ kind: 'append', ...entry });
        const more = await chainFor(streamOf('full', 'tablet'), ['x'.repeat(60_000), 'y'.repeat(60_000)]);
        client.say({ kind: 'append', ...more[1] });
        let message = await client.hear();
        while (message.kind === 'ack') message = await client.hear();
        expect(message).toMatchObject({ kind: 'error', code: 'data-full' });
        expect(await ask('POST', '/api/visits/full/erase', undefined, url)).toMatchObject({ status: 200, files: 1 });
      } finally {
        await small.stop();
      }
    });
  });
