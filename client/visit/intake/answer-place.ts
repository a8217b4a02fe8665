import { fitOf } from '../../../grammar/phrases/compose/fit.ts';
import type { Meaning, Verdict } from '../../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { latestReading } from '../../../grammar/visit/standing.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { bareUnit } from '../../../grammar/vocabulary/unit-choice.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { switchOf, switchToldLast } from '../rules/isolation.ts';
import { takeReading } from './take-reading.ts';
import { takeReport } from './take-report.ts';

type OfPlace = Extract<Question, { kind: 'which-place' | 'which-switch' }>;

/** A place, "here" or "the same", said to a value or a switch that was told of without one. */
export function answersPlace(turn: Turn, question: OfPlace, meaning: Meaning, verdict: Verdict): boolean {
  return question.kind === 'which-place'
    ? placesValue(turn, question, meaning, verdict)
    : placesSwitch(turn, question, meaning);
}

function placesValue(
  turn: Turn,
  question: Extract<Question, { kind: 'which-place' }>,
  meaning: Meaning,
  verdict: Verdict,
): boolean {
  // With a doubt of its own it is asked back as any reading is.
  const isPlaced = meaning.kind === 'reading' && meaning.reading.value === question.value && verdict === 'logged';
  const reading = isPlaced ? meaning.reading : readingMeant(turn.context, question, meaning);
  if (reading === undefined) return false;
  turn.endQuestion('answered');
  turn.repeatStep();
  if (isPlaced || isLikely(reading)) takeReading(turn, reading, 'as heard');
  else {
    turn.record({ type: 'reading.asked', reading, why: BECAUSE.notSure });
    turn.ask({ kind: 'confirm-reading', reading, why: BECAUSE.notSure }, SAY.doubtful(reading, ''));
  }
  return true;
}

/** Whether it is a value that is commonly read there: a place that was only pointed at is asked of any other. */
function isLikely({ quantity, at, value, unit }: Reading): boolean {
  return MEASURANDS.some(
    (row) => row.quantity === quantity && samePlaces(row.at, at) && fitOf(row, value, unit) === 'likely',
  );
}

/** The value at the place that "here" or "the same" stands for; undefined where it cannot have been read there. */
function readingMeant(
  context: VisitContext,
  { value, unit }: Extract<Question, { kind: 'which-place' }>,
  meaning: Meaning,
): Reading | undefined {
  if (meaning.kind !== 'command') return undefined;
  const place =
    meaning.command === 'here'
      ? placeHere(context)
      : meaning.command === 'same-place'
        ? placeBefore(context)
        : undefined;
  if (place === undefined || (unit !== undefined && unitFor(unit, place.quantity) === undefined)) return undefined;
  return { ...place, value, unit: unit ?? bareUnit(place.quantity, context.units) };
}

type Place = Pick<Reading, 'quantity' | 'at'>;

/** Where the step has the probes, else where they were last. */
export function placeHere(context: VisitContext): Place | undefined {
  const ask = context.step?.ask;
  return ask?.kind === 'reading' ? { quantity: ask.quantity, at: ask.at } : placeBefore(context);
}

export function placeBefore(context: VisitContext): Place | undefined {
  const reading = latestReading(context)?.reading;
  return reading === undefined ? undefined : { quantity: reading.quantity, at: reading.at };
}

function placesSwitch(turn: Turn, question: Extract<Question, { kind: 'which-switch' }>, meaning: Meaning): boolean {
  const { state } = question;
  const { context } = turn;
  const isNamed = meaning.kind === 'report' && meaning.report.type === 'energy' && meaning.report.state === state;
  const said = isNamed ? meaning.report : undefined;
  const meant =
    said ??
    (meaning.kind !== 'command'
      ? undefined
      : meaning.command === 'here'
        ? switchOf(context.step?.zone ?? 'none')
        : meaning.command === 'same-place'
          ? switchToldLast(context)
          : undefined);
  if (meant === undefined) return false;
  const device = question.device === 'disconnect' && meant.place !== 'panel' ? question.device : meant.device;
  turn.endQuestion('answered');
  turn.repeatStep();
  takeReport(turn, { type: 'energy', device, place: meant.place, state });
  return true;
}
