import { toJsgf } from '../../grammar/export/jsgf.ts';
import { PRONUNCIATIONS } from '../../grammar/export/pronunciations.ts';
import {
  NUMBER_TAILS,
  NUMBER_WORDS,
  numberWordStandsFor,
} from '../../grammar/phrases/languages/english/words/number-words.ts';
import { OPPOSITE_WORDS } from '../../grammar/phrases/languages/english/words/place-words.ts';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import { isUrgentWord, urgentWhile } from '../../grammar/vocabulary/urgent-words.ts';
import type { Ending } from './continuation.ts';
import { Hearing } from './hearing.ts';
import { adapted, type VoiceProfile } from './profile/voice-profile.ts';
import { GATES } from './recogniser/gates.ts';
import type { Standing } from './recogniser/rivals.ts';
import type { SpeechModel, SpeechModule } from './recogniser/speech-module.ts';
import type { NoiseModule } from './sound/denoiser.ts';

export interface VisitHearingParts {
  readonly speech: SpeechModule;
  readonly model: SpeechModel;
  /** A second model, whose agreement is asked. */
  readonly second?: SpeechModel;
  readonly rnnoise: NoiseModule;
  /** What was learnt of the voice that is to be heard. */
  readonly profile?: VoiceProfile;
  /** Any clock in milliseconds; only differences count. */
  now(): number;
}

/** Hearing with the grammar of a visit: what is expected first, everything else as a second look at the kept sound. */
export async function openVisitHearing(parts: VisitHearingParts): Promise<Hearing> {
  return await Hearing.open({
    ...parts,
    ...adapted({ pronunciations: PRONUNCIATIONS, gates: GATES }, parts.profile),
    standsFor,
    grammarFor: visitGrammar,
    endingOf,
    goesOnWith,
    urgentMargin,
  });
}

/** The JSGF of the moment; undefined where nothing is expected more than anything else. */
export function visitGrammar(
  expectation: Expectation | 'all' | { readonly urgentWhile: string },
  units?: Expectation['units'],
): string | undefined {
  if (expectation === 'all') return toJsgf(units && { readings: [], units }, { scope: 'all' });
  if ('urgentWhile' in expectation) return urgentGrammar(expectation.urgentWhile);
  const { readings, question, plate, answers } = expectation;
  const isNothing = readings.length === 0 && [question, plate, answers].every((one) => one === undefined);
  return isNothing ? undefined : toJsgf(expectation, { scope: 'expected' });
}

/** What is taken for one another without a word of it being wrong to the grammar: numbers, and places across. */
export function standsFor(word: string): Standing | undefined {
  const value = numberWordStandsFor(word);
  if (value !== undefined) return { kind: 'number', value };
  return OPPOSITE_WORDS.has(word) ? { kind: 'name', value: word } : undefined;
}

/** All that is heeded while the mouth says this. */
const urgentGrammar = (spoken: string): string =>
  `#JSGF V1.0;\ngrammar urgent;\npublic <utterance> = ${urgentWhile(spoken).join(' | ')};\n`;

/**
 * A number at the end may go on where what it would then be is taken at this moment too. While a number is waited for, a
 * short order is waited with as well: half a number is easily taken for one.
 */
export function endingOf(text: string, expectation: Expectation): Ending {
  if (text === '') return 'open';
  const { verdict, meaning } = understand(text, expectation);
  if (verdict !== 'logged') return 'open';
  const words = text.split(' ');
  if (meaning.kind === 'command' || meaning.kind === 'report') {
    const isShort = words.length <= SHORT_ORDER && !isUrgentWord(text);
    return isShort && expectation.readings.length > 0 ? 'open' : 'whole';
  }
  if (!NUMBER_WORDS.includes(words.at(-1) ?? '')) return isDigitAndUnit(words, expectation) ? 'open' : 'whole';
  if (NUMBER_TAILS.digit.some((tail) => goesOnWith(text, tail, expectation))) return 'open';
  return NUMBER_TAILS.fraction.some((tail) => goesOnWith(text, tail, expectation)) ? 'fraction' : 'whole';
}

/** "One four" is easily taken for "one volt". */
function isDigitAndUnit([first = '', ...units]: readonly string[], { readings }: Expectation): boolean {
  const digit = numberWordStandsFor(first);
  return readings.length > 0 && units.length === 1 && digit !== undefined && Number(digit) < 10;
}

function goesOnWith(text: string, rest: string, expectation: Expectation): boolean {
  const { meaning } = understand(text, expectation);
  if (meaning.kind !== 'reading' && meaning.kind !== 'value' && meaning.kind !== 'nameplate') return false;
  const longer = understand(`${text} ${rest}`, expectation);
  return (
    longer.verdict !== 'rejected' &&
    longer.meaning.kind === meaning.kind &&
    JSON.stringify(longer.meaning) !== JSON.stringify(meaning)
  );
}

/** Words of an order that half a number may be taken for. */
const SHORT_ORDER = 3;

/**
 * One that halts too often costs a prompt, one that does not hear it may cost a hand: at 0 dB of a fan right ones lie down to
 * -24 (our own measuring on four synthetic voices, from which it was set; people were not measured).
 */
function urgentMargin(text: string): number | undefined {
  const { meaning } = understand(text);
  if (meaning.kind === 'command' && meaning.command === 'stop') return -24;
  return meaning.kind === 'report' && meaning.report.type === 'injury' ? -16 : undefined;
}
