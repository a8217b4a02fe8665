import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { REPEAT_WITHIN_DAYS, type VisitBrief, type VisitIndex } from '../../server/store/visit-index.ts';
import { SEED, tries } from '../how-much.ts';

const DAY = 86_400_000;
const NOON = Date.UTC(2026, 5, 15, 12);
let count = 0;

/** A brief that fits together; every company here is a fresh one. */
export function briefOf(change: Partial<VisitBrief> = {}): VisitBrief {
  count += 1;
  return {
    visit: `visit-${count}`,
    openedAt: NOON,
    lastReceivedAt: NOON + count,
    events: 10,
    device: 'phone',
    closed: true,
    role: 'technician',
    site: 'Town library',
    complaint: 'does not cool',
    model: '',
    serial: '',
    technician: '',
    parts: [],
    works: [],
    cautionsOpen: 0,
    unproven: 0,
    minutes: 40,
    steps: [],
    misheard: [],
    setRight: [],
    words: '',
    ...change,
  };
}

const page = { limit: 100, offset: 0 };

/** What every VisitIndex must do. `reopen` closes it and opens it again on the same data. */
export function visitIndexContract(name: string, opened: () => VisitIndex, reopen: () => Promise<void>): void {
  const fresh = () => {
    count += 1;
    return `company-${count}`;
  };
  const fill = async (...briefs: readonly VisitBrief[]) => {
    const company = fresh();
    for (const brief of briefs) await opened().put(company, brief);
    return company;
  };
  const namesOf = async (company: string, filter: Parameters<VisitIndex['list']>[1] = {}) =>
    (await opened().list(company, filter, page)).visits.map(({ visit }) => visit);

  describe(`${name}: a list`, () => {
    test('gives back what was put, the latest activity first, and the newest state of each alone', async () => {
      const [a, b] = [
        briefOf({ finding: 'contactor-coil-open', certainty: 0.97, parts: ['contactor'] }),
        briefOf({ made: 2011 }),
      ];
      const company = await fill(a, b, { ...a, lastReceivedAt: NOON + 10 * DAY, unproven: 2 });
      const { visits, total } = await opened().list(company, {}, page);
      expect(total).toBe(2);
      const { steps: _s, misheard: _m, setRight: _r, words: _w, ...shown } = a;
      expect(visits[0]).toEqual({ ...shown, lastReceivedAt: NOON + 10 * DAY, unproven: 2, before: 0 });
      expect(visits[1]).toMatchObject({ visit: b.visit, made: 2011 });
    });

    test('is read in pages that hold each visit once', async () => {
      const briefs = Array.from({ length: 7 }, () => briefOf());
      const company = await fill(...briefs);
      const pages = await Promise.all([0, 3, 6].map((offset) => opened().list(company, {}, { limit: 3, offset })));
      expect(pages.map(({ visits }) => visits.length)).toEqual([3, 3, 1]);
      expect(new Set(pages.flatMap(({ visits }) => visits.map(({ visit }) => visit))).size).toBe(7);
      expect(pages.every(({ total }) => total === 7)).toBe(true);
    });

    test('answers for one company alone', async () => {
      const brief = briefOf({
        serial: 'SN1',
        words: 'blower',
        technician: 'Mo',
        finding: 'supply-low',
        parts: ['fuse'],
      });
      const company = await fill(brief);
      const other = await fill({ ...brief, visit: 'theirs' });
      expect(await namesOf(company)).toEqual([brief.visit]);
      expect(await namesOf(company, { words: 'blower' })).toEqual([brief.visit]);
      expect(await namesOf(company, { part: 'fuse' })).toEqual([brief.visit]);
      expect((await opened().list(company, {}, page)).visits[0]?.before).toBe(0);
      expect(await opened().atSameUnit(other, 'theirs')).toEqual([]);
      expect(await opened().atSameUnit(company, 'theirs')).toEqual([]);
      expect((await opened().all(company, { after: '', limit: 9 })).map(({ visit }) => visit)).toEqual([brief.visit]);
      expect((await opened().choices(fresh())).parts).toEqual([]);
    });
  });

  describe(`${name}: a search`, () => {
    test.each([
      ['one word', 'capacitor'],
      ['the beginning of one', 'capac'],
      ['several in any order, large or small', 'WEAK capacitor'],
      ['a serial number', 'ab-12345'],
      ['marks and accents left out', 'cafe'],
      ['words of another script', 'قطع'],
    ])('finds %s', async (_, words) => {
      const company = await fill(briefOf({ words: 'capacitor fan section weak\nAB-12345\nCafé\nتم قطع' }), briefOf());
      expect(await namesOf(company, { words })).toHaveLength(1);
    });

    test.each(['capacitor furnace', 'apacitor'])(
      'does not find "%s" where one of its words stands nowhere',
      async (words) => {
        const company = await fill(briefOf({ words: 'capacitor fan section weak' }));
        expect(await namesOf(company, { words })).toEqual([]);
      },
    );

    test.each(['"', "'; DROP TABLE brief; --", 'a OR b NEAR(c', '*', '😀', '^words:', '(((', '\u0000'])(
      'takes what is no search as words, if any: %j',
      async (words) => {
        const company = await fill(briefOf({ words: 'blower' }));
        await namesOf(company, { words });
        expect(await namesOf(company)).toHaveLength(1);
      },
    );

    test('no longer finds what is not in the newest state', async () => {
      const brief = briefOf({ words: 'first' });
      const company = await fill(brief, { ...brief, words: 'second' });
      expect(await namesOf(company, { words: 'first' })).toEqual([]);
      expect(await namesOf(company, { words: 'second' })).toHaveLength(1);
    });
  });

  describe(`${name}: a filter`, () => {
    const wanted = briefOf({
      closed: false,
      said: 12,
      finding: 'contactor-coil-open',
      parts: ['contactor', 'contactor', 'fuse'],
      technician: 'Mo',
      unproven: 1,
      cautionsOpen: 2,
    });
    const unwanted = briefOf({ openedAt: NOON - 400 * DAY, site: 'Bakery', device: 'tablet' });
    test.each([
      ['state running', { state: 'running' }],
      ['not complete', { state: 'not-complete' }],
      ['finding', { finding: 'contactor-coil-open' }],
      ['part', { part: 'contactor' }],
      ['from a day on', { from: NOON - DAY }],
      ['technician by signature', { technician: 'Mo' }],
      ['technician by device', { technician: 'Nobody', devices: ['phone'] }],
      ['unproven', { unproven: true }],
      ['cautions open', { cautionsOpen: true }],
    ] as const)('by %s leaves what fits', async (_, filter) => {
      const company = await fill(wanted, unwanted);
      expect(await namesOf(company, filter)).toEqual([wanted.visit]);
    });

    test.each([
      ['state closed', { state: 'closed' }],
      ['no finding', { finding: 'none' }],
      ['until a day', { until: NOON - DAY }],
    ] as const)('by %s leaves the other', async (_, filter) => {
      const company = await fill(wanted, unwanted);
      expect(await namesOf(company, filter)).toEqual([unwanted.visit]);
    });

    test('offers what there is, with how many visits have it', async () => {
      const company = await fill(wanted, briefOf({ finding: 'contactor-coil-open', parts: ['fuse'] }), unwanted);
      expect(await opened().choices(company)).toEqual({
        findings: [{ value: 'contactor-coil-open', visits: 2 }],
        parts: [
          { value: 'fuse', visits: 2 },
          { value: 'contactor', visits: 1 },
        ],
        technicians: [{ value: 'Mo', visits: 1 }],
      });
    });
  });

  describe(`${name}: a repeat call`, () => {
    test('is one at the same serial number, however it is written, within 90 days before', async () => {
      const first = briefOf({ openedAt: NOON, serial: 'AB 123', site: 'Here' });
      const again = briefOf({ openedAt: NOON + 89 * DAY, serial: 'ab-123', site: 'Elsewhere' });
      const late = briefOf({ openedAt: NOON + 300 * DAY, serial: 'AB123', site: 'Here' });
      const company = await fill(first, again, late);
      expect(await namesOf(company, { repeated: true })).toEqual([again.visit]);
      const listed = (await opened().list(company, {}, page)).visits;
      expect(listed.map(({ before }) => before)).toEqual([0, 1, 0]);
      expect((await opened().atSameUnit(company, again.visit)).map(({ visit }) => visit)).toEqual([
        late.visit,
        first.visit,
      ]);
    });

    test('is one at the same site where a serial number was not read, and not where both were and differ', async () => {
      const first = briefOf({ serial: 'AAA', site: 'Town Library' });
      const unread = briefOf({ openedAt: NOON + DAY, site: 'town library' });
      const another = briefOf({ openedAt: NOON + 2 * DAY, serial: 'BBB', site: 'Town library' });
      const company = await fill(first, unread, another);
      const before = new Map((await opened().list(company, {}, page)).visits.map((one) => [one.visit, one.before]));
      expect([first, unread, another].map(({ visit }) => before.get(visit))).toEqual([0, 1, 1]);
    });

    test('is counted alike however visits came, changed and went: against counting them all one by one', async () => {
      const puts = fc.record({
        visit: fc.integer({ min: 1, max: 20 }).map((n) => `visit-${n}`),
        openedAt: fc.integer({ min: 0, max: 250 }).map((day) => NOON + day * DAY),
        serial: fc.constantFrom('', 'A-1', 'a1', 'b 2'),
        site: fc.constantFrom('', 'Here', 'There'),
      });
      const steps = fc.array(
        fc.oneof(
          { weight: 4, arbitrary: puts },
          puts.map(({ visit }) => visit),
        ),
        {
          minLength: 30,
          maxLength: 60,
        },
      );
      await fc.assert(
        fc.asyncProperty(steps, async (taken) => {
          const company = fresh();
          const held = new Map<string, VisitBrief>();
          for (const step of taken) {
            if (typeof step === 'string') {
              held.delete(step);
              await opened().forget(company, step);
            } else {
              held.set(step.visit, briefOf(step));
              await opened().put(company, briefOf(step));
            }
          }
          const all = [...held.values()];
          const counted = all.map((one) => [one.visit, all.filter((other) => isBefore(other, one)).length] as const);
          const listed = (await opened().list(company, {}, page)).visits;
          expect(new Map(listed.map(({ visit, before }) => [visit, before]))).toEqual(new Map(counted));
          const repeated = counted.filter(([, before]) => before > 0).map(([visit]) => visit);
          expect((await namesOf(company, { repeated: true })).toSorted()).toEqual(repeated.toSorted());
        }),
        { numRuns: tries(8, 200), seed: SEED },
      );
    });

    test('is none where neither site nor serial number is known', async () => {
      const company = await fill(briefOf({ site: '' }), briefOf({ site: '', openedAt: NOON + DAY }));
      expect(await namesOf(company, { repeated: true })).toEqual([]);
    });
  });

  test(`${name}: what was forgotten is found in no way, and may be put again; no other is`, async () => {
    const [gone, kept] = [briefOf({ words: 'secret words', parts: ['contactor'] }), briefOf({ words: 'other words' })];
    const company = await fill(gone, kept);
    await opened().forget('another', gone.visit);
    expect(await namesOf(company, { words: 'secret' })).toEqual([gone.visit]);
    await opened().forget(company, gone.visit);
    await opened().forget(company, 'never-was');
    await reopen();
    expect(await namesOf(company, { words: 'secret' })).toEqual([]);
    expect((await opened().list(company, {}, page)).visits.map(({ visit }) => visit)).toEqual([kept.visit]);
    expect((await opened().choices(company)).parts).toEqual([]);
    await opened().put(company, { ...gone, words: '', parts: [] });
    expect((await opened().list(company, {}, page)).total).toBe(2);
  });

  test(`${name}: what was put is there after it was closed and opened, with the count of events it was made of`, async () => {
    const brief = briefOf({ words: 'kept', steps: [{ step: 'a', minutes: 2 }], misheard: ['hm'], setRight: ['L1'] });
    const company = await fill(brief);
    await reopen();
    expect(await opened().held()).toContainEqual({ company, visit: brief.visit, events: 10, site: brief.site });
    expect(await namesOf(company, { words: 'kept' })).toEqual([brief.visit]);
    expect(await opened().all(company, { after: '', limit: 9 })).toEqual([{ ...brief, words: '' }]);
    expect(await opened().all(company, { after: brief.visit, limit: 9 })).toEqual([]);
  });
}

/** What a repeat call is, in its own words: the same unit, within the days before. */
function isBefore(other: VisitBrief, one: VisitBrief): boolean {
  const days = (one.openedAt - other.openedAt) / DAY;
  if (days <= 0 || days > REPEAT_WITHIN_DAYS) return false;
  const [a, b] = [other.serial, one.serial].map((text) => text.toLowerCase().replaceAll(/[^a-z0-9]/g, ''));
  if (a !== '' && b !== '') return a === b;
  return one.site !== '' && one.site === other.site;
}
