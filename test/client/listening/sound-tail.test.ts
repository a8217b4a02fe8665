import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SoundTail } from '../../../client/listening/sound/sound-tail.ts';
import { writeWav } from '../../../client/listening/sound/write-wav.ts';
import { readWav } from '../../../client/listening/wav.ts';

/** Samples that tell their own place. */
const counted = (from: number, count: number) => Float32Array.from({ length: count }, (_, at) => from + at);

describe('the tail of a sound', () => {
  it('gives back what was heard between two times, however it came in blocks', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 1, max: 200 }),
        (blocks, from, length) => {
          const tail = new SoundTail(1000, 100_000);
          let at = 0;
          for (const block of blocks) {
            tail.push(counted(at, block));
            at += block;
          }
          const whole = counted(0, at);
          expect([...tail.cut(from, from + length)]).toEqual([...whole.slice(from, from + length)]);
        },
      ),
    );
  });

  it('holds no more than it was told to, and knows where it is all the same', () => {
    const tail = new SoundTail(1000, 100);
    for (let at = 0; at < 1000; at += 10) tail.push(counted(at, 10));
    expect([...tail.cut(950, 960)]).toEqual([...counted(950, 10)]);
    expect(tail.cut(0, 800)).toHaveLength(0);
  });

  it('is silent where the clock went on without sound', () => {
    const tail = new SoundTail(1000, 10_000);
    tail.push(counted(1, 10));
    tail.padTo(20);
    tail.push(counted(100, 5));
    expect([...tail.cut(8, 22)]).toEqual([9, 10, ...Array(10).fill(0), 100, 101]);
  });
});

describe('a sound that is written as a file', () => {
  it('is read back by the reader of files, to within one step of 16 bits', () => {
    const samples = Float32Array.from({ length: 1600 }, (_, at) => Math.sin(at / 7) * 0.8);
    const again = readWav(writeWav(samples, 16_000), 'kept.wav');
    expect(again).toHaveLength(samples.length);
    expect(Math.max(...again.map((sample, at) => Math.abs(sample - samples[at]!)))).toBeLessThan(1 / 16_000);
  });

  it('has the head that the specification lays down', () => {
    // RIFF/WAVE, IBM/Microsoft 1991: 16-byte fmt chunk, PCM, one channel, 32,000 bytes a second at 16 kHz and 16 bits.
    const view = new DataView(writeWav(new Float32Array(100), 16_000).buffer);
    const text = (at: number) => String.fromCharCode(...[0, 1, 2, 3].map((index) => view.getUint8(at + index)));
    expect([text(0), text(8), text(12), text(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
    expect([view.getUint32(4, true), view.getUint32(28, true), view.getUint32(40, true)]).toEqual([236, 32_000, 200]);
  });
});
