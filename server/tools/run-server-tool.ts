import { readFile } from 'node:fs/promises';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { ServerError } from '../errors.ts';

/** A tool of whoever keeps the server's record. */
export interface ServerTool {
  /** The name of its script in package.json. */
  readonly name: string;
  /** What `--help` prints. */
  readonly help: string;
  /** Options that take a value. */
  readonly options: readonly string[];
}

/** What its command line gives. */
export interface GivenToTool {
  readonly options: Readonly<Record<string, string | undefined>>;
  readonly words: readonly string[];
}

/**
 * Runs a tool with what its command line gives; the exit code is what it resolves to. A coded error is said in its
 * sentence (exit 2), any other is a fault of ours and printed whole (exit 1). It ends quietly with its reader.
 */
export async function runServerTool(tool: ServerTool, run: (given: GivenToTool) => Promise<number>): Promise<void> {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(0);
    });
  }
  // What it writes is for whoever runs it alone.
  process.umask(0o077);
  try {
    const { help, version, ...given } = readTool(tool);
    if (help) process.stdout.write(tool.help);
    else if (version) process.stdout.write(`${await readVersion()}\n`);
    else process.exitCode = await run(given);
  } catch (error) {
    const coded = error instanceof ServerError;
    process.stderr.write(`${error instanceof Error ? (coded ? error.message : error.stack) : String(error)}\n`);
    process.exitCode = coded ? 2 : 1;
  }
}

function readTool({ name, options }: ServerTool): GivenToTool & { readonly help: boolean; readonly version: boolean } {
  const args = process.argv.slice(2);
  const known: NonNullable<ParseArgsConfig['options']> = { help: { type: 'boolean' }, version: { type: 'boolean' } };
  for (const option of options) known[option] = { type: 'string' };
  try {
    const { values, positionals } = parseArgs({ args, options: known, allowPositionals: true });
    const { help, version, ...given } = values;
    return {
      options: given as GivenToTool['options'],
      words: positionals,
      help: help === true,
      version: version === true,
    };
  } catch (error) {
    const isKnown = (arg: string) => arg.replace(/^--/, '').replace(/=.*/, '') in known;
    const word = args.find((arg) => arg.startsWith('-') && !isKnown(arg)) ?? args.at(-1);
    throw new ServerError('tool-wrong', `"${word}" is not expected here: see "npm run -s ${name} -- --help".`, error);
  }
}

async function readVersion(): Promise<string> {
  const text = await readFile(new URL('../../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { readonly version: string }).version;
}
