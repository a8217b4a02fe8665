import { COMMANDS } from '../vocabulary/commands.ts';
import { MEASURANDS } from '../vocabulary/measurands.ts';
import { NAMEPLATE_FIELDS } from '../vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../vocabulary/observations.ts';
import { POINTS_BY_ID, type PointId } from '../vocabulary/points.ts';
import type { Near } from './word-choices.ts';

const nameOf = (point: PointId): string => POINTS_BY_ID[point].name.replaceAll(',', '');

/** One sentence of each kind that can be said, with "…" where a value belongs. */
const SENTENCES: readonly string[] = [
  ...new Set([
    ...MEASURANDS.map((row) =>
      row.at.length === 2 && !row.onlyByName
        ? `${nameOf(row.at[0]!)} to ${nameOf(row.at[1]!)} …`
        : `${row.say?.split(' | ')[0]?.replace(/[[\]()]/g, '') ?? nameOf(row.at[0]!)} …`,
    ),
    ...COMMANDS.map((row) => row.name),
    ...OBSERVATIONS.map((row) => row.name),
    ...NAMEPLATE_FIELDS.map((row) => `nameplate ${row.name} …`),
    'outdoor disconnect is pulled',
    'outdoor disconnect is back in',
    'meter two forty, zero, zero, zero, meter two forty',
    'fitted a …',
  ]),
];
const WORDS = SENTENCES.map((sentence) => new Set(sentence.toLowerCase().match(/[a-z']{2,}/g) ?? []));
const SHARE = new Map<string, number>();
for (const words of WORDS) for (const word of words) SHARE.set(word, (SHARE.get(word) ?? 0) + 1);

/**
 * Up to three sentences of the grammar that have most in common with what was heard, rare words counting more; empty
 * where nothing does. For "did you mean …?".
 */
export function suggest(heard: readonly string[], near: (word: string) => readonly Near[]): string[] {
  const said = new Set(heard.flatMap((word) => [word, ...near(word).map((other) => other.word)]));
  const scored = SENTENCES.map((sentence, index) => {
    let score = 0;
    for (const word of WORDS[index]!) if (said.has(word)) score += 1 / SHARE.get(word)!;
    return { sentence, score: score / Math.sqrt(WORDS[index]!.size) };
  });
  return scored
    .filter(({ score }) => score > 0.02)
    .sort((a, b) => b.score - a.score)
    .slice(0, 3)
    .map(({ sentence }) => sentence);
}
