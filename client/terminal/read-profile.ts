import { readFileSync } from 'node:fs';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { TerminalError } from './terminal-error.ts';

/** The unit profile in a file; its values are not judged yet. @throws {TerminalError} file-missing, profile-broken */
export function readProfile(file: string): UnitProfile {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    throw new TerminalError('file-missing', file, error);
  }
  try {
    const profile: unknown = JSON.parse(text);
    if (typeof profile === 'object' && profile !== null && !Array.isArray(profile)) return profile as UnitProfile;
  } catch {
    // Said below, as for JSON that is something else.
  }
  throw new TerminalError('profile-broken', file);
}
