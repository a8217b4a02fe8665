import type { DictatedLine } from '../visit/dictated.ts';
import type { Deed, Judged, VisitEvent } from '../visit/events.ts';
import type { Moment, ReadingLine, VisitFacts } from '../visit/facts.ts';
import { type FoldedVisit, foldVisit } from '../visit/fold-visit.ts';
import { UNREADABLE } from '../visit/read-bodies.ts';
import { JOB_ITEMS_BY_ID } from '../vocabulary/job-items.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import { OBSERVATIONS_BY_ID } from '../vocabulary/observations.ts';
import { nameIn } from '../vocabulary/rows-by.ts';
import { isUsualChoice } from '../vocabulary/unit-choice.ts';
import { WORKS_BY_ID } from '../vocabulary/works.ts';
import type { VisitRecord } from './visit-record-schema.ts';

type Json<K extends keyof VisitRecord> = VisitRecord[K];

/** What the document leaves to the record itself: the talk, and what the next technician needs not. */
type LeftOut =
  | 'heard'
  | 'touched'
  | 'said'
  | 'asked'
  | 'suspects'
  | 'steps'
  | 'interruptions'
  /** They stay beside the record, as sounds do. */
  | 'photos'
  | 'first'
  | 'last'
  /** As what could not be read. */
  | 'unknown'
  | 'damaged'
  /** The state of a moment, which the events tell. */
  | Exclude<keyof VisitFacts, keyof VisitRecord>;
/** A field of the view that stands neither in the document nor among those makes this a type that nothing has. */
type Whole = { readonly [K in Exclude<keyof FoldedVisit, keyof VisitRecord | LeftOut>]: never };

/**
 * The whole visit as one document, by a pure fold over its events: nothing is judged or computed anew. It holds no
 * sound and no transcript; those stay in the record itself.
 *
 * @throws {RangeError} for no events at all: a visit has at least its opening
 */
export function toVisitRecord(events: readonly VisitEvent[]): VisitRecord & Whole {
  const view = foldVisit(events);
  if (view.first === undefined || view.last === undefined) throw new RangeError('a record holds at least one event');
  const entryOf = entriesOf(events);
  return {
    format: 'readback-visit',
    version: 1,
    visit: view.visit,
    site: view.site,
    complaint: view.complaint,
    role: view.role,
    software: view.software,
    ...(view.zone === undefined ? {} : { zone: view.zone }),
    ...(isUsualChoice(view.units) ? {} : { units: view.units }),
    unit: { ...view.unit },
    opened: view.first.time.at,
    lastEvent: view.last.time.at,
    events: events.length,
    phase: view.phase,
    phases: view.phases.map((line) => ({ ...at(line), phase: line.phase })),
    focuses: view.focuses.map((line) => ({ ...at(line), focus: line.focus })),
    items: view.items.map((line) => ({
      ...at(line),
      item: line.item,
      words: nameIn(JOB_ITEMS_BY_ID, line.item),
      ...(line.said === undefined ? {} : { said: line.said }),
    })),
    nameplate: view.nameplate.map((line) => ({
      ...at(line),
      field: line.field,
      value: line.value,
      ...(line.unit === undefined ? {} : { unit: line.unit }),
    })),
    readings: view.readings.map((line) => readingOf(line, entryOf(line))),
    contradictions: view.contradictions.map((line) => ({ ...at(line), numbers: [...line.numbers] })),
    refused: [...view.refused, ...askedBack(view)]
      .sort((a, b) => a.seq - b.seq)
      .map((line) => ({ ...at(line), reading: measured(line.reading), reason: line.reason })),
    observations: view.observations.map((line) => ({
      ...at(line),
      observation: line.observation,
      words: nameIn(OBSERVATIONS_BY_ID, line.observation),
    })),
    energy: { ...view.energy },
    energyChanges: view.energyChanges.map(({ seq: _seq, time, ...line }) => ({ at: time.at, ...line })),
    switches: view.switches.map(({ seq: _seq, time, ...line }) => ({ at: time.at, ...line })),
    proofs: view.proofs.map(({ seq: _seq, time, at: places, values, result, ...line }) => ({
      at: time.at,
      ...line,
      values: [...values],
      ...(places === undefined ? {} : { places: places.map((pair) => [...pair]) }),
      result: result as Json<'proofs'>[number]['result'],
    })),
    cautions: view.cautions.map(({ seq: _seq, time, acknowledgedAt, ...line }) => ({
      at: time.at,
      ...line,
      ...(acknowledgedAt === undefined ? {} : { acknowledged: acknowledgedAt.time.at }),
    })),
    warnings: view.warnings.map((line) => ({ ...at(line), words: line.words })),
    ...(view.finding === undefined ? {} : { finding: findingOf(view.finding) }),
    parts: view.parts.map((line) => ({
      ...at(line),
      part: line.part,
      ratings: { ...line.ratings },
      repairs: [...line.repairs],
      doubts: [...line.doubts],
    })),
    refusedParts: view.refusedParts.map((line) => ({ ...at(line), part: line.part, words: line.words })),
    works: view.works.map((line) => ({
      ...at(line),
      work: line.work,
      words: nameIn(WORKS_BY_ID, line.work),
      repairs: [...line.repairs],
    })),
    wires: view.wires.map((line) => ({ ...at(line), ...line.wire })),
    deeds: view.deeds.map((line) => ({ ...at(line), ...deedOf(line.deed) })),
    unproven: view.unproven.map(({ what, zone, state, ...line }) => ({ ...at(line), what, zone, state })),
    notes: view.notes.map((line) => ({
      ...dictatedOf(line),
      ...(line.from === undefined ? {} : { from: line.from }),
      ...(line.about === undefined ? {} : { about: line.about }),
    })),
    recommendations: view.recommendations.map(dictatedOf),
    signatures: view.signatures.map((line) => {
      const { text: _text, ...dictated } = dictatedOf(line);
      return { ...dictated, who: line.who, name: line.name };
    }),
    refrigerant: view.refrigerant.map(({ seq: _seq, time, judged, ...line }) => ({
      at: time.at,
      ...line,
      judged: judgedOf(judged),
    })),
    ...(view.split === undefined ? {} : { split: splitOf(view.split) }),
    charge: view.charge.map(({ seq: _seq, time, judged, readings, ...line }) => ({
      at: time.at,
      ...line,
      readings: [...readings],
      ...(judged === undefined ? {} : { judged: judgedOf(judged) }),
    })),
    acknowledgements: view.acknowledgements.map(({ seq: _seq, time, ...line }) => ({ at: time.at, ...line })),
    takeOvers: view.takeOvers.map(({ seq: _seq, time, from, ...line }) => ({
      at: time.at,
      ...line,
      from: { ...from },
    })),
    waited: view.waited.map((line) => ({ ...at(line), words: line.words })),
    remarks: view.remarks.map((line) => ({
      ...at(line),
      author: line.author,
      text: line.text,
      ...(line.from === undefined ? {} : { from: line.from }),
    })),
    injuries: view.injuries.map(at),
    unanswered: view.unanswered.map((line) => ({ ...at(line), times: line.times })),
    overrides: view.overrides.map((line) => ({ ...at(line), why: [...line.why], reason: line.reason })),
    notRead: notReadOf(view, entryOf),
    ...(view.summary === undefined
      ? {}
      : {
          summary: {
            ...view.summary,
            technical: [...view.summary.technical],
            openItems: [...view.summary.openItems],
          },
        }),
  };
}

/**
 * Which entry of the technician's own record an event is: remarks that came from other devices have no number in it,
 * and are known by no input having come before them.
 */
function entriesOf(events: readonly VisitEvent[]): (moment: Moment) => number {
  let others = 0;
  let isOwn = false;
  const entries = events.map((event, at) => {
    if (event.type === 'input.taken') isOwn = event.input?.type === 'remarked.visit';
    else if (event.type === 'remark.made') {
      if (!isOwn) others += 1;
      isOwn = false;
    }
    return at + 1 - others;
  });
  return ({ seq }) => entries[seq - 1] ?? seq;
}

/** What could not be read, and what only a later version could, in the order of the record. */
function notReadOf(view: FoldedVisit, entryOf: (moment: Moment) => number): Json<'notRead'> {
  const unknown = view.unknown.map((line) => ({
    line,
    what: line.type === UNREADABLE ? { why: 'unreadable' as const } : { why: 'unknown kind' as const, type: line.type },
  }));
  const damaged = view.damaged.map((line) => ({ line, what: { why: 'damaged' as const, type: line.type } }));
  return [...unknown, ...damaged]
    .sort((a, b) => a.line.seq - b.line.seq)
    .map(({ line, what }) => ({ ...at(line), entry: entryOf(line), ...what }));
}

/** What was heard as a reading, asked back, and not said again: no event but the hearing tells of it. */
function askedBack({ heard, readings, refused, asked }: FoldedVisit) {
  const answered = [...readings, ...refused, ...asked];
  return heard.flatMap((line) => {
    const { verdict, meaning } = line.understanding;
    if (!line.accepted || verdict !== 'asked' || meaning.kind !== 'reading') return [];
    const place = placeOf(meaning.reading);
    if (answered.some(({ seq, reading }) => seq > line.seq && placeOf(reading) === place)) return [];
    return [{ seq: line.seq, time: line.time, reading: meaning.reading, reason: 'asked-back' }];
  });
}

const placeOf = ({ quantity, at }: Reading) => `${quantity} ${at.join(' ')}`;

function splitOf({ time, split, minutes, word, band, source }: NonNullable<FoldedVisit['split']>) {
  return { at: time.at, value: split, minutes, word, ...band, source };
}

const at = (moment: Moment): { at: string } => ({ at: moment.time.at });

function deedOf(deed: Deed): Omit<Json<'deeds'>[number], 'at'> {
  switch (deed.type) {
    case 'part-moved':
      return { deed: deed.type, of: deed.part, to: deed.to };
    case 'cover':
      return { deed: deed.type, of: deed.cover, to: deed.state };
    case 'deed':
      return { deed: deed.type, of: deed.deed };
  }
}

function measured({ quantity, at: places, value, unit, bench }: Reading): Json<'readings'>[number]['reading'] {
  return { quantity, at: [...places], value, unit, ...(bench === true ? { bench: true as const } : {}) };
}

function judgedOf({ word, rule, band, source, tag }: Judged): NonNullable<Json<'readings'>[number]['judged']> {
  return { word, rule, ...band, source, tag };
}

function readingOf(line: ReadingLine, entry: number): Json<'readings'>[number] {
  const { judged, under } = line;
  return {
    number: line.number,
    entry,
    ...at(line),
    reading: measured(line.reading),
    power: under.power,
    call: under.call,
    phase: under.phase,
    ...(judged === undefined ? {} : { judged: judgedOf(judged) }),
    corrected: line.corrected.map(measured),
    withdrawn: line.withdrawn,
  };
}

/** A dictation: its words, those that they were written over, and the sound that was kept of it. */
function dictatedOf({ text, heard, guessed, sound, ...line }: DictatedLine) {
  return {
    ...at(line),
    text,
    ...(heard === undefined ? {} : { heard }),
    ...(guessed === undefined ? {} : { guessed }),
    ...(sound === undefined ? {} : { sound: { ...sound } }),
  };
}

/** Lists of its own: a record shares nothing with the view that it was made of. */
function findingOf({ unproved, ...finding }: NonNullable<FoldedVisit['finding']>) {
  const evidence = [...finding.evidence];
  return { ...finding, evidence, ...(unproved === undefined ? {} : { unproved: [...unproved] }) };
}
