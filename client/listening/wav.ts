import { ListeningError } from './listening-error.ts';

/** The one rate at which sound is taken, in samples a second. */
export const SAMPLE_RATE = 16000;

/** Format codes of a `fmt ` chunk: plain PCM, and the extensible header that newer tools write for the same sound. */
const PCM = 1;
const EXTENSIBLE = 0xfffe;

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly rate: number;
  readonly bits: number;
}

/**
 * The samples of a WAV file, -1…1 at 16 kHz (RIFF/WAVE after the IBM/Microsoft specification of 1991).
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
      return samplesAt(view, at + 8, size, name);
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
  if (channels !== 1) wrong.push(channels === 2 ? 'stereo' : `${channels} channels`);
  if (bits !== 16) wrong.push(`${bits}-bit`);
  if (rate !== SAMPLE_RATE) wrong.push(`${rate / 1000} kHz`);
  if (code !== PCM) wrong.push('not plain PCM');
  if (wrong.length > 0) throw new ListeningError('wav-not-supported', { detail: `${name} is ${wrong.join(', ')}` });
}

function samplesAt(view: DataView, at: number, size: number, name: string): Float32Array {
  if (size === 0) throw new ListeningError('wav-empty', { detail: name });
  const missing = at + size - view.byteLength;
  // A stream that was written without knowing its end says the largest size.
  if (missing > 0 && size !== 0xffffffff) {
    throw new ListeningError('wav-cut-short', { detail: name, missing: `${(missing / 2 / SAMPLE_RATE).toFixed(2)} s` });
  }
  const samples = new Float32Array(Math.floor(Math.min(size, view.byteLength - at) / 2));
  for (let index = 0; index < samples.length; index += 1) {
    samples[index] = view.getInt16(at + 2 * index, true) / 32768;
  }
  return samples;
}
