import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeWav } from '../../../client/listening/sound/write-wav.ts';
import { speak } from '../../../fixtures/speak.ts';
import { scratchFolder } from '../../server/built-server.ts';

const TOOL = fileURLToPath(new URL('../../../.build/client/terminal/hear-review.js', import.meta.url));
const EVENTS = new URL('../../../fixtures/visits/library/events.jsonl', import.meta.url);

/**
 * What two voices of flite say for some utterances of the recorded visit, by their ids: the same words; others; of the last
 * the sound is not there. The third is a bare number, which is only heard as one where its reading is expected.
 */
const SPOKEN: Readonly<Record<string, { readonly voice: string; readonly words: string } | 'deleted'>> = {
  t1: { voice: 'slt', words: 'outdoor air ninety four degrees' },
  t2: { voice: 'slt', words: 'return air seventy degrees' },
  t8: { voice: 'rms', words: 'leg one to ground one eighteen' },
  t23: { voice: 'slt', words: 'one point one microfarads' },
  t12: 'deleted',
};

const scratch = scratchFolder();
const visit = join(scratch.path, 'example', 'visit-1');

/** A visit as the export of a customer writes it. */
beforeAll(() => {
  mkdirSync(visit, { recursive: true });
  const bodies = readFileSync(EVENTS, 'utf8').trim().split('\n');
  const named = bodies.map((body) => {
    const event = JSON.parse(body);
    const spoken = SPOKEN[event.input?.utterance?.id ?? ''];
    if (spoken === undefined) return body;
    const wav = spoken === 'deleted' ? new Uint8Array(0) : soundOf(spoken.voice, spoken.words);
    const sha256 = createHash('sha256').update(wav).digest('hex');
    if (spoken !== 'deleted') writeFileSync(join(visit, `${sha256}.wav`), wav);
    event.input.utterance.sound = { sha256, ms: 1000, sealed: true };
    return JSON.stringify(event);
  });
  writeFileSync(join(visit, 'events.jsonl'), `${named.join('\n')}\n`);
});
afterAll(() => scratch.remove());

function soundOf(voice: string, words: string): Uint8Array {
  const said = speak({ name: voice }, words);
  const padded = new Float32Array(said.length + 16_000);
  padded.set(said, 8_000);
  return writeWav(padded, 16_000);
}

function review(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [TOOL, ...args], { encoding: 'utf8' });
  const lines = stdout
    .trim()
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>);
  return { status, stderr, lines };
}

test('today’s ear tells what it hears otherwise than was heard that day, and what is not there', () => {
  const { status, lines, stderr } = review('--all', join(scratch.path, 'example'));
  expect([status, stderr]).toEqual([0, '']);
  const told = lines.slice(0, -1).map(({ before, now, same, missing }) => [before, now, same, missing !== undefined]);
  expect(told).toEqual([
    ['outdoor air ninety four degrees', 'outdoor air ninety four degrees', true, false],
    ['return air eighty degrees', 'return air seventy degrees', false, false],
    ['leg one to ground one eighteen', 'leg one to ground one eighteen', true, false],
    ['leg one to leg two reads two forty one', undefined, undefined, true],
    ['one point one microfarads', 'one point one microfarads', true, false],
  ]);
  expect(lines.at(-1)).toEqual({ utterances: 5, same: 3, changed: 1, missing: 1 });
}, 120_000);

test('a folder without a visit is told in a sentence', () => {
  const { status, stderr } = review(scratch.path);
  expect([status, stderr]).toEqual([2, expect.stringContaining('cannot be read: name a record')]);
});
