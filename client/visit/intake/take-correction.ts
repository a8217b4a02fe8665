import type { Correction } from '../../../grammar/phrases/meaning.ts';
import { REPAIR } from '../../../grammar/visit/evolve.ts';
import type { ReadingLine, Undoable, VisitFacts } from '../../../grammar/visit/facts.ts';
import { judgeReading, samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { latestReading, standingReadings } from '../../../grammar/visit/standing.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { FittedPartId } from '../../../grammar/vocabulary/parts.ts';
import type { QuantityId, UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { nameplateName } from '../../words/things/nameplate-words.ts';
import type { Turn } from '../chart/turn.ts';
import { isOpened, TAKEN_OFF, zonesOpenedAt } from '../rules/isolation.ts';
import { mayBeInEither } from '../rules/may-be-in-either.ts';
import { SHOWN_BY_LOOK } from '../rules/shown-by-look.ts';
import { zoneOf } from '../steps/plans.ts';
import { endProofs } from './end-proofs.ts';
import { foundVoltage } from './found-voltage.ts';
import { heedGround } from './heed-return.ts';
import { reopenProof, standsProof, takeBackProof } from './reopen-proof.ts';
import { takeBackDeed } from './take-deed.ts';
import { settledByItem } from './take-job.ts';
import {
  actsAtOnce,
  circumstances,
  followCorrected,
  followEnergy,
  isPresent,
  judgeFigures,
  leftToSupervisor,
  refusedWhileNotDead,
  takeReading,
  withoutFits,
} from './take-reading.ts';
import { followRefrigerant } from './take-refrigerant.ts';
import { correctWaiting, takeBackWaiting } from './wait-for-supervisor.ts';

const NUMBERED: readonly Undoable['kind'][] = ['reading', 'proof'];

/** A marked correction sets right the question that stands open, or the latest reading: a new event, never an edit. */
export function takeCorrection(turn: Turn, correction: Correction): void {
  const last = latestReading(turn.context);
  const question = questionMeant(turn.context, last?.seq ?? 0);
  // What has numbers, however much else was said since.
  const latest = turn.context.undoable.findLast((one) => hasNumbers(one, turn.context));
  if (question === undefined && latest?.kind === 'waiting')
    return correctWaiting(turn, latest.number, correction, (reading) => {
      if (actsAtOnce(reading, turn.context) && isPresent(reading)) followEnergy(turn, reading, zoneOf(reading.at));
    });
  // Said right behind a proof, it is the proof that was wrong: which of its numbers is not guessed.
  if (question === undefined && latest?.kind === 'proof' && standsProof(turn, latest.zone)) {
    takeBackProof(turn, latest.zone, 'a correction');
    return;
  }
  const subject = question?.reading ?? last?.reading;
  if (correction.value === undefined && correction.at === undefined && subject !== undefined) {
    turn.say('question', SAY.correctWhat);
    return;
  }
  if (subject !== undefined && !unitBelongs(correction.unit, subject.quantity)) {
    turn.say('question', SAY.otherUnit);
    return;
  }
  if (subject !== undefined && mayBeInEither(subject, correction, turn.context)) {
    turn.say('question', SAY.correctWithUnit);
    return;
  }
  if (question !== undefined) {
    turn.endQuestion('answered');
    if (isOtherFunction(question.reading, correction)) return askAtPlace(turn, question.reading, correction.at!);
    const right = corrected(question.reading, correction);
    if (!samePlaces(question.reading.at, right.at)) reopenProof(turn, { ...right, quantity: 'voltage' });
    takeReading(turn, right, 'as heard');
    return;
  }
  if (last === undefined) {
    turn.say('answer', SAY.nothingToCorrect);
    return;
  }
  if (isOtherFunction(last.reading, correction)) return askAtPlace(turn, last.reading, correction.at!);
  const meant = namedReading(turn.context, last, correction);
  if (meant !== last) reopenProof(turn, last.reading);
  setRight(turn, meant, corrected(meant.reading, correction));
}

/** A number with its place sets right what was read there, though something else was read since. */
function namedReading(facts: VisitFacts, last: ReadingLine, { at, value }: Correction): ReadingLine {
  if (at === undefined || value === undefined || samePlaces(at, last.reading.at)) return last;
  const there = standingReadings(facts).findLast(
    ({ reading }) => reading.quantity === last.reading.quantity && samePlaces(reading.at, at),
  );
  return there ?? last;
}

/** A charge is not read where no charge is held: d.c. there becomes no a.c., it is read anew. */
function isOtherFunction({ quantity }: Reading, { at }: Correction): boolean {
  return quantity === 'voltage-dc' && at !== undefined && !holdsCharge(at);
}

function holdsCharge(at: Reading['at']): boolean {
  return MEASURANDS.some((row) => row.quantity === 'voltage-dc' && samePlaces(row.at, at));
}

function askAtPlace(turn: Turn, wrong: Reading, at: Reading['at']): void {
  reopenProof(turn, wrong);
  reopenProof(turn, { ...wrong, at, quantity: 'voltage' });
  turn.say('question', SAY.valueAt(at));
}

/** Of what waits for a supervisor, a reading has a number to set right; a discharge has none. */
function hasNumbers(one: Undoable, { waiting }: VisitFacts): boolean {
  if (one.kind === 'waiting')
    return waiting.some(({ number, reading }) => number === one.number && reading !== undefined);
  return NUMBERED.includes(one.kind);
}

/** The question about a reading that is put, where nothing was read or proved since: else that is what is meant. */
function questionMeant(
  { questions, undoable }: VisitFacts,
  lastRead: number,
): Extract<Question, { readonly reading: Reading }> | undefined {
  const [put] = questions;
  const since = Math.max(lastRead, undoable.findLast((one) => one.kind === 'proof')?.seq ?? 0);
  return put === undefined || !('reading' in put.question) || put.seq < since ? undefined : put.question;
}

function setRight(turn: Turn, last: ReadingLine, reading: Reading): void {
  const zone = zoneOf(reading.at);
  if (refusedWhileNotDead(turn, reading) || leftToSupervisor(turn, reading)) return;
  heedGround(turn, reading);
  const { refrigerantWork } = turn.context;
  // It was read in its own phase and behind its own lock, whenever it is set right.
  const { phase, locked } = last.under;
  const { locked: _now, ...here } = circumstances(turn.context, zone, reading);
  const under = { ...here, phase, ...(locked === true ? { locked } : {}) };
  const judged = judgeReading(reading, under, turn.context.unit);
  // It was read where it was locked off: another voltage there is no less to be feared.
  const wasOff = locked === true && zone !== 'none' && reading.quantity !== 'voltage-dc' && isPresent(reading);
  const alarming = wasOff || (actsAtOnce(reading, turn.context) && isPresent(reading));
  turn.record({ type: 'reading.corrected', number: last.number, from: last.reading, to: reading, under });
  const written = alarming ? withoutFits(judged) : judged;
  if (written !== undefined) turn.record({ type: 'reading.judged', number: last.number, judged: written });
  const doubtful = judged?.word === 'does not fit' || judged?.word === 'marginal';
  if (!alarming) turn.say('readback', SAY.corrected(reading, doubtful ? SAY.judged(judged) : ''));
  reopenCorrected(turn, last.reading, reading);
  if (wasOff) foundVoltage(turn, { zone, at: reading.at }, BECAUSE.reads(reading));
  else followCorrected(turn, reading, zone);
  if (alarming) turn.say('readback', SAY.corrected(reading, ''));
  followRefrigerant(turn, reading, last.number, refrigerantWork);
  judgeFigures(turn);
}

/** What the reading had proved is open again, and at another place what was proved there: one of the two was never read. */
function reopenCorrected(turn: Turn, from: Reading, to: Reading): void {
  reopenProof(turn, from);
  if (!samePlaces(from.at, to.at)) reopenProof(turn, { ...to, quantity: 'voltage' });
}

/** A correction may change a number or a place, never what was measured. */
function unitBelongs(unit: UnitCode | undefined, quantity: QuantityId): boolean {
  return unit === undefined || unitFor(unit, quantity) !== undefined;
}

/** Another number or place; what was recovered stays so. */
function corrected(reading: Reading, correction: Correction): Reading {
  const { at = reading.at, unit = reading.unit } = correction;
  const said = correction.value ?? reading.value;
  const isOut = reading.quantity === 'mass' && typeof reading.value === 'number' && reading.value < 0;
  const value = isOut && typeof said === 'number' ? -Math.abs(said) : said;
  return { ...reading, at, value, unit };
}

/** Takes back the latest thing said of the unit: it stays in the record, withdrawn, and no longer counts. */
export function takeBack(turn: Turn): void {
  const { undoable } = turn.context;
  const last = undoable.at(-1);
  if (last === undefined) {
    turn.say('answer', SAY.nothingToCorrect);
    return;
  }
  if (last.kind === 'question') return takeBackQuestion(turn, last.number);
  if (last.kind === 'refused') {
    turn.record({ type: 'refusal.withdrawn' });
    turn.say('readback', SAY.refusalBack);
    return;
  }
  if (last.kind === 'plate') {
    turn.record({ type: 'nameplate.withdrawn', field: last.field });
    turn.say('readback', SAY.plateBack(nameplateName(last.field)));
    if (turn.context.step?.plate !== undefined) turn.raise({ type: 'step.answered' });
    return;
  }
  if (last.kind === 'proof') return takeBackProof(turn, last.zone);
  if (last.kind === 'switch') return takeBackSwitch(turn, last.place);
  if (last.kind === 'wire') return takeBackWire(turn);
  if (last.kind === 'deed') return takeBackDeed(turn);
  if (last.kind === 'unproven') return takeBackUnproven(turn, last.cause);
  if (last.kind === 'item' || last.kind === 'recommendation') return takeBackJob(turn, last);
  if (last.kind === 'part') return takeBackPart(turn, last.number);
  if (last.kind === 'work') return takeBackWork(turn, last.number);
  if (last.kind === 'waiting') return takeBackWaiting(turn, last.number);
  if (last.kind === 'refrigerant') {
    turn.record({ type: 'refrigerant.untold', number: last.number });
    turn.say('readback', SAY.observationBack);
    return;
  }
  if (last.kind === 'supervisor') {
    turn.record({ type: 'supervisor.withdrawn' });
    turn.say('readback', SAY.supervisorBack);
    return;
  }
  if (last.kind === 'observation') return takeBackObservation(turn, last.number);
  const reading = turn.context.readings.find((item) => item.number === last.number)?.reading;
  if (reading === undefined) return;
  turn.record({ type: 'reading.withdrawn', number: last.number });
  turn.say('readback', SAY.takenBack(reading));
  reopenProof(turn, reading);
}

/** What is in question is taken back before anybody answers. */
function takeBackQuestion(turn: Turn, number: number): void {
  const question = turn.context.questions.find((one) => one.number === number)?.question;
  if (question !== undefined && 'reading' in question) {
    turn.record({ type: 'reading.refused', reading: question.reading, reason: 'withdrawn-by-technician' });
  }
  // What was said is taken back, what is asked of the proof is not: only an answer tells whether it is still off.
  if (question?.kind === 'still-off') return void turn.say('question', SAY.stillOff);
  turn.endQuestion('withdrawn', number);
  turn.say('readback', SAY.setAside);
}

/** What was seen does not count; whether a call is there is not known any more, if that was it. */
function takeBackObservation(turn: Turn, number: number): void {
  const seen = turn.context.observations.find((one) => one.number === number)?.observation;
  turn.record({ type: 'observation.withdrawn', number });
  if (seen === 'covers-on') turn.record({ type: 'steps.reopened', steps: SHOWN_BY_LOOK[seen].answers });
  if (seen !== undefined && SHOWN_BY_LOOK[seen].call !== 'nothing') turn.record({ type: 'call.seen', call: 'unknown' });
  turn.say('readback', SAY.observationBack);
}

/** A switch taken back: where it stands is not known, and what it alone took off counts as live. */
function takeBackSwitch(turn: Turn, place: IsolationPlace): void {
  turn.record({ type: 'switch.withdrawn', place });
  const isLeftOff = (zone: ZoneId) => TAKEN_OFF.includes(turn.context.energy[zone]) && !isOpened(zone, turn.context);
  const zones = zonesOpenedAt(place).filter(isLeftOff);
  endProofs(turn, zones, 'doubted', BECAUSE.takenBack);
  turn.say('readback', SAY.switchBack(place));
}

/** An item or a recommendation taken back; what it had answered is asked again. */
function takeBackJob(turn: Turn, last: Extract<Undoable, { kind: 'item' | 'recommendation' }>): void {
  if (last.kind === 'item') {
    turn.record({ type: 'item.withdrawn', item: last.item });
    const answered = settledByItem(last.item);
    if (answered.length > 0) turn.record({ type: 'steps.reopened', steps: answered });
    turn.say('readback', SAY.itemBack(last.item));
    if (answered[0]?.startsWith(`${turn.context.phase}.`)) turn.raise({ type: 'step.answered' });
    return;
  }
  turn.record({ type: 'recommendation.withdrawn', text: last.text });
  turn.say('readback', SAY.recommendationBack(last.text));
}

function takeBackPart(turn: Turn, number: number): void {
  const part = turn.context.parts.find((one) => one.number === number);
  if (part === undefined) return;
  turn.record({ type: 'part.withdrawn', part: part.part as FittedPartId, number });
  turn.record({ type: 'steps.reopened', steps: [REPAIR] });
  turn.say('readback', SAY.partBack(part.words));
}

/** Work that was no repair leaves the search where it is. */
function takeBackWork(turn: Turn, number: number): void {
  const work = turn.context.works.find((one) => one.number === number);
  if (work === undefined) return;
  turn.record({ type: 'work.withdrawn', work: work.work, number });
  if (['prove', 'close'].includes(turn.context.phase)) turn.record({ type: 'steps.reopened', steps: [REPAIR] });
  turn.say('readback', SAY.partBack(work.words));
}

/** Hands were not there after all. */
function takeBackUnproven(turn: Turn, cause: number): void {
  const line = turn.context.unproven.find((one) => one.cause === cause);
  turn.record({ type: 'unproven.withdrawn', cause });
  if (line !== undefined) turn.say('readback', SAY.unprovenBack(line.what));
}

/** A wire taken back did not move: where it is counts as it was told before. */
function takeBackWire(turn: Turn): void {
  const wire = turn.context.wires.at(-1)?.wire;
  if (wire === undefined) return;
  turn.record({ type: 'wire.withdrawn', wire });
  turn.say('readback', SAY.wireBack(wire));
}

/** Sets a doubtful reading aside at the technician's "no": kept in the record, never evidence. */
export function rejectQuestioned(turn: Turn, reading: Reading): void {
  turn.record({ type: 'reading.refused', reading, reason: 'withdrawn-by-technician' });
  turn.endQuestion('answered');
  turn.say('question', SAY.rejected(reading));
}
