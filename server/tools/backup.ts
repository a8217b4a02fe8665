import { ServerError } from '../errors.ts';
import { backUpFolder } from '../heads/copy-folder.ts';
import { eventsWords } from '../heads/verify-stream.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';

const TOOL = {
  name: 'backup',
  options: ['data'],
  help: `backup: copies a server's data folder whole, while the server goes on.

Usage: npm run -s backup -- [--data FOLDER] COPY

Options:
  --data FOLDER  the data folder (./data)
  --help         prints this
  --version      prints the version of Readback

COPY is a folder of its own for each backup, new or empty. It holds the key that signs: keep it where nobody else reads.

Examples:
  npm run -s backup -- --data /srv/readback /mnt/backup/monday
  npm run -s verify -- --data /mnt/backup/monday

Exits 0 when the copy is whole; 2 when used wrongly.
`,
} as const;

async function main({ options, words }: GivenToTool): Promise<number> {
  const [copy, ...more] = words;
  if (copy === undefined || more.length > 0) {
    throw new ServerError('tool-wrong', 'Name one folder for the copy: see "npm run -s backup -- --help".');
  }
  const events = await backUpFolder(options['data'] ?? 'data', copy);
  process.stdout.write(`Copied ${eventsWords(events)} to ${copy}. Try it: npm run -s verify -- --data ${copy}\n`);
  return 0;
}

await runServerTool(TOOL, main);
