import { readFile } from 'node:fs/promises';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { Resampler } from '../../../client/listening/sound/resample.ts';
import { readWav, SAMPLE_RATE } from '../../../client/listening/wav.ts';

/** A recording, WAV or FLAC, as samples at 16 kHz. */
export async function readSound(file: string): Promise<Float32Array> {
  const bytes = await readFile(file);
  return file.endsWith('.flac') ? await fromFlac(bytes) : readWav(bytes, file);
}

async function fromFlac(bytes: Uint8Array): Promise<Float32Array> {
  const decoder = new FLACDecoder();
  await decoder.ready;
  const { channelData, sampleRate } = await decoder.decodeFile(bytes);
  decoder.free();
  const samples = channelData[0] ?? new Float32Array(0);
  return sampleRate === SAMPLE_RATE ? samples : new Resampler(sampleRate, SAMPLE_RATE).push(samples);
}
