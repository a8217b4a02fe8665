import { TerminalError } from './terminal-error.ts';

export interface DemoOptions {
  readonly visit: string;
  readonly json: boolean;
  /** Kill the server before this line, and start it again some lines later. */
  readonly killServerAt?: number;
}

const USAGE = 'npm run demo [-- [--visit NAME] [--json] [--kill-server-at LINE]]';

/** Reads the demo's options. @throws {TerminalError} usage */
export function readDemoOptions(args: readonly string[]): DemoOptions {
  let options: DemoOptions = { visit: 'library', json: false };
  const rest = [...args];
  for (let arg = rest.shift(); arg !== undefined; arg = rest.shift()) {
    const value = arg === '--json' ? '' : rest.shift();
    if (arg === '--json') options = { ...options, json: true };
    else if (arg === '--visit' && value !== undefined) options = { ...options, visit: value };
    else if (arg === '--kill-server-at' && value !== undefined && Number(value) >= 1)
      options = { ...options, killServerAt: Number(value) };
    else throw new TerminalError('usage', USAGE);
  }
  return options;
}
