import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Entry } from '../../grammar/visit/envelope.ts';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';
import { WavEar } from '../listening/node/wav-ear.ts';
import { openFileLog } from '../record/node/file-log.ts';
import { nodeLink } from '../record/node/link-edge.ts';
import { type LocalServer, startLocalServer } from '../record/node/local-server.ts';
import { sha256 } from '../record/node/sha256.ts';
import { Outbox } from '../record/outbox.ts';
import { faultWords } from '../words/things/fault-words.ts';
import { type Played, type PlayedVisit, playVisit } from './play-visit.ts';
import { printPlayed } from './print-played.ts';
import { wrongUse } from './read-arguments.ts';
import { readVersion, runTool } from './run-tool.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';
import { readVisitScript, type VisitScript } from './visit-script.ts';

const SERVER_PROGRAM = fileURLToPath(new URL('../../server/main.js', import.meta.url));

const TOOL = {
  name: 'demo',
  purpose: 'plays a recorded visit from its sound to the record on a server of its own.',
  usage: ['[-- [--visit NAME] [--json] [--kill-server-at LINE]]'],
  options: {
    visit: { value: 'NAME', says: 'one of the folders of fixtures/visits (library)' },
    json: { says: 'prints one JSON object a line instead of a conversation' },
    'kill-server-at': { value: 'LINE', says: 'kills the server before that line and starts it again some lines later' },
  },
  notes: ['The record stays in the folder demo under DATA_DIR (./data).'],
  examples: ['npm run -s demo', 'npm run -s demo -- --visit fuse', 'npm run -s demo -- --json --kill-server-at 20'],
  exits:
    '0 when the visit closed with its known finding and the server holds the same chain; else 1; 2 when used wrongly.',
} as const satisfies Tool;

interface DemoOptions {
  readonly visit: string;
  readonly json: boolean;
  /** Kill the server before this line, and start it again some lines later. */
  readonly killServerAt: number | undefined;
}

function readOptions({
  visit = 'library',
  json = false,
  'kill-server-at': line,
}: Given<typeof TOOL>['options']): DemoOptions {
  const killServerAt = line === undefined ? undefined : Number(line);
  if (killServerAt !== undefined && !(killServerAt >= 1))
    throw wrongUse(TOOL, `"${line}" is no number of a line, counted from 1`);
  return { visit, json, killServerAt };
}

/** Plays a recorded visit from sound to record; exits 0 only if it closed and the server holds the same chain. */
async function main(given: Given<typeof TOOL>): Promise<void> {
  const options = readOptions(given.options);
  const script = await readVisitScript(options.visit);
  const folder = resolve(process.env['DATA_DIR'] ?? 'data', 'demo');
  await mkdir(folder, { recursive: true }).catch((error: unknown) => {
    throw new TerminalError('folder-unwritable', folder, error);
  });
  const tell = options.json ? tellJson : tellPerson;
  tell({ started: `visit "${script.name}", ${script.lines.length} lines; loading the ear and starting the server` });
  const ear = new WavEar();
  let server = await startLocalServer({ program: SERVER_PROGRAM, dataDir: folder });
  const visit = `${script.name}-${Date.now().toString(36)}`;
  const record = join(folder, `${visit}.jsonl`);
  const { log, notice } = await openFileLog(record, { company: LOCAL_COMPANY, visit, device: 'terminal', epoch: 1 });
  if (notice !== undefined) tell({ notice });
  const outbox = new Outbox({ log, clock: Date.now, ...nodeLink(server.url) }).start();
  try {
    const played = await playVisit(script, visit, await readVersion(), {
      listen: (sound, expectation) => ear.listen(sound, expectation),
      append: (bodies) => outbox.append(bodies),
      tell,
      beforeLine: async (number) => {
        if (number === options.killServerAt) {
          await server.kill();
          tell({ notice: 'The server was killed; the visit goes on without it.' });
        }
        if (number === (options.killServerAt ?? Number.NaN) + LINES_WITHOUT_SERVER) {
          server = await startLocalServer({ program: SERVER_PROGRAM, dataDir: folder, port: server.port });
          tell({ notice: 'The server is back; the record catches up.' });
        }
      },
    });
    outbox.retryNow();
    await outbox.settled();
    const held = await heldByServer(server, visit);
    const verdict = await verifyChain(log.stream, held, sha256, log.head());
    process.exitCode = report(
      script,
      played,
      { record, server: server.url, events: log.head().seq, same: verdict.intact },
      tell,
    )
      ? 0
      : 1;
  } finally {
    outbox.stop();
    await log.close();
    await server.stop();
    await ear.stop();
  }
}

const LINES_WITHOUT_SERVER = 8;

interface Kept {
  readonly record: string;
  readonly server: string;
  readonly events: number;
  readonly same: boolean;
}

/** Tells how the visit ended; true if it reached its close, with the finding it is known for, and the chain is whole. */
function report(script: VisitScript, played: PlayedVisit, kept: Kept, tell: Tell): boolean {
  const { context } = played.run;
  const closed = context.phase === 'closed';
  const found = context.finding?.fault;
  const summary = {
    closed,
    finding: found === undefined ? undefined : faultWords(found),
    expectedFinding: faultWords(script.finding),
    understoodRight: played.right,
    utterances: played.spoken,
    verdictMsP50: percentile(played.verdictMs, 0.5),
    verdictMsP95: percentile(played.verdictMs, 0.95),
    realTimeFactorP50: Math.round(percentile(played.realTimeFactors, 0.5) * 1000) / 1000,
    events: kept.events,
    serverHoldsSameChain: kept.same,
    record: kept.record,
  };
  tell({ summary });
  return closed && found === script.finding && kept.same;
}

async function heldByServer(server: LocalServer, visit: string): Promise<readonly Entry[]> {
  const held: Entry[] = [];
  let next: string | number | null = '';
  while (next !== null && next !== undefined) {
    const answer = await fetch(`${server.url}/api/visits/${visit}/events${next === '' ? '' : `?after=${next}`}`);
    const page = (await answer.json()) as { readonly events: readonly Entry[]; readonly next?: string | number | null };
    held.push(...page.events);
    next = page.next ?? null;
  }
  return held;
}

function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return Math.round((sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0) * 1000) / 1000;
}

type Told = Played | { readonly started: string } | { readonly notice: string } | { readonly summary: object };
type Tell = (told: Told) => void;

function tellJson(told: Told): void {
  const line = 'type' in told && told.type === 'view' ? { type: 'events', events: told.view.events } : told;
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

function tellPerson(told: Told): void {
  const lines =
    'type' in told
      ? printPlayed(told)
      : 'summary' in told
        ? ['', ...Object.entries(told.summary).map(([name, value]) => `  ${name.padEnd(22)}${value}`)]
        : ['started' in told ? told.started : `  * ${told.notice}`];
  process.stdout.write(`${lines.join('\n')}${lines.length === 0 ? '' : '\n'}`);
}

await runTool(TOOL, main);
