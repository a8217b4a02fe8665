import { readFile } from 'node:fs/promises';
import { DiagnosisError } from '../diagnosis/errors.ts';
import { ListeningError } from '../listening/listening-error.ts';
import { RecordError } from '../record/errors.ts';
import { readArguments } from './read-arguments.ts';
import { TerminalError } from './terminal-error.ts';
import { type Given, helpText, type Tool } from './tool.ts';

/**
 * Runs a tool with what its command line gives: prints the help or the version where asked, ends quietly when its
 * reader has seen enough, and says a coded error in its sentence (exit 2). Any other error is a fault of ours and is
 * printed whole (exit 1).
 */
export async function runTool<T extends Tool>(tool: T, run: (given: Given<T>) => void | Promise<void>): Promise<void> {
  endWithReader();
  try {
    const given = readArguments(tool, process.argv.slice(2));
    if (given === 'help') process.stdout.write(helpText(tool));
    else if (given === 'version') process.stdout.write(`${await readVersion()}\n`);
    else await run(given);
  } catch (error) {
    const coded = [TerminalError, RecordError, ListeningError, DiagnosisError].some((kind) => error instanceof kind);
    process.stderr.write(`${error instanceof Error ? (coded ? error.message : error.stack) : String(error)}\n`);
    process.exitCode = coded ? 2 : 1;
  }
}

/** The version in package.json, seen from the built file. */
export async function readVersion(): Promise<string> {
  const text = await readFile(new URL('../../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { readonly version: string }).version;
}

/**
 * A reader that has seen enough ("| head -1") is no fault: the tool ends with it, and by that its child processes,
 * which watch for it (a started server ends in good order when its parent is gone).
 */
function endWithReader(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(0);
    });
  }
}
