import { toJsgf } from '../../grammar/export/jsgf.ts';
import { toPhraseSheet } from '../../grammar/export/phrase-sheet.ts';
import { toSrgsAbnf, toSrgsXml } from '../../grammar/export/srgs.ts';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { expectationFrom } from './expectation-from.ts';

const USAGE = 'Usage: npm run -s phrases -- [--as sheet|jsgf|srgs|abnf] [--expect POINT,POINT[;POINT,POINT]]\n';

/** What can be said, printed: a sheet for people, or the grammar for a recogniser. */
function main(args: readonly string[]): void {
  let form = 'sheet';
  let expectation: Expectation | undefined;
  for (let at = 0; at < args.length; at += 2) {
    const value = args[at + 1];
    const known = value !== undefined && args[at] === '--expect' ? expectationFrom(value) : undefined;
    if (args[at] === '--as' && value !== undefined) form = value;
    else if (known !== undefined) expectation = known;
    else return refuse();
  }
  const text = printed(form, expectation);
  if (text === undefined) return refuse();
  process.stdout.write(text);
}

function printed(form: string, expectation: Expectation | undefined): string | undefined {
  switch (form) {
    case 'sheet':
      return toPhraseSheet(expectation);
    case 'jsgf':
      return toJsgf(expectation, { scope: expectation === undefined ? 'all' : 'expected' });
    case 'srgs':
      return toSrgsXml();
    case 'abnf':
      return toSrgsAbnf();
    default:
      return undefined;
  }
}

function refuse(): void {
  process.stderr.write(USAGE);
  process.exitCode = 2;
}

main(process.argv.slice(2));
