import { appendFileSync, readFileSync } from 'node:fs';
import { ServerError } from '../errors.ts';
import type { Finding } from './verify-stream.ts';

export const GIVEN_UP_FILE = 'given-up.jsonl';

/** Something with which a start went on by an explicit word. */
export interface GivenUp extends Finding {
  /** Milliseconds since 1970, by the server's clock. */
  readonly time: number;
}

/** What was given up before, one a line in JSON; a line that is none is left out. */
export function readGivenUp(path: string): readonly GivenUp[] {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw new ServerError('data-unwritable', path, error);
  }
  return text.split('\n').flatMap(parseGivenUp);
}

/** One line of it; nothing where it is none. */
export function parseGivenUp(line: string): readonly GivenUp[] {
  try {
    const one = JSON.parse(line) as GivenUp;
    return [one.stream, one.sentence].every((word) => typeof word === 'string') && Number.isFinite(one.time)
      ? [one]
      : [];
  } catch {
    return [];
  }
}

/** @throws {ServerError} data-unwritable. */
export function addGivenUp(path: string, findings: readonly Finding[], time: number): void {
  try {
    appendFileSync(path, findings.map((one) => `${JSON.stringify({ ...one, time })}\n`).join(''), { mode: 0o600 });
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
}

/** Whether this very thing was given up before: it then stops no start any more. */
export function wasGivenUp(before: readonly GivenUp[], { stream, sentence }: Finding): boolean {
  return before.some((one) => one.stream === stream && one.sentence === sentence);
}
