import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import { acknowledgementText } from '../../grammar/visit/messages.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { Guest, withKeepers } from './guest.ts';
import { chainFor, RawClient, type RunningApp, runApp } from './running-app.ts';

const NOW = Date.UTC(2026, 5, 15, 14);
let server: RunningApp;
let keeper: Guest;
let lee: Guest;
let kim: Guest;
let stranger: Guest;
beforeAll(async () => {
  const { store, codes } = await withKeepers(['north', 'south'], () => NOW);
  server = await runApp({ peopleStore: store, clock: () => NOW });
  keeper = await new Guest(server).comeIn(codes[0] as string);
  lee = await (await keeper.add('lee', 'technician')).pair(keeper, 'lees-phone');
  kim = await (await keeper.add('kim', 'technician')).pair(keeper, 'kims-tablet');
  const south = await new Guest(server).comeIn(codes[1] as string);
  stranger = await (await south.add('sky', 'technician')).pair(south, 'skys-phone');
});
afterAll(() => server.stop());

const streamOf = (device: string, visit: string): StreamId => ({ company: 'north', visit, device, epoch: 1 });
const takeOver = (guest: Guest, visit: string, from: string, device = guest.device) =>
  guest.ask('POST', `/api/visits/${visit}/take-over`, { device, from });

/** A connection that writes one event, if any, and then hears. */
async function writing(guest: Guest, visit: string): Promise<RawClient> {
  const stream = streamOf(guest.device as string, visit);
  const { client, heard } = await guest.hello(stream);
  if (heard.kind !== 'welcome') throw new Error(JSON.stringify(heard));
  if (heard.head.seq === 0) {
    client.say({ kind: 'append', ...(await chainFor(stream, ['{"type":"note"}']))[0] });
    expect(await client.hear()).toMatchObject({ kind: 'ack' });
  }
  return client;
}

describe('a visit that another device carries on', () => {
  test('is told to the one that held it at once, by the name of who took it, and on the trail', async () => {
    const phone = await writing(lee, 'moved');
    expect((await kim.ask('GET', '/api/visits/moved/lease')).json).toEqual({
      device: 'lees-phone',
      opener: 'lees-phone',
      steps: [],
    });
    expect(await takeOver(kim, 'moved', 'lees-phone')).toMatchObject({ status: 200, json: { lease: 1 } });
    expect((await lee.ask('GET', '/api/visits/moved/lease')).json).toEqual({
      device: 'kims-tablet',
      opener: 'lees-phone',
      steps: [{ number: 1, device: 'kims-tablet', behind: [{ device: 'lees-phone', epoch: 1, seq: 1 }] }],
    });
    expect(await phone.hear()).toEqual({ kind: 'taken-over', device: 'kims-tablet', name: 'kim’s name', time: NOW });
    // What it writes is taken and kept all the same: nothing is lost.
    const stream = streamOf('lees-phone', 'moved');
    const [, next] = await chainFor(stream, ['{"type":"note"}', '{"type":"more"}']);
    phone.say({ kind: 'append', ...next });
    expect(await phone.hear()).toMatchObject({ kind: 'ack', seq: 2 });
    phone.socket.close();
    const trail = (await keeper.ask('GET', '/api/audit')).json.lines;
    expect(trail).toContainEqual(
      expect.objectContaining({
        deed: 'visit taken over',
        person: kim.person,
        device: 'kims-tablet',
        detail: 'moved from lees-phone',
      }),
    );
  });

  test('is told to a device that was away when it comes back, and not to the one that holds it', async () => {
    const away = (await lee.hello(streamOf('lees-phone', 'moved'))).client;
    expect(await away.hear()).toMatchObject({ kind: 'taken-over', device: 'kims-tablet' });
    away.socket.close();
    const holding = await writing(kim, 'moved');
    expect(await takeOver(kim, 'moved', 'kims-tablet')).toMatchObject({ json: { lease: 1 } });
    holding.socket.close();
  });

  test('goes to one: who knows another holder than there is, is refused; it can be taken back', async () => {
    (await writing(lee, 'contested')).socket.close();
    const third = await (await keeper.add('max', 'technician')).pair(keeper, 'maxs-phone');
    const answers = await Promise.all([
      takeOver(kim, 'contested', 'lees-phone'),
      takeOver(third, 'contested', 'lees-phone'),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    expect(answers.find(({ status }) => status === 409)?.error).toBe('lease-moved');
    const [holder, other] = answers[0]?.status === 200 ? [kim, third] : [third, kim];
    expect((await takeOver(other, 'contested', 'lees-phone')).error).toBe('lease-moved');
    expect((await takeOver(lee, 'contested', holder.device as string)).status).toBe(200);
    // An answer that was lost is asked for again.
    expect((await takeOver(lee, 'contested', holder.device as string)).status).toBe(200);
  });

  test('lets nobody write in a visit who neither began it nor took it over, nor read it by that', async () => {
    (await writing(lee, 'own')).socket.close();
    const ben = await (await keeper.add('ben', 'trainee')).pair(keeper, 'bens-phone');
    for (const guest of [ben, kim]) {
      const { client, heard } = await guest.hello(streamOf(guest.device as string, 'own'));
      expect(heard).toMatchObject({ kind: 'error', code: 'visit-foreign' });
      client.socket.close();
    }
    expect((await ben.ask('GET', '/api/visits/own/record.json')).error).toBe('visit-unknown');
    expect((await ben.ask('GET', '/api/visits/own/keys')).error).toBe('visit-unknown');
    expect((await takeOver(ben, 'own', 'lees-phone')).error).toBe('visit-unknown');
  });

  describe('of whom a device writes more than it was given', () => {
    const at = (minute: number) => ({ at: new Date(NOW + minute * 60_000).toISOString(), mono: minute });
    const note = (text: string, minute: number) => JSON.stringify({ type: 'note.taken', text, time: at(minute) });
    const notes = async (visit: string) =>
      (await keeper.ask('GET', `/api/visits/${visit}/record.json`)).json.notes.map((one: { text: string }) => one.text);

    /** Appends bodies behind what the device wrote of the visit before. */
    async function write(guest: Guest, visit: string, before: readonly string[], bodies: readonly string[]) {
      const stream = streamOf(guest.device as string, visit);
      const { client, heard } = await guest.hello(stream);
      expect(heard.kind).toBe('welcome');
      const chain = await chainFor(stream, [...before, ...bodies]);
      for (const entry of chain.slice(before.length)) {
        client.say({ kind: 'append', ...entry });
        for (let said = await client.hear(); said.kind !== 'ack'; ) said = await client.hear();
      }
      client.socket.close();
      return { all: [...before, ...bodies], end: chain.at(-1) as (typeof chain)[number] };
    }
    const takes = (lease: number, device: string, { seq, hash }: { seq: number; hash: string }, minute: number) =>
      JSON.stringify({
        type: 'input.taken',
        outcomes: 0,
        input: { type: 'took.over.visit', from: { device, epoch: 1, seq, hash }, lease, device: 'x', time: at(minute) },
      });

    test('nothing of it counts: not without a lease, not by one of before, not behind an earlier entry', async () => {
      const visit = 'bounded';
      const first = await write(lee, visit, [], [note('one', 0), note('two', 1)]);
      const [early] = await chainFor(streamOf('lees-phone', visit), first.all);
      await takeOver(kim, visit, 'lees-phone');
      // The one that held it before goes on: that waits, and does not count.
      const late = await write(lee, visit, first.all, [note('late', 2)]);
      expect(await notes(visit)).toEqual(['one', 'two']);
      // Behind an earlier entry than the server had.
      const cut = await write(kim, visit, [], [takes(1, 'lees-phone', early as { seq: number; hash: string }, 3)]);
      await write(kim, visit, cut.all, [note('kept from counting', 4)]);
      expect(await notes(visit)).toEqual(['one', 'two']);
      expect((await takeOver(lee, visit, 'kims-tablet')).json).toMatchObject({ lease: 2 });
      const back = await write(lee, visit, late.all, [takes(2, 'lees-phone', late.end, 5), note('three', 6)]);
      expect(await notes(visit)).toEqual(['one', 'two', 'late', 'three']);
      // Held once, given no more: whichever lease it names.
      for (const lease of [1, 2, 3]) {
        const own = (await kim.ask('GET', `/api/visits/${visit}/streams/kims-tablet/1/chain.jsonl`)).text;
        const bodies = own
          .split('\n')
          .filter((line) => line.includes('batch'))
          .flatMap((line) => JSON.parse(line).entries.map(({ body }: { body: string }) => body));
        await write(kim, visit, bodies, [takes(lease, 'lees-phone', back.end, 7), note('stolen', 8)]);
        expect(await notes(visit)).toEqual(['one', 'two', 'late', 'three']);
      }
    });
  });

  test('takes what a device held until later, though another has the lease by then; it hears so', async () => {
    (await writing(lee, 'late')).socket.close();
    await takeOver(kim, 'late', 'lees-phone');
    const ray = await (await keeper.add('rob', 'technician')).pair(keeper, 'robs-phone');
    await takeOver(ray, 'late', 'kims-tablet');
    // Kim worked without a network meanwhile.
    const { client, heard } = await kim.hello(streamOf('kims-tablet', 'late'));
    expect(heard).toMatchObject({ kind: 'welcome' });
    expect(await client.hear()).toMatchObject({ kind: 'taken-over', device: 'robs-phone' });
    client.say({ kind: 'append', ...(await chainFor(streamOf('kims-tablet', 'late'), ['{"type":"note"}']))[0] });
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    client.socket.close();
  });

  test('is known again where a record was put back: whoever was given it hands in what the server signed of that', async () => {
    const scratch = await mkdtemp(join(tmpdir(), 'readback-'));
    const signer = openReceiptSigner(join(scratch, 'key.pem'));
    const people = await withKeepers(['north'], () => NOW);
    const whole = await runApp({ peopleStore: people.store, clock: () => NOW, signer });
    const boss = await new Guest(whole).comeIn(people.codes[0] as string);
    const one = await (await boss.add('ann', 'technician')).pair(boss, 'anns-phone');
    const two = await (await boss.add('bea', 'technician')).pair(boss, 'beas-phone');
    const first = await one.hello(streamOf('anns-phone', 'back'));
    first.client.say({ kind: 'append', ...(await chainFor(streamOf('anns-phone', 'back'), ['{"type":"note"}']))[0] });
    expect(await first.client.hear()).toMatchObject({ kind: 'ack' });
    first.client.socket.close();
    const { grant } = (await takeOver(two, 'back', 'anns-phone')).json;
    const kept = await people.store.leases('north', 'back');
    await whole.fastify.close();

    // People and devices of before, and nothing of the visit.
    const again = await withKeepers(['north'], () => NOW);
    const put = await runApp({ peopleStore: again.store, clock: () => NOW, signer });
    const chief = await new Guest(put).comeIn(again.codes[0] as string);
    const ann = await (await chief.add('ann', 'technician')).pair(chief, 'anns-phone');
    const bea = await (await chief.add('bea', 'technician')).pair(chief, 'beas-phone');
    const hand = (asked: object, visit = 'back') => new Guest(put).ask('PUT', `/api/visits/${visit}/lease`, asked);
    expect((await hand({ ...grant, text: grant.text.replace('beas', 'anns') })).error).toBe('lease-wrong');
    expect((await hand({ ...grant, text: 'readback receipt 1\n' })).error).toBe('lease-wrong');
    expect((await hand(grant, 'other')).error).toBe('lease-wrong');
    expect((await hand(grant)).status).toBe(204);
    expect((await hand(grant)).status).toBe(204);
    const strip = ({ person: _person, ...lease }: (typeof kept)[number]) => lease;
    expect((await again.store.leases('north', 'back')).map(strip)).toEqual(kept.map(strip));
    // Whichever comes first, the one that opened it stays that.
    for (const [guest, device] of [
      [bea, 'beas-phone'],
      [ann, 'anns-phone'],
    ] as const) {
      const { client, heard } = await guest.hello(streamOf(device, 'back'));
      expect(heard).toMatchObject({ kind: 'welcome' });
      if (device === 'anns-phone') expect(await client.hear()).toMatchObject({ device: 'beas-phone' });
      client.say({ kind: 'append', ...(await chainFor(streamOf(device, 'back'), ['{"type":"note"}']))[0] });
      expect(await client.hear()).toMatchObject({ kind: 'ack' });
      client.socket.close();
    }
    expect((await chief.ask('GET', '/api/visits/back/lease')).json).toMatchObject({ opener: 'anns-phone' });
    // A server that gave it otherwise since then goes by that.
    await put.stop();
    const other = await withKeepers(['north'], () => NOW + 1);
    const given = await runApp({ peopleStore: other.store, clock: () => NOW + 1, signer });
    const lease = { company: 'north', visit: 'back', person: '', takenAt: NOW + 1, behind: [] };
    await other.store.giveLease({ ...lease, number: 0, device: 'anns-phone' });
    await new Guest(given).ask('PUT', '/api/visits/back/lease', grant);
    await new Guest(given).ask('PUT', '/api/visits/back/lease', grant);
    const numbers = (await other.store.leases('north', 'back')).map(({ number }) => number);
    expect(numbers.filter((number) => number >= 0)).toEqual([0]);
    // And whoever held it by the other may send what they wrote: it does not count.
    const owner = await new Guest(given).comeIn(other.codes[0] as string);
    const late = await (await owner.add('bea', 'technician')).pair(owner, 'beas-phone');
    const heardOf = await late.hello(streamOf('beas-phone', 'back'));
    expect(heardOf.heard).toMatchObject({ kind: 'welcome' });
    heardOf.client.socket.close();
    await given.stop();
    await rm(scratch, { recursive: true });
  });

  describe('of names that a device writes', () => {
    const at = { at: new Date(NOW).toISOString(), mono: 0 };
    const says = (vouched: object | undefined, from = 'own-device') => [
      JSON.stringify({
        type: 'input.taken',
        outcomes: 1,
        input: { type: 'supervisor.acknowledged', supervisor: 'Sue', from, vouched, time: at },
      }),
      JSON.stringify({ type: 'supervisor.acknowledged', supervisor: 'Sue', from, time: at }),
    ];

    test('a supervisor’s word counts as theirs where the server signed it for this visit, and once', async () => {
      const visit = 'signed';
      const vouchedFor = (of: string, time = NOW) => {
        const word = { company: 'north', visit: of, person: 'p', supervisor: 'Sue', time };
        return { person: 'p', time, ...server.signer.signText(acknowledgementText(word)) };
      };
      const mine = vouchedFor(visit);
      const forged = { ...mine, signature: 'A'.repeat(86) };
      const bodies = [undefined, forged, vouchedFor('other'), mine, mine, { ...mine, time: NOW + 1 }].flatMap(
        (vouched) => says(vouched),
      );
      const note = JSON.stringify({ type: 'note.taken', text: '', time: at });
      // One that nothing came before; the same signature written otherwise; more than one outcome, by other names.
      const again = vouchedFor(visit, NOW + 5);
      const odd = [`${again.signature}==`, `${again.signature} `, `${again.signature.slice(0, -1)}B`];
      const all = [
        ...[...bodies, note, says(mine)[1] as string],
        ...says(again),
        ...odd.flatMap((signature) => says({ ...again, signature })),
        ...[says(vouchedFor(visit, NOW + 6))[0] as string, note, says(mine)[1] as string, says(mine)[1] as string],
        says(undefined, 'server')[1] as string,
      ];
      const { client } = await lee.hello(streamOf('lees-phone', visit));
      for (const entry of await chainFor(streamOf('lees-phone', visit), all)) {
        client.say({ kind: 'append', ...entry });
        expect(await client.hear()).toMatchObject({ kind: 'ack' });
      }
      client.socket.close();
      const { acknowledgements } = (await keeper.ask('GET', `/api/visits/${visit}/record.json`)).json;
      expect(acknowledgements.map(({ from }: { from: string }) => from)).toEqual([
        ...['unproven', 'unproven', 'unproven', 'own-device', 'unproven', 'unproven', 'unproven'],
        ...['own-device', 'unproven', 'unproven', 'unproven', 'own-device', 'unproven', 'unproven'],
      ]);
    });

    test('a word of no form is none, and holds up no reader', async () => {
      const odd = [{}, [], 5, null, { signature: 5 }, { signature: null }, { person: { toString: 1 }, time: {} }];
      const bodies = odd.flatMap((vouched) => says(vouched as object));
      const { client } = await lee.hello(streamOf('lees-phone', 'odd-words'));
      for (const entry of await chainFor(streamOf('lees-phone', 'odd-words'), bodies)) {
        client.say({ kind: 'append', ...entry });
        expect(await client.hear()).toMatchObject({ kind: 'ack' });
      }
      client.socket.close();
      const { acknowledgements } = (await keeper.ask('GET', '/api/visits/odd-words/record.json')).json;
      expect(acknowledgements).toHaveLength(odd.length);
      expect(new Set(acknowledgements.map(({ from }: { from: string }) => from))).toEqual(new Set(['unproven']));
    });

    test('a remark that a device writes is told as one from that device; the server’s streams are its own', async () => {
      const visit = 'remarked';
      const body = JSON.stringify({ type: 'remark.made', author: 'Sue', text: 'well done', time: at });
      const { client } = await lee.hello(streamOf('lees-phone', visit));
      client.say({ kind: 'append', ...(await chainFor(streamOf('lees-phone', visit), [body]))[0] });
      expect(await client.hear()).toMatchObject({ kind: 'ack' });
      client.socket.close();
      await keeper.ask('POST', `/api/visits/${visit}/remarks`, { text: 'mine' });
      const { remarks } = (await keeper.ask('GET', `/api/visits/${visit}/record.json`)).json;
      expect(remarks).toMatchObject([{ author: 'Sue', from: 'this-device' }, { text: 'mine' }]);
      expect(remarks[1]).not.toHaveProperty('from');
      const { streams } = (await keeper.ask('GET', `/api/visits/${visit}`)).json;
      const own = streams.find(({ device }: { device: string }) => device !== 'lees-phone').device;
      const { code } = (await keeper.ask('POST', `/api/people/${lee.person}/pairing`)).json;
      for (const name of [own, 'remarks-1']) {
        expect((await lee.ask('POST', '/api/pair', lee.pairing(code, name))).error).toBe('device-taken');
      }
      const open = await runApp({});
      const raw = await RawClient.open(open.url);
      const stream = { company: 'local', visit, device: 'remarks-1', epoch: 1 };
      expect(await raw.hello(stream)).toMatchObject({ kind: 'error', code: 'stream-foreign' });
      expect((await takeOver(new Guest(open), visit, 'x', 'remarks-1')).error).toBe('device-unknown');
      await open.stop();
    });
  });

  test('is found by a trainee on another device of theirs, among the visits of their own alone', async () => {
    const tia = await (await keeper.add('tia', 'trainee')).pair(keeper, 'tias-phone');
    (await writing(tia, 'tias')).socket.close();
    (await writing(lee, 'lees')).socket.close();
    const list = await tia.ask('GET', '/api/visits');
    expect(list.json.visits.map(({ visit }: { visit: string }) => visit)).toEqual(['tias']);
    expect((await tia.ask('GET', '/api/visits?offset=1')).json.visits).toEqual([]);
    const tablet = new Guest(server);
    for (const [name, value] of tia.cookies) tablet.cookies.set(name, value);
    tablet.person = tia.person;
    await tablet.pair(keeper, 'tias-tablet');
    expect(await takeOver(tablet, 'tias', 'tias-phone')).toMatchObject({ status: 200 });
  });

  test('ends a watch of who may read no more', async () => {
    (await writing(lee, 'watched')).socket.close();
    const eve = await keeper.add('eve', 'technician');
    const { client } = await eve.watch('north', 'watched', undefined);
    expect((await keeper.ask('PATCH', `/api/people/${eve.person}`, { role: 'trainee' })).status).toBeLessThan(300);
    expect((await client.closed).code).toBe(1008);
  });

  test('goes to nobody’s device but one’s own, and to no other company', async () => {
    (await writing(lee, 'kept')).socket.close();
    expect((await takeOver(kim, 'kept', 'lees-phone', 'lees-phone')).error).toBe('device-unknown');
    expect((await takeOver(kim, 'kept', 'lees-phone', 'skys-phone')).error).toBe('device-unknown');
    expect((await takeOver(stranger, 'kept', 'lees-phone')).error).toBe('visit-unknown');
    expect((await takeOver(kim, 'never-was', 'lees-phone')).error).toBe('visit-unknown');
    const revoked = await (await keeper.add('ray', 'technician')).pair(keeper, 'rays-phone');
    await keeper.ask('DELETE', '/api/devices/rays-phone');
    expect((await takeOver(revoked, 'kept', 'lees-phone')).error).toBe('device-unknown');
    for (const body of [{}, { device: 'kims-tablet' }, { device: 'A', from: 'x', more: 1 }]) {
      expect((await kim.ask('POST', '/api/visits/kept/take-over', body)).error).toBe('request-wrong');
    }
    const back = (await lee.hello(streamOf('lees-phone', 'kept'))).client;
    back.socket.close();
    expect((await takeOver(kim, 'kept', 'lees-phone')).status).toBe(200);
  });

  test('where nobody signs in any device may take it over', async () => {
    const open = await runApp({});
    try {
      const stream: StreamId = { company: 'local', visit: 'here', device: 'page-one', epoch: 1 };
      const client = await RawClient.open(open.url);
      client.say({ kind: 'hello', protocol: 1, stream });
      expect(await client.hear()).toMatchObject({ kind: 'welcome' });
      client.say({ kind: 'append', ...(await chainFor(stream, ['{"type":"note"}']))[0] });
      expect(await client.hear()).toMatchObject({ kind: 'ack' });
      expect((await takeOver(new Guest(open), 'here', 'page-one', 'page-two')).status).toBe(200);
      expect(await client.hear()).toMatchObject({ kind: 'taken-over', device: 'page-two', name: '' });
      client.socket.close();
    } finally {
      await open.stop();
    }
  });
});
