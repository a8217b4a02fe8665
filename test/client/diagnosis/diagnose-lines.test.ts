import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { diagnosisFrom } from '../../../client/diagnosis/make-diagnosis.ts';
import { buildTable } from '../../../client/diagnosis/table/build-table.ts';
import { DiagnoseSession, listLines, type StatusLine } from '../../../client/terminal/diagnose-session.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';
import { POINTS } from '../../../grammar/vocabulary/points.ts';
import { TESTS } from '../../../grammar/vocabulary/tests.ts';

const table = buildTable(JSON.parse(readFileSync('fixtures/units/library.json', 'utf8')));
const diagnosis = diagnosisFrom(table);

describe('a talk with the diagnosis, line by line', () => {
  let session: DiagnoseSession;
  beforeEach(() => {
    session = new DiagnoseSession(diagnosis);
  });
  const say = (message: object) => session.hear(JSON.stringify(message));
  const ok = (message: object): StatusLine => {
    const answer = say(message);
    if ('error' in answer) throw new Error(answer.error.message);
    return answer;
  };

  it('asks, takes the reading of what was asked, and asks the next thing', () => {
    const first = session.status();
    expect(first.done).toBe(false);
    expect(first.next).toMatchObject({
      function: expect.any(String),
      needs: expect.any(Object),
      minutes: expect.any(Number),
    });
    const answer = first.next!.answers?.[0] ?? 240;
    const second = ok({ reading: answer });
    expect(second.next!.id).not.toBe(first.next!.id);
  });

  it('takes a reading of another test by its id, and open on ohms', () => {
    ok({ reading: 'fan-not-turning', test: 'look-outdoor-fan' });
    const { suspects } = ok({ reading: 'open', test: 'ohms-fan-C-R' });
    expect(suspects[0]).toMatchObject({ fault: 'fan-run-winding-open' });
  });

  it('takes the same reading in another unit of the quantity', () => {
    const inOhms = ok({ reading: 250_000, unit: 'Ohm', test: 'ohms-compressor-shell' });
    const other = new DiagnoseSession(diagnosis);
    expect(other.hear('{"reading":250,"unit":"kOhm","test":"ohms-compressor-shell"}')).toEqual(inOhms);
    const hot = ok({ reading: 95, test: 'temperature-outdoor-air' });
    expect(other.hear('{"reading":35,"unit":"Cel","test":"temperature-outdoor-air"}')).toEqual(hot);
  });

  it('passes over a test that is named though it was not asked', () => {
    const asked = session.status().next!.id;
    expect(ok({ skip: true, test: 'volts-service' }).next!.id).toBe(asked);
  });

  it('passes a test over and does not ask for it again', () => {
    const asked = session.status().next!.id;
    let status = ok({ skip: true });
    for (let i = 0; i < 10 && status.next; i += 1) {
      expect(status.next.id).not.toBe(asked);
      status = ok({ skip: true });
    }
  });

  it('asks once more for the reading that condemns, then is done; a repair starts it again', () => {
    ok({ reading: 'fan-not-turning', test: 'look-outdoor-fan' });
    ok({ reading: 'compressor-runs-then-trips', test: 'look-compressor' });
    const once = ok({ reading: 1.1, test: 'microfarads-fan' });
    expect(once).toMatchObject({ done: false, next: { id: 'microfarads-fan' } });
    const twice = ok({ reading: 1.1 });
    expect(twice).toMatchObject({ done: true, next: null });
    expect(twice.suspects[0]).toMatchObject({ fault: 'fan-capacitor-weak' });
    const after = ok({ repaired: 'fan-capacitor-weak' });
    expect(after.done).toBe(false);
    expect(after.suspects[0]!.fault).toBe('nothing-wrong');
  });

  it('says why: what suspects would show, what the leader stands on, what the last answer moved', () => {
    ok({ reading: 'fan-not-turning', test: 'look-outdoor-fan' });
    const early = ok({ reading: 'compressor-runs-then-trips', test: 'look-compressor' });
    const before = ok({ why: true });
    expect({ ...before, why: undefined }).toEqual({ ...early, why: undefined });
    const { why } = before;
    expect(why!.next!.test).toBe(early.next!.id);
    expect(why!.next!.expects.map((e) => e.fault)).toEqual(early.suspects.slice(0, 4).map((s) => s.fault));
    expect(why!.next!.expects.every((e) => e.unit === early.next!.unit && e.probability > 0)).toBe(true);
    // A compressor that runs until it trips has power and a call.
    const stands = why!.standsOn.find((s) => s.test === 'look-compressor')!;
    expect(stands).toMatchObject({ answer: 2, reading: 'compressor-runs-then-trips' });
    expect(stands.leaderWithout).toBeLessThan(why!.leader.probability);
    expect(stands.excludes).toEqual(expect.arrayContaining(['breaker-tripped', 'contactor-coil-open']));
    const rose = why!.changed.find((m) => m.fault === why!.leader.fault)!;
    expect(rose.is).toBeGreaterThan(rose.was);
    expect(why!.changed.find((m) => m.fault === 'breaker-tripped')!.is).toBeLessThan(0.02);
  });

  it('lets a finding stand on its proof read twice as on one reading, and asks nothing more', () => {
    ok({ reading: 'fan-not-turning', test: 'look-outdoor-fan' });
    ok({ reading: 1.1, test: 'microfarads-fan' });
    ok({ reading: 1.1, test: 'microfarads-fan' });
    const { next, why } = ok({ why: true });
    expect(next).toBeNull();
    expect(why!.next).toBeNull();
    expect(why!.standsOn[0]).toMatchObject({ answer: 3, test: 'microfarads-fan', reading: 1.1 });
    expect(why!.standsOn[0]!.excludes.length).toBeGreaterThan(0);
    expect(why!.standsOn.filter((s) => s.test === 'microfarads-fan')).toHaveLength(1);
  });

  it('tells for a look which answer each suspect would give', () => {
    expect(session.status().next!.function).toBe('look');
    const { next, why } = ok({ why: true });
    expect(why!.next!.expects.every((e) => next!.answers!.some((a) => a === e.expected))).toBe(true);
    expect(why!.changed).toEqual([]);
  });

  it('lists every test, fault, point, answer and hazard in words', () => {
    const lines = listLines() as { list: string; id?: string; name?: string }[];
    const count = (list: string) => lines.filter((l) => l.list === list).length;
    expect(count('test')).toBe(TESTS.length);
    expect(count('fault')).toBe(FAULTS.length);
    expect(count('point')).toBe(POINTS.length);
    expect(lines.filter((l) => l.list !== 'minutes').every((l) => l.id && l.name)).toBe(true);
  });
});

describe('lines that make no sense', () => {
  const refused: readonly (readonly [string, string, string])[] = [
    ['not JSON', '{reading:', 'bad-line'],
    ['a list', '[1,2]', 'bad-line'],
    ['nothing known', '{"foo":1}', 'bad-line'],
    ['an empty list', '[]', 'bad-line'],
    ['an empty object', '{}', 'bad-line'],
    ['null alone', 'null', 'bad-line'],
    ['a bare number', '238', 'bad-line'],
    ['nothing at all', '', 'bad-line'],
    ['skip with a reading', '{"skip":true,"reading":238}', 'bad-line'],
    ['a reading with a repair', '{"reading":238,"repaired":"fan-capacitor-weak"}', 'bad-line'],
    ['skip that is not true', '{"skip":"yes"}', 'bad-line'],
    ['a field that is misspelt', '{"reading":238,"tset":"volts-L1-L2"}', 'bad-line'],
    ['why with a reading', '{"why":true,"reading":238}', 'bad-line'],
    ['why that is not true', '{"why":1}', 'bad-line'],
    ['a unit with a repair', '{"repaired":"fan-capacitor-weak","unit":"V"}', 'bad-line'],
    ['a test that is no word', '{"reading":238,"test":7}', 'unknown-test'],
    ['a skip of an unknown test', '{"skip":true,"test":"volts-moon"}', 'unknown-test'],
    ['an unknown unit', '{"reading":238,"test":"volts-L1-L2","unit":"furlong"}', 'unknown-unit'],
    ['a unit that is no word', '{"reading":238,"test":"volts-L1-L2","unit":1}', 'unknown-unit'],
    ['amperes for volts', '{"reading":238,"test":"volts-L1-L2","unit":"A"}', 'wrong-unit'],
    ['volts for microfarads', '{"reading":5,"test":"microfarads-fan","unit":"V"}', 'wrong-unit'],
    ['a unit for a look', '{"reading":"fan-turning","test":"look-outdoor-fan","unit":"V"}', 'wrong-unit'],
    ['399 degrees outdoors', '{"reading":399,"test":"temperature-outdoor-air"}', 'bad-reading'],
    [
      '60 degrees Celsius of the outdoor air',
      '{"reading":61,"unit":"Cel","test":"temperature-outdoor-air"}',
      'bad-reading',
    ],
    ['a truth for volts', '{"reading":true,"test":"volts-L1-L2"}', 'bad-reading'],
    ['a list for volts', '{"reading":[238],"test":"volts-L1-L2"}', 'bad-reading'],
    ['an unknown test', '{"reading":1,"test":"volts-moon"}', 'unknown-test'],
    ['an unknown fault', '{"repaired":"gremlins"}', 'unknown-fault'],
    ['a repair of nothing', '{"repaired":"nothing-wrong"}', 'bad-line'],
    ['words for volts', '{"reading":"plenty","test":"volts-L1-L2"}', 'bad-reading'],
    ['null', '{"reading":null,"test":"volts-L1-L2"}', 'bad-reading'],
    ['negative ohms', '{"reading":-3,"test":"ohms-coil"}', 'bad-reading'],
    ['open for volts', '{"reading":"open","test":"volts-L1-L2"}', 'bad-reading'],
    ['thousands of volts', '{"reading":4160,"test":"volts-L1-L2"}', 'bad-reading'],
    ['an answer of another look', '{"reading":"filter-dirty","test":"look-outdoor-fan"}', 'bad-reading'],
    ['a pressure past every limit', '{"reading":890,"test":"pressure-liquid"}', 'saturation-out-of-range'],
    ['a second stage this unit lacks', '{"reading":26,"test":"volts-Y2-C-condenser"}', 'point-not-on-unit'],
    ['a part this unit lacks', '{"reading":150,"test":"microfarads-hard-start"}', 'point-not-on-unit'],
  ];
  for (const [what, line, code] of refused) {
    it(`${what}: ${code}, and nothing changes`, () => {
      const session = new DiagnoseSession(diagnosis);
      session.hear('{"reading":"fan-not-turning","test":"look-outdoor-fan"}');
      const before = session.status();
      expect(session.hear(line)).toMatchObject({ error: { code, message: expect.stringMatching(/^\S.*\. \S.*\.$/) } });
      expect(session.status()).toEqual(before);
    });
  }
});
