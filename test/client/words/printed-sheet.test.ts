import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { printRecord } from '../../../client/terminal/print-record.ts';
import { printedSource } from '../../../client/words/printed/print-sources.ts';
import { printTimes } from '../../../client/words/printed/print-times.ts';
import { printedSheet } from '../../../client/words/printed/printed-sheet.ts';
import { NOT_CLOSED } from '../../../client/words/talk/doubt-words.ts';
import { PLAIN } from '../../../client/words/talk/summary-words.ts';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { TypedVisit } from '../visit/typed-visit.ts';

const eventsOf = (name: string): VisitEvent[] =>
  readFileSync(new URL(`../../../fixtures/visits/${name}/events.jsonl`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
const sheetOf = (name: string) => printedSheet(toVisitRecord(eventsOf(name)));
const linesOf = (name: string, title: string) => sheetOf(name).sections.find((one) => one.title === title)?.lines ?? [];

/** What a person would have to decode: UCUM codes, ids of two parts and more, times as machines write them. */
const MACHINE_MADE =
  /\[degF\]|oz_av|um\[Hg\]|\buF\b|\bOhm\b|\d{4}-\d\d-\d\dT|[a-z]+-[a-z]+-[a-z]+|not-|no-target|from memory|undefined|NaN/;
/** Hyphens of the trade's own words. */
const ORDINARY = /pull-out/g;

describe('the printed record', () => {
  it.each(['library', 'fuse', 'one-pole', 'low-charge'])('of the visit %s holds nothing machine-made', (name) => {
    expect(printRecord(toVisitRecord(eventsOf(name))).replace(ORDINARY, '')).not.toMatch(MACHINE_MADE);
  });

  it('has every reading, every caution in the words that were spoken, and every pair of a proof', () => {
    const events = eventsOf('library');
    const record = toVisitRecord(events);
    const text = printRecord(record).replaceAll(/\s+/g, ' ');
    const table = sheetOf('library').sections.find(({ title }) => title === 'Readings')?.table;
    expect(table?.rows.map(([number]) => Number(number))).toEqual(record.readings.map(({ number }) => number));
    const spoken = events.flatMap((event) => (event.type === 'caution.spoken' ? [event.words] : []));
    expect(spoken.length).toBeGreaterThan(5);
    for (const words of spoken) expect(text).toContain(`“${words}”`);
    for (const pair of ['L1 to ground 0 V', 'T1 to T2 0 V', 'meter on a live source 240 V'])
      expect(text).toContain(pair);
  });

  it('shows refrigerant as it was weighed and said: type, recovered, added, leak search', () => {
    // fixtures/visits/low-charge/spoken.txt: "recovered four pounds two ounces", six pounds four ounces in.
    const lines = linesOf('low-charge', 'Refrigerant').join(' ');
    expect(lines).toContain('Type: R-410A. Recovered: four pounds two ounces. Added: six pounds four ounces.');
    expect(lines).toContain('leak search found nothing');
    expect(lines).toContain('400 microns');
    expect(linesOf('library', 'Refrigerant')).toEqual([]);
  });

  it('puts before and after beside each other, and says whether it cools now with its figures', () => {
    const table = sheetOf('low-charge').sections.find(({ title }) => title === 'Before and after')?.table;
    expect(table?.rows).toContainEqual(['Supply air', '69 °F', '58 °F']);
    // Return 77 less supply 58, as spoken at the end of that visit.
    expect(linesOf('low-charge', 'For the customer').join(' ')).toContain('19 °F colder');
    const open = toVisitRecord(eventsOf('library').slice(0, 60));
    expect(printRecord(open)).toContain('was not shown by readings');
    expect(printRecord(open)).toContain('This visit was not closed.');
  });

  it('says what was refused and why, and what numbers that jump mean', () => {
    expect(linesOf('library', 'Refused')).toEqual([
      '2:00 PM: fan motor common to fan motor run, ohms 12 Ω, not taken: power there was not proven off.',
      '2:00 PM: outdoor fan 14 A, not taken: it was measured again.',
    ]);
    expect(linesOf('library', 'Readings').join(' ')).toContain('one count for all');
  });

  it('tells a reading that was heard, asked back and never said again, and none that was', () => {
    const events = eventsOf('library');
    const heard = (value: number): VisitEvent => ({
      type: 'input.taken',
      input: {
        type: 'heard.utterance',
        time: { at: '2026-06-15T14:00:00.000Z', mono: 0 },
        utterance: {
          id: `asked-${value}`,
          ear: 'typed',
          accepted: true,
          confidence: 1,
          understanding: {
            heard: 'leg one to ground',
            verdict: 'asked',
            reason: 'implausible',
            confidence: 0.3,
            meaning: { kind: 'reading', reading: { quantity: 'voltage', at: ['L1', 'ground'], value, unit: 'V' } },
          },
        },
      },
    });
    const answered = events.findLastIndex(
      (event) => event.type === 'reading.logged' && event.reading.at.join() === 'L1,ground',
    );
    const refused = (list: readonly VisitEvent[]) =>
      printedSheet(toVisitRecord(list)).sections.find(({ title }) => title === 'Refused')?.lines ?? [];
    expect(refused([...events.slice(0, answered), heard(800), ...events.slice(answered)])).toEqual(refused(events));
    expect(refused([...events, heard(801)]).at(-1)).toBe(
      '2:00 PM: L1 to ground 801 V, not taken: it was asked back, and not said again.',
    );
  });

  it('calls nothing found that did not stand out, tells what was fitted before a close, and weighs as people do', () => {
    const { summary: _closed, ...open } = toVisitRecord(eventsOf('low-charge'));
    const at = '2026-06-15T14:00:00.000Z';
    const record = {
      ...open,
      finding: { at, fault: 'contactor-pole-one-burnt', probability: 0.03, evidence: [] } as never,
      nameplate: [{ at, field: 'factory-charge', value: 104, unit: '[oz_av]' }],
    };
    const text = printRecord(record).replaceAll(/\s+/g, ' ');
    expect(text).toContain('No fault stood out on this visit.');
    expect(text).toContain('Fitted: valve core. Added: refrigerant.');
    // 104 ounces are six pounds eight (16 ounces a pound, NIST Handbook 44, appendix C).
    expect(text).toContain('factory charge six pounds eight ounces');
    expect(text).not.toContain('no single reading is out of its limits');
  });

  it('names no cause to the customer that did not stand out, of an older summary neither', () => {
    const whole = toVisitRecord(eventsOf('library'));
    const at = '2026-06-15T14:00:00.000Z';
    const toldOf = (probability: number) => {
      const record = { ...whole, finding: { at, fault: 'fan-capacitor-weak', probability, evidence: [] } as never };
      const named = { ...record, summary: { ...whole.summary, plain: PLAIN.found('fan-capacitor-weak', false) } };
      return printedSheet(named as never)
        .sections.find(({ title }) => title === 'For the customer')
        ?.lines.join(' ');
    };
    expect(toldOf(0.06)).toContain('No fault stood out in what was measured');
    expect(toldOf(0.06)).not.toContain('capacitor');
    expect(toldOf(0.06)).not.toContain('points to');
    expect(toldOf(0.5)).toContain('points to this');
  });

  it('tells the customer of a leak and of refrigerant, and what work at the circuit lacks in the record', () => {
    // Common practice: a leak is repaired, the circuit pressure tested and evacuated before it is charged.
    const record = toVisitRecord(eventsOf('low-charge'));
    const at = '2026-06-15T14:00:00.000Z';
    const leak = { at, item: 'leak-found', words: 'leak found', said: 'at the service valve' };
    const unproven = {
      ...record,
      items: [leak],
      works: [],
      parts: record.parts.filter(({ part }) => part === 'refrigerant'),
      refrigerant: [],
    };
    const linesIn = (one: typeof record, wanted: string) =>
      printedSheet(one).sections.find(({ title }) => title === wanted)?.lines ?? [];
    expect(linesIn(unproven, 'For the customer')).toEqual(
      expect.arrayContaining([
        'Leak found: “at the service valve”.',
        'Refrigerant taken out: four pounds two ounces.',
        'Refrigerant put in: six pounds four ounces.',
      ]),
    );
    for (const title of ['Left open', 'Not as it should be']) {
      const said = linesIn(unproven, title).join(' ').toLowerCase();
      for (const lack of ['no repair of the leak', 'no pressure test', 'no evacuation', 'no vacuum that stood'])
        expect(said, title).toContain(lack);
    }
    expect(linesIn(record, 'Not as it should be').join(' ')).not.toContain('no pressure test');
    const repaired = { ...unproven, works: [{ at, work: 'leak-repaired', words: 'repaired the leak', repairs: [] }] };
    expect(linesIn(repaired, 'Left open').join(' ')).not.toContain('no repair');
    const { summary: _summary, ...unclosed } = unproven;
    expect(linesIn(unclosed, 'Left open').join(' ')).toContain('no evacuation');
  });

  it('tells a lock that was taken back as taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled and locked', 'take that back');
    const lines = printedSheet(toVisitRecord(visit.events())).sections.find(
      ({ title }) => title === 'Switches that isolate',
    )?.lines;
    expect(lines).toEqual(['2:00 PM: disconnect at the outdoor unit off and locked; taken back, it does not count']);
    expect(linesOf('library', 'Switches that isolate')).toEqual([
      '2:00 PM: disconnect at the outdoor unit off and locked',
      '2:00 PM: disconnect at the outdoor unit on',
    ]);
  });

  it('lists what is open in a visit that was not closed', () => {
    const events = eventsOf('library');
    const locked = events.findIndex((event) => event.type === 'switch.reported' && event.state === 'locked');
    const open = (count: number) =>
      printedSheet(toVisitRecord(events.slice(0, count))).sections.find(({ title }) => title === 'Left open')?.lines;
    expect(open(locked + 1)).toEqual([
      'The outdoor disconnect is still locked',
      'covers were not reported back on',
      'the thermostat was not reported as agreed',
      'the technician has not signed',
      'the customer has not signed',
    ]);
    const fitted = events.findIndex((event) => event.type === 'part.fitted');
    expect(open(fitted + 1)).toContain('the repair was not proved by readings');
  });

  it('lists what hands left in a visit that was not closed, and not what they put back', () => {
    const { summary: _closed, ...record } = toVisitRecord(eventsOf('library'));
    const at = '2026-06-15T15:00:00.000Z';
    const left = {
      ...record,
      deeds: [
        { at, deed: 'cover' as const, of: 'unit', to: 'off' },
        { at, deed: 'part-moved' as const, of: 'contactor', to: 'out' },
        { at, deed: 'deed' as const, of: 'switch-bypassed' },
      ],
      wires: [{ at, action: 'jumper-on' as const, from: 'R', to: 'Y' }],
    };
    const refused = {
      ...record,
      refusedParts: [{ at, part: 'fuse', words: 'fuse, sixty amps' }],
      unproven: [{ at, what: 'fuse, sixty amps', zone: 'outdoor-load' as const, state: 'reported-off' as const }],
    };
    expect(openOf(refused)).toEqual(
      expect.arrayContaining([
        'Refused and not told out: fuse, sixty amps',
        'Not proven dead, outdoor unit: fuse, sixty amps',
      ]),
    );
    function openOf(one: typeof record) {
      return printedSheet(one).sections.find(({ title }) => title === 'Left open')?.lines ?? [];
    }
    const words = [
      'the cover of the unit was left off',
      'contactor was taken out and not put back',
      'a protecting switch was bypassed',
      'A jumper is still in place',
    ];
    expect(openOf(left)).toEqual(expect.arrayContaining(words));
    const back = {
      ...left,
      deeds: [
        ...left.deeds,
        { at, deed: 'cover' as const, of: 'unit', to: 'on' },
        { at, deed: 'part-moved' as const, of: 'contactor', to: 'in' },
        { at, deed: 'deed' as const, of: 'bypass-off' },
      ],
      wires: [...left.wires, { at, action: 'jumper-off' as const, from: 'R', to: 'Y' }],
    };
    for (const line of words) expect(openOf(back)).not.toContain(line);
  });

  it('prints no prompt of the talk, ratings in digits, and a number that cannot be with its doubt', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor fan is not turning', 'fitted a forty five over five dual capacitor four forty volt');
    await visit.type('finish the visit', 'note it was fitted before the log began');
    const record = toVisitRecord(visit.events());
    expect(record.overrides[0]?.why.join(' ')).toContain('Say why.');
    expect(record.summary?.openItems.join(' ')).not.toContain('Say why.');
    const asked = [NOT_CLOSED.locked('panel'), NOT_CLOSED.jumper, NOT_CLOSED.unproven('outdoor-load', ['x'])];
    const older = {
      ...record,
      summary: { ...(record.summary as NonNullable<typeof record.summary>), openItems: asked },
    };
    for (const one of [record, older]) {
      const text = printRecord(one).replaceAll(/\s+/g, ' ');
      expect(text).not.toMatch(/Say why|Report it back on|take it off|say so/);
      expect(text).toContain('fitted dual capacitor, herm 45 µF, fan 5 µF, 440 V');
      expect(text).not.toContain('forty five');
    }
    const [first] = toVisitRecord(eventsOf('library')).readings;
    if (first === undefined) throw new Error('no reading');
    const absurd = { ...first, reading: { ...first.reading, value: 1e308 } };
    const rows = printedSheet({ ...record, readings: [first, absurd] }).sections.find(
      ({ title }) => title === 'Readings',
    )?.table?.rows;
    expect(rows?.map((row) => row.at(-1))).toEqual(['', 'doubted: no such value can be there']);
  });

  it('says what a heading says once, and what was seen twice in a minute once', () => {
    const record = toVisitRecord(eventsOf('low-charge'));
    const at = '2026-06-15T14:00:00.000Z';
    const seen = { at, observation: 'covers-on', words: 'covers are on' };
    const sheet = printedSheet({
      ...record,
      notes: [{ at, text: 'Certificate nine nine one', about: 'certificate' }],
      observations: [seen, seen],
    });
    const linesIn = (wanted: string) => sheet.sections.find(({ title }) => title === wanted)?.lines ?? [];
    expect(linesIn('Refrigerant')).toContain('Certificate: nine nine one.');
    expect(linesIn('Seen')).toEqual(['2:00 PM: covers are on']);
  });

  it('tells contradictions, doubted parts and work unproven', () => {
    const record = toVisitRecord(eventsOf('library'));
    const at = '2026-06-15T14:00:00.000Z';
    const text = printRecord({
      ...record,
      contradictions: [{ at, numbers: [7, 8] }],
      parts: [{ at, part: 'dual-capacitor', ratings: {}, repairs: [], doubts: ['370 volts where 440 were'] }],
      unproven: [{ at, what: 'fan motor, ohms', zone: 'outdoor-load', state: 'reported-off' }],
    }).replaceAll(/\s+/g, ' ');
    expect(text).toContain('Readings 7 and 8 contradict each other');
    expect(text).toContain('Doubted: 370 volts where 440 were');
    expect(text).toContain('work where power was not proven off: fan motor, ohms. outdoor unit: reported off');
  });

  it('tells weights in words whatever they were said in, what went out without a minus, and entries that are damaged', () => {
    const events = eventsOf('low-charge').map((event) =>
      event.type === 'reading.logged' && event.reading.quantity === 'mass' && Number(event.reading.value) < 0
        ? { ...event, reading: { ...event.reading, value: -3, unit: '[lb_av]' as const } }
        : event,
    );
    const torn = { ...events[5], type: 'reading.logged', reading: 'gone' } as never;
    const record = toVisitRecord([...events, torn]);
    const text = printRecord(record).replaceAll(/\s+/g, ' ');
    expect(text).toContain('Recovered: three pounds. Added: six pounds four ounces.');
    expect(text).not.toMatch(/-3|minus/);
    expect(text).toContain('added refrigerant, six pounds four ounces');
    expect(text).toContain('1 of them could not be read and is left out here.');
    // At its place, and which.
    expect(text).toContain(`? 2:00 PM entry ${events.length + 1}, of the kind “reading logged”, is damaged`);
    expect(text).toContain('or to an entry that could not be read: one count for all');
  });

  it('gives times in the zone of the visit, by its name', () => {
    // IANA time zone database: Chicago is five hours behind UTC in June, six in December.
    const times = printTimes('America/Chicago');
    expect(times.day('2026-06-15T14:00:00Z')).toBe('June 15, 2026 at 9:00 AM CDT');
    expect(times.day('2026-12-15T14:00:00Z')).toBe('December 15, 2026 at 8:00 AM CST');
    expect(printTimes('Nowhere/None').zone).toBe('UTC');
    const [first, ...rest] = eventsOf('library');
    if (first?.type !== 'input.taken' || first.input.type !== 'opened.visit') throw new Error('no opening');
    const zoned = { ...first, input: { ...first.input, zone: 'America/Chicago' } };
    expect(printedSheet(toVisitRecord([zoned, ...rest])).under.join(' ')).toContain('9:00 AM CDT');
  });

  it.each([
    [
      'evacuated to 500 microns or below: SOME PAPER, from memory; common practice',
      'evacuated to 500 microns or below: common practice',
    ],
    ['SOME PAPER user notes, from memory; common practice', 'common practice'],
    ['NFPA 70E 120.5; common practice', 'NFPA 70E 120.5; common practice'],
    ['closing range from 85 % (from memory); 28 V loaded: common practice', '28 V loaded: common practice'],
  ])('names no document from memory: %s', (source, printed) => expect(printedSource(source)).toBe(printed));
});
