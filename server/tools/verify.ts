import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import { againstDevices } from '../heads/against-devices.ts';
import { type KeptHeads, readHeads } from '../heads/heads-file.ts';
import { heldByDevice, verifyDevice } from '../heads/held-by-device.ts';
import { heldByServer } from '../heads/held-by-server.ts';
import { heldInFolder } from '../heads/held-in-folder.ts';
import { HEADS_FILE } from '../heads/keep-heads.ts';
import { type Verification, verifyRecord } from '../heads/verify-record.ts';
import { type Finding, streamWords } from '../heads/verify-stream.ts';
import { KEY_FILE, openReceiptSigner } from '../sync/receipt-signer.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';

const TOOL = {
  name: 'verify',
  options: ['data', 'server', 'heads', 'key'],
  help: `verify: tells whether a record still is what was written: chains, receipts, signed heads, devices.

Usage: npm run -s verify -- FILE… [--key KEY]
       npm run -s verify -- --data FOLDER [--heads FILE] [FILE…]
       npm run -s verify -- --server URL [--heads FILE] [FILE…]

Options:
  --data FOLDER  a server's data folder, read only; the server may run
  --server URL   what a running server gives out
  --heads FILE   heads.jsonl as it was kept elsewhere, such as beside a backup
  --key KEY      the server's public key (receiptKey of /api/health), to check receipts without a folder
  --help         prints this
  --version      prints the version of Readback

A FILE is the record file of a device; with a folder or a server it is held against what is held there.

Examples:
  npm run -s verify -- --data data
  npm run -s verify -- --data data --heads backup/heads.jsonl
  npm run -s verify -- --server http://127.0.0.1:8470 visit.jsonl

Exits 0 when nothing speaks against it; 1 when something does; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const { data, server } = options;
  if (data !== undefined && server !== undefined) throw wrongUse('--data and --server are one or the other');
  if (data === undefined && server === undefined && words.length === 0) throw wrongUse('Nothing to verify is named');
  const devices = words.map((path) => heldByDevice(path));
  if (data !== undefined) return verifyFolder(data, options, devices);
  if (server !== undefined) return verifyServer(server, options, devices);
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

type Devices = readonly ReturnType<typeof heldByDevice>[];

async function verifyFolder(folder: string, options: GivenToTool['options'], devices: Devices): Promise<number> {
  const { streams, missing } = heldInFolder(folder);
  const keyPath = join(folder, KEY_FILE);
  const signer = existsSync(keyPath) ? openReceiptSigner(keyPath) : undefined;
  const kept = readHeads(options['heads'] ?? join(folder, HEADS_FILE), signer);
  const lost: Finding[] =
    missing === 0 ? [] : [{ stream: '', sentence: `${missing} events that were acknowledged are not here.` }];
  const own = options['heads'] === undefined ? [] : changedHeads(readHeads(join(folder, HEADS_FILE)), kept);
  return verifyHeld(streams, kept, devices, signer?.publicKey ?? options['key'], [...lost, ...own]);
}

async function verifyServer(url: string, options: GivenToTool['options'], devices: Devices): Promise<number> {
  const { streams, heads, publicKey } = await heldByServer(url);
  const kept = options['heads'] === undefined ? { heads } : readHeads(options['heads']);
  const own = options['heads'] === undefined ? [] : changedHeads({ heads }, kept);
  return verifyHeld(streams, kept, devices, options['key'] ?? publicKey, own);
}

async function verifyHeld(
  streams: Parameters<typeof verifyRecord>[0],
  kept: KeptHeads,
  devices: Devices,
  publicKey: string | undefined,
  own: readonly Finding[],
): Promise<number> {
  const record = await verifyRecord(streams, kept);
  const ofDevices = await Promise.all(devices.map((device) => verifyDevice(device, publicKey)));
  const findings = [...own, ...record.findings, ...ofDevices.flat(), ...againstDevices(streams, devices)];
  tell({ ...record, findings });
  return findings.length === 0 ? 0 : 1;
}

/** Heads kept elsewhere against those of the server: the same ones must stand there, in the same order. */
function changedHeads(own: KeptHeads, kept: KeptHeads): readonly Finding[] {
  const other = kept.heads.find((head, at) => !sameHead(head, own.heads[at]));
  if (other === undefined) return [];
  return [{ stream: '', sentence: `Head ${other.number} as it was kept is not the one that the server has.` }];
}

function sameHead(one: SignedHead, other: SignedHead | undefined): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
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
  const held = `${events} events in ${streams} ${streams === 1 ? 'stream' : 'streams'}`;
  const sum = findings.length === 0 ? `Nothing speaks against ${held}.` : `${held}; ${findings.length} not as it was:`;
  const out = [sum, ...lines, ...notes.map((one) => `Note: ${one}`), ...unknown.map((one) => `Not known: ${one}`)];
  process.stdout.write(`${out.join('\n')}\n`);
}

function wrongUse(what: string): ServerError {
  return new ServerError('tool-wrong', `${what}: see "npm run -s verify -- --help".`);
}

await runServerTool(TOOL, main);
