import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { DiagnosisError } from '../diagnosis/errors.ts';
import { diagnosisFrom, makeDiagnosis } from '../diagnosis/make-diagnosis.ts';
import { readStockTable } from '../diagnosis/node/stock-tables.ts';
import { DiagnoseSession, listLines } from './diagnose-session.ts';

const USAGE = 'Usage: npm run -s diagnose -- --unit FILE | --list';

const print = (value: object) => process.stdout.write(`${JSON.stringify(value)}\n`);

function fail(message: string): void {
  process.stderr.write(`${message}\n`);
  process.exitCode = 2;
}

async function talk(file: string): Promise<void> {
  const profile: UnitProfile = JSON.parse(readFileSync(file, 'utf8'));
  const stock = readStockTable(fileURLToPath(new URL('../../stock-tables', import.meta.url)), profile);
  const session = new DiagnoseSession(stock ? diagnosisFrom(stock) : makeDiagnosis(profile));
  print(session.status());
  for await (const line of createInterface({ input: process.stdin })) {
    if (line.trim() !== '') print(session.hear(line));
  }
}

async function main(): Promise<void> {
  const { values } = parseArgs({ options: { unit: { type: 'string' }, list: { type: 'boolean' } } });
  if (values.list) for (const line of listLines()) print(line);
  else if (values.unit) await talk(values.unit);
  else fail(USAGE);
}

main().catch((error: unknown) => {
  if (error instanceof DiagnosisError) print({ error: { code: error.code, message: error.message } });
  fail(error instanceof Error ? `${error.message}\n${USAGE}` : String(error));
});
