import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { PeopleStore } from '../../server/people/people-store.ts';
import { tries } from '../how-much.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { scratchFolder } from './built-server.ts';
import { Guest, withKeepers } from './guest.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';
import { peopleText } from './stores-of-run.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const PASSWORD = 'six brown compressors';

let now = Date.UTC(2026, 5, 15);
let server: RunningApp;
let store: PeopleStore;
let keeper: Guest;
beforeEach(async () => {
  const made = await withKeepers(['north'], () => now);
  store = made.store;
  server = await runApp({ peopleStore: store, clock: () => now, helloWithinMs: 60_000 });
  keeper = await new Guest(server).comeIn(made.codes[0] as string);
  expect((await keeper.ask('POST', '/api/me/password', { password: PASSWORD })).status).toBe(204);
});
afterEach(() => server.stop());

const signIn = (guest: Guest, password: string, login = 'north-keeper') =>
  guest.ask('POST', '/api/sign-in', { login, password });
const isIn = async (guest: Guest) => (await guest.ask('GET', '/api/people')).status === 200;
const trail = async () => (await store.audit('north', { limit: 1_000 })).map(({ deed, detail }) => `${deed} ${detail}`);
const phoneStream = (visit: string): StreamId => ({ company: 'north', visit, device: 'phone', epoch: 1 });

describe('signing in', () => {
  test('by the right name and password begins a session, by anything else none, told alike', async () => {
    const guest = new Guest(server);
    expect((await signIn(guest, PASSWORD, 'North-Keeper')).status).toBe(204);
    expect(await isIn(guest)).toBe(true);
    const answers = await Promise.all([
      signIn(new Guest(server), 'six brown compressor'),
      signIn(new Guest(server), PASSWORD, 'nobody'),
      signIn(new Guest(server), `${PASSWORD}\u0000`),
    ]);
    for (const { status, text, cookies } of answers) {
      expect({ status, text, cookies }).toEqual({ status: 401, text: answers[0]?.text, cookies: [] });
    }
  });

  test('takes a password however its letters are composed', async () => {
    await keeper.ask('POST', '/api/me/password', { password: 'caf\u00e9 au frigorifique', old: PASSWORD });
    expect((await signIn(new Guest(server), 'cafe\u0301 au frigorifique')).status).toBe(204);
  });

  test('gives cookies that scripts and other sites never see, over TLS alone where the server speaks it', async () => {
    const [session, known] = (await signIn(new Guest(server), PASSWORD)).cookies;
    expect(session).toMatch(/^readback-session=[\w-]{43}; Max-Age=604800; Path=\/; HttpOnly; SameSite=Strict$/);
    expect(known).toMatch(/; HttpOnly; SameSite=Strict$/);
    const made = await withKeepers(['north'], () => now);
    const tls = await runApp({
      peopleStore: made.store,
      clock: () => now,
      origins: { kind: 'proxy', origin: 'http://localhost:8470' },
      loopback: false,
    });
    const { cookies } = await new Guest(tls).ask('POST', '/api/set-up', { code: made.codes[0] as string });
    expect(cookies).toHaveLength(2);
    for (const one of cookies)
      expect(one).toMatch(/^__Host-readback-\w+=.*; Path=\/; HttpOnly; Secure; SameSite=Strict$/);
    await tls.stop();
  });

  test('by a set-up link: once, within a day', async () => {
    const { code } = (await keeper.ask('POST', '/api/people', { login: 'kim', name: 'Kim', role: 'technician' })).json;
    await new Guest(server).comeIn(code);
    expect((await new Guest(server).ask('POST', '/api/set-up', { code })).error).toBe('code-wrong');
    const person = (await keeper.ask('GET', '/api/people')).json.people.find(
      (one: { login: string }) => one.login === 'kim',
    );
    const link = await keeper.ask('POST', `/api/people/${person.person}/link`, {});
    now += 24 * HOUR + 1;
    expect((await new Guest(server).ask('POST', '/api/set-up', { code: link.json.code })).error).toBe('code-wrong');
  });
});

describe('a browser that is known for a name', () => {
  test('is one however its cookie is written: tries by it are counted as its own, or as anybody’s', async () => {
    const guest = new Guest(server);
    await signIn(guest, PASSWORD);
    const known = guest.cookies.get('readback-known') as string;
    const written = (at: number) => [
      `${known}.x${at}`,
      `${known}${'='.repeat(at + 1)}`,
      `${known}${'%3D'.repeat(at + 1)}`,
      `${' '.repeat(at)}${known}`,
    ];
    let looked = 0;
    for (let at = 0; at < 15; at += 1) {
      for (const cookie of written(at)) {
        const again = new Guest(server);
        again.cookies.set('readback-known', cookie);
        if ((await signIn(again, 'not the password')).error === 'sign-in-wrong') looked += 1;
      }
    }
    // Ten as this browser, ten as whoever comes.
    expect(looked).toBeLessThanOrEqual(20);
  });
});

describe('a name', () => {
  const add = (name: string, login: string) => keeper.ask('POST', '/api/people', { login, name, role: 'supervisor' });

  test.each([
    ['none', '   '],
    ['on two lines', 'Sue\nSand'],
    ['with a control character', 'a\u0000b'],
    ['with one of the C1 set', 'a\u0085b'],
    ['that turns what stands behind it', 'Sue \u202edrac'],
    ['that isolates it', 'Sue \u2067Sand'],
    ['on lines of Unicode', 'Sue\u2028Sand'],
  ])('%s is refused, of who is new and of who is there', async (_, name) => {
    expect((await add(name, 'sue')).error).toBe('request-wrong');
    const { json } = await add('Sue', 'sue');
    expect((await keeper.ask('PATCH', `/api/people/${json.person.person}`, { name })).error).toBe('request-wrong');
  });

  test.each(['José Ñandú', '李 小龙', 'محمد', 'Anne-Lise O’Hara (nights)', 'Kim 👩🏽\u200d🔧'])(
    '%s is taken',
    async (name) => {
      expect((await add(name, 'sue')).json.person.name).toBe(name);
    },
  );
});

describe('a device’s key', () => {
  test('is paired in its one writing', async () => {
    const phone = new Guest(server);
    const pairing = async (change: (key: string) => string) => {
      const { code } = (await keeper.ask('POST', `/api/people/${keeper.person}/pairing`)).json;
      return phone.ask('POST', '/api/pair', { ...phone.pairing(code, 'phone'), publicKey: change(phone.publicKey()) });
    };
    for (const change of [(key: string) => `${key}AAAA`, (key: string) => `${key}=`, (key: string) => `${key}A`]) {
      expect([400, 403, 401]).toContain((await pairing(change)).status);
    }
    expect((await pairing((key) => key)).status).toBe(201);
  });
});

describe('a session', () => {
  test('ends when it is signed out of: its cookie opens nothing any more', async () => {
    const kept = new Map(keeper.cookies);
    expect((await keeper.ask('POST', '/api/sign-out')).status).toBe(204);
    expect(keeper.cookies.has('readback-session')).toBe(false);
    for (const [name, value] of kept) keeper.cookies.set(name, value);
    expect(await isIn(keeper)).toBe(false);
  });

  test('ends after twelve hours without use, and after seven days of it', async () => {
    now += 12 * HOUR;
    expect(await isIn(keeper)).toBe(true);
    now += 12 * HOUR + 1;
    expect(await isIn(keeper)).toBe(false);
    const other = new Guest(server);
    await signIn(other, PASSWORD);
    for (let hours = 0; hours < 7 * 24; hours += 8) {
      expect(await isIn(other)).toBe(true);
      now += 8 * HOUR;
    }
    now += 1;
    expect(await isIn(other)).toBe(false);
  });

  test('ends when the clock was set back behind its beginning: how old it is cannot be told', async () => {
    now -= 4 * MINUTE;
    expect(await isIn(keeper)).toBe(true);
    now -= 2 * MINUTE;
    expect(await isIn(keeper)).toBe(false);
    now += 6 * MINUTE;
  });

  test('ends with all others of its person when the password is changed, but the one that changed it', async () => {
    const other = new Guest(server);
    await signIn(other, PASSWORD);
    // Who came in by a link need not know the old one; who came by password must.
    expect((await keeper.ask('POST', '/api/me/password', { password: 'another long one' })).status).toBe(204);
    expect([await isIn(keeper), await isIn(other)]).toEqual([true, false]);
    const third = new Guest(server);
    await signIn(third, 'another long one');
    for (const old of [undefined, 'not it']) {
      const { error } = await third.ask('POST', '/api/me/password', { password: PASSWORD, ...(old ? { old } : {}) });
      expect(error).toBe('sign-in-wrong');
    }
  });

  test.each(['short', 'aaaaaaaaaaaaaaaaaaaa', 'north-keeper-2026', 'North-Keeper and more'])(
    'takes no password that is easily guessed: %s',
    async (password) => {
      expect((await keeper.ask('POST', '/api/me/password', { password, old: PASSWORD })).error).toBe('password-weak');
      expect((await signIn(new Guest(server), PASSWORD)).status).toBe(204);
    },
  );
});

describe('thousands of wrong passwords', () => {
  /** 10,000 in the long run and in `npm run bench -- people`. */
  const TRIES = tries(2_000, 10_000);

  test('at one name: ten are looked at; the rest costs no hash and no line of the trail, and locks out no owner', async () => {
    const owner = new Guest(server);
    await signIn(owner, PASSWORD);
    const guesser = new Guest(server);
    const counts: Record<number, number> = {};
    for (let n = 0; n < TRIES; n += 1) {
      const { status } = await signIn(guesser, `guess ${n}`);
      counts[status] = (counts[status] ?? 0) + 1;
    }
    expect(counts).toEqual({ 401: 10, 429: TRIES - 10 });
    tellFigure('wrong passwords tried at one name', TRIES);
    tellFigure('of these looked at', counts[401] as number);
    // Not even the right one is looked at, from a browser that never signed in by that name.
    expect((await signIn(guesser, PASSWORD)).status).toBe(429);
    expect((await signIn(owner, PASSWORD)).status).toBe(204);
    now += 15 * MINUTE;
    expect((await signIn(guesser, PASSWORD)).status).toBe(204);
    const lines = (await store.audit('', { limit: 100 })).filter(({ deed }) => deed === 'POST /api/sign-in');
    expect(lines.length).toBeLessThanOrEqual(2);
  });

  test('at many names at once: 33 wait for their turn, the others are told to come later', async () => {
    const answers = await Promise.all(
      Array.from({ length: 300 }, (_, n) => signIn(new Guest(server), 'a guess', `name-${n}`)),
    );
    const statuses = answers.map(({ status }) => status);
    expect(new Set(statuses)).toEqual(new Set([401, 429]));
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(100);
    expect(statuses.filter((status) => status === 429).length).toBeGreaterThanOrEqual(200);
  });
});

describe('people', () => {
  test('a keeper who removes or demotes themself stays while they are the only one', async () => {
    const own = `/api/people/${keeper.person}`;
    expect((await keeper.ask('DELETE', own)).error).toBe('last-keeper');
    expect((await keeper.ask('PATCH', own, { role: 'supervisor' })).error).toBe('last-keeper');
    const second = await keeper.add('second', 'keeper');
    expect((await keeper.ask('DELETE', own)).status).toBe(204);
    expect([await isIn(keeper), await isIn(second)]).toEqual([false, true]);
    expect((await signIn(new Guest(server), PASSWORD)).status).toBe(401);
  });

  test('another role holds from the next request on', async () => {
    const kim = await keeper.add('kim', 'keeper');
    expect(await isIn(kim)).toBe(true);
    await keeper.ask('PATCH', `/api/people/${kim.person}`, { role: 'technician' });
    expect((await kim.ask('GET', '/api/people')).error).toBe('role-refused');
  });

  test('a name is taken once', async () => {
    await keeper.add('kim', 'technician');
    const again = await keeper.ask('POST', '/api/people', { login: 'kim', name: 'Other', role: 'trainee' });
    expect(again.error).toBe('login-taken');
  });
});

describe('a device', () => {
  test('is paired by a code: once, within five minutes, by whoever holds the key they name', async () => {
    const kim = await keeper.add('kim', 'technician');
    const code = async () => (await keeper.ask('POST', `/api/people/${kim.person}/pairing`, {})).json.code as string;
    const pair = async (given: object) => (await kim.ask('POST', '/api/pair', given)).error;
    const first = await code();
    // 32 letters and digits: five bits each.
    expect(first).toMatch(/^[a-z0-9]{26}$/);
    const stranger = new Guest(server);
    const forged = { ...kim.pairing(first, 'phone'), publicKey: stranger.publicKey() };
    expect(await pair(forged)).toBe('key-wrong');
    expect(await pair({ ...kim.pairing(first, 'phone'), device: 'other' })).toBe('key-wrong');
    expect(await pair({ ...kim.pairing(first, 'phone'), publicKey: 'AAAA' })).toBe('key-wrong');
    expect(await pair(kim.pairing(first, 'phone'))).toBeUndefined();
    expect(await pair(kim.pairing(first, 'phone-2'))).toBe('code-wrong');
    expect(await pair(kim.pairing(await code(), 'phone'))).toBe('device-taken');
    const late = await code();
    now += 5 * MINUTE + 1;
    expect(await pair(kim.pairing(late, 'phone-3'))).toBe('code-wrong');
    expect(await pair(kim.pairing('a'.repeat(26), 'phone-3'))).toBe('code-wrong');
    expect((await keeper.ask('GET', '/api/devices')).json.devices).toMatchObject([
      { device: 'phone', person: kim.person },
    ]);
  });

  test('that is revoked is cut in mid-visit, and comes in no more; what it sent stays', async () => {
    const kim = await (await keeper.add('kim', 'technician')).pair(keeper, 'phone');
    const stream = phoneStream('lost');
    const { client, heard } = await kim.hello(stream);
    expect(heard.kind).toBe('welcome');
    const [one] = await chainFor(stream, ['1']);
    client.say({ kind: 'append', ...one });
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    expect((await keeper.ask('DELETE', '/api/devices/phone')).status).toBe(204);
    expect(await client.hear()).toMatchObject({ kind: 'error', code: 'device-revoked' });
    expect((await client.closed).code).toBe(1008);
    expect((await kim.hello(stream)).heard).toMatchObject({ code: 'device-revoked' });
    expect((await keeper.ask('GET', '/api/visits/lost')).json.streams).toMatchObject([{ head: { seq: 1 } }]);
  });

  test('that was lost: what it had not sent is handed over by a keeper, whole, once, and from its own file alone', async () => {
    const kim = await (await keeper.add('kim', 'technician')).pair(keeper, 'phone');
    const stream = phoneStream('unsent');
    const chain = await chainFor(
      stream,
      Array.from({ length: 700 }, (_, n) => `{"n":${n}}`),
    );
    const { client } = await kim.hello(stream);
    client.say({ kind: 'append', ...chain[0] });
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    const file = (of: StreamId, entries: typeof chain) =>
      [
        { kind: 'stream', version: 1, stream: of },
        { kind: 'batch', entries },
      ]
        .map((line) => `${JSON.stringify(line)}\n`)
        .join('');
    const handOver = (text: string, device = 'phone', by = keeper) =>
      by.ask('POST', `/api/devices/${device}/hand-over`, text, { 'content-type': 'application/jsonl' });
    expect((await handOver(file(stream, chain))).error).toBe('device-in-use');
    await keeper.ask('DELETE', '/api/devices/phone');
    expect((await handOver(file(stream, chain), 'phone', kim)).error).toBe('role-refused');
    for (const text of [
      '',
      'no record',
      file({ ...stream, device: 'other' }, chain),
      file({ ...stream, company: 'south' }, chain),
      ...[{ epoch: 'x', head: null }, { epoch: 1, head: { seq: 1, hash: 'x' } }, 7].map((follows) =>
        file(stream, chain).replace('"version":1', `"version":1,"follows":${JSON.stringify(follows)}`),
      ),
    ]) {
      expect((await handOver(text)).error).toBe('file-wrong');
    }
    const altered = chain.with(350, { ...chain[350]!, body: '{"n":"altered"}' });
    expect((await handOver(file({ ...stream, visit: 'altered' }, altered))).json).toMatchObject({ stored: 0 });
    expect((await handOver(file(stream, altered))).json).toEqual({
      visit: 'unsent',
      stored: 349,
      held: 1,
      refused: 350,
    });
    expect((await handOver(file(stream, chain))).json).toEqual({ visit: 'unsent', stored: 350, held: 350, refused: 0 });
    const { events } = (await keeper.ask('GET', '/api/visits/unsent/events')).json;
    expect(events.map(({ hash }: { hash: string }) => hash)).toEqual(chain.map(({ hash }) => hash));
    expect((await keeper.ask('GET', '/api/visits/unsent/check')).json.findings).toEqual([]);
    expect(await trail()).toContain('visit handed over unsent 1');
  });

  test('of somebody who may write no more is cut, and one who is removed', async () => {
    for (const change of ['role', 'removal'] as const) {
      const kim = await (await keeper.add(`kim-${change}`, 'technician')).pair(keeper, `phone-${change}`);
      const { client } = await kim.hello({ ...phoneStream(change), device: `phone-${change}` });
      if (change === 'role') await keeper.ask('PATCH', `/api/people/${kim.person}`, { role: 'supervisor' });
      else await keeper.ask('DELETE', `/api/people/${kim.person}`);
      expect(await client.hear()).toMatchObject({ code: change === 'role' ? 'role-refused' : 'device-revoked' });
    }
  });

  test('that comes with a late ticket is to ask for another, and is not turned away', async () => {
    const kim = await (await keeper.add('kim', 'technician')).pair(keeper, 'phone');
    const hello = await kim.withTicket({ kind: 'hello', protocol: 1, stream: phoneStream('late') } as const);
    now += 31_000;
    const { client, heard } = await kim.say(hello);
    expect(heard).toMatchObject({ code: 'ticket-late' });
    expect((await client.closed).code).toBe(1013);
  });

  test('needs no session to write; a reader whose session ends hears no more', async () => {
    const kim = await (await keeper.add('kim', 'technician')).pair(keeper, 'phone');
    kim.cookies.clear();
    const { client } = await kim.hello(phoneStream('watched'));
    const watching = await keeper.watch('north', 'watched', undefined);
    expect(watching.heard).toMatchObject({ kind: 'events', events: [] });
    await keeper.ask('POST', '/api/sign-out');
    expect(await watching.client.hear()).toMatchObject({ kind: 'error', code: 'sign-in-needed' });
    client.socket.close();
  });
});

describe('on this machine alone', () => {
  test('nobody signs in until somebody is added, the first as a keeper; then everybody does, at once', async () => {
    const open = await runApp();
    const here = new Guest(open);
    expect((await here.ask('GET', '/api/who')).json).toEqual({ open: true, company: 'local' });
    const writing = await RawClient.open(open.url);
    expect(await writing.hello(streamOf('before'))).toMatchObject({ kind: 'welcome' });
    const trainee = { login: 'kim', name: 'Kim', role: 'trainee' };
    expect((await here.ask('POST', '/api/people', trainee)).error).toBe('first-keeper');
    const { json } = await here.ask('POST', '/api/people', { ...trainee, role: 'keeper' });
    expect(await writing.hear()).toMatchObject({ kind: 'error', code: 'sign-in-needed' });
    expect((await here.ask('GET', '/api/visits')).error).toBe('sign-in-needed');
    const kim = await here.comeIn(json.code);
    expect((await kim.ask('GET', '/api/who')).json).toMatchObject({ open: false, company: 'local' });
    await open.stop();
  });
});

describe('the trail', () => {
  test('tells each change and each kind of refusal, and how often it came again', async () => {
    const kim = await (await keeper.add('kim', 'technician')).pair(keeper, 'phone');
    for (let n = 0; n < 50; n += 1) await kim.ask('GET', '/api/audit');
    await kim.hello({ ...phoneStream('v'), device: 'not-mine' });
    await keeper.ask('PATCH', `/api/people/${kim.person}`, { role: 'trainee' });
    await keeper.ask('DELETE', '/api/devices/phone');
    await keeper.ask('DELETE', `/api/people/${kim.person}`);
    const told = await trail();
    for (const line of [
      /^sign-in link$/,
      /^password set $/,
      /^person added p-\w+ technician$/,
      /^link made p-/,
      /^pairing code made p-/,
      /^device paired $/,
      /^hello stream-foreign north\/v$/,
      /^person changed p-\w+ trainee$/,
      /^device revoked phone$/,
      /^person removed p-/,
      /^GET \/api\/audit role-refused$/,
    ]) {
      expect(
        told.filter((one) => line.test(one)),
        String(line),
      ).not.toEqual([]);
    }
    expect(told.filter((one) => one.startsWith('GET /api/audit'))).toHaveLength(1);
  });

  test('counts refusals that came again, when the server ends at the latest', async () => {
    const scratch = scratchFolder();
    const path = join(scratch.path, 'people.sqlite');
    const made = await withKeepers(['north'], Date.now, path);
    const other = await runApp({ peopleStore: made.store });
    const guesser = new Guest(other);
    for (let n = 0; n < 60; n += 1) await signIn(guesser, `guess ${n}`);
    await other.stop();
    const { store: again } = await withKeepers([], Date.now, path);
    const lines = await again.audit('', { limit: 100 });
    const times = (code: string) =>
      lines.filter(({ detail }) => detail === code).reduce((sum, line) => sum + line.times, 0);
    expect([times('sign-in-wrong'), times('try-later')]).toEqual([10, 50]);
    expect(lines.length).toBeLessThanOrEqual(4);
    await again.close();
    scratch.remove();
  });

  test('and the whole file hold no secret: no password, cookie, code or ticket', async () => {
    const scratch = scratchFolder();
    const path = join(scratch.path, 'people.sqlite');
    const made = await withKeepers(['north'], Date.now, path);
    const other = await runApp({ peopleStore: made.store });
    const guest = await new Guest(other).comeIn(made.codes[0] as string);
    await guest.ask('POST', '/api/me/password', { password: PASSWORD });
    await guest.pair(guest, 'phone');
    const { code } = (await guest.ask('POST', `/api/people/${guest.person}/pairing`, {})).json;
    const secrets = [PASSWORD, made.codes[0], code, await guest.ticket(), ...guest.cookies.values()];
    await signIn(guest, 'a wrong password');
    await other.stop();
    const bytes = await peopleText(path);
    expect(bytes).toContain('phone');
    for (const secret of secrets) expect(bytes.includes(secret as string)).toBe(false);
    scratch.remove();
  });
});
