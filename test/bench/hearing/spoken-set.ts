import type { Hearing } from '../../../client/listening/hearing.ts';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import type { Expectation, Meaning } from '../../../grammar/phrases/meaning.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise, mixed } from './noise.ts';
import { inHalf, levelName, type Plan } from './plan.ts';
import { FOREIGN, sentencesOf } from './sentences.ts';
import { loadFigure, outcomes, shareFigure, type Tried, times, timesOf } from './tried.ts';
import { type BenchVoice, benchVoices } from './voices.ts';
import { wordError } from './word-error.ts';

const NOTHING: Expectation = { readings: [] };
/** Every so many-th sentence: so many as can be heard at each level in some minutes. */
const APART = { expected: 10, unexpected: 25 } as const;
/** Readings that are expected, said by synthetic voices under condenser noise. */
export async function expectedReadings(plan: Plan): Promise<Figure[]> {
  return await saidUnderNoise(plan, [['reading', true]], APART.expected);
}

/** Readings that nothing expects, commands, and talk that is no sentence of the grammar. */
export async function spoken(plan: Plan): Promise<Figure[]> {
  const figures = await saidUnderNoise(
    plan,
    [
      ['reading', false],
      ['command', false],
    ],
    APART.unexpected,
  );
  return [...figures, ...(await foreignTalk(plan, inHalf(benchVoices(plan.pace), plan.half)))];
}

type Kind = readonly [kind: 'reading' | 'command', expected: boolean];

async function saidUnderNoise(plan: Plan, kinds: readonly Kind[], apart: number): Promise<Figure[]> {
  const voices = inHalf(benchVoices(plan.pace), plan.half);
  const figures: Figure[] = [];
  for (const level of plan.levels ?? [undefined, 20, 10, 5]) {
    for (const [kind, expected] of kinds) {
      const sentences = sentencesOf(kind).filter((_, index) => index % (apart * plan.every) === plan.from);
      const name = `${kind}s ${levelName(level)}${kind === 'command' ? '' : expected ? ', expected' : ', not expected'}`;
      const hearing = await loadHearing(plan.settings);
      const tried = sentences.map((words, index) => {
        if (index % 10 === 0) plan.progress(`${name}: ${index} of ${sentences.length}`);
        const voice = voices[index % voices.length]!;
        return { ...trySentence(hearing, words, voice, level, expected), voice: voice.name };
      });
      figures.push(...byVoice(name, tried), loadFigure(name, hearing));
      hearing.close();
      const pairs = tried.map(({ name: said, text }) => ({ said, heard: text }));
      figures.push(...outcomes(name, tried), ...times(name, tried), ...wordError(name, pairs));
      for (const one of tried) if (one.outcome === 'wrong') plan.progress(`  wrong: "${one.name}" → "${one.text}"`);
    }
  }
  return figures;
}

/** Voices differ more from one another than people do: each by itself. */
function byVoice(name: string, tried: readonly (Tried & { readonly voice: string })[]): Figure[] {
  return [...new Set(tried.map(({ voice }) => voice))].map((voice) => {
    const own = tried.filter((one) => one.voice === voice);
    const right = own.filter(({ outcome }) => outcome === 'right').length;
    const wrong = own.filter(({ outcome }) => outcome === 'wrong').length;
    return shareFigure(`${name}, ${voice}: taken and right`, right, own.length, `${wrong} wrong`);
  });
}

async function foreignTalk(plan: Plan, voices: readonly BenchVoice[]): Promise<Figure[]> {
  const hearing = await loadHearing(plan.settings);
  const said = FOREIGN.flatMap((words) => voices.map((voice) => [words, voice] as const));
  const tried = said
    .filter((_, index) => index % plan.every === plan.from)
    .map(([words, voice]) => trySentence(hearing, words, voice, undefined, false));
  hearing.close();
  const accepted = tried.filter(({ outcome }) => outcome !== 'rejected');
  for (const { name, text } of accepted) plan.progress(`  taken: "${name}" → "${text}"`);
  return [shareFigure('other talk of synthetic voices: accepted', accepted.length, tried.length, 'aim ≤ 1 %')];
}

/** @param expected whether the visit waits for this very reading, or for nothing */
export function trySentence(
  hearing: Hearing,
  words: string,
  voice: BenchVoice,
  level: number | undefined,
  expected: boolean,
): Tried {
  const wanted = understand(words).meaning;
  const expectation = expected ? expectationOf(wanted) : NOTHING;
  hearing.expect(expectation);
  const said = voice.say(words);
  const padded = new Float32Array(said.length + 16_000);
  padded.set(said, 8_000);
  const noise = (): Float32Array => condenserNoise(padded.length / 16_000, words.length);
  const sound = level === undefined ? padded : mixed(padded, noise(), level);
  return judged(words, hear(hearing, sound, padded), expectation);
}

/** What a visit would have made of it: only what is accepted and understood without a doubt is taken. */
export function judged(words: string, heard: ReturnType<typeof hear>, expectation: Expectation): Tried {
  const wanted = JSON.stringify(understand(words, expectation).meaning);
  const found = heard.map((one) => {
    const { meaning, verdict } = understand(one.text, expectation, {
      alternatives: one.alternatives,
      doubtful: one.doubtful,
    });
    return {
      one,
      right: JSON.stringify(meaning) === wanted,
      verdict: one.accepted ? verdict : one.continues ? 'asked' : 'rejected',
    };
  });
  const logged = found.filter(({ verdict }) => verdict === 'logged');
  const wrong = logged.find(({ right }) => !right);
  const right = found.find((one) => one.right);
  const asked = found.find(({ verdict }) => verdict === 'asked');
  const outcome = wrong ? 'wrong' : logged.length > 0 ? 'right' : asked ? 'asked' : 'rejected';
  const best = wrong ?? right ?? asked ?? found[0];
  return { name: words, outcome, wordsRight: right !== undefined, ...timesOf(best?.one) };
}

function expectationOf(meaning: Meaning): Expectation {
  if (meaning.kind !== 'reading') return NOTHING;
  const { quantity, at } = meaning.reading;
  return { readings: [{ quantity, at }] };
}
