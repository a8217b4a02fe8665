import { createInterface } from 'node:readline';
import { understand } from '../../grammar/phrases/understand.ts';
import { describeUnderstanding } from './describe-understanding.ts';
import { EXPECT_OPTION, expectationOf } from './expectation-from.ts';
import { runTool } from './run-tool.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'parse',
  purpose: 'says what lines of text mean, one JSON object a line.',
  usage: ['[-- --expect POINTS] < LINES'],
  options: { expect: EXPECT_OPTION },
  examples: [
    'npm run -s parse <<< "leg one to ground one eighteen"',
    'npm run -s parse -- --expect L1,ground <<< "one eighteen"',
  ],
  exits: '0 whatever the lines say; 2 when used wrongly.',
} as const satisfies Tool;

/** Lines of text on stdin, one JSON object a line on stdout. */
async function main({ options }: Given<typeof TOOL>): Promise<void> {
  const expectation = expectationOf(TOOL, options.expect);
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
    process.stdout.write(`${JSON.stringify(describeUnderstanding(understand(line, expectation)))}\n`);
  }
}

await runTool(TOOL, main);
