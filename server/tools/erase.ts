import { ServerError } from '../errors.ts';
import { openWords } from '../personal/in-the-open.ts';
import { Personal } from '../personal/personal.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';
import { PLACE_HELP, PLACE_OPTIONS, withPersonal } from './with-personal.ts';

const TOOL = {
  name: 'erase',
  options: ['visit', 'why', ...PLACE_OPTIONS],
  help: `erase: erases what is personal of a visit, for good: who and where, words, sounds and photos.

Usage: npm run -s erase -- --visit VISIT [--company COMPANY] [--data FOLDER | --database URL] [--why WORDS]

Options:
  --visit VISIT      as it is called in the list of visits
  --company COMPANY  whose (local)
${PLACE_HELP}
  --why WORDS        stands on the trail beside it
  --help             prints this
  --version          prints the version of Readback

The keys of the visit and its sounds and photos are erased. Readings, findings, cautions and the chain of hashes stay,
and "npm run verify" goes on to speak for them. Not reached: what was written in the open (its entries are counted),
backups that were made before, what somebody took away as a file, and the device itself until it next sends. In a
database the table of keys is written anew without them; its log and archive are not reached.

Examples:
  npm run -s erase -- --visit 2026-07-14-k3m9x2ab
  npm run -s erase -- --data /srv/readback --company north --visit 2026-07-14-k3m9x2ab --why "asked by the customer"
  npm run -s erase -- --database postgres://readback@db.example/readback --visit 2026-07-14-k3m9x2ab

Exits 0 when it is erased; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const { visit, why = '' } = options;
  if (visit === undefined || words.length > 0) {
    throw new ServerError('tool-wrong', 'Name one visit with --visit: see "npm run -s erase -- --help".');
  }
  return withPersonal(TOOL.name, options, async ({ events, personal, forget, auditor, company, by }) => {
    const signText = () => {
      throw new ServerError('server-failed', 'nothing is taken in here');
    };
    const erasing = new Personal({ store: personal, events, auditor, signer: { signText }, clock: Date.now });
    const { keys, files, open, left } = await erasing.erase(by, company, visit, why);
    await forget(company, visit);
    const what = [`${keys} ${keys === 1 ? 'key' : 'keys'}`, `${files} ${files === 1 ? 'file' : 'files'}`].join(' and ');
    const notes = [...(open === 0 ? [] : [openWords(open)]), ...left].map((note) => `Note: ${note}\n`);
    process.stdout.write(`Erased of ${visit}: ${what}. Its events stand as they were written.\n${notes.join('')}`);
    return 0;
  });
}

await runServerTool(TOOL, main);
