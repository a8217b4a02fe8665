import { ListeningError } from './listening-error.ts';
import { Resampler } from './sound/resample.ts';

/** The one rate at which sound is taken, in samples a second. */
export const SAMPLE_RATE = 16000;

/** Format codes of a `fmt ` chunk: plain PCM, floating point, and the extensible header that newer tools write for both. */
const PCM = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
/** Rates that are taken, in samples a second: from a telephone's to the fastest of a sound card. */
const SLOWEST = 8_000;
const FASTEST = 192_000;

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly rate: number;
  readonly bits: number;
}

/**
 * The samples of a WAV file, -1…1 at 16 kHz (RIFF/WAVE after the IBM/Microsoft specification of 1991): brought there
 * from 8 to 192 kHz, channels averaged, PCM of 8 to 32 bits or floating point of 32.
 *
 * @param name what to call the file in an error
 * @throws ListeningError `not-a-wav`, `wav-not-supported`, `wav-empty` or `wav-cut-short`
 */
export function readWav(bytes: Uint8Array, name: string): Float32Array {
  if (bytes.length === 0) throw new ListeningError('wav-empty', { detail: name });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || tag(view, 0) !== 'RIFF' || tag(view, 8) !== 'WAVE') {
    throw new ListeningError('not-a-wav', { detail: name });
  }
  let format: Format | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true);
    const kind = tag(view, at);
    if (kind === 'fmt ' && at + 24 <= bytes.length) format = formatAt(view, at + 8, size);
    if (kind === 'data') {
      if (format === undefined) throw new ListeningError('not-a-wav', { detail: name });
      checkFormat(format, name);
      const { rate } = format;
      const samples = samplesAt(view, at + 8, size, format, name);
      return rate === SAMPLE_RATE ? samples : new Resampler(rate, SAMPLE_RATE).push(samples);
    }
    // Chunks are padded to an even length.
    at += 8 + size + (size % 2);
  }
  throw new ListeningError(format === undefined ? 'not-a-wav' : 'wav-cut-short', { detail: name, missing: 'all' });
}

const tag = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));

function formatAt(view: DataView, at: number, size: number): Format {
  const code = view.getUint16(at, true);
  return {
    // The extensible header keeps the true code in the first two bytes of its sub-format.
    code: code === EXTENSIBLE && size >= 26 && at + 26 <= view.byteLength ? view.getUint16(at + 24, true) : code,
    channels: view.getUint16(at + 2, true),
    rate: view.getUint32(at + 4, true),
    bits: view.getUint16(at + 14, true),
  };
}

function checkFormat({ code, channels, rate, bits }: Format, name: string): void {
  const wrong: string[] = [];
  if (channels === 0) wrong.push('of no channel');
  if (rate < SLOWEST || rate > FASTEST) wrong.push(`${rate / 1000} kHz`);
  if (code !== PCM && code !== FLOAT) wrong.push('compressed');
  else if (code === FLOAT ? bits !== 32 : ![8, 16, 24, 32].includes(bits)) wrong.push(`${bits}-bit`);
  if (wrong.length > 0) throw new ListeningError('wav-not-supported', { detail: `${name} is ${wrong.join(', ')}` });
}

function samplesAt(view: DataView, at: number, size: number, format: Format, name: string): Float32Array {
  if (size === 0) throw new ListeningError('wav-empty', { detail: name });
  const bytes = format.bits / 8;
  const frame = bytes * format.channels;
  const missing = at + size - view.byteLength;
  // A stream that was written without knowing its end says the largest size.
  if (missing > 0 && size !== 0xffffffff) {
    const seconds = missing / frame / format.rate;
    throw new ListeningError('wav-cut-short', { detail: name, missing: `${seconds.toFixed(2)} s` });
  }
  const sampleAt = reader(view, format);
  const samples = new Float32Array(Math.floor(Math.min(size, view.byteLength - at) / frame));
  for (let index = 0; index < samples.length; index += 1) {
    let sum = 0;
    for (let channel = 0; channel < format.channels; channel += 1)
      sum += sampleAt(at + index * frame + channel * bytes);
    samples[index] = sum / format.channels;
  }
  return samples;
}

/** Reads one sample, -1…1; those of 8 bits have their silence at 128. */
function reader(view: DataView, { code, bits }: Format): (at: number) => number {
  if (code === FLOAT) return (at) => view.getFloat32(at, true);
  if (bits === 8) return (at) => view.getUint8(at) / 128 - 1;
  if (bits === 16) return (at) => view.getInt16(at, true) / 2 ** 15;
  if (bits === 24) return (at) => (view.getInt8(at + 2) * 2 ** 16 + view.getUint16(at, true)) / 2 ** 23;
  return (at) => view.getInt32(at, true) / 2 ** 31;
}
