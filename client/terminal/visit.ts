import { createInterface } from 'node:readline';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { DiagnosisError } from '../diagnosis/errors.ts';
import { checkProfile } from '../diagnosis/unit/check-profile.ts';
import { SteppedClock } from '../visit/run/stepped-clock.ts';
import { diagnoseFor } from '../visit/steps/diagnose-for.ts';
import { PLAYED_LINES } from '../words/terminal/played-labels.ts';
import { LINE_SIGN, VISIT_LINES } from '../words/terminal/visit-lines.ts';
import { keepInFile, keepInMemory } from './kept-visit.ts';
import { LineVisit, type Opening, type Told } from './line-visit.ts';
import { row } from './print-played.ts';
import { printTold } from './print-told.ts';
import { wrongUse } from './read-arguments.ts';
import { readProfile } from './read-profile.ts';
import { readVersion, runTool } from './run-tool.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'visit',
  purpose: 'takes a visit as it is typed, a line an utterance, and answers as the page does.',
  usage: ['[-- OPTIONS] [< LINES]'],
  options: {
    unit: { value: 'FILE', says: 'the unit profile, such as fixtures/units/library.json (nothing is known)' },
    role: { value: 'ROLE', says: 'technician or trainee (technician)' },
    site: { value: 'TEXT', says: 'where it is (a unit on the terminal)' },
    complaint: { value: 'TEXT', says: 'what was complained of (does not cool)' },
    json: { says: 'prints one JSON object a line instead of a conversation' },
    record: {
      value: 'FILE',
      says: 'keeps the record there; a visit that it holds goes on, as whoever and whatever it is of',
    },
    at: { value: 'TIME', says: 'where the clock begins, such as 2026-06-15T14:00:00Z (now)' },
  },
  notes: [
    'The clock stands while you think: minutes pass by "@wait". Lines that begin with "@" move the world:',
    '  @wait MINUTES     minutes pass, timers ring on the way',
    '  @reload           forgets all but the record and takes the visit up from it',
    '  @clock MINUTES    the wall clock jumps, back with a minus; the monotonic one does not',
    '  @sleep MINUTES    the device sleeps: the wall clock goes on, the monotonic one and timers stand',
    '  @noise N          the ear rejects N utterances',
    '  @key COMMAND      a key is touched, by the command that it stands for',
    '  @supervisor NAME  a supervisor acknowledges the live steps of a trainee',
    'Empty lines and lines that begin with "#" are passed over. Ctrl-D ends; so does Ctrl-C, and the record is kept.',
    'With --json and --at, the same lines come to the same output, byte for byte.',
  ],
  examples: [
    'npm run -s visit -- --unit fixtures/units/library.json',
    'npm run -s visit -- --record data/visit.jsonl',
    'npm run -s visit -- --json --at 2026-06-15T14:00:00Z < lines.txt',
  ],
  exits:
    '0 at the end of the lines, closed or not; 2 when used wrongly, or when the record cannot be kept; 130 after Ctrl-C.',
} as const satisfies Tool;

interface VisitOptions {
  readonly unit: UnitProfile;
  readonly role: Opening['role'];
  readonly site: string;
  readonly complaint: string;
  readonly json: boolean;
  readonly record: string | undefined;
  /** Unix time in milliseconds. */
  readonly start: number;
}

function readOptions(given: Given<typeof TOOL>['options']): VisitOptions {
  const { role = 'technician', site = 'a unit on the terminal', complaint = 'does not cool', json = false } = given;
  if (role !== 'technician' && role !== 'trainee') throw wrongUse(TOOL, `"${role}" is no role`);
  const start = given.at === undefined ? Date.now() : instant(given.at);
  if (start === undefined) throw wrongUse(TOOL, `"${given.at}" is no moment with its offset from UTC`);
  const unit = given.unit === undefined ? { id: 'unit' } : readUnit(given.unit);
  return { unit, role, site, complaint, json, record: given.record, start };
}

/** The milliseconds of an RFC 3339 moment; one without an offset would differ from place to place. */
function instant(text: string): number | undefined {
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/.test(text)) return undefined;
  const moment = Date.parse(text);
  return Number.isNaN(moment) ? undefined : moment;
}

function readUnit(file: string): UnitProfile {
  const profile = readProfile(file);
  if (typeof profile.id !== 'string' || profile.id === '') throw new TerminalError('profile-broken', file);
  try {
    checkProfile(profile);
  } catch (error) {
    // A unit that the diagnosis does not cover is a visit all the same: it says that the maker's procedure governs.
    if (!(error instanceof DiagnosisError && error.code === 'unit-not-covered')) throw error;
  }
  return profile;
}

/** What is told, and the end; of a conversation also what a person waits for or should know. */
type Tell = (told: Told | { readonly end: { readonly closed: boolean; readonly open: number } }) => void;

const print = (line: string) => process.stdout.write(`${line}\n`);

const tellJson: Tell = (told) => print(JSON.stringify('end' in told ? { end: { closed: told.end.closed } } : told));

const tellPerson: Tell = (told) => {
  if ('end' in told) print(VISIT_LINES.ended(told.end.closed, told.end.open));
  else for (const line of printTold(told, !process.stdin.isTTY)) print(line);
};

async function main({ options: given }: Given<typeof TOOL>): Promise<void> {
  const options = readOptions(given);
  const { json, record, start } = options;
  const name = `visit-${start.toString(36)}`;
  const kept = await (record === undefined ? keepInMemory(name) : keepInFile(record, name));
  try {
    const tell = json ? tellJson : tellPerson;
    const notice = (sentence: string) => {
      if (!json) print(row('notice', sentence));
    };
    if (kept.notice !== undefined) process.stderr.write(`${kept.notice}\n`);
    const bodies = await kept.read();
    const edges = {
      kept,
      clock: new SteppedClock(start),
      diagnose: diagnoseFor((share) => {
        if (share === 0) notice(PLAYED_LINES.building);
      }),
      tell,
    };
    const typed = readLines(json);
    if (bodies.length > 0) notice(VISIT_LINES.goesOn(kept.stream.visit, bodies.length));
    const visit = await (bodies.length > 0
      ? LineVisit.resume(edges)
      : LineVisit.open(edges, await opening(options, kept.stream.visit)));
    const after = await takeLines(visit, typed);
    tell({ end: { closed: after.closed, open: after.standing.open.length } });
  } finally {
    await kept.close();
  }
}

async function opening({ unit, role, site, complaint }: VisitOptions, visit: string): Promise<Opening> {
  return { type: 'opened.visit', visit, site, complaint, role, unit, software: await readVersion() };
}

/** The lines of stdin, read from now on; Ctrl-C ends them. */
interface Typed {
  readonly lines: AsyncIterable<string>;
  /** Shows a person that a line may be typed. */
  readonly invite: () => void;
}

/**
 * Begins to read: on a terminal before anything is printed, since what is typed meanwhile would be shown by the terminal
 * and again by the reader.
 */
function readLines(json: boolean): Typed {
  const terminal = process.stdin.isTTY === true && process.stdout.isTTY === true && !json;
  const reader = createInterface({
    input: process.stdin,
    ...(terminal ? { output: process.stdout, prompt: LINE_SIGN } : {}),
    terminal,
    crlfDelay: Number.POSITIVE_INFINITY,
  });
  let ended = false;
  let interrupted = false;
  const interrupt = () => {
    interrupted = true;
    process.exitCode = 130;
    reader.close();
  };
  process.once('SIGINT', interrupt);
  reader.once('SIGINT', interrupt);
  reader.once('close', () => {
    ended = true;
    if (terminal) print('');
  });
  // Made at once: it keeps the lines that come before they are asked for.
  const coming = reader[Symbol.asyncIterator]();
  const untilInterrupted = async function* () {
    for await (const text of { [Symbol.asyncIterator]: () => coming }) {
      if (interrupted) return;
      yield text;
    }
  };
  return {
    lines: untilInterrupted(),
    invite: () => {
      if (terminal && !ended) reader.prompt();
    },
  };
}

/** Takes the lines one after another, up to their end. */
async function takeLines(visit: LineVisit, { lines, invite }: Typed): Promise<LineVisit> {
  let now = visit;
  let line = 0;
  invite();
  for await (const text of lines) {
    line += 1;
    if (text.trim() !== '' && !text.trimStart().startsWith('#')) now = await now.take(line, text);
    invite();
  }
  return now;
}

await runTool(TOOL, main);
