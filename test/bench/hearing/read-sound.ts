import { readFile } from 'node:fs/promises';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { SAMPLE_RATE } from '../../../client/listening/wav.ts';

/** A mono recording of 16 or 8 kHz, WAV or FLAC, as samples at 16 kHz. */
export async function readSound(file: string): Promise<Float32Array> {
  const bytes = await readFile(file);
  const { samples, rate } = file.endsWith('.flac') ? await fromFlac(bytes) : fromWav(bytes);
  if (rate === SAMPLE_RATE) return samples;
  if (rate !== SAMPLE_RATE / 2) throw new Error(`${file} has ${rate} samples a second: give 16000 or 8000`);
  return doubled(samples);
}

interface Sound {
  readonly samples: Float32Array;
  readonly rate: number;
}

async function fromFlac(bytes: Uint8Array): Promise<Sound> {
  const decoder = new FLACDecoder();
  await decoder.ready;
  const { channelData, sampleRate } = await decoder.decodeFile(bytes);
  decoder.free();
  return { samples: channelData[0] ?? new Float32Array(0), rate: sampleRate };
}

function fromWav(bytes: Buffer): Sound {
  const data = bytes.subarray(bytes.indexOf('data') + 8);
  const samples = Float32Array.from({ length: data.length >> 1 }, (_, index) => data.readInt16LE(2 * index) / 32768);
  return { samples, rate: bytes.readUInt32LE(24) };
}

/** 8 kHz → 16 kHz: every other sample anew, by a sinc under a Hann window of 16 samples on each side. */
function doubled(samples: Float32Array): Float32Array {
  const half = 16;
  return Float32Array.from({ length: 2 * samples.length }, (_, index) => {
    const before = index >> 1;
    if (index % 2 === 0) return samples[before]!;
    let sum = 0;
    for (let near = 1 - half; near <= half; near += 1) {
      const x = Math.PI * (near - 0.5);
      const window = 0.5 + 0.5 * Math.cos(x / (half + 0.5));
      sum += ((samples[before + near] ?? 0) * window * Math.sin(x)) / x;
    }
    return sum;
  });
}
