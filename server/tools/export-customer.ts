import { ServerError } from '../errors.ts';
import { exportCustomer } from '../personal/customer-export.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';
import { PLACE_HELP, PLACE_OPTIONS, withPersonal } from './with-personal.ts';

const TOOL = {
  name: 'export:customer',
  options: ['site', 'to', ...PLACE_OPTIONS],
  help: `export:customer: writes all that is held of one customer, by the name of their site, in the open.

Usage: npm run -s export:customer -- --site SITE --to FOLDER [--company COMPANY] [--data FOLDER | --database URL]

Options:
  --site SITE        as it stands in the visits; case and spaces tell nothing apart
  --to FOLDER        new or empty
  --company COMPANY  whose visits (local)
${PLACE_HELP}
  --help             prints this
  --version          prints the version of Readback

A folder for each visit: events.jsonl, record.json, readings.csv, talk.vtt, and its sounds and photos by their hash. What
was erased is not in it, and no longer tells whose it was. It is put on the trail.

Examples:
  npm run -s export:customer -- --site "12 Example Lane" --to example-lane
  npm run -s export:customer -- --database postgres://readback@db.example/readback --site "12 Example Lane" --to lane

Exits 0 when it is written; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const { site, to } = options;
  if (site === undefined || site.trim() === '' || to === undefined || words.length > 0) {
    throw new ServerError('tool-wrong', 'Give --site and --to: see "npm run -s export:customer -- --help".');
  }
  return withPersonal(TOOL.name, options, async ({ events, personal, people, signer, auditor, company, by }) => {
    const { visits, files } = await exportCustomer({ events, personal, people, signer }, company, site, to);
    await auditor.done('customer exported', by, visits.join(' '));
    const counts = `${visits.length} ${visits.length === 1 ? 'visit' : 'visits'} and ${files} ${files === 1 ? 'file' : 'files'}`;
    process.stdout.write(`${counts} in ${to}\n`);
    return 0;
  });
}

await runServerTool(TOOL, main);
