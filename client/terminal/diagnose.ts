import { createInterface } from 'node:readline';
import { DiagnosisError } from '../diagnosis/errors.ts';
import { makeDiagnosis } from '../diagnosis/make-diagnosis.ts';
import { DiagnoseSession, listLines } from './diagnose-session.ts';
import { wrongUse } from './read-arguments.ts';
import { readProfile } from './read-profile.ts';
import { runTool } from './run-tool.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'diagnose',
  purpose: 'says what to measure next and what it may be, one JSON object for each reading given.',
  usage: ['-- --unit FILE < ANSWERS', '-- --list'],
  options: {
    unit: { value: 'FILE', says: 'the unit profile, such as fixtures/units/library.json' },
    list: { says: 'prints every test, fault, point, answer and hazard that the lines can name' },
  },
  notes: [
    'Answers are one JSON object a line: {"reading": 238}, {"reading": "open"}, {"reading": "fan-not-turning"},',
    '{"reading": 1.1, "test": "microfarads-fan"}, {"reading": 4.2, "unit": "kOhm"}, {"skip": true},',
    '{"repaired": "fan-capacitor-weak"}, {"why": true}. A line says one of these; what is not known is refused.',
  ],
  examples: ['npm run -s diagnose -- --unit fixtures/units/library.json', 'npm run -s diagnose -- --list | head -3'],
  exits: '0; 2 when used wrongly, or when the profile cannot be right.',
} as const satisfies Tool;

const print = (value: object) => process.stdout.write(`${JSON.stringify(value)}\n`);

function startSession(file: string): DiagnoseSession {
  try {
    return new DiagnoseSession(makeDiagnosis(readProfile(file)));
  } catch (error) {
    // Whoever reads the lines is told in their form too.
    if (error instanceof DiagnosisError || error instanceof TerminalError)
      print({ error: { code: error.code, message: error.message } });
    throw error;
  }
}

async function main({ options }: Given<typeof TOOL>): Promise<void> {
  if (options.list === true) {
    for (const line of listLines()) print(line);
    return;
  }
  if (options.unit === undefined) throw wrongUse(TOOL, 'No unit is named');
  const session = startSession(options.unit);
  print(session.status());
  for await (const line of createInterface({ input: process.stdin })) {
    if (line.trim() !== '') print(session.hear(line));
  }
}

await runTool(TOOL, main);
