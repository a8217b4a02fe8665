import { confidenceOf, type MatchSigns } from './confidence.ts';
import type { CommonWords } from './language.ts';
import type { UnclearReason, Understanding } from './meaning.ts';
import { MARGIN, type Weighed } from './weigh.ts';

/** Logged as it stands, or asked and why. */
export function judge(
  heard: string,
  best: Weighed,
  rest: readonly Weighed[],
  words: CommonWords,
  watch: ((signs: MatchSigns) => void) | undefined,
): Understanding {
  const { draft, cost, repaired } = best;
  const rival = rest.find((other) => other.cost < cost + MARGIN);
  const reason =
    draft.doubt ?? (repaired.length > 0 ? 'needed-repair' : rival === undefined ? undefined : rivalry(best, rival));
  // What had to be mended and is impossible then was never said: "filter is sixteen by twenty" are no tons.
  const mended = draft.doubt === 'implausible' && repaired.length > 0;
  const nobody = (draft.meaning.kind === 'value' && reason === 'no-place') || mended || passesOverOhms(best, words);
  const signs = { cost, margin: (rest[0]?.cost ?? cost + 4) - cost, repairs: repaired.length, reason };
  watch?.(signs);
  const others = rest.slice(0, 4).map((other) => other.draft.meaning);
  return {
    heard,
    verdict: reason === undefined ? 'logged' : nobody ? 'rejected' : 'asked',
    meaning: draft.meaning,
    confidence: confidenceOf(signs),
    ...(repaired.length > 0 && { repaired }),
    ...(reason && { reason }),
    ...(draft.twin !== undefined && { twin: draft.twin }),
    ...(others.length > 0 && { others }),
  };
}

/** Ohms that were heard are no repair away from another quantity: a zero in ohms would be taken for a zero in volts. */
function passesOverOhms({ draft: { meaning }, repaired }: Weighed, { ohms }: CommonWords): boolean {
  if (meaning.kind !== 'reading' || meaning.reading.unit === 'Ohm') return false;
  return repaired.some(({ heard }) => ohms.test(heard));
}

/** Why two meanings cannot be told apart: another place, or another value. */
function rivalry(best: Weighed, rival: Weighed): UnclearReason {
  const [one, other] = [best.draft.meaning, rival.draft.meaning];
  const sameValue = one.kind === 'reading' && other.kind === 'reading' && one.reading.value === other.reading.value;
  return sameValue ? 'several-places-fit' : 'several-values-fit';
}
