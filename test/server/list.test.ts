import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FAULTS_BY_ID } from '../../grammar/vocabulary/faults.ts';
import { nameIn } from '../../grammar/vocabulary/rows-by.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { openSqliteVisitIndex } from '../../server/store/sqlite-visit-index.ts';
import { putVisit, RECORDED, recordedBodies } from '../browser/put-visit.ts';
import { scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { type RunningApp, runApp } from './running-app.ts';

let server: RunningApp;
beforeAll(async () => {
  server = await runApp();
  for (const name of RECORDED) await putVisit(server.url, name, recordedBodies(name));
  await putVisit(server.url, 'cut', recordedBodies('library').slice(0, 120));
  // Whoever asks waits a moment for what is due, and no longer: a busy machine may need to be asked again.
  while ((await ask('/api/list')).behind > 0) await new Promise((resolve) => setTimeout(resolve, 100));
}, 30_000);
afterAll(() => server.stop());

// biome-ignore lint/suspicious/noExplicitAny: each test says what it expects of an answer
const ask = (path: string) => getJson<any>(`${server.url}${path}`);
const names = async (query: string): Promise<string[]> =>
  (await ask(`/api/list?${query}`)).visits.map(({ visit }: { visit: string }) => visit).sort();

describe('the list of visits', () => {
  test('tells of each what its record came to', async () => {
    const { visits, total } = await ask('/api/list');
    expect(total).toBe(5);
    const library = visits.find(({ visit }: { visit: string }) => visit === 'library');
    // What the recorded visit must come to stands by hand in test/client/visit/recorded-visits.test.ts.
    expect(library).toMatchObject({
      site: 'reading room',
      complaint: 'does not cool',
      closed: true,
      finding: 'fan-capacitor-weak',
      parts: ['dual-capacitor'],
      cools: 'fits',
    });
    expect(library.certainty).toBeGreaterThan(0.9);
    expect(library.events).toBe(recordedBodies('library').length);
  });

  test('finds by what was said, by what was found, by part and by complaint', async () => {
    expect(await names('words=compressor+runs+then+trips')).toContain('library');
    expect(await names('words=fan+section+weak')).toContain('library');
    expect(await names('words=dual+capacitor')).toContain('library');
    expect(await names('words=reading+room')).toHaveLength(5);
    expect(await names('words=unheard-of')).toEqual([]);
    // A word from its beginning on; a single letter begins too many, and counts as a word.
    expect(await names('words=reading+roo')).toHaveLength(5);
    expect(await names('words=reading+room+%3Cw%3E')).toEqual([]);
  });

  test('finds by the likeliest suspect of a visit without a finding, and by places and values that were read', async () => {
    const { visits } = await ask('/api/list?words=cut');
    expect(visits).toMatchObject([{ visit: 'cut', likeliest: expect.any(String) }]);
    const name = nameIn(FAULTS_BY_ID, visits[0].likeliest);
    expect(await names(`words=${encodeURIComponent(name)}&state=running`)).toEqual(['cut']);
    // Also a value that was set right later: the record shows it as it was.
    const said = recordedBodies('library')
      .map((body) => JSON.parse(body))
      .filter(({ type }) => type === 'reading.logged')
      .map(({ reading }) => reading);
    for (const { at, value } of said) {
      if (typeof value === 'number')
        expect([value, await names(`words=${value}`)]).toEqual([value, expect.arrayContaining(['library'])]);
      for (const point of at)
        expect([point, await names(`words=${point}`)]).toEqual([point, expect.arrayContaining(['library'])]);
    }
    expect(said.length).toBeGreaterThan(10);
  });

  test('finds nothing by a search of signs alone', async () => {
    for (const words of ['🔧', '%', '*', '"', '( )'])
      expect([words, await names(`words=${encodeURIComponent(words)}`)]).toEqual([words, []]);
    expect(await names('words=+')).toHaveLength(5);
  });

  test('filters by state, finding, part and day', async () => {
    expect(await names('state=running')).toEqual(['cut']);
    expect(await names('state=closed')).toEqual([...RECORDED]);
    expect(await names('finding=fan-capacitor-weak&part=dual-capacitor&state=closed')).toEqual(['library']);
    expect(await names(`from=${Date.UTC(2026, 5, 15)}&until=${Date.UTC(2026, 5, 16)}`)).toHaveLength(5);
    expect(await names(`until=${Date.UTC(2026, 5, 15)}`)).toEqual([]);
  });

  test('brings a visit that grows up to date when it is asked for', async () => {
    const bodies = recordedBodies('fuse');
    await putVisit(server.url, 'growing', bodies.slice(0, 50));
    expect(await names('state=running')).toContain('growing');
    await putVisit(server.url, 'growing', bodies);
    expect(await names('state=closed')).toContain('growing');
    expect((await ask('/api/list?words=growing')).visits[0].events).toBe(bodies.length);
  });

  test('refuses what is no filter, with a sentence', async () => {
    for (const query of ['limit=0', 'limit=1000', 'state=gone', 'from=yesterday', `words=${'x'.repeat(300)}`]) {
      const answer = await fetch(`${server.url}/api/list?${query}`);
      expect([query, answer.status]).toEqual([query, 400]);
      expect(((await answer.json()) as { sentence: string }).sentence).toMatch(/^The request does not fit/);
    }
  });

  test('offers other visits to the same unit', async () => {
    const { visits } = await ask('/api/visits/library/same-unit');
    expect(visits.map(({ visit }: { visit: string }) => visit)).toContain('one-pole');
    expect((await fetch(`${server.url}/api/visits/nowhere/same-unit`)).status).toBe(404);
  });
});

describe('odd records in the list', () => {
  let odd = 0;
  const time = { at: '2026-06-15T14:00:00.000Z', mono: 0 };
  const opened = (change: object) =>
    JSON.stringify({
      type: 'visit.opened',
      visit: 'x',
      site: 'Site',
      complaint: 'none',
      role: 'technician',
      unit: { id: 'unknown' },
      software: 'other',
      time,
      ...change,
    });

  test.each([
    ['one that is no JSON at all', ['nonsense', '\u0000']],
    ['one cut in the middle of a body', [opened({}), recordedBodies('library')[3]!.slice(0, 40)]],
    ['one of another program', ['{"hello":"world"}', '[]', 'null', '42']],
    ['one with an event whose fields are damaged', [opened({}), JSON.stringify({ type: 'reading.logged', time })]],
    ['one of unknown kinds of events', [opened({}), JSON.stringify({ type: 'drone.launched', time })]],
    ['one whose clock says a day that is none', [opened({ time: { at: 'yesterday', mono: 0 } })]],
    ['one whose unit is no unit', [opened({ unit: { id: 'unknown', serial: 'S', made: 'new' } })]],
    [
      'one with a note of 5,000 characters',
      [opened({}), JSON.stringify({ type: 'note.taken', text: 'ab '.repeat(1_666), time })],
    ],
  ])('%s is listed and holds up no other', async (_, bodies) => {
    odd += 1;
    const name = `odd-${odd}`;
    await putVisit(server.url, name, bodies);
    // Whoever asks waits a moment for what is due; a slow store takes more than one.
    await expect.poll(async () => (await ask('/api/list?limit=200')).behind, { timeout: 10_000 }).toBe(0);
    const { visits } = await ask('/api/list?limit=200');
    expect(visits.map(({ visit }: { visit: string }) => visit)).toContain(name);
  });
});

describe('a remark', () => {
  const remark = (visit: string, body: object) =>
    fetch(`${server.url}/api/visits/${visit}/remarks`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: server.url },
      body: JSON.stringify(body),
    });

  test('becomes an event of a stream of its own, chained and found by its words, and changes nothing of the visit', async () => {
    const before = await ask('/api/visits/library/record.json');
    const answers = await Promise.all(
      ['torque the lugs', 'next time'].map((text) => remark('library', { text, author: 'Ines' })),
    );
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
    const { streams } = await ask('/api/visits/library');
    expect(streams.map(({ head }: { head: { seq: number } }) => head.seq).sort()).toEqual([
      2,
      recordedBodies('library').length,
    ]);
    expect((await ask('/api/visits/library/check')).findings).toEqual([]);
    const after = await ask('/api/visits/library/record.json');
    // Both were sent at once: either may have come first.
    expect(after.remarks).toHaveLength(2);
    expect(after.remarks).toMatchObject(
      expect.arrayContaining(
        ['torque the lugs', 'next time'].map((text) => expect.objectContaining({ author: 'Ines', text })),
      ),
    );
    expect({ ...after, remarks: [], events: 0, lastEvent: '' }).toEqual({
      ...before,
      remarks: [],
      events: 0,
      lastEvent: '',
    });
    expect(await names('words=torque')).toEqual(['library']);
  });

  test('is made whenever somebody reads: it makes the visit no longer', async () => {
    const minutes = async () =>
      (await ask('/api/list?limit=100')).visits.find(({ visit }: { visit: string }) => visit === 'library').minutes;
    const before = await minutes();
    expect(before).toBeGreaterThan(1);
    expect((await remark('library', { text: 'later' })).status).toBe(200);
    expect(await minutes()).toBe(before);
  });

  test('may be long, and in any script, and is kept as it was written', async () => {
    const text = `${'مرحبا 😀 '.repeat(500)}<script>alert(1)</script>`;
    expect((await remark('fuse', { text })).status).toBe(200);
    expect((await ask('/api/visits/fuse/record.json')).remarks[0].text).toBe(text);
  });

  test('of nothing, of too much, or beside no visit is refused with a sentence', async () => {
    for (const [visit, body, status] of [
      ['fuse', { text: '' }, 400],
      ['fuse', { text: 'x'.repeat(5_001) }, 400],
      ['fuse', {}, 400],
      ['nowhere', { text: 'x' }, 404],
    ] as const) {
      const answer = await remark(visit, body);
      expect(answer.status).toBe(status);
      expect(((await answer.json()) as { sentence: string }).sentence).toMatch(/\w/);
    }
  });
});

describe('the fleet', () => {
  test('counts the visits by what was found, what was fitted and how long a step took', async () => {
    const { visits, tables } = await ask('/api/fleet');
    expect(visits).toBeGreaterThanOrEqual(5);
    const rowsOf = (id: string) => tables.find((table: { id: string }) => table.id === id).rows as unknown[][];
    expect(rowsOf('findings').find(([finding]) => finding === 'fan-capacitor-weak')?.[1]).toBe(1);
    expect(rowsOf('parts').find(([part]) => part === 'dual-capacitor')).toBeDefined();
    expect(rowsOf('months').find(([month]) => month === '06')).toBeDefined();
    expect(rowsOf('steps').length).toBeGreaterThan(10);
    expect(rowsOf('steps').filter(([step]) => String(step).includes('#'))).toEqual([]);
    expect(rowsOf('ages')[0]?.[0]).toBe('unknown');
  });

  test('is taken away as CSV, a table a file', async () => {
    const answer = await fetch(`${server.url}/api/fleet.csv?table=findings`);
    expect(answer.headers.get('content-type')).toContain('text/csv');
    const [head, ...rows] = (await answer.text()).trimEnd().split('\r\n');
    expect(head).toBe('finding,visits,share,median-certainty');
    expect(rows.length).toBeGreaterThan(2);
    expect((await fetch(`${server.url}/api/fleet.csv?table=people`)).status).toBe(400);
  });
});

test('a server that starts beside a record without its index, or with one that fell behind, makes it anew', async () => {
  const scratch = scratchFolder();
  const [record, file] = [join(scratch.path, 'readback.sqlite'), join(scratch.path, 'visit-index.sqlite')];
  const start = async () => runApp({ store: openSqliteStore(record), index: await openSqliteVisitIndex(file) });
  const total = async ({ url }: RunningApp) => (await getJson<{ total: number }>(`${url}/api/list`)).total;
  const first = await start();
  await putVisit(first.url, 'library', recordedBodies('library'));
  expect(await total(first)).toBe(1);
  await first.stop();
  const unindexed = await runApp({ store: openSqliteStore(record) });
  await putVisit(unindexed.url, 'fuse', recordedBodies('fuse'));
  await unindexed.stop();
  const again = await start();
  expect(await total(again)).toBe(2);
  await again.stop();
  scratch.remove();
}, 30_000);
