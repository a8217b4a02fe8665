import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { REQUEST_HEADERS, requestText } from '../../grammar/visit/device-texts.ts';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { ServerMessage } from '../../grammar/visit/messages.ts';
import { ROLES, type Role } from '../../grammar/visit/roles.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { deviceCipher } from './device-cipher.ts';
import { Guest, withKeepers } from './guest.ts';
import { chainFor, RawClient, type RunningApp, runApp } from './running-app.ts';

const EVERYBODY: readonly Role[] = ROLES;
const READERS: readonly Role[] = ['technician', 'supervisor', 'keeper'];
const KEEPERS: readonly Role[] = ['keeper'];
/** Who may write from a device of their own. */
const WRITERS: readonly Role[] = ['trainee', 'technician', 'keeper'];

/**
 * Who may ask what, written down by hand: 'anyone' needs no session. A route that the server has and this table does not
 * name fails the test, and so does one that is named and not there. `visit`: asked of a visit that the caller may read.
 */
const TABLE: Readonly<Record<string, 'anyone' | readonly Role[]>> = {
  'GET /': 'anyone',
  'GET /*': 'anyone',
  'GET /review': 'anyone',
  'GET /review/*': 'anyone',
  'GET /fleet': 'anyone',
  'GET /practice': 'anyone',
  'GET /practice/*': 'anyone',
  'GET /record/*': 'anyone',
  'GET /sign-in': 'anyone',
  'GET /pair': 'anyone',
  'GET /people': 'anyone',
  'GET /sync': 'anyone',
  'GET /api': 'anyone',
  'GET /api/health': 'anyone',
  // It looks for itself: see the test of it below.
  'GET /api/metrics': 'anyone',
  'GET /api/who': 'anyone',
  'POST /api/sign-in': 'anyone',
  'POST /api/sign-in/passkey': 'anyone',
  'POST /api/sign-in/passkey/options': 'anyone',
  'POST /api/set-up': 'anyone',
  'POST /api/pair': 'anyone',
  'POST /api/ticket': 'anyone',
  'GET /api/visit-record.schema.json': 'anyone',
  'POST /api/sign-out': EVERYBODY,
  'POST /api/me/password': EVERYBODY,
  'POST /api/me/passkey': EVERYBODY,
  'POST /api/me/passkey/options': EVERYBODY,
  'GET /api/visits': EVERYBODY,
  'GET /api/visits/:visit': EVERYBODY,
  'GET /api/visits/:visit/check': EVERYBODY,
  'GET /api/visits/:visit/events': EVERYBODY,
  'GET /api/visits/:visit/record.json': EVERYBODY,
  'GET /api/visits/:visit/readings.csv': EVERYBODY,
  'GET /api/visits/:visit/talk.vtt': EVERYBODY,
  'GET /api/visits/:visit/streams/:device/:epoch/chain.jsonl': EVERYBODY,
  'GET /api/visits/:visit/lease': EVERYBODY,
  'POST /api/visits/:visit/take-over': WRITERS,
  // They look for themselves, by the device's ticket and signature: see the tests of them below.
  'PUT /api/visits/:visit/devices/:device/key': 'anyone',
  'PUT /api/visits/:visit/lease': 'anyone',
  'PUT /api/visits/:visit/devices/:device/attachments/:sha256': 'anyone',
  'GET /api/visits/:visit/keys': EVERYBODY,
  'GET /api/visits/:visit/attachments': EVERYBODY,
  'GET /api/visits/:visit/attachments/:sha256': EVERYBODY,
  'POST /api/visits/:visit/erase': KEEPERS,
  'POST /api/visits/:visit/acknowledge': ['supervisor', 'keeper'],
  'GET /api/visits/:visit/same-unit': READERS,
  'POST /api/visits/:visit/remarks': READERS,
  'GET /api/list': READERS,
  'GET /api/list/choices': READERS,
  'GET /api/fleet': READERS,
  'GET /api/fleet.csv': READERS,
  'GET /api/heads': KEEPERS,
  'GET /api/people': KEEPERS,
  'POST /api/people': KEEPERS,
  'PATCH /api/people/:person': KEEPERS,
  'DELETE /api/people/:person': KEEPERS,
  'POST /api/people/:person/link': KEEPERS,
  'POST /api/people/:person/pairing': KEEPERS,
  'GET /api/devices': KEEPERS,
  'DELETE /api/devices/:device': KEEPERS,
  'POST /api/devices/:device/hand-over': KEEPERS,
  'GET /api/audit': KEEPERS,
};
const TOKEN = 'a token for the metrics, left to chance';
const COMPANIES = ['north', 'south'] as const;
type Company = (typeof COMPANIES)[number];
const other = (company: Company): Company => (company === 'north' ? 'south' : 'north');

let server: RunningApp;
const people = new Map<string, Guest>();
const at = (company: Company, role: Role) => people.get(`${company}/${role}`) as Guest;
const streamOf = (company: string, visit: string, device: string): StreamId => ({ company, visit, device, epoch: 1 });
let refused = 0;
let letThrough = 0;
function count(wasRefused: boolean): boolean {
  if (wasRefused) refused += 1;
  else letThrough += 1;
  return wasRefused;
}

/** Everybody has a device that wrote a visit of one event in its company, as far as their role writes. */
beforeAll(async () => {
  const { store, codes } = await withKeepers(COMPANIES);
  server = await runApp({ peopleStore: store, metricsToken: TOKEN, helloWithinMs: 60_000 });
  for (const [n, company] of COMPANIES.entries()) {
    const keeper = await new Guest(server).comeIn(codes[n] as string);
    for (const role of ROLES) {
      const guest = role === 'keeper' ? keeper : await keeper.add(`${company}-${role}`, role);
      people.set(`${company}/${role}`, await guest.pair(keeper, `${company}-${role}-phone`));
      if (WRITERS.includes(role)) await write(guest, company, `${company}-${role}-visit`);
    }
  }
});
afterAll(async () => {
  await server.stop();
  tellFigure('requests and messages beyond a role or company', refused + letThrough);
  tellFigure('of these let through', letThrough);
});

async function write(guest: Guest, company: string, visit: string): Promise<void> {
  const stream = streamOf(company, visit, guest.device as string);
  const { client, heard } = await guest.hello(stream);
  expect(heard).toMatchObject({ kind: 'welcome' });
  const [entry] = await chainFor(stream, [`{"secret":"of ${company}"}`]);
  client.say({ kind: 'append', ...entry });
  expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
  client.socket.close();
  const cipher = deviceCipher();
  const { sealed, sha256 } = cipher.sealFile(Buffer.from(`sound of ${company}`));
  sounds.set(visit, sha256);
  const part = `/api/visits/${visit}/devices/${guest.device}`;
  expect((await guest.handIn(`${part}/key`, cipher.key)).status).toBe(204);
  const { status, json } = await guest.handIn(soundAddress(part, sha256, sealed.length), sealed);
  expect([status, json.receipt === undefined]).toEqual([200, false]);
}

/** The sound beside each visit, by its hash. */
const sounds = new Map<string, string>();
const soundAddress = (part: string, sha256: string, bytes: number) =>
  `${part}/attachments/${sha256}?at=0&of=${bytes}&kind=sound&media=audio%2Fwav`;

const gets = (route: string) => route.startsWith('GET ') || route.startsWith('HEAD ');
/** Every route as the server itself tells, HEAD left out where there is a GET: it goes the same way. */
function routesOfServer(): string[] {
  const named = server.routes.flatMap(({ method, url }) => [method].flat().map((one) => `${one} ${url}`));
  return [...new Set(named)].filter((route) => !route.startsWith('HEAD ')).sort();
}

/** The route with the names of a company's own people, devices and visits in it. */
function addressOf(route: string, company: Company, whose: Role, visitOf = whose): string {
  return (route.split(' ')[1] as string)
    .replace(':visit', `${company}-${visitOf}-visit`)
    .replace(':device', `${company}-${whose}-phone`)
    .replace(':epoch', '1')
    .replace(':person', at(company, whose).person)
    .replace(':sha256', sounds.get(`${company}-${visitOf}-visit`) ?? '0'.repeat(64))
    .replace(':name', 'mdef.gz');
}

/** What each route that changes something is sent. */
const BODIES: Readonly<Record<string, object | string>> = {
  'POST /api/devices/:device/hand-over': '{"kind":"stream"}',
  'POST /api/people': { login: 'intruder', name: 'Intruder', role: 'keeper' },
  'PATCH /api/people/:person': { role: 'keeper' },
  'POST /api/visits/:visit/remarks': { text: 'well done' },
  'POST /api/me/password': { password: 'a long and new one' },
};
async function send(guest: Guest, route: string, address: string) {
  const [method] = route.split(' ') as ['GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE'];
  const body = route.endsWith('/take-over') ? { device: guest.device ?? 'none', from: 'none' } : BODIES[route];
  const sent = method === 'GET' || method === 'DELETE' ? undefined : (body ?? {});
  return guest.ask(method, address, sent, typeof body === 'string' ? { 'content-type': 'application/jsonl' } : {});
}

/** All that stands: nothing that is refused may change it. */
async function standing(): Promise<string> {
  const all: unknown[] = [];
  for (const company of COMPANIES) {
    const lists = WRITERS.flatMap((role) =>
      ['keys', 'attachments'].map((what) => `visits/${company}-${role}-visit/${what}`),
    );
    for (const list of ['people', 'devices', 'visits', ...lists]) {
      all.push((await at(company, 'keeper').ask('GET', `/api/${list}`)).json);
    }
  }
  return JSON.stringify(all);
}

const guarded = Object.entries(TABLE).filter((row): row is [string, readonly Role[]] => row[1] !== 'anyone');

describe('every route', () => {
  test('is in the table of who may ask it, and every row of the table is a route', async () => {
    expect(routesOfServer()).toEqual(
      Object.keys(TABLE)
        // The pages are not built here: their files have no route.
        .filter((route) => route !== 'GET /*')
        .sort(),
    );
  });

  test('is closed to whoever has not signed in, and to whoever signed out or was never given the cookie', async () => {
    const before = await standing();
    const gone = await at('north', 'keeper').add('gone', 'keeper');
    const left = new Map(gone.cookies);
    await gone.ask('POST', '/api/sign-out');
    const signedOut = new Guest(server);
    for (const [name, value] of left) signedOut.cookies.set(name, value);
    const forger = new Guest(server);
    forger.cookies.set('readback-session', 'A'.repeat(43));
    for (const guest of [new Guest(server), signedOut, forger]) {
      for (const [route] of guarded) {
        const { status, error, text } = await send(guest, route, addressOf(route, 'north', 'technician'));
        expect(count(status === 401 && error === 'sign-in-needed'), `${route}: ${text}`).toBe(true);
      }
    }
    await at('north', 'keeper').ask('DELETE', `/api/people/${gone.person}`);
    expect(await standing()).toBe(before);
  });

  test.each(ROLES)('refuses a %s what is not theirs to do in their own company', async (role) => {
    const before = await standing();
    for (const company of COMPANIES) {
      for (const [route, allowed] of guarded.filter((row) => !row[1].includes(role))) {
        const answer = await send(at(company, role), route, addressOf(route, company, 'technician'));
        expect(count(answer.status === 403 && answer.error === 'role-refused'), `${route} ${allowed}`).toBe(true);
      }
    }
    expect(await standing()).toBe(before);
  });

  test.each(ROLES)('knows nothing of another company’s people, devices and visits for a %s', async (role) => {
    const before = await standing();
    for (const company of COMPANIES) {
      const theirs = other(company);
      for (const [route, allowed] of guarded.filter(([named]) => named.includes(':'))) {
        for (const whose of WRITERS) {
          const { status, text } = await send(at(company, role), route, addressOf(route, theirs, whose));
          expect(count(status === (allowed.includes(role) ? 404 : 403)), `${route} ${role}: ${text}`).toBe(true);
          expect(text).not.toContain(`of ${theirs}`);
        }
      }
      // The trail tells a keeper what their own people asked for, by the names that these gave: see the test after this.
      const lists = guarded.filter(([named]) => gets(named) && !named.includes(':') && named !== 'GET /api/audit');
      for (const [route] of lists) {
        const { text } = await send(at(company, role), route, addressOf(route, theirs, 'technician'));
        expect(count(!text.includes(theirs)), `${route} ${role}: ${text}`).toBe(true);
      }
    }
    expect(await standing()).toBe(before);
  });

  test('tells a keeper on the trail of their own people’s deeds and refusals alone', async () => {
    for (const company of COMPANIES) {
      const own = new Set(ROLES.map((role) => at(company, role).person));
      const { lines } = (await at(company, 'keeper').ask('GET', '/api/audit?limit=1000')).json;
      const refused = lines.filter(({ outcome }: { outcome: string }) => outcome === 'refused');
      // Of whoever is of no company each reads the kind of the refusal alone: it names nobody and no visit.
      const isNobodys = ({ person, device }: { person: string; device: string }) => person === '' && device === '';
      for (const { detail } of refused.filter(isNobodys)) expect(detail).toMatch(/^[a-z-]*$/);
      const theirs = refused.filter((line: { person: string; device: string }) => !isNobodys(line));
      expect(theirs.length).toBeGreaterThan(50);
      for (const { person, deed } of theirs) expect(count(own.has(person)), `${person} ${deed}`).toBe(true);
    }
  });

  test('shows a trainee visits of their own devices, and no others of the company', async () => {
    for (const company of COMPANIES) {
      const ofVisits = guarded.filter(([named, allowed]) => named.includes(':visit') && allowed.includes('trainee'));
      for (const [route] of ofVisits) {
        const own = await send(at(company, 'trainee'), route, addressOf(route, company, 'trainee'));
        expect([200, 204], `${route}: ${own.text}`).toContain(own.status);
        const others = await send(at(company, 'trainee'), route, addressOf(route, company, 'technician'));
        expect(count(others.status === 404), `${route}: ${others.text}`).toBe(true);
      }
    }
  });

  test('lets in whom the table lets in', async () => {
    const changing = guarded.filter(([route]) => gets(route) && route !== 'GET /api/heads');
    for (const company of COMPANIES) {
      for (const [route, allowed] of changing) {
        for (const role of allowed) {
          const visitOf = WRITERS.includes(role) ? role : 'technician';
          const device = visitOf;
          const answer = await send(at(company, role), route, addressOf(route, company, device, visitOf));
          expect(answer.status, `${route} ${role}: ${answer.text}`).toBe(200);
        }
      }
    }
  });

  test('that opens sounds is closed to a technician for visits of others, and open to supervisors', async () => {
    for (const company of COMPANIES) {
      const route = 'GET /api/visits/:visit/attachments/:sha256';
      const others = addressOf(route, company, 'keeper', 'keeper');
      const answer = await at(company, 'technician').ask('GET', others);
      expect(count(answer.status === 403 && answer.error === 'role-refused')).toBe(true);
      for (const role of ['supervisor', 'keeper'] as const) {
        expect((await at(company, role).ask('GET', others)).text).toBe(`sound of ${company}`);
      }
    }
  });

  test('that hands in keys and sounds takes them of a device for its own part of a visit alone', async () => {
    const before = await standing();
    const cipher = deviceCipher();
    const { sealed, sha256 } = cipher.sealFile(Buffer.from('intruded'));
    const bodies = (part: string) =>
      [
        [`${part}/key`, cipher.key],
        [soundAddress(part, sha256, sealed.length), sealed],
      ] as const;
    for (const company of COMPANIES) {
      for (const role of ROLES) {
        const guest = at(company, role);
        for (const owner of COMPANIES) {
          for (const whose of WRITERS.filter((one) => one !== role || owner !== company)) {
            const theirs = `${owner}-${whose}-phone`;
            for (const [path, body] of bodies(`/api/visits/${owner}-${whose}-visit/devices/${theirs}`)) {
              // As itself; as the other device with its own key; by a session alone.
              const asItself = await guest.handIn(path, body);
              expect(count(['device-unknown', 'role-refused'].includes(asItself.error ?? '')), asItself.text).toBe(
                true,
              );
              const asOther = await guest.handIn(path, body, theirs);
              expect(count(['key-wrong', 'device-unknown'].includes(asOther.error ?? '')), asOther.text).toBe(true);
              const bare = await guest.ask('PUT', path, Buffer.from(body), {
                'content-type': 'application/octet-stream',
              });
              expect(count(bare.error === 'sign-in-needed'), bare.text).toBe(true);
            }
          }
        }
        if (WRITERS.includes(role)) continue;
        for (const [path, body] of bodies(`/api/visits/new-one/devices/${guest.device}`)) {
          expect(count((await guest.handIn(path, body)).error === 'role-refused')).toBe(true);
        }
      }
    }
    // A signature speaks for one request: its address, its body, its ticket.
    const guest = at('north', 'technician');
    const [[path]] = bodies(`/api/visits/another-one/devices/${guest.device}`);
    const ticket = await guest.ticket();
    const hash = createHash('sha256').update(cipher.key).digest('hex');
    const signature = guest.sign(requestText({ ticket, method: 'PUT', path, body: hash }));
    const send = (url: string, body: Buffer) =>
      guest.ask('PUT', url, body, {
        'content-type': 'application/octet-stream',
        [REQUEST_HEADERS.ticket]: ticket,
        [REQUEST_HEADERS.signature]: signature,
      });
    expect(count((await send(path, deviceCipher().key)).error === 'key-wrong')).toBe(true);
    expect(count((await send(path, cipher.key)).error === 'sign-in-needed')).toBe(true);
    expect(await standing()).toBe(before);
  });

  test('that names visits of all companies is closed where there are several', async () => {
    const answer = await at('north', 'keeper').ask('GET', '/api/heads');
    expect(count(answer.error === 'heads-of-all')).toBe(true);
  });

  test('of metrics is open to keepers, and to nobody without their session or the token', async () => {
    const ask = async (guest: Guest, authorization?: string) =>
      (await guest.ask('GET', '/api/metrics', undefined, authorization === undefined ? {} : { authorization })).status;
    for (const company of COMPANIES) {
      for (const role of ROLES) {
        const status = await ask(at(company, role));
        if (role === 'keeper') expect(status).toBe(200);
        else expect(count(status === 403), role).toBe(true);
      }
    }
    for (const shown of [undefined, 'Bearer ', 'Bearer undefined', `Bearer ${TOKEN}x`, TOKEN]) {
      expect(count((await ask(new Guest(server), shown)) === 401), shown ?? 'nothing').toBe(true);
    }
    expect(await ask(new Guest(server), `Bearer ${TOKEN}`)).toBe(200);
  });

  test('that changes something is closed to pages of elsewhere, whoever is signed in', async () => {
    const before = await standing();
    for (const route of routesOfServer().filter((one) => !gets(one))) {
      const [method, url] = [route.split(' ')[0] as 'POST', addressOf(route, 'north', 'trainee')];
      for (const origin of ['https://elsewhere.example', 'null', 'http://localhost:1']) {
        const { error } = await at('north', 'keeper').ask(method, url, BODIES[route] ?? {}, { origin });
        expect(count(error === 'origin-foreign'), `${route} from ${origin}`).toBe(true);
      }
    }
    expect(await standing()).toBe(before);
  });
});

describe('every message', () => {
  const isRefused = (heard: ServerMessage, ...codes: string[]) => heard.kind === 'error' && codes.includes(heard.code);

  test.each(ROLES)('hello: a %s writes from their own device in their own company, if at all', async (role) => {
    for (const company of COMPANIES) {
      const guest = at(company, role);
      const { heard, client } = await guest.hello(streamOf(company, `new-${company}-${role}`, guest.device as string));
      client.socket.close();
      if (WRITERS.includes(role)) expect(heard.kind).toBe('welcome');
      else expect(count(isRefused(heard, 'role-refused'))).toBe(true);
    }
  });

  test.each(ROLES)('hello: a %s writes in no stream of another device, of either company', async (role) => {
    const before = await standing();
    for (const company of COMPANIES) {
      const guest = at(company, role);
      for (const owner of [company, other(company)]) {
        for (const whose of WRITERS.filter((one) => one !== role || owner !== company)) {
          const theirs = at(owner, whose).device as string;
          const stream = streamOf(owner, `${owner}-${whose}-visit`, theirs);
          // As itself; as the other device, with a ticket for that one and its own key; and into its own company.
          const ways = [
            [stream, guest.device, 'stream-foreign', 'company-foreign', 'role-refused'],
            [stream, theirs, 'signature-wrong'],
            [{ ...stream, company }, theirs, 'signature-wrong'],
            [{ ...stream, company }, guest.device, 'stream-foreign', 'role-refused'],
            [{ ...stream, device: guest.device as string, company: owner }, theirs, 'signature-wrong'],
          ] as const;
          for (const [asked, as, ...codes] of ways) {
            const { client, heard } = await guest.hello(asked, as);
            expect(count(isRefused(heard, ...codes)), `${role} ${JSON.stringify(asked)} ${JSON.stringify(heard)}`).toBe(
              true,
            );
            const [entry] = await chainFor(asked, ['intruded']);
            if (client.socket.readyState === client.socket.OPEN) client.say({ kind: 'append', ...entry, seq: 2 });
            await client.closed;
          }
        }
      }
    }
    expect(await standing()).toBe(before);
  });

  test.each(ROLES)('watch: a %s reads no visit of another company, by session, device or none', async (role) => {
    for (const company of COMPANIES) {
      const guest = at(company, role);
      const theirs = other(company);
      for (const whose of WRITERS) {
        const visit = `${theirs}-${whose}-visit`;
        for (const [asked, as] of [
          [theirs, guest.device],
          [company, guest.device],
          [theirs, at(theirs, whose).device],
        ] as const) {
          const { heard, client } = await guest.watch(asked, visit, as);
          // A reader of their own company hears of an unknown visit that there is nothing of it yet.
          const nothing = heard.kind === 'events' && heard.events.length === 0 && asked === company;
          expect(count(nothing || isRefused(heard, 'company-foreign', 'visit-foreign')), JSON.stringify(heard)).toBe(
            true,
          );
          client.socket.close();
        }
        const phone = new Guest(server);
        phone.device = guest.device;
        const unsigned = await phone.watch(theirs, visit);
        expect(count(isRefused(unsigned.heard, 'signature-wrong'))).toBe(true);
      }
    }
  });

  test('watch: a trainee reads their own visits, others of the company do not open', async () => {
    for (const company of COMPANIES) {
      const trainee = at(company, 'trainee');
      expect((await trainee.watch(company, `${company}-trainee-visit`)).heard).toMatchObject({ kind: 'events' });
      const { heard } = await trainee.watch(company, `${company}-technician-visit`);
      expect(count(isRefused(heard, 'visit-foreign'))).toBe(true);
      // A device without a session reads what it writes in, and nothing else.
      trainee.cookies.forEach((_value, name) => void trainee.cookies.delete(name));
      const device = await trainee.watch(company, `${company}-trainee-visit`);
      expect(device.heard).toMatchObject({ kind: 'events', events: [{ seq: 1 }] });
      expect(count(isRefused((await trainee.watch(company, `${company}-keeper-visit`)).heard, 'visit-foreign'))).toBe(
        true,
      );
    }
  });

  test('append: is out of turn for whoever was not welcomed to a stream', async () => {
    for (const company of COMPANIES) {
      for (const role of ROLES) {
        const stream = streamOf(company, `${company}-technician-visit`, `${company}-technician-phone`);
        const [entry] = await chainFor(stream, ['intruded']);
        const silent = await RawClient.open(server.url);
        silent.say({ kind: 'append', ...entry });
        expect(count(isRefused(await silent.hear(), 'out-of-turn'))).toBe(true);
        if (role === 'trainee') continue;
        const { client, heard } = await at(company, role).watch(company, `${company}-technician-visit`);
        expect(heard.kind).toBe('events');
        client.say({ kind: 'append', ...entry });
        expect(count(isRefused(await client.hear(), 'out-of-turn'))).toBe(true);
      }
    }
  });

  test('hello and watch: without a ticket, by one that was made up, used or is another’s, open nothing', async () => {
    for (const company of COMPANIES) {
      for (const role of WRITERS) {
        const guest = at(company, role);
        const stream = streamOf(company, `${company}-${role}-visit`, guest.device as string);
        const messages = [
          { kind: 'hello', protocol: 1, stream },
          { kind: 'watch', protocol: 1, company, visit: stream.visit, from: [] },
        ] as const;
        for (const message of messages) {
          expect(count(isRefused((await guest.say(message)).heard, 'sign-in-needed'))).toBe(true);
          const madeUp = await guest.say({ ...message, ticket: 'A'.repeat(43) });
          expect(count(isRefused(madeUp.heard, 'ticket-wrong'))).toBe(true);
          const whole = await guest.withTicket(message);
          const first = await guest.say(whole);
          expect(first.heard.kind).not.toBe('error');
          first.client.socket.close();
          expect(count(isRefused((await guest.say(whole)).heard, 'ticket-wrong'))).toBe(true);
        }
        const hello = await guest.withTicket(messages[0]);
        // The signature speaks for one ticket and one stream.
        const moved = { ...hello, stream: { ...stream, visit: 'another' } };
        expect(count(isRefused((await guest.say(moved)).heard, 'signature-wrong'))).toBe(true);
      }
    }
  });
});
