import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { speak } from '../../fixtures/speak.ts';
import { PROJECT_ROOT } from './project-root.ts';
import type { Line } from './technician.ts';

const RATE = 16_000;
const HEADER = 44;
/** The page opens the visit, loads its recogniser and listens before the first word. */
const LEAD_SECONDS = 6;
/** After a sentence: its answer is worked out, and before "live" a caution stays on the screen until it may be taken. */
const GAP_SECONDS = 1.8;
const GAP_BEFORE_LIVE_SECONDS = 3.4;
/** Where minutes pass in the visit, the test moves the page's clock in this stretch. */
const LATER_SECONDS = 9;
/** The microphone begins again at the end of its file; the test is over by then. */
const END_SECONDS = 60;

export interface MicrophoneSound {
  readonly path: string;
  readonly seconds: number;
  /** The middle of the stretch in which minutes pass, in seconds. */
  readonly laterAt: number;
  /** When each sentence begins and ends in the file, in seconds. */
  readonly spoken: readonly { readonly id: string; readonly from: number; readonly to: number }[];
}

/** Joins the recorded sentences of a visit into one sound for the browser's microphone, with pauses between them. */
export async function microphoneSound(path: string, lines: readonly Line[]): Promise<MicrophoneSound> {
  const parts: Buffer[] = [silence(LEAD_SECONDS)];
  const spoken: { id: string; from: number; to: number }[] = [];
  let at = LEAD_SECONDS;
  let laterAt = 0;
  for (const [index, line] of lines.entries()) {
    const sound = 'later' in line ? silence(LATER_SECONDS) : sentence(line.id);
    const seconds = sound.length / 2 / RATE;
    if ('later' in line) laterAt = at + seconds / 2;
    else spoken.push({ id: line.id, from: at, to: at + seconds });
    const gap = isLive(lines[index + 1]) ? GAP_BEFORE_LIVE_SECONDS : GAP_SECONDS;
    parts.push(sound, silence(gap));
    at += seconds + gap;
  }
  const samples = Buffer.concat([...parts, silence(END_SECONDS)]);
  await writeFile(path, Buffer.concat([header(samples.length), samples]));
  return { path, seconds: at, laterAt, spoken };
}

/**
 * One sound for the browser's microphone: sentences as the offline voice says them, and seconds of silence.
 *
 * @param hiss level of a hiss over all of it, full scale 1
 */
export async function spokenSound(path: string, parts: readonly (string | number)[], hiss = 0): Promise<string> {
  const sounds = parts.map((part) => {
    const samples = typeof part === 'number' ? new Float32Array(part * RATE) : speak({ name: 'slt' }, part);
    return pcm(samples.map((sample) => Math.max(-1, Math.min(1, sample + hiss * (2 * Math.random() - 1)))));
  });
  const samples = Buffer.concat(sounds);
  await writeFile(path, Buffer.concat([header(samples.length), samples]));
  return path;
}

function pcm(samples: Float32Array): Buffer {
  const bytes = Buffer.alloc(samples.length * 2);
  for (const [index, sample] of samples.entries()) bytes.writeInt16LE(Math.round(sample * 32_767), index * 2);
  return bytes;
}

function isLive(line: Line | undefined): boolean {
  return line !== undefined && 'words' in line && line.words === 'live';
}

function sentence(id: string): Buffer {
  const file = readFileSync(join(PROJECT_ROOT, 'fixtures/audio/library', `${id}.wav`));
  if (file.readUInt32LE(24) !== RATE || file.readUInt16LE(22) !== 1) throw new Error(`${id}.wav is not 16 kHz mono`);
  return file.subarray(HEADER);
}

function silence(seconds: number): Buffer {
  return Buffer.alloc(Math.round(seconds * RATE) * 2);
}

/** WAVE, 16 kHz, mono, 16-bit PCM. */
function header(bytes: number): Buffer {
  const made = Buffer.alloc(HEADER);
  made.write('RIFF', 0);
  made.writeUInt32LE(HEADER - 8 + bytes, 4);
  made.write('WAVEfmt ', 8);
  made.writeUInt32LE(16, 16);
  made.writeUInt16LE(1, 20);
  made.writeUInt16LE(1, 22);
  made.writeUInt32LE(RATE, 24);
  made.writeUInt32LE(RATE * 2, 28);
  made.writeUInt16LE(2, 32);
  made.writeUInt16LE(16, 34);
  made.write('data', 36);
  made.writeUInt32LE(bytes, 40);
  return made;
}
