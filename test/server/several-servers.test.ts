import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../grammar/visit/envelope.ts';
import type { ServerMessage } from '../../grammar/visit/messages.ts';
import { openDatabase } from '../../server/heads/open-database.ts';
import { People } from '../../server/people/people.ts';
import { getJson } from './get-json.ts';
import { Guest } from './guest.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from './own-postgres.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

const programs = await postgresPrograms();
const missing = 'missing' in programs ? programs.missing : undefined;

/** Two servers on one database, as two processes have them: each its own stores, hubs and listeners. */
async function twoServers(url: string): Promise<readonly [RunningApp, RunningApp]> {
  const [one, other] = await Promise.all(
    [1, 2].map(async () => runApp({ ...(await openDatabase(url, { acceptLoss: false })), helloWithinMs: 60_000 })),
  );
  return [one as RunningApp, other as RunningApp];
}

/** Hears until a message of events brings some. */
async function heardEvents(client: RawClient): Promise<readonly number[]> {
  for (;;) {
    const message = await client.hear();
    if (message.kind === 'events' && message.events.length > 0) return message.events.map(({ seq }) => seq);
  }
}

describe.skipIf(missing !== undefined)(
  `several servers on one PostgreSQL${missing === undefined ? '' : `: ${missing}`}`,
  () => {
    let postgres: OwnPostgres;
    let here: RunningApp;
    let there: RunningApp;
    beforeAll(async () => {
      postgres = await startOwnPostgres(programs);
      [here, there] = await twoServers(await postgres.database());
    });
    afterAll(async () => {
      await Promise.all([here?.stop(), there?.stop()]);
      await postgres?.remove();
    });

    test('a reader at one hears at once what a device writes at the other, in order and once', async () => {
      const stream = streamOf('watched');
      const entries = await chainFor(
        stream,
        Array.from({ length: 300 }, (_, at) => `${at}`),
      );
      const reader = await RawClient.open(there.url);
      reader.say({ kind: 'watch', protocol: 1, company: 'local', visit: 'watched', from: [] });
      await reader.hear();
      const writer = await RawClient.open(here.url);
      await writer.hello(stream);
      const began = performance.now();
      const heard: number[] = [];
      for (let from = 0; from < entries.length; from += 30) {
        for (const entry of entries.slice(from, from + 30)) writer.say({ kind: 'append', ...entry });
        while (heard.length < from + 30) heard.push(...(await heardEvents(reader)));
      }
      expect(heard).toEqual(entries.map(({ seq }) => seq));
      // A reader who is not told reads anew every ten seconds: ten of these would have taken a hundred.
      expect(performance.now() - began).toBeLessThan(60_000);
      writer.socket.close();
      reader.socket.close();
    });

    test('a hint that is lost delays a reader and loses nothing', async () => {
      const stream = streamOf('unheard');
      const reader = await RawClient.open(there.url);
      reader.say({ kind: 'watch', protocol: 1, company: 'local', visit: 'unheard', from: [] });
      await reader.hear();
      const { store } = await openDatabase(await currentUrl(), { acceptLoss: false });
      // Kept by a server that was ended before it could tell.
      await store.commit((await chainFor(stream, ['x'])).map((entry) => ({ ...entry, stream, receivedAt: 1 })));
      await store.close();
      expect(await heardEvents(reader)).toEqual([1]);
      reader.socket.close();
    });

    test('two that are given one stream at once keep each event once, and fork none', async () => {
      const stream = streamOf('raced');
      const entries = await chainFor(
        stream,
        Array.from({ length: 400 }, (_, at) => `${at}`),
      );
      const heard: ServerMessage[] = [];
      const write = async (server: RunningApp) => {
        const client = await RawClient.open(server.url);
        await client.hello(stream);
        for (let sent = 0; sent < entries.length; ) {
          const some = entries.slice(sent, sent + 40);
          for (const entry of some) client.say({ kind: 'append', ...entry });
          for (let acknowledged = 0; acknowledged < (some.at(-1)?.seq ?? 0); ) {
            const message = await client.hear();
            heard.push(message);
            if (message.kind !== 'ack') throw new Error(JSON.stringify(message));
            acknowledged = message.seq;
          }
          sent += some.length;
        }
        client.socket.close();
      };
      await Promise.all([write(here), write(there)]);
      const { streams } = await getJson<{ streams: object[] }>(`${here.url}/api/visits/raced`);
      expect(streams).toMatchObject([{ head: { seq: 400, hash: entries.at(-1)?.hash }, forks: 0 }]);
      const { events } = await getJson<{ events: Entry[] }>(`${there.url}/api/visits/raced/events`);
      expect(events.map(({ hash }) => hash)).toEqual(entries.map(({ hash }) => hash));
      // Receipts of both are by one key.
      expect(new Set(heard.map((one) => (one.kind === 'ack' ? one.receipt?.key : ''))).size).toBe(1);
    });

    test('two that are given different events of one number keep one, and flag the other', async () => {
      const stream = streamOf('forked');
      const [[one], [other]] = await Promise.all([chainFor(stream, ['one']), chainFor(stream, ['other'])]);
      const clients = await Promise.all([here, there].map((server) => RawClient.open(server.url)));
      await Promise.all(clients.map((client) => client.hello(stream)));
      clients[0]?.say({ kind: 'append', ...one });
      clients[1]?.say({ kind: 'append', ...other });
      const kinds = (await Promise.all(clients.map((client) => client.hear()))).map(({ kind }) => kind);
      expect(kinds.sort()).toEqual(['ack', 'fork']);
      const { streams } = await getJson<{ streams: object[] }>(`${here.url}/api/visits/forked`);
      expect(streams).toMatchObject([{ head: { seq: 1 }, forks: 1, flags: ['forked'] }]);
      for (const client of clients) client.socket.close();
    });

    test('a reader that lost the database hears on when it is back', async () => {
      const stream = streamOf('back');
      const reader = await RawClient.open(there.url);
      reader.say({ kind: 'watch', protocol: 1, company: 'local', visit: 'back', from: [] });
      await reader.hear();
      await postgres.kill();
      await postgres.start();
      const entries = await chainFor(stream, ['one']);
      for (let tried = 0; ; tried += 1) {
        const writer = await RawClient.open(here.url);
        const welcome = await writer.hello(stream);
        if (welcome.kind === 'welcome') {
          writer.say({ kind: 'append', ...entries[0] });
          if ((await writer.hear()).kind === 'ack') break;
        }
        expect(tried).toBeLessThan(100);
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      expect(await heardEvents(reader)).toEqual([1]);
      reader.socket.close();
    });

    test('sessions, tickets, codes and counts of tries hold at every server; who is revoked is cut at each', async () => {
      const url = await postgres.database();
      const [one, other] = await twoServers(url);
      try {
        const kept = await openDatabase(url, { acceptLoss: false });
        const people = new People({ store: kept.peopleStore, clock: Date.now, loopback: false });
        const { code } = await people.addPerson({ company: 'local' }, { login: 'kim', name: 'kim', role: 'keeper' });
        await kept.store.close();
        const keeper = await new Guest(one).comeIn(code);
        expect((await new Guest(other).ask('POST', '/api/set-up', { code })).status).toBe(403);
        const elsewhere = new Guest(other);
        for (const [name, value] of keeper.cookies) elsewhere.cookies.set(name, value);
        expect((await elsewhere.ask('GET', '/api/who')).json.person.login).toBe('kim');
        // Ten wrong passwords a quarter of an hour, wherever they are tried.
        const statuses: number[] = [];
        for (let n = 0; n < 12; n += 1) {
          const guesser = new Guest(n % 2 === 0 ? one : other);
          statuses.push(
            (await guesser.ask('POST', '/api/sign-in', { login: 'kim', password: `guess number ${n}` })).status,
          );
        }
        expect(statuses).toEqual([...Array(10).fill(401), 429, 429]);
        // A device that writes at one server is cut there when it is revoked at the other.
        await keeper.pair(keeper, 'phone');
        const { client, heard } = await keeper.hello({ company: 'local', visit: 'cut', device: 'phone', epoch: 1 });
        expect(heard.kind).toBe('welcome');
        expect((await elsewhere.ask('DELETE', '/api/devices/phone')).status).toBe(204);
        expect((await client.closed).reason).toBe('device-revoked');
        await keeper.ask('POST', '/api/sign-out');
        expect((await elsewhere.ask('GET', '/api/people')).status).toBe(401);
      } finally {
        await Promise.all([one.stop(), other.stop()]);
      }
    });

    test('a supervisor at one server is heard by the device that writes at the other', async () => {
      const url = await postgres.database();
      const [one, other] = await twoServers(url);
      try {
        const kept = await openDatabase(url, { acceptLoss: false });
        const people = new People({ store: kept.peopleStore, clock: Date.now, loopback: false });
        const { code } = await people.addPerson({ company: 'local' }, { login: 'kim', name: 'kim', role: 'keeper' });
        await kept.store.close();
        const keeper = await new Guest(one).comeIn(code);
        const invited = (await keeper.ask('POST', '/api/people', { login: 'sam', name: 'Sam', role: 'supervisor' }))
          .json;
        const supervisor = await new Guest(other).comeIn(invited.code);
        await keeper.pair(keeper, 'phone');
        const stream = { company: 'local', visit: 'live', device: 'phone', epoch: 1 };
        const { client } = await keeper.hello(stream);
        const [entry] = await chainFor(stream, ['one']);
        client.say({ kind: 'append', ...entry });
        expect((await client.hear()).kind).toBe('ack');
        const { status, json } = await supervisor.ask('POST', '/api/visits/live/acknowledge', {});
        expect([status, json]).toEqual([200, { devices: 1 }]);
        expect(await client.hear()).toMatchObject({ kind: 'acknowledged', supervisor: 'Sam' });
        client.socket.close();
        await client.closed;
        expect((await supervisor.ask('POST', '/api/visits/live/acknowledge', {})).status).toBe(409);
      } finally {
        await Promise.all([one.stop(), other.stop()]);
      }
    });

    /** The address of the database that `here` and `there` are on: the first that was made. */
    async function currentUrl(): Promise<string> {
      const next = new URL(await postgres.database());
      next.pathname = '/readback_1';
      return next.href;
    }
  },
);
