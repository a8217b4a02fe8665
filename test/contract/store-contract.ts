import { describe, expect, test } from 'vitest';
import type { Entry, StreamId } from '../../grammar/visit/envelope.ts';
import type { EventStore, ReceivedEvent } from '../../server/store/event-store.ts';
import { chainFor } from '../server/running-app.ts';

let count = 0;
const freshStream = (): StreamId => {
  count += 1;
  return { company: 'local', visit: `store-${count}`, device: 'phone', epoch: 1 };
};
const received = (stream: StreamId, entries: readonly Entry[], receivedAt = 1_000): ReceivedEvent[] =>
  entries.map((entry) => ({ ...entry, stream, receivedAt }));
const whole = { after: 0, limit: 1_000 };

/** What every EventStore must do. `reopen` closes the store and opens it again on the same data. */
export function storeContract(name: string, opened: () => EventStore, reopen: () => Promise<void>): void {
  describe(`${name}: keeping`, () => {
    test('a stream that is not there yet ends at its start', async () => {
      const stream = freshStream();
      const outcome = await opened().open(stream);
      expect(outcome).toMatchObject({ kind: 'open', head: { seq: 0 } });
      expect(await opened().streams('local', stream.visit)).toEqual([]);
    });

    test('a batch is judged in order, each event by what stands before it', async () => {
      const stream = freshStream();
      const [one, two, three, four] = await chainFor(stream, ['1', '2', '3', '4']);
      const [fork] = await chainFor(stream, ['ONE']);
      const batch = [one, one, fork, two, four, { ...three!, body: 'changed' }, three] as Entry[];
      expect(await opened().commit(received(stream, batch))).toEqual([
        { kind: 'stored' },
        { kind: 'duplicate' },
        { kind: 'fork', held: one?.hash },
        { kind: 'stored' },
        { kind: 'gap', need: 3 },
        { kind: 'broken' },
        { kind: 'stored' },
      ]);
      expect((await opened().events('local', stream.visit, whole)).map((event) => event.body)).toEqual(['1', '2', '3']);
      expect(await opened().streams('local', stream.visit)).toMatchObject([{ head: { seq: 3 }, forks: 1 }]);
    });

    test('one batch may hold events of many streams', async () => {
      const streams = [freshStream(), freshStream(), freshStream()];
      const chains = await Promise.all(streams.map((stream) => chainFor(stream, ['a', 'b'])));
      const batch = [0, 1].flatMap((at) => streams.flatMap((stream, n) => received(stream, [chains[n]![at]!])));
      expect(await opened().commit(batch)).toEqual(batch.map(() => ({ kind: 'stored' })));
      for (const stream of streams) {
        expect(await opened().streams('local', stream.visit)).toMatchObject([{ head: { seq: 2 } }]);
      }
    });

    test('bodies come back byte for byte', async () => {
      const stream = freshStream();
      const bodies = [
        '',
        '\u0000',
        '{ "a" :\t1 }\n',
        '½ 冷媒 🔧 \ufeff',
        "'; DROP TABLE event; --",
        'x'.repeat(60_000),
      ];
      await opened().commit(received(stream, await chainFor(stream, bodies)));
      expect((await opened().events('local', stream.visit, whole)).map((event) => event.body)).toEqual(bodies);
    });

    test('where a device said that its stream ends is told until that much is held, also after opening again', async () => {
      const stream = freshStream();
      const chain = await chainFor(stream, ['1', '2', '3']);
      await opened().commit(received(stream, chain.slice(0, 1)));
      const head = { seq: 3, hash: chain[2]!.hash };
      await opened().note([{ stream, head, saidAt: 2_000 }]);
      await opened().note([{ stream, head: { seq: 2, hash: chain[1]!.hash }, saidAt: 3_000 }]);
      await reopen();
      expect(await opened().streams('local', stream.visit)).toMatchObject([{ head: { seq: 1 }, said: 3 }]);
      const [listed] = await opened().visits('local', { limit: 1, offset: 0 });
      expect(listed).toMatchObject({ visit: stream.visit, events: 1, said: 3 });
      await opened().commit(received(stream, chain.slice(1)));
      for (const one of await opened().streams('local', stream.visit)) expect(one.said).toBeUndefined();
    });

    test('a visit of which nothing came yet is listed by what its device said', async () => {
      const stream = freshStream();
      await opened().note([{ stream, head: { seq: 42, hash: 'ab'.repeat(32) }, saidAt: 5_000 }]);
      await reopen();
      expect(await opened().streams('local', stream.visit)).toMatchObject([{ head: { seq: 0 }, said: 42 }]);
      const all = await opened().visits('local', { limit: 1_000, offset: 0 });
      expect(all.find(({ visit }) => visit === stream.visit)).toMatchObject({
        events: 0,
        said: 42,
        lastReceivedAt: 5_000,
      });
      expect(await opened().streams('other', stream.visit)).toEqual([]);
    });

    test('a sealed stream lacks nothing: the epoch that carries on has it', async () => {
      const stream = freshStream();
      const chain = await chainFor(stream, ['1']);
      await opened().commit(received(stream, chain));
      const head = { seq: 1, hash: chain[0]!.hash };
      await opened().note([{ stream, head: { seq: 9, hash: 'cd'.repeat(32) }, saidAt: 2_000 }]);
      await opened().open({ ...stream, epoch: 2 }, { epoch: 1, head });
      const [older] = await opened().streams('local', stream.visit);
      expect(older).toMatchObject({ epoch: 1, sealed: true });
      expect(older?.said).toBeUndefined();
    });

    test('the same fork sent again and again is kept once', async () => {
      const stream = freshStream();
      const [one] = await chainFor(stream, ['1']);
      const [fork] = await chainFor(stream, ['ONE']);
      await opened().commit(received(stream, [one!, fork!, fork!]));
      await opened().commit(received(stream, [fork!]));
      expect(await opened().streams('local', stream.visit)).toMatchObject([{ forks: 1 }]);
    });

    test('what was kept is there after the store was closed and opened', async () => {
      const stream = freshStream();
      const chain = await chainFor(stream, ['1', '2', '3']);
      await opened().commit(received(stream, chain.slice(0, 2)));
      await reopen();
      expect(await opened().open(stream)).toEqual({ kind: 'open', head: { seq: 2, hash: chain[1]?.hash } });
      expect(await opened().commit(received(stream, chain.slice(2)))).toEqual([{ kind: 'stored' }]);
    });
  });

  describe(`${name}: epochs`, () => {
    test('a later epoch seals the older at its link: nothing beyond it, but what is missing up to it', async () => {
      const stream = freshStream();
      const chain = await chainFor(stream, ['1', '2', '3', '4']);
      const later = { ...stream, epoch: 2 };
      await opened().commit(received(stream, chain.slice(0, 2)));
      // The phone knows that three were held: this store, restored from a backup, has two.
      const follows = { epoch: 1, head: { seq: 3, hash: chain[2]!.hash } };
      expect(await opened().open(later, follows)).toMatchObject({ kind: 'open', head: { seq: 0 } });
      expect(await opened().open(stream)).toMatchObject({ kind: 'open', head: { seq: 2 } });
      expect(await opened().commit(received(stream, chain.slice(2)))).toEqual([{ kind: 'stored' }, { kind: 'sealed' }]);
      expect(await opened().open(stream)).toEqual({ kind: 'sealed' });
      expect(await opened().open(later, follows)).toMatchObject({ kind: 'open' });
    });

    test('a link that speaks against what is held is refused', async () => {
      const stream = freshStream();
      const chain = await chainFor(stream, ['1', '2']);
      await opened().commit(received(stream, chain));
      for (const head of [
        { seq: 1, hash: chain[0]!.hash },
        { seq: 2, hash: '0'.repeat(64) },
      ]) {
        const outcome = await opened().open({ ...stream, epoch: 2 }, { epoch: 1, head });
        expect(outcome).toEqual({ kind: 'unlinked' });
      }
      const backwards = { epoch: 3, head: { seq: 0, hash: '0'.repeat(64) } };
      expect(await opened().open({ ...stream, epoch: 2 }, backwards)).toEqual({ kind: 'unlinked' });
    });
  });

  describe(`${name}: reading`, () => {
    test('visits are listed by their latest event, with counts, a page at a time, for one company', async () => {
      const company = `company-${count}`;
      const visits = [freshStream(), freshStream(), freshStream()].map((stream) => ({ ...stream, company }));
      for (const [at, stream] of visits.entries()) {
        await opened().commit(received(stream, await chainFor(stream, ['1', '2']), 1_000 + at));
      }
      const [oldest, middle, newest] = visits;
      const again = { ...(oldest as StreamId), device: 'tablet' };
      await opened().commit(received(again, await chainFor(again, ['x']), 5_000));
      const list = await opened().visits(company, { limit: 10, offset: 0 });
      expect(list.map(({ visit }) => visit)).toEqual([oldest?.visit, newest?.visit, middle?.visit]);
      expect(list[0]).toEqual({
        visit: oldest?.visit,
        streams: 2,
        events: 3,
        firstReceivedAt: 1_000,
        lastReceivedAt: 5_000,
        forks: 0,
      });
      expect(await opened().visits(company, { limit: 1, offset: 2 })).toMatchObject([{ visit: middle?.visit }]);
      expect(await opened().visits('nobody', { limit: 10, offset: 0 })).toEqual([]);
    });

    test('one stream is read in parts, by seq, byte for byte', async () => {
      const stream = freshStream();
      const entries = await chainFor(stream, ['1', 'zwei ü', '3', '4', '5']);
      await opened().commit(received(stream, entries, 7_000));
      await opened().commit(
        received({ ...stream, device: 'tablet' }, await chainFor({ ...stream, device: 'tablet' }, ['x'])),
      );
      const held = entries.map((entry) => ({ ...entry, receivedAt: 7_000, arrival: expect.any(Number) }));
      expect(await opened().part(stream, { after: 0, limit: 2 })).toEqual(held.slice(0, 2));
      expect(await opened().part(stream, { after: 2, limit: 10 })).toEqual(held.slice(2));
      expect(await opened().part(stream, { after: 5, limit: 10 })).toEqual([]);
      expect(await opened().part({ ...stream, company: 'other' }, { after: 0, limit: 10 })).toEqual([]);
    });

    test('another company sees nothing of a visit, even of the same name', async () => {
      const stream = freshStream();
      const other = { ...stream, company: 'other' };
      await opened().commit(received(stream, await chainFor(stream, ['mine'])));
      await opened().commit(received(other, await chainFor(other, ['theirs'])));
      const bodies = async (company: string) =>
        (await opened().events(company, stream.visit, whole)).map((event) => event.body);
      expect(await bodies('local')).toEqual(['mine']);
      expect(await bodies('other')).toEqual(['theirs']);
      expect(await bodies('third')).toEqual([]);
      expect(await opened().streams('third', stream.visit)).toEqual([]);
      expect(await opened().beyond('third', stream.visit, [], 10)).toEqual([]);
    });

    test('events of several devices come by arrival, each device in its own order, a page at a time', async () => {
      const phone = freshStream();
      const tablet = { ...phone, device: 'tablet' };
      const [a, b] = await Promise.all([chainFor(phone, ['p1', 'p2', 'p3']), chainFor(tablet, ['t1', 't2'])]);
      for (const part of [
        received(phone, a.slice(0, 2)),
        received(tablet, b.slice(0, 1)),
        received(phone, a.slice(2)),
        received(tablet, b.slice(1)),
      ]) {
        await opened().commit(part);
      }
      const first = await opened().events('local', phone.visit, { after: 0, limit: 3 });
      const rest = await opened().events('local', phone.visit, { after: first.at(-1)!.arrival, limit: 3 });
      expect([...first, ...rest].map((event) => event.body)).toEqual(['p1', 'p2', 't1', 'p3', 't2']);
      expect(first[2]).toMatchObject({ device: 'tablet', epoch: 1, seq: 1, hash: b[0]?.hash, receivedAt: 1_000 });
    });

    test('what lies beyond known positions is found stream by stream', async () => {
      const phone = freshStream();
      const tablet = { ...phone, device: 'tablet' };
      await opened().commit(received(phone, await chainFor(phone, ['p1', 'p2', 'p3'])));
      await opened().commit(received(tablet, await chainFor(tablet, ['t1', 't2'])));
      const beyond = async (positions: { device: string; epoch: number; seq: number }[], limit = 10) =>
        (await opened().beyond('local', phone.visit, positions, limit)).map((event) => event.body);
      expect(await beyond([])).toEqual(['p1', 'p2', 'p3', 't1', 't2']);
      expect(await beyond([{ device: 'phone', epoch: 1, seq: 2 }])).toEqual(['p3', 't1', 't2']);
      expect(await beyond([{ device: 'phone', epoch: 2, seq: 2 }])).toEqual(['p1', 'p2', 'p3', 't1', 't2']);
      expect(await beyond([{ device: 'phone', epoch: 1, seq: 9 }], 1)).toEqual(['t1']);
    });

    test('read on from page to page, all comes once and by arrival, however the streams lie between each other', async () => {
      const phone = freshStream();
      const tablet = { ...phone, device: 'tablet' };
      const names = (letter: string, count: number) => Array.from({ length: count }, (_, at) => `${letter}${at + 1}`);
      const [a, b] = [await chainFor(phone, names('p', 23)), await chainFor(tablet, names('t', 9))];
      let taken: readonly [number, number] = [0, 0];
      for (const [p, t] of [
        [9, 0],
        [9, 1],
        [10, 8],
        [23, 8],
        [23, 9],
      ] as const) {
        if (p > taken[0]) await opened().commit(received(phone, a.slice(taken[0], p)));
        if (t > taken[1]) await opened().commit(received(tablet, b.slice(taken[1], t)));
        taken = [p, t];
      }
      const all = (await opened().events('local', phone.visit, { after: 0, limit: 99 })).map(({ body }) => body);
      for (const limit of [1, 4, 7]) {
        const positions = new Map<string, { device: string; epoch: number; seq: number }>();
        const read: string[] = [];
        for (;;) {
          const events = await opened().beyond('local', phone.visit, [...positions.values()], limit);
          for (const { device, epoch, seq } of events) positions.set(device, { device, epoch, seq });
          read.push(...events.map(({ body }) => body));
          if (events.length < limit) break;
        }
        expect(read).toEqual(all);
      }
    });
  });
}
