import { toVisitRecord } from '../../grammar/export/visit-record.ts';
import { VisitRecordSchema } from '../../grammar/export/visit-record-schema.ts';
import { joinDevices } from '../../grammar/visit/join-devices.ts';
import { printRecord } from './print-record.ts';
import { readEvents } from './read-events.ts';
import { TerminalError } from './terminal-error.ts';

const USAGE = 'npm run -s record -- [--json] EVENTS.jsonl [OTHER-DEVICE.jsonl …], or --schema';

/** Prints a visit's record: as text, as one JSON document, or the JSON Schema of that document. */
async function main(): Promise<void> {
  const args = process.argv.slice(2);
  process.stdout.on('error', () => process.exit(0));
  if (args.length === 1 && args[0] === '--schema') {
    process.stdout.write(`${JSON.stringify(VisitRecordSchema, undefined, 2)}\n`);
    return;
  }
  const json = args[0] === '--json';
  const [path, ...others] = json ? args.slice(1) : args;
  if (path === undefined || [path, ...others].some((one) => one.startsWith('-')))
    throw new TerminalError('usage', USAGE);
  const technician = await readEvents(path);
  const record = toVisitRecord(joinDevices(technician, await Promise.all(others.map(readEvents))));
  process.stdout.write(json ? `${JSON.stringify(record, undefined, 2)}\n` : printRecord(record));
}

await main().catch((error: unknown) => {
  if (!(error instanceof TerminalError)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
});
