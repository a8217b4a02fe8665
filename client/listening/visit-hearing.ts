import { toJsgf } from '../../grammar/export/jsgf.ts';
import { PRONUNCIATIONS } from '../../grammar/export/pronunciations.ts';
import { NUMBER_TAILS, NUMBER_WORDS } from '../../grammar/phrases/languages/english/words/number-words.ts';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import { URGENT_WORDS } from '../../grammar/vocabulary/urgent-words.ts';
import { type Ending, Hearing } from './hearing.ts';
import { GATES } from './recogniser/gates.ts';
import type { SpeechModel, SpeechModule } from './recogniser/speech-module.ts';
import type { NoiseModule } from './sound/denoiser.ts';

export interface VisitHearingParts {
  readonly speech: SpeechModule;
  readonly model: SpeechModel;
  /** A second model, whose agreement is asked. */
  readonly second?: SpeechModel;
  readonly rnnoise: NoiseModule;
  /** Any clock in milliseconds; only differences count. */
  now(): number;
}

/** Hearing with the grammar of a visit: what is expected first, everything else as a second look at the kept sound. */
export async function openVisitHearing(parts: VisitHearingParts): Promise<Hearing> {
  return await Hearing.open({
    ...parts,
    pronunciations: PRONUNCIATIONS,
    gates: GATES,
    grammarFor: visitGrammar,
    endingOf,
    isNumber,
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

/** All that is heeded while the mouth speaks. */
const URGENT = `#JSGF V1.0;\ngrammar urgent;\npublic <utterance> = ${URGENT_WORDS.join(' | ')};\n`;

/** A number at the end may go on where what it would then be is taken at this moment too. */
function endingOf(text: string, expectation: Expectation): Ending {
  if (text === '') return 'open';
  const { verdict, meaning } = understand(text, expectation);
  if (verdict !== 'logged') return 'open';
  if (!NUMBER_WORDS.includes(text.slice(text.lastIndexOf(' ') + 1))) return 'whole';
  const said = JSON.stringify(meaning);
  const goesOnWith = (tail: string): boolean => {
    const longer = understand(`${text} ${tail}`, expectation);
    return (
      longer.verdict !== 'rejected' && longer.meaning.kind === meaning.kind && JSON.stringify(longer.meaning) !== said
    );
  };
  if (NUMBER_TAILS.digit.some(goesOnWith)) return 'open';
  return NUMBER_TAILS.fraction.some(goesOnWith) ? 'fraction' : 'whole';
}

function isNumber(text: string): boolean {
  return text !== '' && understand(text, NOTHING).meaning.kind === 'value';
}

const NOTHING: Expectation = { readings: [] };
