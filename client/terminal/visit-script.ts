import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { TerminalError } from './terminal-error.ts';

const FIXTURES = fileURLToPath(new URL('../../../fixtures/', import.meta.url));

/** What is said, with its sound; or minutes that pass. */
export type ScriptLine =
  | { readonly kind: 'say'; readonly id: string; readonly words: string; readonly sound: string }
  | { readonly kind: 'later'; readonly minutes: number };

/** A recorded visit: where, which unit, what was said. */
export interface VisitScript {
  readonly name: string;
  readonly site: string;
  readonly complaint: string;
  readonly role: 'technician' | 'trainee';
  readonly unit: UnitProfile;
  /** What this visit is known to come to; it steers nothing, it is compared at the end. */
  readonly finding: FaultId;
  readonly lines: readonly ScriptLine[];
}

interface VisitFile {
  readonly site: string;
  readonly complaint: string;
  readonly role: 'technician' | 'trainee';
  readonly unit: string;
  readonly finding: FaultId;
}

/**
 * Reads fixtures/visits/NAME: `visit.json`, and `spoken.txt` with a line `id | voice | words` for each utterance and
 * `@later N` for minutes that pass. The sound of an utterance is fixtures/audio/NAME/ID.wav.
 * @throws {TerminalError} script-missing, script-broken
 */
export async function readVisitScript(name: string): Promise<VisitScript> {
  if (!/^[a-z0-9-]+$/.test(name)) throw new TerminalError('script-missing', name);
  const folder = join(FIXTURES, 'visits', name);
  const [file, spoken] = await Promise.all([
    read(join(folder, 'visit.json'), name),
    read(join(folder, 'spoken.txt'), name),
  ]);
  const { unit, ...about } = JSON.parse(file) as VisitFile;
  const profile = JSON.parse(await read(join(FIXTURES, 'units', `${unit}.json`), name)) as UnitProfile;
  const lines = spoken
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => readLine(line, name));
  return { name, ...about, unit: profile, lines };
}

function readLine(line: string, name: string): ScriptLine {
  const later = /^@later (\d+)$/.exec(line);
  if (later !== null) return { kind: 'later', minutes: Number(later[1]) };
  const [id, , words] = line.split('|').map((part) => part.trim());
  if (id === undefined || words === undefined) throw new TerminalError('script-broken', `${name}: ${line}`);
  return { kind: 'say', id, words, sound: join(FIXTURES, 'audio', name, `${id}.wav`) };
}

async function read(path: string, name: string): Promise<string> {
  return await readFile(path, 'utf8').catch((error: unknown) => {
    throw new TerminalError('script-missing', name, error);
  });
}
