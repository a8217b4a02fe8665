import { ServerError } from './errors.ts';

/** Prints a sentence for whoever runs the server. */
export function tellKeeper(sentence: string): void {
  process.stderr.write(`${sentence}\n`);
}

/** Prints a fault that a user cannot mend by asking otherwise: whoever runs the server finds it in its output. */
export function reportFault(error: unknown): void {
  const known = error instanceof ServerError && error.code !== 'server-failed';
  const cause = error instanceof ServerError ? (error.cause ?? error) : error;
  const text = known ? error.message : cause instanceof Error ? cause.stack : String(cause);
  tellKeeper(text ?? '');
}
