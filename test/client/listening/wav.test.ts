import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ListeningError } from '../../../client/listening/listening-error.ts';
import { readWav } from '../../../client/listening/wav.ts';
import { makeWav } from './make-wav.ts';

const SOUND = Array.from({ length: 1600 }, (_, n) => Math.sin(n / 5) / 2);

function faultOf(bytes: Uint8Array): { fault: string; message: string } {
  try {
    readWav(bytes, 'a.wav');
  } catch (error) {
    if (error instanceof ListeningError) return { fault: error.fault, message: error.message };
    throw error;
  }
  throw new Error('it was taken');
}

describe('a sound file', () => {
  test('of 16 kHz, mono, 16-bit gives its samples', () => {
    const samples = readWav(makeWav(SOUND), 'a.wav');
    expect(samples).toHaveLength(SOUND.length);
    for (const [index, sample] of samples.entries()) expect(sample).toBeCloseTo(SOUND[index]!, 3);
  });

  test.each([
    [8_000, 1, 16, 1],
    [11_025, 2, 8, 1],
    [22_050, 2, 16, 1],
    [44_100, 2, 24, 1],
    [48_000, 1, 32, 1],
    [96_000, 2, 32, 3],
    [192_000, 6, 16, 1],
  ])('of %d samples a second, %d channels, %d bits, code %d is brought to 16 kHz', (rate, channels, bits, code) => {
    const tone = (at: number): number => Math.sin(2 * Math.PI * 440 * at) / 2;
    const frames = Array.from({ length: rate / 5 }, (_, n) => tone(n / rate));
    // All of the sound in the first channel: the mean of them is what is heard.
    const interleaved = frames.flatMap((sample) => [sample, ...new Array<number>(channels - 1).fill(0)]);
    const samples = readWav(makeWav(interleaved, { rate, channels, bits, code }), 'a.wav');
    expect(Math.abs(samples.length - 3_200)).toBeLessThan(60);
    for (let n = 400; n < 2_800; n += 1)
      expect(samples[n]! * channels).toBeCloseTo(tone(n / 16_000), bits === 8 ? 1 : 2);
  });

  test('may hold other chunks and an extensible header', () => {
    const plain = makeWav(SOUND);
    const list = Buffer.from('LIST\x05\x00\x00\x00INFOx\x00', 'latin1');
    const withList = Buffer.concat([plain.subarray(0, 36), list, plain.subarray(36)]);
    expect(readWav(withList, 'a.wav')).toHaveLength(SOUND.length);
    const format = Buffer.alloc(40);
    Buffer.from(plain.subarray(20, 36)).copy(format);
    format.writeUInt16LE(0xfffe, 0);
    format.writeUInt16LE(1, 24);
    const size = Buffer.from([40, 0, 0, 0]);
    const extensible = Buffer.concat([plain.subarray(0, 16), size, format, plain.subarray(36)]);
    expect(readWav(extensible, 'a.wav')).toHaveLength(SOUND.length);
  });

  test.each([
    ['compressed', makeWav(SOUND, { code: 7 }), 'wav-not-supported', /is compressed; .*sox/],
    ['12-bit', makeWav(SOUND, { bits: 12 }), 'wav-not-supported', /is 12-bit; .*sox/],
    ['of 64-bit floats', makeWav(SOUND, { code: 3, bits: 64 }), 'wav-not-supported', /is 64-bit; .*sox/],
    ['slower than 8 kHz', makeWav(SOUND, { rate: 6_000 }), 'wav-not-supported', /is 6 kHz; .*sox/],
    ['faster than 192 kHz', makeWav(SOUND, { rate: 384_000 }), 'wav-not-supported', /is 384 kHz; .*sox/],
    ['of no channel', makeWav(SOUND, { channels: 0 }), 'wav-not-supported', /of no channel; .*sox/],
    ['an empty file', new Uint8Array(0), 'wav-empty', /record it again/],
    ['a header alone', makeWav([]), 'wav-empty', /record it again/],
    ['something else', Buffer.from('ID3 this is no such thing'), 'not-a-wav', /not a WAV file: .*sox/],
    ['a few bytes', Buffer.from('RIFF'), 'not-a-wav', /not a WAV file: .*sox/],
    ['cut short', makeWav(SOUND).subarray(0, 44 + 800), 'wav-cut-short', /0\.07 s of its sound is missing/],
    ['cut in its header', makeWav(SOUND).subarray(0, 40), 'wav-cut-short', /copy or record/],
  ])('that is %s is refused with a sentence that says what to do', (_, bytes, fault, sentence) => {
    const refused = faultOf(bytes);
    expect(refused.fault).toBe(fault);
    expect(refused.message).toMatch(sentence);
    expect(refused.message.endsWith('.')).toBe(true);
    expect(refused.message).not.toMatch(/[{}]|undefined/);
  });

  // Our reader against one that others wrote: Python's own wave module, where there is one.
  test.skipIf(!hasPython())('has the samples that Python reads from it', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'readback-wav-')), 'a.wav');
    writeFileSync(file, makeWav(SOUND));
    const script =
      'import wave,sys,base64;w=wave.open(sys.argv[1]);print(base64.b64encode(w.readframes(w.getnframes())).decode())';
    const theirs = Buffer.from(execFileSync('python3', ['-c', script, file], { encoding: 'utf8' }), 'base64');
    const ours = readWav(readFileSync(file), 'a.wav');
    expect(ours).toHaveLength(theirs.length / 2);
    for (const [index, sample] of ours.entries()) expect(sample * 32768).toBeCloseTo(theirs.readInt16LE(2 * index), 6);
  });
});

function hasPython(): boolean {
  try {
    execFileSync('python3', ['-c', 'import wave'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
