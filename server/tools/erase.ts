import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ServerError } from '../errors.ts';
import { Personal } from '../personal/personal.ts';
import { IndexKeeper } from '../review/index-keeper.ts';
import { INDEX_FILE, openSqliteVisitIndex } from '../store/sqlite-visit-index.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';
import { withPersonal } from './with-personal.ts';

const TOOL = {
  name: 'erase',
  options: ['visit', 'company', 'data', 'why'],
  help: `erase: erases what is personal of a visit, for good: who and where, words, sounds and photos.

Usage: npm run -s erase -- --visit VISIT [--company COMPANY] [--data FOLDER] [--why WORDS]

Options:
  --visit VISIT      as it is called in the list of visits
  --company COMPANY  whose (local)
  --data FOLDER      the server's data folder (./data); the server may run
  --why WORDS        stands on the trail beside it
  --help             prints this
  --version          prints the version of Readback

The key of the visit and its sounds and photos are erased. Readings, findings, cautions and the chain of hashes stay,
and "npm run verify" goes on to speak for them. Not reached: what an earlier version wrote in the open, backups that were
made before, what somebody took away as a file, and the device itself until it next sends.

Examples:
  npm run -s erase -- --visit 2026-07-14-k3m9x2ab
  npm run -s erase -- --data /srv/readback --company north --visit 2026-07-14-k3m9x2ab --why "asked by the customer"

Exits 0 when it is erased; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const { visit, why = '' } = options;
  if (visit === undefined || words.length > 0) {
    throw new ServerError('tool-wrong', 'Name one visit with --visit: see "npm run -s erase -- --help".');
  }
  return withPersonal(TOOL.name, options, async ({ events, folder, personal, people, auditor, company, by }) => {
    const signText = () => {
      throw new ServerError('server-failed', 'nothing is taken in here');
    };
    const erasing = new Personal({ store: personal, events, auditor, signer: { signText }, clock: Date.now });
    const { keys, files } = await erasing.erase(by, company, visit, why);
    const path = join(folder, INDEX_FILE);
    if (existsSync(path)) {
      const keeper = new IndexKeeper(events, await openSqliteVisitIndex(path), { keys: personal, people });
      await keeper.forget({ company, visit });
      await keeper.level(company);
      await keeper.close();
    }
    const what = [`${keys} ${keys === 1 ? 'key' : 'keys'}`, `${files} ${files === 1 ? 'file' : 'files'}`].join(' and ');
    process.stdout.write(`Erased of ${visit}: ${what}. Its events stand as they were written.\n`);
    return 0;
  });
}

await runServerTool(TOOL, main);
