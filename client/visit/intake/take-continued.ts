import type { Correction, Meaning } from '../../../grammar/phrases/meaning.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { latestReading } from '../../../grammar/visit/standing.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { takeBack, takeCorrection } from './take-correction.ts';

/** What was taken or asked longer ago is not the first part of this: milliseconds on the input clock. Our choice. */
const JUST_NOW_MS = 8_000;

/**
 * A number that went on after its first part was taken: the reading that the part became, or the question about it, is
 * set right aloud, or taken back where the rest was not understood. It never becomes a reading of its own.
 *
 * @returns whether there was such a part
 */
export function takeContinued(turn: Turn, { accepted, continues, understanding }: HeardUtterance): boolean {
  if (continues !== true || !isJustTaken(turn.context)) return false;
  const right = correctionOf(understanding.meaning);
  if (accepted && right !== undefined) takeCorrection(turn, right);
  else takeBack(turn);
  return true;
}

/** A question about a reading was put, or a reading was the last thing taken, a moment ago. */
function isJustTaken(context: VisitContext): boolean {
  const { now, put, undoable } = context;
  const since = now.mono - JUST_NOW_MS;
  const [question] = context.questions;
  if (question !== undefined) return 'reading' in question.question && (put?.mono ?? 0) >= since;
  const latest = latestReading(context);
  return undoable.at(-1)?.kind === 'reading' && (latest?.time.mono ?? Number.NEGATIVE_INFINITY) >= since;
}

function correctionOf(meaning: Meaning): Correction | undefined {
  if (meaning.kind === 'value') return { value: meaning.value, ...(meaning.unit && { unit: meaning.unit }) };
  if (meaning.kind !== 'reading') return undefined;
  const { value, unit, at } = meaning.reading;
  return { value, unit, at };
}
