import { createInterface } from 'node:readline';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import { describeUnderstanding } from './describe-understanding.ts';
import { expectationFrom } from './expectation-from.ts';

const USAGE = 'Usage: npm run -s parse -- [--expect POINT,POINT[;POINT,POINT]] < lines-of-text';

/** Lines of text on stdin, one JSON object a line on stdout. */
async function main(): Promise<void> {
  const expectation = expectationOf(process.argv.slice(2));
  if (expectation === 'wrong') {
    process.stderr.write(`${USAGE}\n`);
    process.exitCode = 2;
    return;
  }
  // A reader that has seen enough ("| head -1") is no fault.
  process.stdout.on('error', () => process.exit(0));
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
    process.stdout.write(`${JSON.stringify(describeUnderstanding(understand(line, expectation)))}\n`);
  }
}

function expectationOf(args: readonly string[]): Expectation | undefined | 'wrong' {
  if (args.length === 0) return undefined;
  const [option, points] = args;
  if (option !== '--expect' || points === undefined || args.length > 2) return 'wrong';
  return expectationFrom(points) ?? 'wrong';
}

await main();
