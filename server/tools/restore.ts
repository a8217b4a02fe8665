import { ServerError } from '../errors.ts';
import { restoreFolder } from '../heads/copy-folder.ts';
import { eventsWords } from '../heads/verify-stream.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';

const TOOL = {
  name: 'restore',
  options: ['data'],
  help: `restore: puts a backup in the place of a data folder.

Usage: npm run -s restore -- [--data FOLDER] COPY

Options:
  --data FOLDER  where it goes: a folder without a record, whose server is stopped (./data)
  --help         prints this
  --version      prints the version of Readback

What devices wrote since the backup they send again as they next connect.

Examples:
  npm run -s restore -- --data /srv/readback /mnt/backup/monday

Exits 0 when it is done; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const [copy, ...more] = words;
  if (copy === undefined || more.length > 0) {
    throw new ServerError('tool-wrong', 'Name the folder of one backup: see "npm run -s restore -- --help".');
  }
  const folder = options['data'] ?? 'data';
  process.stdout.write(`Put ${eventsWords(await restoreFolder(copy, folder))} back into ${folder}.\n`);
  return 0;
}

await runServerTool(TOOL, main);
