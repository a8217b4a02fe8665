import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type KeptVisit, keepInFile, keepInMemory } from '../../../client/terminal/kept-visit.ts';
import { LineVisit, type Standing, type Told } from '../../../client/terminal/line-visit.ts';
import { printTold } from '../../../client/terminal/print-told.ts';
import { SteppedClock } from '../../../client/visit/run/stepped-clock.ts';
import { diagnoseFor } from '../../../client/visit/steps/diagnose-for.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { COMMANDS } from '../../../grammar/vocabulary/commands.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { PROJECT_ROOT } from '../../browser/project-root.ts';
import { LIBRARY_UNIT, LIBRARY_VISIT, TO_PROVEN_DEAD } from '../visit/typed-visit.ts';

const VISIT = join(PROJECT_ROOT, '.build/client/terminal/visit.js');
const START = Date.parse('2026-06-15T14:00:00Z');
const folder = mkdtempSync(join(tmpdir(), 'readback-visit-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The table takes a second to build: one for all tests of this file. */
const diagnose = diagnoseFor();

/** What a line brought about: all that was told from its `input` to its `now`. */
interface Taken {
  readonly said: readonly { readonly kind: string; readonly text: string }[];
  readonly events: readonly VisitEvent[];
  readonly refused: readonly string[];
  readonly now: Standing;
}

/** A visit of the library's unit on lines, in this process. */
class Typing {
  readonly told: Told[] = [];
  #visit!: LineVisit;
  #line = 0;

  static async begin(kept?: KeptVisit, start = START, role: 'technician' | 'trainee' = 'technician'): Promise<Typing> {
    const typing = new Typing();
    const record = kept ?? (await keepInMemory('test-visit'));
    const edges = {
      kept: record,
      clock: new SteppedClock(start),
      diagnose,
      tell: (told: Told) => typing.told.push(told),
    };
    typing.#visit = await ((await record.read()).length === 0
      ? LineVisit.open(edges, {
          type: 'opened.visit',
          visit: record.stream.visit,
          site: 'reading room',
          complaint: 'does not cool',
          role,
          unit: LIBRARY_UNIT,
          software: 'test',
        })
      : LineVisit.resume(edges));
    return typing;
  }

  get standing(): Standing {
    return this.#visit.standing;
  }

  get closed(): boolean {
    return this.#visit.closed;
  }

  async type(text: string): Promise<Taken> {
    const from = this.told.length;
    this.#line += 1;
    this.#visit = await this.#visit.take(this.#line, text);
    const told = this.told.slice(from);
    const [last] = told.slice(-1);
    if (last === undefined || !('now' in last)) throw new Error('the last that is told of a line is where it stands');
    return {
      said: told.flatMap((one) => ('say' in one ? [one.say] : [])),
      events: told.flatMap((one) => ('event' in one ? [one.event] : [])),
      refused: told.flatMap((one) => ('refused' in one ? [one.refused] : [])),
      now: last.now,
    };
  }

  async typeAll(lines: readonly string[]): Promise<readonly Taken[]> {
    const taken: Taken[] = [];
    for (const line of lines) taken.push(await this.type(line));
    return taken;
  }
}

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly complaint: string;
}

/** Runs the built tool with lines on its stdin. */
function run(lines: string, ...args: readonly string[]): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [VISIT, ...args], { cwd: PROJECT_ROOT });
    let [out, complaint] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text) => {
      out += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text) => {
      complaint += text;
    });
    child.once('close', (code) => resolve({ code, out, complaint }));
    child.stdin.end(lines);
  });
}

/** What is said in the library, as its script has it. */
const SPOKEN = readFileSync(join(PROJECT_ROOT, 'fixtures/visits/library/spoken.txt'), 'utf8')
  .split('\n')
  .filter((line) => line.trim() !== '' && !line.startsWith('#'))
  .map((line) => line.replace('@later', '@wait').replace(/^[^|]*\|[^|]*\|\s*/, ''));

describe('the library visit, typed line by line into the tool', () => {
  const record = join(folder, 'library.jsonl');
  let ran: Ran;
  let told: readonly Record<string, unknown>[];
  let events: readonly VisitEvent[];
  beforeAll(async () => {
    const lines = ['# the whole of it', '', ...SPOKEN].join('\n');
    const options = ['--json', '--at', '2026-06-15T14:00:00Z', '--unit', 'fixtures/units/library.json'];
    ran = await run(lines, ...options, '--record', record);
    told = ran.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    events = told.flatMap((one) => ('event' in one ? [one['event'] as VisitEvent] : []));
  });

  it('comes to its close and to the finding of the demo', () => {
    expect(ran).toMatchObject({ code: 0, complaint: '' });
    const demo = JSON.parse(readFileSync(join(PROJECT_ROOT, 'fixtures/visits/library/visit.json'), 'utf8')) as {
      readonly finding: string;
    };
    expect(events.findLast((event) => event.type === 'finding.stated')).toMatchObject({ fault: demo.finding });
    expect(told.at(-1)).toEqual({ end: { closed: true } });
  });

  it('tells one object a line, each of its kind', () => {
    const shapes: Record<string, (value: never) => boolean> = {
      input: (value: { line: number; text: string }) => value.line > 2 && typeof value.text === 'string',
      event: (value: VisitEvent) => typeof value.type === 'string',
      say: (value: { kind: string; text: string }) =>
        ['caution', 'warning', 'step', 'question', 'readback', 'answer'].includes(value.kind) && value.text !== '',
      now: (value: Standing) =>
        Object.keys(value).join() === 'energy,phase,step,questions,open' && ZONES.every((zone) => zone in value.energy),
      end: (value: { closed: boolean }) => value.closed,
    };
    for (const one of told) {
      const [kind = '', ...more] = Object.keys(one);
      expect([kind, more]).toEqual([expect.toBeOneOf(Object.keys(shapes)), []]);
      expect(shapes[kind]?.(one[kind] as never), JSON.stringify(one)).toBe(true);
    }
    expect(told.filter((one) => 'input' in one)).toHaveLength(SPOKEN.length);
    expect(told.filter((one) => 'now' in one)).toHaveLength(SPOKEN.length);
  });

  it('keeps in the file what it told, from the moment that --at names', async () => {
    const kept = await keepInFile(record, 'another');
    expect(await kept.read()).toEqual(events.map((event) => JSON.stringify(event)));
    await kept.close();
    expect(events[1]).toMatchObject({ type: 'visit.opened', time: { at: '2026-06-15T14:00:00.700Z', mono: 700 } });
  });

  it('says of the kept visit that it is closed, and what that close named as open', async () => {
    const again = await run('where are we\n', '--record', record, '--json');
    const lines = again.out.trim().split('\n');
    expect(again).toMatchObject({ code: 0, complaint: '' });
    expect(JSON.parse(lines.at(-1) ?? '')).toEqual({ end: { closed: true } });
    const closing = events.find((event) => event.type === 'visit.closed');
    expect(JSON.parse(lines.at(-2) ?? '')).toMatchObject({
      now: { phase: 'closed', open: closing?.summary.openItems },
    });
  });
});

describe('a visit on lines', () => {
  it('is told alike every time', async () => {
    const lines = [...LIBRARY_VISIT, '@wait 20', '@reload', 'finish the visit'];
    const [one, other] = [await Typing.begin(), await Typing.begin()];
    await one.typeAll(lines);
    await other.typeAll(lines);
    expect(JSON.stringify(one.told)).toBe(JSON.stringify(other.told));
    expect(one.closed).toBe(true);
  });

  it('stands after "@reload" where it stood before, after every line', async () => {
    const typing = await Typing.begin();
    for (const line of LIBRARY_VISIT) {
      const { now } = await typing.type(line);
      // The step behind an open question is asked once that is answered.
      const step = now.questions === 0 ? now.step : null;
      expect((await typing.type('@reload')).now, line).toEqual({ ...now, step });
    }
    expect(typing.standing.phase).toBe('prove');
  });

  it('counts a question, and names the step with its words', async () => {
    const typing = await Typing.begin();
    expect(typing.standing).toMatchObject({ phase: 'arrive', step: { words: expect.stringMatching(/\?$/) } });
    const { now, said } = await typing.type('compressor amps fifty');
    expect(now.questions).toBe(1);
    expect(said.at(-1)?.kind).toBe('question');
    expect((await typing.type('one five')).now.questions).toBe(0);
  });

  it('names as open what a close then names', async () => {
    const typing = await Typing.begin();
    await typing.typeAll(LIBRARY_VISIT);
    const before = typing.standing.open;
    const { events, now } = await typing.type('finish the visit');
    const closing = events.find((event) => event.type === 'visit.closed');
    expect(before.length).toBeGreaterThan(0);
    expect(closing?.summary.openItems).toEqual(before);
    expect(now.open).toEqual(before);
  });

  it('names as open what refuses a close', async () => {
    const typing = await Typing.begin();
    await typing.typeAll([...LIBRARY_VISIT.slice(0, 5), ...TO_PROVEN_DEAD]);
    const { events, now } = await typing.type('finish the visit');
    const refused = events.find((event) => event.type === 'close.refused');
    expect(refused?.why.length).toBeGreaterThan(0);
    expect(now.open.slice(0, refused?.why.length)).toEqual(refused?.why);
  });

  it('takes 5,000 characters, refuses a page, and goes on', async () => {
    const typing = await Typing.begin();
    const note = `note ${'rust '.repeat(999)}`;
    expect((await typing.type(note)).events.some((event) => event.type === 'note.taken')).toBe(true);
    const babble = await typing.type('leg one '.repeat(625));
    expect(babble.said.map(({ kind }) => kind)).toEqual(['question']);
    const before = typing.standing;
    const page = await typing.type('x'.repeat(30_000));
    expect(page).toMatchObject({ events: [], refused: [expect.stringMatching(/not taken: write/)], now: before });
    expect((await typing.type('return air eighty degrees')).said[0]?.text).toMatch(/^Return air/);
  });

  it('takes the same line 200 times', async () => {
    const typing = await Typing.begin();
    const taken = await typing.typeAll(Array.from({ length: 200 }, () => 'outdoor air ninety four degrees'));
    expect(taken.every(({ events }) => events.some((event) => event.type === 'reading.logged'))).toBe(true);
    expect((await typing.type('@reload')).now).toEqual(taken.at(-1)?.now);
  });
});

describe('a line that moves the world', () => {
  it('@wait rings the timers on the way', async () => {
    const typing = await Typing.begin();
    await typing.typeAll(['check on me every ten minutes', '@wait 9']);
    const { events } = await typing.type('@wait 2.5');
    expect(events.map((event) => event.type)).toContain('check.asked');
    expect(events[0]).toMatchObject({ input: { type: 'timer.elapsed', timer: 'check' } });
  });

  it('@clock moves the wall clock alone, back too', async () => {
    const typing = await Typing.begin();
    const before = timeOf((await typing.type('what next')).events[0]);
    expect((await typing.type('@clock -90')).events).toEqual([]);
    const after = timeOf((await typing.type('what next')).events[0]);
    expect(after.mono - before.mono).toBe(700);
    expect(Date.parse(after.at) - Date.parse(before.at)).toBe(700 - 90 * 60_000);
  });

  it('@sleep lets timers and the monotonic clock stand', async () => {
    const typing = await Typing.begin();
    await typing.type('check on me every ten minutes');
    const before = timeOf((await typing.type('what next')).events[0]);
    expect((await typing.type('@sleep 60')).events).toEqual([]);
    const after = timeOf((await typing.type('what next')).events[0]);
    expect(after.mono - before.mono).toBe(700);
    expect(Date.parse(after.at) - Date.parse(before.at)).toBe(700 + 60 * 60_000);
    expect((await typing.type('@wait 10')).events.map((event) => event.type)).toContain('check.asked');
  });

  it('@reload forgets the timers of the run before: none rings twice', async () => {
    const typing = await Typing.begin();
    await typing.typeAll(['check on me every ten minutes', '@reload', '@reload']);
    const { events } = await typing.type('@wait 10');
    expect(events.filter((event) => event.type === 'check.asked')).toHaveLength(1);
  });

  it('@reload lets the monotonic clock catch up with what was slept, as a page does', async () => {
    const typing = await Typing.begin();
    await typing.typeAll([...LIBRARY_VISIT.slice(0, 5), ...TO_PROVEN_DEAD]);
    expect((await typing.type('@sleep 45')).now.energy['outdoor-load']).toBe('proven-dead');
    expect((await typing.type('@reload')).now.energy['outdoor-load']).toBe('reported-off');
  });

  it('@noise is rejected by the ear so many times, and consents to nothing', async () => {
    const typing = await Typing.begin();
    await typing.typeAll([...LIBRARY_VISIT.slice(0, 5), ...TO_PROVEN_DEAD]);
    await typing.type('herm section thirty three microfarads on the bench');
    const { events, now } = await typing.type('@noise 3');
    const heard = events.filter((event) => event.type === 'input.taken');
    expect(heard).toHaveLength(3);
    expect(heard[0]).toMatchObject({ input: { utterance: { ear: 'offline', accepted: false } } });
    expect(now.questions).toBe(1);
  });

  it('@key touches a command', async () => {
    const typing = await Typing.begin();
    const { events } = await typing.type('@key what-next');
    expect(events[0]).toMatchObject({ input: { type: 'touched.command', command: 'what-next' } });
  });

  it('@supervisor lets a trainee go on', async () => {
    const typing = await Typing.begin(undefined, START, 'trainee');
    const { events } = await typing.type('@supervisor Ada Birch');
    expect(events).toContainEqual(
      expect.objectContaining({ type: 'supervisor.acknowledged', supervisor: 'Ada Birch' }),
    );
  });

  it.each([
    ['@foo', '@wait MINUTES, @reload'],
    ['@', '@wait MINUTES, @reload'],
    ['@WAIT 5', '@wait MINUTES, @reload'],
    ['@wait', 'as in "@wait 20"'],
    ['@wait -5', 'as in "@wait 20"'],
    ['@wait 5 minutes', 'as in "@wait 20"'],
    ['@wait 99999', 'at most 10080'],
    ['@sleep 0', 'as in "@sleep 20"'],
    ['@clock', 'as in "@clock -90"'],
    ['@clock 0', 'as in "@clock -90"'],
    ['@clock 1e9', 'as in "@clock -90"'],
    ['@noise', 'as in "@noise 3"'],
    ['@noise 1.5', 'as in "@noise 3"'],
    ['@noise 5000', 'from 1 to 1000'],
    ['@reload now', 'stands alone'],
    ['@key', COMMANDS[0].id],
    ['@key dance', COMMANDS[0].id],
    ['@supervisor', 'wants a name'],
  ])('is refused in a sentence and changes nothing: %s', async (line, words) => {
    const typing = await Typing.begin();
    const before = typing.standing;
    const { refused, events, said, now } = await typing.type(line);
    expect(refused).toEqual([expect.stringContaining(words)]);
    expect(refused[0]).toMatch(/^[^\n]{10,500}\.$/);
    expect({ events, said, now }).toEqual({ events: [], said: [], now: before });
  });
});

describe('a page behind "@"', () => {
  it('is not given back whole', async () => {
    const { refused } = await (await Typing.begin()).type(`@${'x'.repeat(5000)}`);
    expect(refused).toEqual([expect.stringMatching(/^There is no @x{19}…: write @wait/)]);
  });
});

describe('what a person reads of it', () => {
  it('shows a doubt as it was understood, prompts by their kind, energy and the finding', async () => {
    const typing = await Typing.begin();
    await typing.typeAll([...LIBRARY_VISIT.slice(0, 18), 'mumble mumble', '@foo']);
    const lines = typing.told.flatMap((told) => printTold(told, true));
    for (const label of ['says', 'step', 'asks', 'CAUTION', 'energy', 'FINDING', 'understood', 'not done'])
      expect(lines.some((line) => line.startsWith(`  ${label} `))).toBe(true);
    expect(lines.filter((line) => line.startsWith('> '))).toHaveLength(20);
    expect(typing.told.flatMap((told) => printTold(told, false)).some((line) => line.startsWith('> '))).toBe(false);
  });
});

describe('a record that is gone on with', () => {
  it('stands where it stood, and grows in the same file', async () => {
    const path = join(folder, 'later', 'visit.jsonl');
    const first = await keepInFile(path, 'first-name');
    const typing = await Typing.begin(first);
    await typing.typeAll(LIBRARY_VISIT.slice(0, 7));
    await first.close();
    const again = await keepInFile(path, 'second-name');
    expect(again.stream.visit).toBe('first-name');
    const events = (await again.read()).length;
    const later = await Typing.begin(again, START + 5 * 60_000);
    expect(later.standing).toEqual(typing.standing);
    const { events: grown } = await later.type('outdoor disconnect is pulled and locked');
    expect(await again.read()).toHaveLength(events + later.told.filter((told) => 'event' in told).length);
    // What passed on the wall clock meanwhile has passed on the monotonic one.
    expect(timeOf(grown[0]).mono).toBeGreaterThan(5 * 60_000);
    await again.close();
  });

  it('after hours holds no proof any more', async () => {
    const path = join(folder, 'hours.jsonl');
    const first = await keepInFile(path, 'hours');
    const typing = await Typing.begin(first);
    await typing.typeAll([...LIBRARY_VISIT.slice(0, 5), ...TO_PROVEN_DEAD]);
    expect(typing.standing.energy['outdoor-load']).toBe('proven-dead');
    await first.close();
    const again = await keepInFile(path, 'hours');
    const later = await Typing.begin(again, START + 120 * 60_000);
    expect(later.standing.energy['outdoor-load']).toBe('reported-off');
    await again.close();
  });
});

describe('the tool, given what it cannot use', () => {
  const other = join(folder, 'other');
  writeFileSync(other, 'no record, and no line end');

  it.each([
    [['--role', 'boss'], /^"boss" is no role: see "npm run -s visit -- --help"\.\n$/],
    [['--at', '2026-06-15T14:00:00'], /is no moment with its offset from UTC: see/],
    [['--unit', 'package.json'], /package\.json is no unit profile/],
    [['--record', other], /other is no record of a visit that could go on: name a new file/],
    [['--record', 'fixtures/visits/library/events.jsonl'], /is no record of a visit that could go on/],
    [['--record', '/proc/none/visit.jsonl'], /cannot be written \(.*\): free space or permit writing/],
    [['--record', join(other, 'visit.jsonl')], /cannot be read: check the path/],
  ])('says so in one sentence and exits 2: %s', async (args, sentence) => {
    const { code, out, complaint } = await run('what next\n', ...args);
    expect([code, out]).toEqual([2, '']);
    expect(complaint).toMatch(sentence);
    expect(complaint.trim().split('\n')).toHaveLength(1);
    expect(readFileSync(other, 'utf8')).toBe('no record, and no line end');
  });
});

function timeOf(event: VisitEvent | undefined): { readonly at: string; readonly mono: number } {
  if (event?.type !== 'input.taken') throw new Error('a batch begins with its input');
  return event.input.time;
}
