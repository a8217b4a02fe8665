import { emptySpectrum, Fourier } from '../../../client/listening/sound/fourier.ts';
import { levelOf } from '../../../client/listening/sound/level.ts';

const RATE = 16_000;
const SIZE = 512;
const HOP = 160;
const BANDS = 24;
const CEPSTRA = 12;
/** A voice's pitch lies between these, in Hz. */
const PITCH = [70, 320] as const;
/** How much the pitch counts beside one of the cepstra. */
const PITCH_COUNTS = 3;

/**
 * Recordings by the voice that they seem to be of, where nobody says who spoke: those whose mean cepstra and pitch lie
 * nearest to one another are joined until so many groups are left (J. H. Ward, 1963). Two groups may be one speaker:
 * see `purity` for how far the groups of known speakers are mixed.
 *
 * @returns for each recording the number of its group
 */
export function groupedByVoice(sounds: readonly Float32Array[], groups: number): readonly number[] {
  const marks = standardised(sounds.map(marksOf));
  const clusters = marks.map((mark, index) => ({ of: [index], mark }));
  while (clusters.length > groups) {
    let best = { a: 0, b: 1, cost: Number.POSITIVE_INFINITY };
    for (let a = 0; a < clusters.length; a += 1)
      for (let b = a + 1; b < clusters.length; b += 1) {
        const [m, n] = [clusters[a]!.of.length, clusters[b]!.of.length];
        const apart = Math.hypot(...clusters[a]!.mark.map((value, at) => value - clusters[b]!.mark[at]!));
        const cost = ((m * n) / (m + n)) * apart ** 2;
        if (cost < best.cost) best = { a, b, cost };
      }
    const [one, other] = [clusters[best.a]!, clusters[best.b]!];
    const of = [...one.of, ...other.of];
    const mark = one.mark.map((value, at) => (value * one.of.length + other.mark[at]! * other.of.length) / of.length);
    clusters[best.a] = { of, mark };
    clusters.splice(best.b, 1);
  }
  return marks.map((_, index) => clusters.findIndex(({ of }) => of.includes(index)));
}

/** Share of the recordings that lie in a group where most are of their own speaker. */
export function purity(groups: readonly number[], speakers: readonly string[]): number {
  const counts = new Map<number, Map<string, number>>();
  groups.forEach((group, index) => {
    const own = counts.get(group) ?? new Map<string, number>();
    own.set(speakers[index]!, (own.get(speakers[index]!) ?? 0) + 1);
    counts.set(group, own);
  });
  return [...counts.values()].reduce((sum, own) => sum + Math.max(...own.values()), 0) / groups.length;
}

/** Mean cepstra of the loud frames, and their middle pitch in octaves. */
function marksOf(sound: Float32Array): readonly number[] {
  const frames = Array.from({ length: Math.max(1, Math.floor((sound.length - SIZE) / HOP)) }, (_, index) =>
    sound.subarray(HOP * index, HOP * index + SIZE),
  );
  const loudest = Math.max(...frames.map(levelOf));
  const loud = frames.filter((frame) => levelOf(frame) > loudest - 20);
  const cepstra = loud.map(cepstraOf);
  const means = Array.from(
    { length: CEPSTRA },
    (_, at) => cepstra.reduce((sum, one) => sum + one[at]!, 0) / cepstra.length,
  );
  const pitches = loud
    .map(pitchOf)
    .filter((pitch) => pitch > 0)
    .sort((a, b) => a - b);
  return [...means, Math.log2(pitches[pitches.length >> 1] ?? 150)];
}

const fourier = new Fourier(SIZE);

function cepstraOf(frame: Float32Array): readonly number[] {
  const spectrum = emptySpectrum(SIZE);
  for (let at = 0; at < SIZE; at += 1)
    spectrum.re[at] = frame[at]! * (0.54 - 0.46 * Math.cos((2 * Math.PI * at) / (SIZE - 1)));
  fourier.forward(spectrum);
  const bands = new Float64Array(BANDS).fill(1e-9);
  for (let bin = 1; bin < SIZE / 2; bin += 1) {
    const place = mel((bin * RATE) / SIZE) - mel(100);
    const band = Math.floor((BANDS * place) / (mel(7_000) - mel(100)));
    if (band >= 0 && band < BANDS) bands[band]! += spectrum.re[bin]! ** 2 + spectrum.im[bin]! ** 2;
  }
  return Array.from({ length: CEPSTRA }, (_, order) =>
    bands.reduce(
      (sum, power, band) => sum + Math.log(power) * Math.cos((Math.PI * (order + 1) * (band + 0.5)) / BANDS),
      0,
    ),
  );
}

const mel = (hertz: number): number => 2595 * Math.log10(1 + hertz / 700);

/** By autocorrelation; 0 where the frame has none. */
function pitchOf(frame: Float32Array): number {
  let best = { lag: 0, likeness: 0.45 };
  const power = frame.reduce((sum, sample) => sum + sample * sample, 0);
  for (let lag = Math.floor(RATE / PITCH[1]); lag <= RATE / PITCH[0]; lag += 1) {
    let sum = 0;
    for (let at = 0; at + lag < frame.length; at += 1) sum += frame[at]! * frame[at + lag]!;
    const likeness = (sum / power) * (frame.length / (frame.length - lag));
    if (likeness > best.likeness) best = { lag, likeness };
  }
  return best.lag === 0 ? 0 : RATE / best.lag;
}

function standardised(marks: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const size = marks[0]?.length ?? 0;
  const means = Array.from({ length: size }, (_, at) => marks.reduce((sum, one) => sum + one[at]!, 0) / marks.length);
  const spreads = means.map((mean, at) =>
    Math.sqrt(marks.reduce((sum, one) => sum + (one[at]! - mean) ** 2, 0) / marks.length),
  );
  return marks.map((one) =>
    one.map(
      (value, at) => (((value - means[at]!) / (spreads[at]! || 1)) * (at === size - 1 ? PITCH_COUNTS : 1)) as number,
    ),
  );
}
