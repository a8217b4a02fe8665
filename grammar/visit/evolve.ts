import { ISOLATION_PLACES, type IsolationPlace } from '../vocabulary/isolation-places.ts';
import { inUnitOfField, NAMEPLATE_FIELDS_BY_ID, type NameplateField } from '../vocabulary/nameplate.ts';
import type { FittedPartId } from '../vocabulary/parts.ts';
import type { UnitCode } from '../vocabulary/quantities.ts';
import { readUnitChoice } from '../vocabulary/unit-choice.ts';
import { UNITS } from '../vocabulary/units.ts';
import type { EnergyState } from '../vocabulary/zones.ts';
import { type DictatedLine, dictationOf, writtenOver } from './dictated.ts';
import type { VisitEvent, VisitOutcome } from './events.ts';
import {
  cautionKey,
  type Moment,
  type ReadingLine,
  toldAnew,
  toldSinceLeft,
  type Undoable,
  type VisitFacts,
} from './facts.ts';
import { MS_A_MINUTE, type VisitInput } from './inputs.ts';
import { samePlaces } from './judge-reading.ts';
import { withNameplate } from './nameplate.ts';
import { logRefrigerant } from './refrigerant-log.ts';
import { workOf } from './refrigerant-work.ts';
import { evidenceSeen } from './standing.ts';

/**
 * What holds after an event: the one place where a fact changes. The machine applies it to each event as it records
 * it, so that the next interlock sees it; a visit is restored and folded by the same function. What else the caller
 * keeps beside the facts passes through as it is. Nothing is judged here: what was decided stands in the event.
 */
export function evolve<F extends VisitFacts>(facts: F, event: VisitEvent): F {
  // One copy, which nobody else has yet: a long visit is folded event by event.
  const after = { ...facts, events: facts.events + 1 };
  if (event.type === 'input.taken') return Object.assign(after, evolveInput(event.input));
  const moment: Moment = { seq: after.events, time: event.time };
  const change = evolveOutcome(facts, event, moment);
  return Object.assign(after, change, evolveRefrigerant(facts, event, change.parked));
}

/** What was said of the refrigerant circuit is gone through anew: what is taken back brings what came behind it out of order. */
function evolveRefrigerant(facts: VisitFacts, event: VisitOutcome, parked: VisitFacts['parked'] | undefined): Change {
  const refrigerantLog = logRefrigerant(facts, event);
  if (refrigerantLog === facts.refrigerantLog && parked === undefined) return NOTHING;
  const passed = (parked ?? facts.parked).map(({ step }) => step);
  return { refrigerantLog, refrigerantWork: workOf(refrigerantLog, passed) };
}

/** Settled while the repair that was made stands. */
export const REPAIR = 'repair.part-fitted';

/** Refused as it was said: whoever takes it back then means it, and nothing that was said before. */
const REFUSED_ALOUD: readonly Of<'reading.refused'>['reason'][] = [
  'impossible',
  'in-vacuum',
  'not-on-the-bench',
  'not-read-dead',
];

/** An event is a change of some facts; the others stay as they are. */
type Change = Partial<VisitFacts>;
type Of<T extends VisitOutcome['type']> = Extract<VisitOutcome, { type: T }>;

const NOTHING: Change = {};
/** A zone that somebody's word or numbers took off: power that comes back to it ends a supervisor's word. */
const TAKEN_OFF: readonly EnergyState[] = ['reported-off', 'proving', 'reads-dead', 'proven-dead', 'in-doubt'];

function evolveInput(input: VisitInput): Change {
  if (input.type === 'remarked.visit') return NOTHING;
  const now = input.time;
  if (input.type === 'diagnosis.answered') return { now, answer: input.answer };
  if (input.type !== 'heard.utterance') return { now };
  const { accepted, understanding, ear } = input.utterance;
  // Noise is no sign that somebody is there.
  return {
    now,
    ...(ear === 'offline' ? { listens: true } : {}),
    ...(accepted && understanding.verdict !== 'rejected' ? { lastHeard: now.mono } : {}),
  };
}

function evolveOutcome(facts: VisitFacts, event: VisitOutcome, moment: Moment): Change {
  switch (event.type) {
    case 'visit.opened': {
      const { visit, site, complaint, role, unit, software, exercise } = event;
      return {
        ...{ visit, site, complaint, role, listed: unit, unit, software, exercise },
        lastHeard: moment.time.mono,
      };
    }
    case 'visit.taken-over':
      // Who takes it over was not there when a supervisor spoke; whether they have a microphone is not known yet.
      return { role: event.role, supervisor: undefined, listens: false, lastHeard: moment.time.mono };
    case 'phase.entered':
      return {
        phase: event.phase,
        ...(event.phase === 'testing' ? {} : { focus: undefined }),
        // Records of earlier versions tell by the phase alone that a repair stands.
        ...(event.phase === 'prove' ? { settled: [...new Set([...facts.settled, REPAIR])] } : {}),
      };
    case 'focus.moved':
      return { focus: event.focus };
    case 'supervisor.acknowledged':
      return {
        supervisor: event.supervisor,
        waiting: [],
        undoable: [...facts.undoable.filter(({ kind }) => kind !== 'waiting'), { kind: 'supervisor' }],
      };
    case 'supervisor.withdrawn':
      return {
        supervisor: undefined,
        undoable: withoutLast(facts.undoable, ({ kind }) => kind === 'supervisor'),
      };
    case 'reading.waits': {
      const { number, words, reading } = event;
      return {
        waiting: [...facts.waiting, { ...moment, number, words, ...(reading === undefined ? {} : { reading }) }],
        undoable: [...facts.undoable, { kind: 'waiting', number }],
      };
    }
    case 'waiting.withdrawn':
      return {
        waiting: facts.waiting.filter(({ number }) => number !== event.number),
        undoable: withoutLast(facts.undoable, (one) => one.kind === 'waiting' && one.number === event.number),
      };
    case 'unit.gated':
      return { gate: event.gate };
    case 'reading.logged':
      return readingLogged(facts, event, moment);
    case 'reading.judged':
      return { readings: changed(facts.readings, event.number, (line) => ({ ...line, judged: event.judged })) };
    case 'reading.corrected':
      return readingCorrected(facts, event);
    case 'reading.withdrawn':
      return readingWithdrawn(facts, event.number);
    case 'observation.logged': {
      const { number, observation, under, test } = event;
      const line = { ...moment, number, observation, under, ...(test === undefined ? {} : { test }) };
      return { ...counted(facts, number, 'observation'), observations: [...facts.observations, line] };
    }
    case 'observation.withdrawn':
      return observationWithdrawn(facts, event.number);
    case 'nameplate.logged': {
      const { field, value, unit } = event;
      const plate = { ...facts.plate, [field]: plateFact(field, value, unit) };
      const undoable: Undoable = { kind: 'plate', field, before: facts.plate[field] };
      return {
        plate,
        unit: withNameplate(facts.unit, plate),
        evidenceNumber: facts.evidenceNumber + 1,
        undoable: [...facts.undoable, undoable],
      };
    }
    case 'nameplate.withdrawn':
      return plateWithdrawn(facts, event.field);
    case 'question.asked': {
      const { number, question, words } = event;
      return {
        questions: [...facts.questions, { number, seq: moment.seq, question, words }],
        questionCount: number,
        undoable: [...facts.undoable, { kind: 'question', number }],
      };
    }
    case 'question.ended':
      return {
        ...(event.how === 'withdrawn' ? refusalTakenBack(facts, event.number) : {}),
        questions: facts.questions.filter(({ number }) => number !== event.number),
        undoable: withoutLast(facts.undoable, (one) => one.kind === 'question' && one.number === event.number),
      };
    case 'switch.reported':
      return {
        isolation: { ...facts.isolation, [event.place]: event.state },
        lockedBy: lockedAfter(facts, event),
        toldOpen: toldOpenAfter(facts, event),
        ...(event.place === 'panel' && event.state === 'closed'
          ? { breakerClosed: [...facts.breakerClosed, moment.seq] }
          : {}),
        // Somebody has been at a switch: where its power comes from is told, and proved, by that.
        ...(event.state === 'unknown'
          ? {}
          : {
              search: undefined,
              undoable: [...facts.undoable, { kind: 'switch', place: event.place, before: switchesOf(facts) }],
            }),
      };
    case 'switch.withdrawn':
      return switchWithdrawn(facts, event.place);
    case 'call.seen':
      return { call: event.call };
    case 'run.changed':
      return { runningSince: event.running ? (facts.runningSince ?? moment.time.mono) : undefined };
    case 'energy.changed': {
      const powerCameBack = event.to === 'live' && TAKEN_OFF.includes(event.from);
      return {
        energy: { ...facts.energy, [event.zone]: event.to },
        ...(powerCameBack
          ? {
              supervisor: undefined,
              acknowledged: toldAnew(facts.acknowledged, event.zone),
              saidLate: toldAnew(facts.saidLate, event.zone),
            }
          : {}),
        ...(event.to === 'reads-dead' ? { deadSince: { ...facts.deadSince, [event.zone]: moment.time.mono } } : {}),
      };
    }
    case 'proof.began':
      return {
        proof: { zone: event.zone, before: event.before, began: event.began ?? moment.time.mono, pairs: [] },
        provedBehind: { ...facts.provedBehind, [event.zone]: lockedNow(facts) },
        undoable: proofLast(facts, event.zone, moment),
      };
    case 'proof.pair':
      return proofPair(facts, event);
    case 'proof.reopened':
      return proofReopened(facts, event);
    case 'proof.refused':
      return { undoable: [...facts.undoable, { kind: 'proof', zone: event.zone, seq: moment.seq }] };
    case 'proof.withdrawn': {
      const others = facts.undoable.filter((one) => one.kind !== 'proof' || one.zone !== event.zone);
      // A correction is what is taken back next, and there is nothing to bring back.
      return { undoable: event.corrected === true ? [...others, { kind: 'refused' }] : others };
    }
    case 'proof.recorded':
      return {
        proof: undefined,
        undoable: proofLast(facts, event.zone, moment),
      };
    case 'charge.released':
      return { discharged: [...new Set([...facts.discharged, event.zone])] };
    case 'charge.doubted':
      return { discharged: facts.discharged.filter((zone) => !event.zones.includes(zone)) };
    case 'search.began':
      return { search: { ...moment, zone: event.zone, at: event.at } };
    case 'search.ended':
      return { search: undefined };
    case 'caution.spoken':
      // What belongs to no cabinet is told once it was heard.
      return event.late !== undefined || event.zone === undefined
        ? { saidLate: [...new Set([...facts.saidLate, cautionKey(event.caution, event.zone ?? 'none')])] }
        : NOTHING;
    case 'caution.acknowledged':
      return {
        acknowledged: [
          ...toldSinceLeft(facts.acknowledged, event.zone ?? 'none'),
          cautionKey(event.caution, event.zone ?? 'none'),
        ],
        saidLate: toldSinceLeft(facts.saidLate, event.zone ?? 'none'),
      };
    case 'step.parked':
      return stepParked(facts, event);
    case 'steps.settled':
      return {
        // Covers back on: who opens them again is told again.
        ...(event.steps.includes('energy.covers-on')
          ? { acknowledged: toldAnew(facts.acknowledged, 'outdoor-load') }
          : {}),
        settled: [...new Set([...facts.settled, ...event.steps])],
        passedBy: facts.passedBy.filter((id) => !event.steps.includes(id)),
      };
    case 'steps.reopened':
      return { settled: facts.settled.filter((id) => !event.steps.includes(id)) };
    case 'suspects.ranked':
      return facts.answer?.forSeq === event.forSeq ? { assessment: facts.answer } : NOTHING;
    case 'finding.stated':
      return {
        finding: {
          fault: event.fault,
          probability: event.probability,
          evidence: event.evidence,
          ...(event.unproved ? { unproved: event.unproved } : {}),
        },
      };
    case 'part.fitted': {
      const number = event.number ?? facts.readingCount + 1;
      const { part, ratings, repairs, words = part, doubts = [] } = event;
      const line = { ...moment, number, part, ratings, repairs, words, doubts };
      return {
        ...counted(facts, number, 'part'),
        parts: [...facts.parts, line],
        refusedParts: facts.refusedParts.filter((one) => one.part !== part),
        ...(part === 'hard-start' ? { startCapacitor: true } : {}),
      };
    }
    case 'part.doubted':
      if (event.words !== undefined) {
        const others = facts.refusedParts.filter(({ part }) => part !== event.part);
        return { refusedParts: [...others, { ...moment, part: event.part, words: event.words }] };
      }
      return {
        parts: facts.parts.map((line) =>
          line.number === event.number && event.weight === 'refuse'
            ? { ...line, doubts: [...line.doubts, event.why] }
            : line,
        ),
      };
    case 'part.withdrawn':
      return partWithdrawn(facts, event.part, event.number);
    case 'work.done': {
      const number = event.number ?? facts.readingCount + 1;
      const { work, repairs, words = work } = event;
      return {
        ...counted(facts, number, 'work'),
        works: [...facts.works, { ...moment, number, work, repairs, words }],
      };
    }
    case 'work.withdrawn': {
      const number = event.number ?? facts.works.findLast(({ work }) => work === event.work)?.number;
      return {
        ...uncounted(facts, ({ kind, ...one }) => kind === 'work' && 'number' in one && one.number === number),
        works: facts.works.filter((line) => line.number !== number),
        unproven: withoutCause(
          facts,
          facts.works.find((line) => line.number === number),
        ),
      };
    }
    case 'wire.moved':
      return {
        wires: [...facts.wires, { ...moment, wire: event.wire }],
        ...([event.wire.from, event.wire.to].some(isStartCapacitor) ? { startCapacitor: true } : {}),
        undoable: [...facts.undoable, { kind: 'wire' }],
      };
    case 'wire.withdrawn':
      return {
        wires: facts.wires.slice(0, -1),
        undoable: withoutLast(facts.undoable, ({ kind }) => kind === 'wire'),
        unproven: withoutCause(facts, facts.wires.at(-1)),
      };
    case 'refrigerant.told':
      return { undoable: [...facts.undoable, { kind: 'refrigerant', number: event.number }] };
    case 'refrigerant.untold':
      return {
        undoable: withoutLast(facts.undoable, (one) => one.kind === 'refrigerant' && one.number === event.number),
      };
    case 'circuit.early': {
      const { how, lacks, number } = event;
      const line = { ...moment, how, lacks, ...(number === undefined ? {} : { number }) };
      return { earlyStarts: [...facts.earlyStarts, line] };
    }
    case 'flammable.told':
      return { flammableTold: [...new Set([...facts.flammableTold, event.caution])] };
    case 'deed.reported': {
      const { deed, steps } = event;
      return {
        deeds: [...facts.deeds, { ...moment, deed, ...(steps === undefined ? {} : { steps }) }],
        undoable: [...facts.undoable, { kind: 'deed' }],
      };
    }
    case 'deed.withdrawn':
      return {
        deeds: facts.deeds.slice(0, -1),
        undoable: withoutLast(facts.undoable, ({ kind }) => kind === 'deed'),
        unproven: withoutCause(facts, facts.deeds.at(-1)),
      };
    case 'work.unproven':
      return workUnproven(facts, event, moment);
    case 'unproven.withdrawn':
      return {
        ...withoutRefused(facts, event.cause),
        unproven: facts.unproven.filter(({ cause }) => cause !== event.cause),
        undoable: withoutLast(facts.undoable, (one) => one.kind === 'unproven' && one.cause === event.cause),
      };
    case 'item.reported':
      return {
        items: [
          ...facts.items,
          { ...moment, item: event.item, ...(event.said === undefined ? {} : { said: event.said }) },
        ],
        undoable: [...facts.undoable, { kind: 'item', item: event.item }],
      };
    case 'item.withdrawn':
      return {
        items: withoutLast(facts.items, ({ item }) => item === event.item),
        undoable: withoutLast(facts.undoable, (one) => one.kind === 'item' && one.item === event.item),
      };
    case 'recommendation.made':
      return {
        recommendations: [...facts.recommendations, { ...moment, text: event.text, ...dictationOf(event) }],
        undoable: [...facts.undoable, { kind: 'recommendation', text: event.text }],
      };
    case 'recommendation.withdrawn':
      return {
        recommendations: withoutLast(facts.recommendations, ({ text }) => text === event.text),
        undoable: withoutLast(facts.undoable, (one) => one.kind === 'recommendation' && one.text === event.text),
      };
    case 'note.taken': {
      const from = event.from === undefined ? {} : { from: event.from };
      const about = event.about === undefined ? {} : { about: event.about };
      return { notes: [...facts.notes, { ...moment, text: event.text, ...from, ...about, ...dictationOf(event) }] };
    }
    case 'dictation.written':
      return dictationWritten(facts, event);
    case 'visit.signed': {
      const others = facts.signatures.filter(({ who }) => who !== event.who);
      const { who, name } = event;
      return { signatures: [...others, { ...moment, who, name, text: name, ...dictationOf(event) }] };
    }
    case 'check.set':
      return { check: { minutes: event.minutes, every: event.every, asked: 0, due: due(moment, event.minutes) } };
    case 'check.asked':
      return check(facts, { asked: event.times, due: due(moment, CHECK_AGAIN_MINUTES) });
    case 'check.answered':
      return check(facts, { asked: 0, due: due(moment, facts.check?.minutes ?? 0) });
    case 'check.hastened':
      return check(facts, { due: due(moment, CHECK_AGAIN_MINUTES) });
    case 'check.ended':
      return { check: undefined };
    case 'units.chosen':
      return { units: readUnitChoice(event.units) };
    case 'talk.changed':
      return { pace: event.pace };
    case 'prompt.said':
      return { promptCount: facts.promptCount + 1, lastPrompt: { id: event.id, text: event.text } };
    case 'visit.held':
      return { held: true, supervisor: undefined };
    case 'visit.resumed':
      return { held: false, hurt: false };
    case 'injury.reported':
      return { hurt: true };
    case 'hazard.warned':
      return event.danger === undefined
        ? NOTHING
        : { dangersTold: [...facts.dangersTold, { ...moment, danger: event.danger }] };
    case 'close.refused':
      return { closeRefused: event.why };
    case 'close.overridden':
      return { closeRefused: [] };
    case 'reading.refused':
      return readingRefused(facts, event, moment);
    case 'refusal.withdrawn':
      return {
        undoable: withoutLast(facts.undoable, ({ kind }) => kind === 'refused'),
        refusedReadings: facts.refusedReadings.slice(0, -1),
      };
    case 'visit.closed':
    case 'reading.asked':
    case 'step.asked':
    case 'contradiction.noticed':
    case 'landing.doubted':
    case 'split.judged':
    case 'charge.judged':
    case 'refrigerant.judged':
    case 'remark.made':
    case 'photo.taken':
    case 'check.unanswered':
    case 'edge.interrupted':
      return NOTHING;
    default:
      // An event of a later version says nothing here.
      event satisfies never;
      return NOTHING;
  }
}

/** The words of a dictation are those that were written over it; of a signature they are its name. */
function dictationWritten(facts: VisitFacts, { of, text }: Of<'dictation.written'>): Change {
  const over = <L extends DictatedLine>(line: L): L => (line.seq === of ? writtenOver(line, text) : line);
  return {
    notes: facts.notes.map(over),
    recommendations: facts.recommendations.map(over),
    signatures: facts.signatures.map((line) => (line.seq === of ? { ...over(line), name: text } : line)),
  };
}

/** Without an answer the check is put again after so many minutes. Our choice. */
export const CHECK_AGAIN_MINUTES = 1;

function due({ time }: Moment, minutes: number): number {
  return time.mono + minutes * MS_A_MINUTE;
}

function check(facts: VisitFacts, change: Partial<NonNullable<VisitFacts['check']>>): Change {
  return facts.check === undefined ? NOTHING : { check: { ...facts.check, ...change } };
}

/** A lock is recorded until its own switch comes back or it was said to be off, whatever else is no longer believed. */
function lockedAfter({ lockedBy }: VisitFacts, event: Of<'switch.reported'>): VisitFacts['lockedBy'] {
  const { place, state, device, lockOff } = event;
  const { [place]: before, ...others } = lockedBy;
  if (state === 'locked') return { ...others, [place]: before ?? device ?? USUAL_SWITCH[place] };
  // Pulling what is locked takes no lock off.
  const isOff = lockOff === true && (device === undefined || before === device);
  if (state !== 'closed') return isOff ? others : lockedBy;
  return before === (device ?? before) ? others : lockedBy;
}

/** What was read of the field before stands again, and the unit is what the rest of its plate says. */
function plateWithdrawn(facts: VisitFacts, field: string): Change {
  const isIt = (one: Undoable) => one.kind === 'plate' && one.field === field;
  const last = facts.undoable.findLast(isIt);
  const { [field]: _read, ...others } = facts.plate;
  const before = last?.kind === 'plate' ? last.before : undefined;
  const plate = before === undefined ? others : { ...others, [field]: before };
  return { plate, unit: withNameplate(facts.listed, plate), ...uncounted(facts, isIt) };
}

/** What is told of the switches now. */
function switchesOf({
  isolation,
  lockedBy,
  toldOpen,
}: VisitFacts): Pick<VisitFacts, 'isolation' | 'lockedBy' | 'toldOpen'> {
  return { isolation, lockedBy, toldOpen };
}

/** What was told of it before stands again; that it had been closed is not believed for that. */
function switchWithdrawn(facts: VisitFacts, place: IsolationPlace): Change {
  const isIt = (one: Undoable) => one.kind === 'switch' && one.place === place;
  const last = facts.undoable.findLast(isIt);
  const before = last?.kind === 'switch' ? last.before : switchesOf(facts);
  const state = before.isolation[place] === 'closed' ? 'unknown' : before.isolation[place];
  return {
    lockedBy: before.lockedBy,
    toldOpen: before.toldOpen,
    isolation: { ...facts.isolation, [place]: state },
    undoable: withoutLast(facts.undoable, isIt),
    ...(place === 'panel' && facts.isolation.panel === 'closed'
      ? { breakerClosed: facts.breakerClosed.slice(0, -1) }
      : {}),
  };
}

/** Another switch of a place that was closed leaves the locked one open. */
function toldOpenAfter(facts: VisitFacts, event: Of<'switch.reported'>): VisitFacts['toldOpen'] {
  const { place, state } = event;
  const { toldOpen } = facts;
  const others = toldOpen.filter((one) => one !== place);
  if (state === 'closed') return lockedAfter(facts, event)[place] === undefined ? others : toldOpen;
  return state === 'unknown' ? toldOpen : [...others, place];
}

const USUAL_SWITCH = { outdoor: 'disconnect', panel: 'breaker', 'air-handler': 'service-switch' } as const;

/** A reading, look or repair takes the next number, may be taken back, and is new evidence. */
function counted(facts: VisitFacts, number: number, kind: 'reading' | 'observation' | 'part' | 'work'): Change {
  return {
    readingCount: number,
    evidenceNumber: facts.evidenceNumber + 1,
    undoable: [...facts.undoable, { kind, number }],
  };
}

function uncounted(facts: VisitFacts, isIt: (one: Undoable) => boolean): Change {
  return { evidenceNumber: facts.evidenceNumber + 1, undoable: withoutLast(facts.undoable, isIt) };
}

function withoutLast<T>(list: readonly T[], isIt: (one: T) => boolean): readonly T[] {
  const at = list.findLastIndex(isIt);
  return at < 0 ? list : list.toSpliced(at, 1);
}

function changed(
  lines: readonly ReadingLine[],
  number: number,
  change: (line: ReadingLine) => ReadingLine,
): readonly ReadingLine[] {
  return lines.map((line) => (line.number === number ? change(line) : line));
}

function readingLogged(facts: VisitFacts, event: Of<'reading.logged'>, moment: Moment): Change {
  const { number, reading, under, confirmed, test } = event;
  const line = {
    ...moment,
    number,
    reading,
    under,
    corrected: [],
    withdrawn: false,
    ...(test === undefined ? {} : { test }),
    ...(confirmed === true ? { confirmed } : {}),
  };
  return {
    ...counted(facts, number, 'reading'),
    readings: [...facts.readings, line],
    ...(reading.at.some(isStartCapacitor) ? { startCapacitor: true } : {}),
  };
}

/** Once named it is there: what was said of it may be taken back, that somebody saw one not. */
function isStartCapacitor(point: string | undefined): boolean {
  return point?.startsWith('start-cap-') === true;
}

function readingCorrected(facts: VisitFacts, event: Of<'reading.corrected'>): Change {
  return {
    evidenceNumber: facts.evidenceNumber + 1,
    readings: changed(facts.readings, event.number, (line) => {
      const { judged: _past, confirmed: _asked, ...rest } = line;
      return {
        ...rest,
        reading: event.to,
        ...(event.under === undefined ? {} : { under: event.under }),
        corrected: [...line.corrected, event.from],
      };
    }),
  };
}

/** In records of earlier versions an observation is taken back under the same name. */
function readingWithdrawn(facts: VisitFacts, number: number): Change {
  if (!facts.readings.some((line) => line.number === number)) return observationWithdrawn(facts, number);
  return {
    ...uncounted(facts, (one) => one.kind === 'reading' && one.number === number),
    readings: changed(facts.readings, number, (line) => ({ ...line, withdrawn: true })),
    earlyStarts: facts.earlyStarts.filter((line) => line.number !== number),
  };
}

function observationWithdrawn(facts: VisitFacts, number: number): Change {
  return {
    ...uncounted(facts, (one) => one.kind === 'observation' && one.number === number),
    observations: facts.observations.filter((line) => line.number !== number),
    earlyStarts: facts.earlyStarts.filter((line) => line.number !== number),
  };
}

function partWithdrawn(facts: VisitFacts, part: FittedPartId, named: number | undefined): Change {
  const number = named ?? facts.parts.findLast((line) => line.part === part)?.number;
  return {
    ...uncounted(facts, (one) => one.kind === 'part' && one.number === number),
    parts: facts.parts.filter((line) => line.number !== number),
    unproven: withoutCause(
      facts,
      facts.parts.find((line) => line.number === number),
    ),
  };
}

function lockedNow({ isolation }: VisitFacts): readonly IsolationPlace[] {
  return ISOLATION_PLACES.filter((place) => isolation[place] === 'locked');
}

function readingRefused(facts: VisitFacts, { reading, reason }: Of<'reading.refused'>, moment: Moment): Change {
  const isLive = reason === 'not-proven-dead' || reason === 'not-answered';
  return {
    ...(isLive ? { refusedReadings: [...facts.refusedReadings, { ...moment, reading }] } : {}),
    ...(REFUSED_ALOUD.includes(reason) ? { undoable: [...facts.undoable, { kind: 'refused' }] } : {}),
  };
}

/** Hands were not there after all: what was refused with that was not read, and not fitted. */
function withoutRefused({ unproven, refusedReadings, refusedParts }: VisitFacts, cause: number): Change {
  const what = unproven.find((line) => line.cause === cause)?.what;
  return {
    refusedReadings: refusedReadings.filter(({ seq }) => seq !== cause),
    refusedParts: refusedParts.filter(({ words }) => words !== what),
  };
}

/** Taken back before anybody answered: that part was not fitted. */
function refusalTakenBack({ questions, refusedParts }: VisitFacts, number: number): Change {
  const question = questions.find((one) => one.number === number)?.question;
  if (question?.kind !== 'confirm-meaning' || question.meaning.kind !== 'part') return NOTHING;
  const { part } = question.meaning;
  return { refusedParts: refusedParts.filter((one) => one.part !== part) };
}

function workUnproven(facts: VisitFacts, event: Of<'work.unproven'>, moment: Moment): Change {
  const { what, zone, state, cause, alone } = event;
  const known = facts.undoable.some((one) => one.kind === 'unproven' && one.cause === cause);
  return {
    unproven: [...facts.unproven, { ...moment, what, zone, state, cause }],
    ...(alone === true && !known ? { undoable: [...facts.undoable, { kind: 'unproven', cause }] } : {}),
  };
}

/** What was told is taken back: hands were not there either. */
function withoutCause({ unproven }: VisitFacts, told: Moment | undefined): VisitFacts['unproven'] {
  return unproven.filter(({ cause }) => cause !== told?.seq);
}

/** A proof is one thing to take back, however many numbers it has. */
function proofLast({ undoable }: VisitFacts, zone: Of<'proof.began'>['zone'], { seq }: Moment): readonly Undoable[] {
  return [...undoable.filter((one) => one.kind !== 'proof' || one.zone !== zone), { kind: 'proof', zone, seq }];
}

function proofPair({ proof }: VisitFacts, { zone, at, value }: Of<'proof.pair'>): Change {
  if (proof?.zone !== zone) return NOTHING;
  const others = proof.pairs.filter((pair) => !samePlaces(pair.at, at));
  return { proof: { ...proof, pairs: [...others, { at, value }] } };
}

function proofReopened({ proof }: VisitFacts, { zone, at }: Of<'proof.reopened'>): Change {
  if (proof?.zone !== zone) return NOTHING;
  if (at === undefined) return { proof: undefined };
  return { proof: { ...proof, pairs: proof.pairs.filter((pair) => !samePlaces(pair.at, at)) } };
}

function stepParked(facts: VisitFacts, { step, test, why, optional, words }: Of<'step.parked'>): Change {
  if (optional === true) {
    return { settled: [...facts.settled, step], passedBy: [...facts.passedBy, step] };
  }
  return {
    parked: [
      ...facts.parked,
      {
        step,
        why,
        since: evidenceSeen(facts),
        ...(test === undefined ? {} : { test }),
        ...(words === undefined ? {} : { words }),
      },
    ],
  };
}

/** What whoever reckons with the plate takes: its number in the unit of the field, whichever it was said in. */
function plateFact(id: string, value: number | string, unit: string | undefined): number | string {
  const fields: Readonly<Record<string, NameplateField | undefined>> = NAMEPLATE_FIELDS_BY_ID;
  const field = fields[id];
  return field === undefined || typeof value !== 'number' ? value : inUnitOfField(field, value, codeOf(unit));
}

const codeOf = (unit: string | undefined): UnitCode | undefined => UNITS.find(({ code }) => code === unit)?.code;
