import { closeSync, openSync, readFileSync, writeSync } from 'node:fs';
import { ServerError } from '../errors.ts';

const DIGITS = 20;

/**
 * The number of the latest event that was acknowledged, written beside the record as it goes. It is not flushed: after a
 * power cut it may be behind, never ahead. A record that ends before it has lost what was acknowledged.
 */
export interface HighWater {
  /** The number found at the opening; 0 where there was none. */
  readonly found: number;
  /** @param arrival only grows */
  reached(arrival: number): void;
  close(): void;
}

/** @throws {ServerError} data-unwritable. */
export function openHighWater(path: string): HighWater {
  const found = readNumber(path);
  let latest = found;
  let file: number;
  try {
    file = openSync(path, found === 0 ? 'w' : 'r+', 0o600);
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
  return {
    found,
    reached: (arrival) => {
      if (arrival <= latest) return;
      latest = arrival;
      writeSync(file, `${String(arrival).padStart(DIGITS, '0')}\n`, 0);
    },
    close: () => closeSync(file),
  };
}

/** Forgets a number that the record cannot reach any more. */
export function lowerHighWater(path: string, arrival: number): void {
  const file = openSync(path, 'w', 0o600);
  writeSync(file, `${String(arrival).padStart(DIGITS, '0')}\n`, 0);
  closeSync(file);
}

/** The number in the file; 0 where there is no file, or none in it. */
export function readNumber(path: string): number {
  try {
    const text = readFileSync(path, 'utf8').trim();
    return /^\d{1,20}$/.test(text) ? Number(text) : 0;
  } catch {
    return 0;
  }
}
