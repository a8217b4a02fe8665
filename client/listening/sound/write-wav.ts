/** Bytes before the samples: RIFF, `fmt ` and the head of `data`. */
const HEAD = 44;

/**
 * A WAV file of one channel, 16 bits a sample (RIFF/WAVE after the IBM/Microsoft specification of 1991).
 *
 * @param samples -1…1; what is louder is cut
 * @param rate samples a second
 */
export function writeWav(samples: Float32Array, rate: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(HEAD + samples.length * 2);
  const view = new DataView(bytes.buffer);
  const text = (at: number, letters: string) => {
    for (const [index, letter] of [...letters].entries()) view.setUint8(at + index, letter.charCodeAt(0));
  };
  text(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, samples.length * 2, true);
  for (const [index, sample] of samples.entries())
    view.setInt16(HEAD + index * 2, Math.max(-1, Math.min(1, sample)) * 0x7fff, true);
  return bytes;
}
