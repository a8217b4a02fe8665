/** Coefficients that the acoustic models use, and the lifter they were trained with. */
const COEFFICIENTS = 13;
const LIFTER = 22;

/**
 * The mean cepstrum of a stretch of sound, as the recogniser's own front end would have it: orthonormal DCT-II of the
 * mean log mel spectrum, liftered. Given to a decoder before an utterance it takes the microphone and the voice out of
 * the features from the first frame on; the decoder by itself would know this mean only once the utterance is over.
 *
 * @param spectrum log mel energies, `bands` for each frame
 */
export function cepstralMean(spectrum: Float32Array, bands: number): number[] {
  const frames = Math.floor(spectrum.length / bands);
  const mean = new Float64Array(bands);
  for (let index = 0; index < frames * bands; index += 1) mean[index % bands]! += spectrum[index]! / frames;
  return Array.from({ length: COEFFICIENTS }, (_, order) => {
    let sum = 0;
    for (let band = 0; band < bands; band += 1) sum += mean[band]! * Math.cos((Math.PI * order * (band + 0.5)) / bands);
    const scale = Math.sqrt((order === 0 ? 1 : 2) / bands);
    const lift = order === 0 ? 1 : 1 + (LIFTER / 2) * Math.sin((order * Math.PI) / LIFTER);
    return sum * scale * lift;
  });
}
