import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import type { Utterance } from '../listening/ear.ts';
import { ListeningError } from '../listening/listening-error.ts';
import { WavEar } from '../listening/node/wav-ear.ts';
import { describeUnderstanding } from './describe-understanding.ts';
import { expectationFrom } from './expectation-from.ts';

const USAGE =
  'Usage: npm run -s hear -- [--expect POINT,POINT[;POINT,POINT]] [--grammar FILE.jsgf] [--model FOLDER [--both]] FILE.wav …';

interface Order {
  readonly files: readonly string[];
  readonly expectation?: Expectation;
  readonly grammar?: string;
  readonly model?: string;
  readonly both?: boolean;
}

/** Sound files in, one JSON object for each utterance out. Exits 1 where a file could not be heard, 2 on wrong use. */
async function main(): Promise<void> {
  const order = await readOrder(process.argv.slice(2));
  if (order === undefined) {
    process.stderr.write(`${USAGE}\n`);
    process.exitCode = 2;
    return;
  }
  process.stdout.on('error', () => process.exit(0));
  const { files, expectation, ...options } = order;
  const ear = new WavEar([], options);
  const print = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);
  for (const file of files) {
    try {
      for (const utterance of await ear.listen(file, expectation)) {
        print({ file, ...(options.grammar === undefined ? described(utterance, expectation) : worded(utterance)) });
      }
    } catch (error) {
      if (!(error instanceof ListeningError)) throw error;
      process.exitCode = 1;
      process.stderr.write(`${error.message}\n`);
      print({ file, heard: '', kind: 'unclear', verdict: 'rejected', reason: error.fault, message: error.message });
      if (error.fault === 'model-missing' || error.fault.startsWith('grammar-')) break;
    }
  }
  await ear.stop();
}

/** The meaning as the parse tool has it, with what the sound adds. */
function described(utterance: Utterance, expectation: Expectation | undefined): object {
  const { text, alternatives, accepted, doubtful = false } = utterance;
  const meant = describeUnderstanding(understand(text, expectation, { alternatives: [...alternatives], doubtful }));
  const doubted = { heard: text, kind: 'unclear', verdict: 'rejected', reason: 'outside-grammar', alternatives: [] };
  return { ...(accepted ? meant : doubted), ...measured(utterance, accepted ? Number(meant['confidence']) : 1) };
}

const worded = (utterance: Utterance): object => ({
  heard: utterance.text,
  verdict: utterance.accepted ? 'logged' : 'rejected',
  ...measured(utterance, 1),
});

/** @param share how sure the meaning is, given the words */
const measured = ({ confidence, verdictMs, realTimeFactor }: Utterance, share: number): object => ({
  confidence: Math.round(confidence * share * 1000) / 1000,
  ms: Math.round(verdictMs),
  realTimeFactor: Math.round(realTimeFactor * 1000) / 1000,
});

async function readOrder(args: readonly string[]): Promise<Order | undefined> {
  const text = { type: 'string' } as const;
  let given: ReturnType<typeof parse>;
  const parse = () =>
    parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { expect: text, grammar: text, model: text, both: { type: 'boolean' } },
    });
  try {
    given = parse();
  } catch {
    return undefined;
  }
  const { expect, grammar, model, both } = given.values;
  const expectation = expect === undefined ? undefined : expectationFrom(expect);
  if (given.positionals.length === 0 || (expect !== undefined && expectation === undefined)) return undefined;
  const jsgf = grammar === undefined ? undefined : await readFile(grammar, 'utf8').catch(() => undefined);
  if (grammar !== undefined && jsgf === undefined) {
    process.stderr.write(`The grammar ${grammar} cannot be read: check the path.\n`);
    return undefined;
  }
  return {
    files: given.positionals,
    ...(expectation && { expectation }),
    ...(jsgf !== undefined && { grammar: jsgf }),
    ...(model !== undefined && { model }),
    ...(both === true && { both }),
  };
}

await main();
