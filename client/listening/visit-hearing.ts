import { toJsgf } from '../../grammar/export/jsgf.ts';
import { PRONUNCIATIONS } from '../../grammar/export/pronunciations.ts';
import { numberWordStandsFor } from '../../grammar/phrases/languages/english/words/number-words.ts';
import { OPPOSITE_WORDS } from '../../grammar/phrases/languages/english/words/place-words.ts';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import { URGENT_WORDS } from '../../grammar/vocabulary/urgent-words.ts';
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
    isWhole: isWholeSentence,
  });
}

/** The JSGF of the moment; undefined where nothing is expected more than anything else. */
export function visitGrammar(expectation: Expectation | 'all' | 'urgent'): string | undefined {
  if (expectation === 'all') return toJsgf(undefined, { scope: 'all' });
  if (expectation === 'urgent') return URGENT;
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

/** All that is heeded while the mouth speaks. */
const URGENT = `#JSGF V1.0;\ngrammar urgent;\npublic <utterance> = ${URGENT_WORDS.join(' | ')};\n`;

function isWholeSentence(text: string, expectation: Expectation): boolean {
  return text !== '' && understand(text, expectation).verdict === 'logged';
}
