import { parseArgs } from 'node:util';
import { TerminalError } from './terminal-error.ts';
import { type Given, helpCommand, optionsOf, type Tool } from './tool.ts';

/** Reads what follows a tool's command. @throws {TerminalError} usage */
export function readArguments<T extends Tool>(tool: T, args: readonly string[]): Given<T> | 'help' | 'version' {
  const options = Object.entries(optionsOf(tool)).map(
    ([name, { value }]) => [name, { type: value === undefined ? 'boolean' : 'string' }] as const,
  );
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: Object.fromEntries(options),
      allowPositionals: tool.words === true,
    });
    if (values['help'] === true) return 'help';
    if (values['version'] === true) return 'version';
    return { options: values as Given<T>['options'], words: positionals };
  } catch (error) {
    throw wrongUse(tool, whatIsWrong(error as NodeJS.ErrnoException));
  }
}

/** The error for a command line that cannot be followed; `what` is the beginning of its sentence. */
export function wrongUse(tool: Tool, what: string): TerminalError {
  return new TerminalError('usage', `${what}: see "${helpCommand(tool)}".`);
}

/** Node's own words go on about how to give such a word all the same; the name in them is what one needs. */
function whatIsWrong({ code, message }: NodeJS.ErrnoException): string {
  const named = /'([^' ]+)/.exec(message)?.[1] ?? '';
  switch (code) {
    case 'ERR_PARSE_ARGS_UNKNOWN_OPTION':
      return `There is no option ${named}`;
    case 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE':
      return message.includes('does not take')
        ? `The option ${named} takes no value`
        : `The option ${named} lacks its value`;
    default:
      return `"${named}" is not expected here`;
  }
}
