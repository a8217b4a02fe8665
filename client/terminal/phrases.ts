import { toJsgf } from '../../grammar/export/jsgf.ts';
import { toPhraseSheet } from '../../grammar/export/phrase-sheet.ts';
import { toSrgsAbnf, toSrgsXml } from '../../grammar/export/srgs.ts';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { EXPECT_OPTION, expectationOf } from './expectation-from.ts';
import { wrongUse } from './read-arguments.ts';
import { runTool } from './run-tool.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'phrases',
  purpose: 'prints what can be said: a sheet for people, or the grammar for a recogniser.',
  usage: ['[-- [--as FORM] [--expect POINTS]]'],
  options: {
    as: { value: 'FORM', says: 'sheet (for people), jsgf, srgs (XML) or abnf (SRGS in its ABNF form)' },
    expect: EXPECT_OPTION,
  },
  notes: ['--expect narrows the sheet and the JSGF to one step of a visit; srgs and abnf always hold everything.'],
  examples: [
    'npm run -s phrases',
    'npm run -s phrases -- --expect L1,ground',
    'npm run -s phrases -- --as jsgf > visit.jsgf',
  ],
  exits: '0; 2 when used wrongly.',
} as const satisfies Tool;

const FORMS: Readonly<Record<string, (expectation: Expectation | undefined) => string>> = {
  sheet: toPhraseSheet,
  jsgf: (expectation) => toJsgf(expectation, { scope: expectation === undefined ? 'all' : 'expected' }),
  srgs: () => toSrgsXml(),
  abnf: () => toSrgsAbnf(),
};

function main({ options }: Given<typeof TOOL>): void {
  const expectation = expectationOf(TOOL, options.expect);
  const { as = 'sheet' } = options;
  const print = Object.hasOwn(FORMS, as) ? FORMS[as] : undefined;
  if (print === undefined) throw wrongUse(TOOL, `The form "${as}" is not one of ${Object.keys(FORMS).join(', ')}`);
  process.stdout.write(print(expectation));
}

await runTool(TOOL, main);
