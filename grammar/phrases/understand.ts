import { asWritten } from './as-written.ts';
import type { MatchSigns } from './confidence.ts';
import { judge } from './judge.ts';
import type { Language } from './language.ts';
import { ENGLISH } from './languages/english/english.ts';
import { match } from './match.ts';
import type { Expectation, Meaning, UnclearReason, Understanding } from './meaning.ts';
import { makeNear } from './near.ts';
import { Network } from './network.ts';
import { suggest } from './suggest.ts';
import { type HeardWord, tokenise } from './tokenise.ts';
import { weigh } from './weigh.ts';
import { isReadWithoutUnit, passesOverUnit, whyNot } from './why-not.ts';
import type { Near } from './word-choices.ts';

/** Longer utterances than this many words are not taken apart; a note may be as long as it likes. */
const LONGEST = 60;
/** In characters: beyond it a text is not even split into words. */
const LONGEST_TEXT = 2000;
/** Longer ones than this are not repaired. */
const LONGEST_REPAIRED = 24;
/** Of how many of its words an utterance may be mended. */
const MENDABLE = 0.4;

export interface UnderstandOptions {
  /** Other hypotheses of the recogniser, best first. */
  readonly alternatives?: readonly string[];
  /** It was typed by hand: 115 cannot be a misheard 150. */
  readonly typed?: boolean;
  /** The sound fits the words badly: what they would put on record is asked. */
  readonly doubtful?: boolean;
}

export type Understand = (text: string, expectation?: Expectation, options?: UnderstandOptions) => Understanding;

/** A language made ready: its network and what sounds near its words. */
interface Ready {
  readonly language: Language;
  readonly network: Network;
  readonly near: (heard: string) => readonly Near[];
  readonly watch: ((signs: MatchSigns) => void) | undefined;
}

/**
 * Builds the network of a language once and gives the function that understands by it.
 *
 * @param language its rules and words; English where left out
 * @param watch is told the signs from which each confidence was set; for fitting its weights
 */
export function makeUnderstand(language: Language = ENGLISH, watch?: (signs: MatchSigns) => void): Understand {
  const network = new Network(language.rules, 'utterance', language);
  const near = makeNear(network.words, language);
  const ready: Ready = { language, network, near, watch };
  return (text, expectation, options) => {
    const expected = options?.typed ? { ...(expectation ?? { readings: [] }), typed: true as const } : expectation;
    const whole = (heard: string): Understanding => understandOne(ready, heard, expected);
    const one = (heard: string): Understanding => {
      const understood = withMarks(ready, heard, expected, whole) ?? whole(heard);
      return options?.typed ? { ...understood, meaning: asWritten(understood.meaning, heard, language) } : understood;
    };
    const weighed = weighAlternatives(one(text), (options?.alternatives ?? []).slice(0, 5).map(one));
    // Who puts a question mark tells nothing.
    if (/\?\s*$/.test(text) && isLoggedFact(weighed))
      return { ...weighed, verdict: 'asked', reason: 'several-values-fit' };
    return options?.doubtful === true && isLoggedFact(weighed)
      ? { ...weighed, verdict: 'asked', reason: 'badly-heard' }
      : weighed;
  };
}

/** Model and serial number are read as they are written; what else was said is understood beside them. */
function withMarks(
  { language }: Ready,
  heard: string,
  expectation: Expectation | undefined,
  understandRest: (text: string) => Understanding,
): Understanding | undefined {
  if (heard.length > LONGEST_TEXT) return undefined;
  const found = language.readPlateMarks?.(heard, expectation?.plate ?? []);
  if (found === undefined) return undefined;
  const [only] = found.marks;
  if (found.rest === '') {
    const meaning: Meaning = found.marks.length === 1 && only !== undefined ? only : several(found.marks);
    return { heard, verdict: 'logged', meaning, confidence: MARK_CONFIDENCE };
  }
  const rest = understandRest(found.rest);
  if (rest.verdict === 'rejected') return undefined;
  const parts = rest.meaning.kind === 'several' ? rest.meaning.parts : [rest.meaning];
  return { ...rest, heard, meaning: several([...found.marks, ...parts]) };
}

/** Letters are misheard often; the readback tells. Not measured. */
const MARK_CONFIDENCE = 0.9;
const several = (parts: readonly Meaning[]): Meaning => ({ kind: 'several', parts });

let english: Understand | undefined;
/**
 * What an English sentence means and whether it may be logged. The network is built at the first call.
 *
 * @param text what was heard, in words or with digits
 * @param expectation what the visit waits for: binds bare values and prefers its own readings
 * @param options other hypotheses of the recogniser; whether the digits were typed
 * @returns never throws; `unclear` with a reason where the text is no sentence of the grammar
 */
export const understand: Understand = (text, expectation, options) => {
  english ??= makeUnderstand();
  return english(text, expectation, options);
};

/**
 * The recogniser's other hypotheses weigh in: where the first makes no sense, the first other that would be logged is
 * asked; where two make sense and differ in a value, the first is asked instead of logged.
 */
function weighAlternatives(best: Understanding, others: readonly Understanding[]): Understanding {
  const sensible = others.filter((other) => other.verdict === 'logged');
  const [other] = sensible;
  if (other === undefined) return best;
  if (best.meaning.kind === 'unclear' || best.verdict === 'rejected') {
    return { ...other, verdict: 'asked', reason: 'needed-repair', confidence: other.confidence * 0.7 };
  }
  const key = JSON.stringify(best.meaning);
  const rivals = sensible.filter((one) => JSON.stringify(one.meaning) !== key).map((one) => one.meaning);
  if (best.verdict !== 'logged' || rivals.length === 0) return best;
  return {
    ...best,
    verdict: 'asked',
    reason: 'several-values-fit',
    confidence: best.confidence * 0.7,
    others: [...rivals, ...(best.others ?? [])].slice(0, 4),
  };
}

/** What is measured, reported or fitted; a command does no harm if it has to be said again, and a note is kept as heard. */
const FACTS: readonly Meaning['kind'][] = ['reading', 'several', 'report', 'nameplate', 'part', 'work', 'wire'];

const isLoggedFact = ({ verdict, meaning }: Understanding): boolean =>
  verdict === 'logged' && FACTS.includes(meaning.kind);

function understandOne(ready: Ready, text: string, expectation: Expectation | undefined): Understanding {
  const { language, network, near } = ready;
  const note = language.writing.note.test(text);
  if (text.length > LONGEST_TEXT && !note) return unclear(text, 'too-long', []);
  const heard = tokenise(text, language);
  if (heard.length === 0) return unclear(text, 'empty', []);
  if (heard.length > LONGEST) {
    return note ? longNote(text, heard) : unclear(text, 'too-long', []);
  }
  let weighed = weigh(match(network, heard), expectation, language);
  if (weighed.length === 0 && heard.length <= LONGEST_REPAIRED) {
    const mostRepairs = Math.max(1, Math.floor(heard.length * MENDABLE));
    // Of a short answer nothing is mended: of so few words a lost one may be the one that turns it round.
    const { answers: _short, ...rest } = expectation ?? { readings: [] };
    weighed = weigh(match(network, heard, { near, mostRepairs }), rest, language);
  }
  const meant = (): string[] =>
    suggest(
      heard.map((word) => word.text),
      near,
      language.sentences,
    );
  const [best] = weighed;
  if (best === undefined) return unclear(text, whyNot(text, heard, ready, expectation), meant());
  const judged = judge(text, best, weighed.slice(1), language.words, ready.watch);
  // "suction one twenty volts": the unit cannot be taken there; the place was not said in vain.
  const { meaning } = judged;
  const isMended = judged.verdict === 'rejected' && judged.repaired !== undefined;
  if (isMended && meaning.kind === 'value' && meaning.unit && isReadWithoutUnit(heard, ready, expectation)) {
    return unclear(text, 'other-unit', meant());
  }
  if (judged.reason === 'needed-repair' && passesOverUnit(heard, judged, language))
    return unclear(text, 'other-unit', meant());
  if (judged.meaning.kind !== 'unclear' || judged.meaning.alternatives.length > 0) return judged;
  return { ...judged, meaning: { ...judged.meaning, alternatives: meant() } };
}

const longNote = (heard: string, words: readonly HeardWord[]): Understanding => ({
  heard,
  verdict: 'logged',
  meaning: {
    kind: 'note',
    text: words
      .slice(1)
      .map((word) => word.text)
      .join(' '),
  },
  confidence: 0.95,
});

const unclear = (heard: string, reason: UnclearReason, alternatives: readonly string[]): Understanding => ({
  heard,
  verdict: 'rejected',
  meaning: { kind: 'unclear', reason, alternatives },
  confidence: 0,
  reason,
});
