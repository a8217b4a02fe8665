import { readDatabaseUrl } from '../configuration.ts';
import { ServerError } from '../errors.ts';
import { heldByDevice, verifyDevice } from '../heads/held-by-device.ts';
import { verifyFolder, verifyServer } from '../heads/verify-all.ts';
import { verifyDatabase } from '../heads/verify-database.ts';
import type { Verification } from '../heads/verify-record.ts';
import { eventsWords, streamWords } from '../heads/verify-stream.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';

const TOOL = {
  name: 'verify',
  options: ['data', 'server', 'database', 'heads', 'key'],
  help: `verify: tells whether a record still is what was written: chains, receipts, signed heads, devices.

Usage: npm run -s verify -- FILE… [--key KEY]
       npm run -s verify -- --data FOLDER [--heads FILE] [FILE…]
       npm run -s verify -- --server URL [--heads FILE] [FILE…]
       npm run -s verify -- --database URL [--heads FILE] [FILE…]

Options:
  --data FOLDER   a server's data folder, read only; the server may run
  --server URL    what a running server gives out
  --database URL  a PostgreSQL database (DATABASE_URL), read only; servers may run
  --heads FILE    heads.jsonl as it was kept elsewhere, such as beside a backup
  --key KEY       the server's public key as it was kept (receiptKey of /api/health): what signed must be that one
  --help          prints this
  --version       prints the version of Readback

A FILE is the record file of a device; with a folder, server or database it is held against what is held there.

Examples:
  npm run -s verify -- --data data
  npm run -s verify -- --data data --heads backup/heads.jsonl
  npm run -s verify -- --server http://127.0.0.1:8470 visit.jsonl

Exits 0 when nothing speaks against it; 1 when something does; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const { data, server, database } = options;
  const places = [data, server, database].filter((one) => one !== undefined).length;
  if (places > 1) throw wrongUse('--data, --server and --database are one or the other');
  if (places === 0 && words.length === 0) throw wrongUse('Nothing to verify is named');
  if (places === 0 && options['heads'] !== undefined) {
    throw wrongUse('--heads goes with --data, --server or --database');
  }
  const devices = words.map((path) => heldByDevice(path));
  if (data !== undefined) return toldOf(verifyFolder(data, devices, options));
  if (server !== undefined) return toldOf(verifyServer(server, devices, options));
  const { databaseUrl } = readDatabaseUrl({ DATABASE_URL: database });
  if (databaseUrl !== undefined) return toldOf(verifyDatabase(databaseUrl, devices, options));
  const found = (await Promise.all(devices.map((device) => verifyDevice(device, options['key'])))).flat();
  tell({
    streams: devices.length,
    events: devices.reduce((sum, { entries }) => sum + entries.length, 0),
    findings: found,
    notes: [],
    unknown: devices.every(({ acknowledged }) => acknowledged !== undefined)
      ? unknownOfReceipts(options['key'])
      : ['A record that no server acknowledged: one that was cut or written anew as a whole cannot be told.'],
  });
  return found.length === 0 ? 0 : 1;
}

async function toldOf(verifying: Promise<Verification>): Promise<number> {
  const verification = await verifying;
  tell(verification);
  return verification.findings.length === 0 ? 0 : 1;
}

function unknownOfReceipts(key: string | undefined): readonly string[] {
  return key === undefined
    ? ['Without the server’s public key (--key) the receipts were not checked.']
    : ['Events after the acknowledged one: nothing tells a cut among them.'];
}

function tell({ streams, events, findings, notes, unknown }: Verification): void {
  const lines = findings.map(({ stream, sentence }) =>
    stream === '' ? sentence : `${streamWords(stream)}: ${sentence}`,
  );
  const held = `${eventsWords(events)} in ${streams} ${streams === 1 ? 'stream' : 'streams'}`;
  const sum = findings.length === 0 ? `Nothing speaks against ${held}.` : `${held}; ${findings.length} not as it was:`;
  const out = [sum, ...lines, ...notes.map((one) => `Note: ${one}`), ...unknown.map((one) => `Not known: ${one}`)];
  process.stdout.write(`${out.join('\n')}\n`);
}

function wrongUse(what: string): ServerError {
  return new ServerError('tool-wrong', `${what}: see "npm run -s verify -- --help".`);
}

await runServerTool(TOOL, main);
