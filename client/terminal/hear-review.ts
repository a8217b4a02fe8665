import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { HeardUtterance } from '../../grammar/visit/inputs.ts';
import { ListeningError } from '../listening/listening-error.ts';
import { WavEar } from '../listening/node/wav-ear.ts';
import { expectedThen } from './expected-then.ts';
import { wrongUse } from './read-arguments.ts';
import { readEvents } from './read-events.ts';
import { runTool } from './run-tool.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'hear:review',
  purpose: 'hears the kept sound of visits by today’s ear, beside what was heard that day.',
  usage: ['-- [--all] FOLDER'],
  words: true,
  options: { all: { says: 'prints also what is heard as it was' } },
  notes: [
    'FOLDER is what "npm run -s export:customer" wrote, or one visit in it: events.jsonl and the sounds that it names.',
    'Each utterance is heard by itself, with what the visit expected then; a JSON object a line, last one of counts.',
  ],
  examples: [
    'npm run -s hear:review -- example-lane',
    'npm run -s hear:review -- --all example-lane/2026-07-14-k3m9x2ab',
  ],
  exits: '0; 2 when used wrongly.',
} as const satisfies Tool;

const EVENTS_FILE = 'events.jsonl';

/** Of utterances with a sound. */
interface Counts {
  utterances: number;
  same: number;
  changed: number;
  /** Named by an event, and not in the folder: deleted by age, or never sent. */
  missing: number;
}

async function main({ options, words: [folder, ...more] }: Given<typeof TOOL>): Promise<void> {
  if (folder === undefined || more.length > 0) throw wrongUse(TOOL, 'Name one folder');
  const counts: Counts = { utterances: 0, same: 0, changed: 0, missing: 0 };
  const ear = new WavEar();
  for (const visit of await visitsIn(folder)) await reviewVisit(visit, ear, options.all === true, counts);
  await ear.stop();
  print(counts);
}

/** The folder itself, or those in it that hold a visit. */
async function visitsIn(folder: string): Promise<readonly string[]> {
  if (existsSync(join(folder, EVENTS_FILE))) return [folder];
  const names = await readdir(folder).catch((error: unknown) => {
    throw new TerminalError('record-missing', folder, error);
  });
  const visits = names.map((name) => join(folder, name)).filter((path) => existsSync(join(path, EVENTS_FILE)));
  if (visits.length === 0) throw new TerminalError('record-missing', join(folder, EVENTS_FILE));
  return visits.toSorted();
}

async function reviewVisit(folder: string, ear: WavEar, all: boolean, counts: Counts): Promise<void> {
  const events = await readEvents(join(folder, EVENTS_FILE));
  for (const [at, event] of events.entries()) {
    if (event.type !== 'input.taken' || event.input.type !== 'heard.utterance') continue;
    const { utterance, time } = event.input;
    if (utterance.sound === undefined) continue;
    counts.utterances += 1;
    const file = join(folder, `${utterance.sound.sha256}.wav`);
    const line = { visit: folder, event: at + 1, at: time.at, before: heardThen(utterance) };
    if (!existsSync(file)) {
      counts.missing += 1;
      print({ ...line, missing: file });
      continue;
    }
    ear.expect(expectedThen(events.slice(0, at), time));
    const now = await heardNow(ear, file);
    const same = now === heardThen(utterance);
    counts[same ? 'same' : 'changed'] += 1;
    if (all || !same) print({ ...line, now, same });
  }
}

/** What was not accepted counts as nothing heard. */
function heardThen({ accepted, understanding }: HeardUtterance): string {
  return accepted ? understanding.heard : '';
}

async function heardNow(ear: WavEar, file: string): Promise<string> {
  try {
    const heard = (await ear.listen(file)).filter(({ accepted }) => accepted);
    // One that goes on holds the words of the one before it too.
    return heard
      .filter((_, at) => heard[at + 1]?.continues !== true)
      .map(({ text }) => text)
      .join(' ');
  } catch (error) {
    if (error instanceof ListeningError && error.fault === 'nothing-heard') return '';
    throw error;
  }
}

function print(line: object): void {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

await runTool(TOOL, main);
