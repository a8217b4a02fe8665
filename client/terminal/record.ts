import { basename } from 'node:path';
import { toVisitRecord } from '../../grammar/export/visit-record.ts';
import { VisitRecordSchema } from '../../grammar/export/visit-record-schema.ts';
import type { DeviceEntry } from '../../grammar/visit/device-entry.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { entriesOfDevice, joinDevices } from '../../grammar/visit/join-devices.ts';
import { printTimes } from '../words/printed/print-times.ts';
import { VOUCHED } from '../words/printed/vouched-words.ts';
import { printRecord } from './print-record.ts';
import { wrongUse } from './read-arguments.ts';
import { opensVisit, type ReadVisit, readVisitFile } from './read-events.ts';
import { runTool } from './run-tool.ts';
import { headsAtHand, vouchedLines } from './signed-heads.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'record',
  purpose: 'prints the record of a visit: as text, as one JSON document, or the schema of that document.',
  usage: ['-- [--json] [--server WHERE] EVENTS.jsonl [OTHER-DEVICE.jsonl …]', '-- --schema'],
  words: true,
  options: {
    json: { says: 'prints one JSON document instead of text' },
    server: {
      value: 'WHERE',
      says: 'whose signed heads are printed: a data folder, its heads.jsonl, or an address (beside EVENTS.jsonl)',
    },
    schema: { says: 'prints the JSON Schema (draft 2020-12) of that document' },
  },
  notes: [
    'EVENTS.jsonl is the record file of the technician’s device (the demo names its own) or has one event a line.',
    'What a server signed is shown as it stands there; whether the signature holds, npm run verify tells.',
    'Of another device’s record remarks are taken in, and all of it where that device carried the visit on.',
  ],
  examples: [
    'npm run -s record -- fixtures/visits/library/events.jsonl',
    'npm run -s record -- --json fixtures/visits/library/events.jsonl > visit.json',
    'npm run -s record -- --schema',
  ],
  exits: '0; 2 when used wrongly, or when a file is no record or does not fit its own chain.',
} as const satisfies Tool;

/** Prints a visit's record: as text, as one JSON document, or the JSON Schema of that document. */
async function main({ options, words }: Given<typeof TOOL>): Promise<void> {
  if (options.schema === true) {
    process.stdout.write(`${JSON.stringify(VisitRecordSchema, undefined, 2)}\n`);
    return;
  }
  const [path, ...others] = words;
  if (path === undefined) throw wrongUse(TOOL, 'No record is named');
  const own = await readVisitFile(path);
  const { events, chain } = own;
  if (!opensVisit(events)) throw new TerminalError('record-no-visit', path);
  const visit = chain?.stream.visit ?? visitOf(events);
  const beside = await Promise.all(others.map((other) => readOther(other, visit)));
  const joined = joinDevices([...entriesOf(own, basename(path)), ...beside.flatMap(({ entries }) => entries)]);
  const record = toVisitRecord(joined.entries.map(({ event }) => event));
  const told = beside.map(({ name, other, entries }) => {
    if (other !== undefined) return VOUCHED.otherVisit(name, other);
    const taken = entries.filter((entry) => joined.entries.includes(entry));
    const remarks = taken.filter(({ event }) => event.type === 'remark.made');
    return VOUCHED.joined(name, remarks.length, remarks.length === taken.length ? 0 : taken.length);
  });
  for (const sentence of told) process.stderr.write(`${sentence}\n`);
  const zone = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  const heads = await headsAtHand(options.server, path);
  const vouched = vouchedLines(chain, heads, printTimes(record.zone ?? zone).day);
  const edges = { zone, vouchedBy: [...vouched, ...told] };
  process.stdout.write(
    options.json === true ? `${JSON.stringify(record, undefined, 2)}\n` : printRecord(record, edges),
  );
}

/** Another device's record: its entries where it is of this visit, else the visit that it is of. */
async function readOther(path: string, visit: string) {
  const read = await readVisitFile(path);
  const name = basename(path);
  const its = read.chain?.stream.visit ?? visitOf(read.events);
  const isOther = its !== '' && visit !== '' && its !== visit;
  return isOther ? { name, other: its, entries: [] } : { name, other: undefined, entries: entriesOf(read, name) };
}

/** Each event with its place in its device's record; a file without a chain stands for a device of its own. */
function entriesOf({ events, chain }: ReadVisit, name: string): readonly DeviceEntry[] {
  if (chain === undefined) return entriesOfDevice(name, events);
  const { device, epoch } = chain.stream;
  return events.map((event, at) => ({ device, epoch, seq: chain.entries[at]?.seq ?? at + 1, event }));
}

/** The visit that the events open; empty where they open none. */
function visitOf(events: readonly VisitEvent[]): string {
  const opening = events.find((event) => event.type === 'visit.opened');
  return typeof opening?.visit === 'string' ? opening.visit : '';
}

await runTool(TOOL, main);
