import type { Correction, Meaning } from '../../../grammar/phrases/meaning.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { latestReading } from '../../../grammar/visit/standing.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { takeCorrection } from './take-correction.ts';

/** What was taken or asked longer ago is not the first part of this: milliseconds on the input clock. Our choice. */
const JUST_NOW_MS = 8_000;

/**
 * A number that went on after its first part was taken: the reading that the part became, or the question about it, is
 * set right aloud. It never becomes a reading of its own. Returns whether there was such a part.
 */
export function takeContinued(turn: Turn, { continues, understanding }: HeardUtterance): boolean {
  if (continues !== true) return false;
  const { context } = turn;
  const since = context.now.mono - JUST_NOW_MS;
  const [question] = context.questions;
  const isAsked = question !== undefined && 'reading' in question.question && (context.put?.mono ?? 0) >= since;
  if (!isAsked && (latestReading(context)?.time.mono ?? Number.NEGATIVE_INFINITY) < since) return false;
  const right = correctionOf(understanding.meaning);
  if (right === undefined) return false;
  // Heard so badly that it would be asked: the part is wrong all the same.
  if (understanding.verdict === 'asked' && understanding.reason === 'badly-heard')
    turn.say('question', SAY.correctWhat);
  else takeCorrection(turn, right);
  return true;
}

function correctionOf(meaning: Meaning): Correction | undefined {
  if (meaning.kind === 'value') return { value: meaning.value, ...(meaning.unit && { unit: meaning.unit }) };
  if (meaning.kind !== 'reading') return undefined;
  const { value, unit, at } = meaning.reading;
  return { value, unit, at };
}
