/** A WAV file of any format; `samples` are written as they are, channel after channel in turn. */
export function makeWav(
  samples: readonly number[] | Float32Array,
  {
    channels = 1,
    rate = 16_000,
    bits = 16,
    code = 1,
  }: { channels?: number; rate?: number; bits?: number; code?: number } = {},
): Uint8Array {
  const width = bits / 8;
  const bytes = Buffer.alloc(44 + samples.length * width);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(code, 20);
  bytes.writeUInt16LE(channels, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(rate * channels * width, 28);
  bytes.writeUInt16LE(channels * width, 32);
  bytes.writeUInt16LE(bits, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(samples.length * width, 40);
  for (const [index, sample] of samples.entries()) {
    const at = 44 + index * width;
    if (code === 3) bytes.writeFloatLE(sample, at);
    else if (bits === 32) bytes.writeInt32LE(Math.round((2 ** 31 - 1) * sample), at);
    if (bits === 24) bytes.writeIntLE(Math.round((2 ** 23 - 1) * sample), at, 3);
    if (bits === 16) bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample)) * 32767), at);
    if (bits === 8) bytes.writeUInt8(Math.round(128 + 127 * sample), at);
  }
  return bytes;
}
