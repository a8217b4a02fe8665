import type { Correction } from '../../../grammar/phrases/meaning.ts';
import { judgeReading } from '../../../grammar/visit/judge-reading.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { zoneOf } from '../plans.ts';
import { capital, judgedWords, readbackWords, SAY } from '../prompts.ts';
import type { Turn } from '../turn.ts';
import { circumstances, followEnergy, takeReading } from './take-reading.ts';

/** A marked correction sets right the question that stands open, or the latest reading: a new event, never an edit. */
export function takeCorrection(turn: Turn, correction: Correction): void {
  const { question, readings } = turn.context;
  if (question !== undefined && question.kind !== 'confirm-meaning') {
    closeQuestion(turn);
    takeReading(turn, corrected(question.reading, correction), 'as heard');
    return;
  }
  const last = readings.at(-1);
  if (last === undefined) {
    turn.say('answer', SAY.nothingToCorrect);
    return;
  }
  const reading = corrected(last.reading, correction);
  const under = circumstances(turn.context, zoneOf(reading.at), reading);
  const judged = judgeReading(reading, under, turn.context.unit);
  turn.record({ type: 'reading.corrected', number: last.number, from: last.reading, to: reading });
  if (judged !== undefined) turn.record({ type: 'reading.judged', number: last.number, judged });
  turn.set({
    evidenceNumber: turn.context.evidenceNumber + 1,
    readings: [
      ...readings.slice(0, -1),
      { ...last, reading, ...(judged === undefined ? {} : { judgedWord: judged.word }) },
    ],
    evidence: turn.context.evidence.map((item) =>
      item.kind === 'reading' && item.seq === last.number
        ? { ...item, at: reading.at, value: reading.value, unit: reading.unit, power: under.power }
        : item,
    ),
  });
  const remark = judged?.word === 'does not fit' || judged?.word === 'marginal' ? ` ${judgedWords(judged)}` : '';
  turn.say('readback', `${SAY.corrected(reading)}${remark}`);
  followEnergy(turn, reading, zoneOf(reading.at));
}

function corrected(reading: Reading, correction: Correction): Reading {
  return {
    ...reading,
    ...(correction.value === undefined ? {} : { value: correction.value }),
    ...(correction.unit === undefined ? {} : { unit: correction.unit }),
    ...(correction.at === undefined ? {} : { at: correction.at }),
  };
}

/** Takes back the latest reading: it stays in the record, withdrawn, and no longer counts as evidence. */
export function takeBack(turn: Turn): void {
  const { readings, evidence } = turn.context;
  const last = readings.at(-1);
  if (last === undefined) {
    turn.say('answer', SAY.nothingToCorrect);
    return;
  }
  turn.record({ type: 'reading.withdrawn', number: last.number });
  turn.set({
    evidenceNumber: turn.context.evidenceNumber + 1,
    readings: readings.slice(0, -1),
    evidence: evidence.filter((item) => item.seq !== last.number),
  });
  turn.say('readback', SAY.takenBack(last.reading));
}

export function closeQuestion(turn: Turn): void {
  turn.set({ question: undefined });
  turn.raise({ type: 'question.closed' });
}

/** Sets a doubtful reading aside at the technician's "no": kept in the record, never evidence. */
export function rejectQuestioned(turn: Turn, reading: Reading): void {
  turn.record({ type: 'reading.refused', reading, reason: 'withdrawn-by-technician' });
  closeQuestion(turn);
  turn.say('question', `${capital(readbackWords(reading))} Set aside. Measure it again.`);
}
