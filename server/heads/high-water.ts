import { closeSync, fsyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { ServerError } from '../errors.ts';

const DIGITS = 20;

/**
 * The number of the latest event that was acknowledged, written beside the record as it goes. It is flushed at the
 * opening and the closing, and not between: after a power cut it may be behind, never ahead, and it is never gone. A
 * record that ends before it has lost what was acknowledged.
 */
export interface HighWater {
  /** @param arrival only grows */
  reached(arrival: number): void;
  close(): void;
}

/**
 * @param latest where the record stands; the number is never lower from here on
 * @throws {ServerError} data-unwritable.
 */
export function openHighWater(path: string, latest: number): HighWater {
  let reached = latest;
  let file: number;
  try {
    file = openSync(path, 'w', 0o600);
    writeSync(file, lineOf(latest), 0);
    fsyncSync(file);
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
  return {
    reached: (arrival) => {
      if (arrival <= reached) return;
      reached = arrival;
      writeSync(file, lineOf(arrival), 0);
    },
    close: () => {
      fsyncSync(file);
      closeSync(file);
    },
  };
}

const lineOf = (arrival: number): string => `${String(arrival).padStart(DIGITS, '0')}\n`;

/** The number in the file, or what is the matter with it. */
function readHighWater(path: string): number | 'gone' | 'garbage' {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'gone' : 'garbage';
  }
  return /^\d{20}\n$/.test(text) ? Number(text) : 'garbage';
}

/**
 * What the file tells of a record; undefined where nothing is wrong.
 *
 * @param latest reads the number of the latest event of the record, after the file: a server may write on meanwhile
 * @param leftInOrder whether the record was closed as it should be: the number is then exactly that of its latest event
 */
export function highWaterSentence(path: string, latest: () => number, leftInOrder: boolean): string | undefined {
  const found = readHighWater(path);
  const held = latest();
  if (held === 0 && found === 'gone') return undefined;
  if (found === 'gone')
    return 'The file "acknowledged" is gone: what was lost at the end of the record cannot be told.';
  if (found === 'garbage') {
    return 'The file "acknowledged" holds no number: what was lost at the end of the record cannot be told.';
  }
  if (found > held) return `${found - held} events that were acknowledged are not here.`;
  if (found < held && leftInOrder) {
    return `The file "acknowledged" says ${found}, and the record went to ${held} when it was closed: it was changed.`;
  }
  return undefined;
}
