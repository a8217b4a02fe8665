import type { Correction } from '../../../grammar/phrases/meaning.ts';
import type { WireMove } from '../../../grammar/visit/events.ts';
import { judgeReading, samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { QuantityId, UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Undoable } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { zoneOf } from '../steps/plans.ts';
import { reopenProof, standsProof, takeBackProof } from './reopen-proof.ts';
import { settledByItem } from './take-job.ts';
import { circumstances, followEnergy, judgeFigures, refusedWhileNotDead, takeReading } from './take-reading.ts';
import { doubtRefrigerant, followRefrigerant } from './take-refrigerant.ts';

/** A marked correction sets right the question that stands open, or the latest reading: a new event, never an edit. */
export function takeCorrection(turn: Turn, correction: Correction): void {
  const { question, readings, undoable } = turn.context;
  const asked = question !== undefined && question.kind !== 'confirm-meaning';
  const latest = undoable.at(-1);
  // Said right behind a proof, it is the proof that was wrong: which of its numbers is not guessed.
  if (!asked && latest?.kind === 'proof' && standsProof(turn, latest.zone)) {
    turn.set({ undoable: undoable.slice(0, -1) });
    takeBackProof(turn, latest.zone);
    return;
  }
  if (correction.value === undefined && correction.at === undefined && (asked || readings.length > 0)) {
    turn.say('question', SAY.correctWhat);
    return;
  }
  const subject =
    question !== undefined && question.kind !== 'confirm-meaning' ? question.reading : readings.at(-1)?.reading;
  if (subject !== undefined && !unitBelongs(correction.unit, subject.quantity)) {
    turn.say('question', SAY.otherUnit);
    return;
  }
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
  if (refusedWhileNotDead(turn, reading, zoneOf(reading.at))) return;
  const under = circumstances(turn.context, zoneOf(reading.at), reading);
  const judged = judgeReading(reading, under, turn.context.unit);
  const { judgedWord: _past, confirmed: _asked, ...afresh } = last;
  turn.record({ type: 'reading.corrected', number: last.number, from: last.reading, to: reading });
  if (judged !== undefined) turn.record({ type: 'reading.judged', number: last.number, judged });
  turn.set({
    evidenceNumber: turn.context.evidenceNumber + 1,
    readings: [
      ...readings.slice(0, -1),
      { ...afresh, reading, ...(judged === undefined ? {} : { judgedWord: judged.word }) },
    ],
    evidence: turn.context.evidence.map((item) =>
      item.kind === 'reading' && item.seq === last.number
        ? { ...item, at: reading.at, value: reading.value, unit: reading.unit, power: under.power }
        : item,
    ),
  });
  const remark = judged?.word === 'does not fit' || judged?.word === 'marginal' ? SAY.judged(judged) : '';
  turn.say('readback', SAY.corrected(reading, remark));
  if (!samePlaces(last.reading.at, reading.at)) reopenProof(turn, last.reading);
  followEnergy(turn, reading, zoneOf(reading.at));
  doubtRefrigerant(turn, reading);
  followRefrigerant(turn, reading);
  judgeFigures(turn);
}

/** A correction may change a number or a place, never what was measured. */
function unitBelongs(unit: UnitCode | undefined, quantity: QuantityId): boolean {
  return unit === undefined || unitFor(unit, quantity) !== undefined;
}

function corrected(reading: Reading, correction: Correction): Reading {
  return {
    ...reading,
    ...(correction.value === undefined ? {} : { value: correction.value }),
    ...(correction.unit === undefined ? {} : { unit: correction.unit }),
    ...(correction.at === undefined ? {} : { at: correction.at }),
  };
}

/** Takes back the latest thing said of the unit: it stays in the record, withdrawn, and no longer counts. */
export function takeBack(turn: Turn): void {
  const { undoable, evidence } = turn.context;
  const last = undoable.at(-1);
  if (last === undefined) {
    turn.say('answer', SAY.nothingToCorrect);
    return;
  }
  turn.set({ undoable: undoable.slice(0, -1) });
  if (last.kind === 'proof') return takeBackProof(turn, last.zone);
  if (last.kind === 'wire') return takeBackWire(turn);
  if (last.kind === 'item' || last.kind === 'recommendation') return takeBackJob(turn, last);
  turn.set({
    evidence: evidence.filter((item) => item.seq !== last.number),
    evidenceNumber: turn.context.evidenceNumber + 1,
  });
  if (last.kind === 'part') return takeBackPart(turn, last.number);
  turn.record({ type: 'reading.withdrawn', number: last.number });
  const reading = turn.context.readings.find((item) => item.number === last.number)?.reading;
  turn.set({ readings: turn.context.readings.filter((item) => item.number !== last.number) });
  turn.say('readback', reading === undefined ? SAY.observationBack : SAY.takenBack(reading));
  if (reading === undefined) return;
  doubtRefrigerant(turn, reading);
  reopenProof(turn, reading);
}

/** An item or a recommendation taken back; what it had answered is asked again. */
function takeBackJob(turn: Turn, last: Extract<Undoable, { kind: 'item' | 'recommendation' }>): void {
  const { items, recommendations, settled } = turn.context;
  if (last.kind === 'item') {
    turn.record({ type: 'item.withdrawn', item: last.item });
    const answered = settledByItem(last.item);
    turn.set({
      items: items.toSpliced(items.lastIndexOf(last.item), 1),
      settled: settled.filter((id) => id !== answered),
    });
    turn.say('readback', SAY.itemBack(last.item));
    if (answered?.startsWith(`${turn.context.phase}.`)) turn.raise({ type: 'step.answered' });
    return;
  }
  turn.record({ type: 'recommendation.withdrawn', text: last.text });
  turn.set({ recommendations: recommendations.toSpliced(recommendations.lastIndexOf(last.text), 1) });
  turn.say('readback', SAY.recommendationBack(last.text));
}

function takeBackPart(turn: Turn, number: number): void {
  const { parts, settled } = turn.context;
  const part = parts.find((one) => one.number === number);
  if (part === undefined) return;
  if (part.work !== undefined) turn.record({ type: 'work.withdrawn', work: part.work });
  else turn.record({ type: 'part.withdrawn', part: part.part });
  turn.set({
    parts: parts.filter((one) => one.number !== number),
    settled: settled.filter((id) => id !== 'repair.part-fitted'),
  });
  turn.say('readback', SAY.partBack(part.words));
  // Work on the way was no repair: the search goes on.
  if (part.work === undefined || ['prove', 'close'].includes(turn.context.phase))
    turn.raise({ type: 'phase.go', to: 'repair' });
}

/** A wire taken back is recorded as moved back: what is on its terminal is never guessed. */
function takeBackWire(turn: Turn): void {
  const { wires } = turn.context;
  const wire = wires.at(-1);
  if (wire === undefined) return;
  const undone = { lifted: 'landed', landed: 'lifted', 'jumper-on': 'jumper-off', 'jumper-off': 'jumper-on' } as const;
  turn.set({ wires: wires.slice(0, -1) });
  turn.record({ type: 'wire.moved', wire: { ...wire, action: undone[wire.action], ...swapped(wire) } });
  turn.say('readback', SAY.wireBack(wire));
}

function swapped(wire: WireMove): Pick<WireMove, 'from' | 'to'> {
  return { ...(wire.to === undefined ? {} : { from: wire.to }), ...(wire.from === undefined ? {} : { to: wire.from }) };
}

export function closeQuestion(turn: Turn): void {
  turn.set({ question: undefined });
}

/** Sets a doubtful reading aside at the technician's "no": kept in the record, never evidence. */
export function rejectQuestioned(turn: Turn, reading: Reading): void {
  turn.record({ type: 'reading.refused', reading, reason: 'withdrawn-by-technician' });
  closeQuestion(turn);
  turn.say('question', SAY.rejected(reading));
}
