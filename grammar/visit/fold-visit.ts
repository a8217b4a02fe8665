import type { Understanding } from '../phrases/meaning.ts';
import type { FaultId } from '../vocabulary/faults.ts';
import type { JobItemId } from '../vocabulary/job-items.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { UnitProfile } from '../vocabulary/unit-profile.ts';
import type { WorkId } from '../vocabulary/works.ts';
import { type EnergyState, ZONES, type ZoneId } from '../vocabulary/zones.ts';
import type { Focus, Judged, Phase, TakenUnder, VisitEvent, VisitOutcome, VisitSummary, WireMove } from './events.ts';
import type { InputTime, VisitInput } from './inputs.ts';
import { inTodaysNames } from './older-events.ts';

/** Where in the record something stands: the number of its event, and the time it claims. */
export interface Moment {
  readonly seq: number;
  readonly time: InputTime;
}

export interface HeardLine extends Moment {
  readonly text: string;
  readonly understanding: Understanding;
  readonly accepted: boolean;
  readonly confidence: number;
  readonly ear: string;
}

export interface SaidLine extends Moment {
  readonly kind: string;
  readonly text: string;
}

export interface ReadingLine extends Moment {
  readonly number: number;
  readonly reading: Reading;
  readonly under: TakenUnder;
  readonly judged?: Judged;
  /** Values this reading had before it was set right, the oldest first. */
  readonly corrected: readonly Reading[];
  readonly withdrawn: boolean;
}

/** A visit as read from its record; every screen, print and export shows this and nothing else. */
export interface FoldedVisit {
  readonly visit: string;
  readonly site: string;
  readonly complaint: string;
  readonly role: 'technician' | 'trainee';
  readonly unit: UnitProfile;
  readonly software: string;
  readonly phase: Phase;
  readonly held: boolean;
  readonly first?: Moment;
  readonly last?: Moment;
  readonly heard: readonly HeardLine[];
  readonly said: readonly SaidLine[];
  readonly readings: readonly ReadingLine[];
  readonly refused: readonly (Moment & { readonly reading: Reading; readonly reason: string })[];
  readonly asked: readonly (Moment & { readonly reading: Reading; readonly why: string; readonly twin?: number })[];
  readonly observations: readonly (Moment & { readonly observation: ObservationId })[];
  readonly nameplate: readonly (Moment & {
    readonly field: string;
    readonly value: number | string;
    readonly unit?: string;
  })[];
  readonly energy: Readonly<Record<ZoneId, EnergyState>>;
  readonly energyChanges: readonly (Moment & {
    readonly zone: ZoneId;
    readonly from: EnergyState;
    readonly to: EnergyState;
    readonly why: string;
  })[];
  readonly proofs: readonly (Moment & {
    readonly zone: ZoneId;
    readonly before: number;
    readonly values: readonly number[];
    readonly after: number;
    readonly result: string;
  })[];
  readonly cautions: readonly (Moment & {
    readonly caution: string;
    readonly words: string;
    readonly source: string;
    readonly zone?: ZoneId;
    readonly late: boolean;
    readonly acknowledgedAt?: Moment;
  })[];
  readonly suspects: readonly (Moment & {
    readonly version: string;
    readonly suspects: readonly { readonly fault: FaultId; readonly probability: number }[];
  })[];
  readonly steps: readonly (Moment & { readonly step: string; readonly words: string })[];
  readonly phases: readonly (Moment & { readonly phase: Phase })[];
  readonly finding?: { readonly fault: FaultId; readonly probability: number; readonly evidence: readonly number[] };
  /** Mended without a part. */
  readonly works: readonly (Moment & { readonly work: WorkId; readonly repairs: readonly FaultId[] })[];
  readonly parts: readonly (Moment & {
    readonly part: string;
    readonly ratings: Readonly<Record<string, number | string>>;
    readonly repairs: readonly FaultId[];
  })[];
  readonly wires: readonly (Moment & { readonly wire: WireMove })[];
  readonly notes: readonly (Moment & { readonly text: string })[];
  /** What was reported of the job and not withdrawn, in order. */
  readonly items: readonly (Moment & { readonly item: JobItemId })[];
  readonly recommendations: readonly (Moment & { readonly text: string })[];
  readonly signatures: readonly (Moment & { readonly who: 'technician' | 'customer'; readonly name: string })[];
  /** The lone-worker check while one runs; `asked` counts how often it was put without an answer. */
  readonly check?: { readonly minutes: number; readonly every: boolean; readonly asked: number };
  readonly unanswered: readonly (Moment & { readonly times: number })[];
  readonly injuries: readonly Moment[];
  /** What was judged of an opened refrigerant circuit. */
  readonly refrigerant: readonly (Moment & Omit<Extract<VisitOutcome, { type: 'refrigerant.judged' }>, 'type'>)[];
  readonly remarks: readonly (Moment & { readonly author: string; readonly text: string })[];
  readonly focuses: readonly (Moment & { readonly focus: Focus })[];
  /** Closes that went through with something left, and the reason that was spoken. */
  readonly overrides: readonly (Moment & { readonly why: readonly string[]; readonly reason: string })[];
  readonly warnings: readonly (Moment & { readonly words: string })[];
  readonly interruptions: readonly (Moment & { readonly sentence: string })[];
  readonly split?: Moment & { readonly split: number; readonly minutes: number; readonly word: string };
  /** Superheat, subcooling and condensing over ambient, before the repair and in its proof. */
  readonly charge: readonly (Moment & ChargeJudged)[];
  readonly summary?: VisitSummary;
  /** Event types this version does not know: shown as such, never dropped from the record. */
  readonly unknown: readonly (Moment & { readonly type: string })[];
}

type ChargeJudged = Omit<Extract<VisitOutcome, { type: 'charge.judged' }>, 'type'>;

type Mutable<T> = {
  -readonly [K in keyof T]: T[K] extends readonly (infer Item)[]
    ? Item[]
    : T[K] extends Readonly<Record<ZoneId, infer State>>
      ? Record<ZoneId, State>
      : T[K];
};

function emptyVisit(): Mutable<FoldedVisit> {
  return {
    visit: '',
    site: '',
    complaint: '',
    role: 'technician',
    unit: { id: 'unknown' },
    software: '',
    phase: 'arrive',
    held: false,
    heard: [],
    said: [],
    readings: [],
    refused: [],
    asked: [],
    observations: [],
    nameplate: [],
    energy: Object.fromEntries(ZONES.map((zone) => [zone, 'unknown'])) as Record<ZoneId, EnergyState>,
    energyChanges: [],
    proofs: [],
    cautions: [],
    suspects: [],
    steps: [],
    phases: [],
    works: [],
    parts: [],
    wires: [],
    charge: [],
    notes: [],
    items: [],
    recommendations: [],
    signatures: [],
    unanswered: [],
    injuries: [],
    refrigerant: [],
    remarks: [],
    focuses: [],
    overrides: [],
    warnings: [],
    interruptions: [],
    unknown: [],
  };
}

/**
 * Turns a record into a view: the one place where that is done. Nothing is judged, ranked or cautioned anew; what was
 * said that day is shown. `events[i]` is the event numbered `from + i`. Events of an unknown type are listed as unknown.
 */
export function foldVisit(events: readonly VisitEvent[], from = 1): FoldedVisit {
  const view = emptyVisit();
  events.forEach((recorded, index) => {
    const event = inTodaysNames(recorded);
    const time = event.type === 'input.taken' ? event.input.time : event.time;
    const moment: Moment = { seq: from + index, time };
    view.first ??= moment;
    view.last = moment;
    foldEvent(view, event, moment);
  });
  return view;
}

function foldEvent(view: Mutable<FoldedVisit>, event: VisitEvent, moment: Moment): void {
  switch (event.type) {
    case 'input.taken':
      return foldInput(view, event.input, moment);
    case 'visit.opened':
      view.visit = event.visit;
      view.site = event.site;
      view.complaint = event.complaint;
      view.role = event.role;
      view.unit = event.unit;
      view.software = event.software;
      return;
    case 'phase.entered':
      view.phase = event.phase;
      view.phases.push({ ...moment, phase: event.phase });
      return;
    case 'reading.logged':
    case 'reading.judged':
    case 'reading.corrected':
    case 'reading.withdrawn':
      return foldReading(view, event, moment);
    case 'reading.asked':
      view.asked.push({
        ...moment,
        reading: event.reading,
        why: event.why,
        ...(event.twin === undefined ? {} : { twin: event.twin }),
      });
      return;
    case 'reading.refused':
      view.refused.push({ ...moment, reading: event.reading, reason: event.reason });
      return;
    case 'observation.logged':
      view.observations.push({ ...moment, observation: event.observation });
      return;
    case 'nameplate.logged':
      view.nameplate.push({
        ...moment,
        field: event.field,
        value: event.value,
        ...(event.unit === undefined ? {} : { unit: event.unit }),
      });
      return;
    case 'energy.changed':
    case 'proof.recorded':
    case 'caution.spoken':
    case 'caution.acknowledged':
    case 'hazard.warned':
      return foldEnergy(view, event, moment);
    case 'step.asked':
      view.steps.push({ ...moment, step: event.step, words: event.words });
      return;
    case 'suspects.ranked':
      view.suspects.push({ ...moment, version: event.version, suspects: event.suspects });
      return;
    case 'finding.stated':
      view.finding = { fault: event.fault, probability: event.probability, evidence: event.evidence };
      return;
    case 'part.fitted':
      view.parts.push({ ...moment, part: event.part, ratings: event.ratings, repairs: event.repairs });
      return;
    case 'part.withdrawn': {
      const last = view.parts.findLastIndex((line) => line.part === event.part);
      if (last >= 0) view.parts.splice(last, 1);
      return;
    }
    case 'work.done':
      view.works.push({ ...moment, work: event.work, repairs: event.repairs });
      return;
    case 'work.withdrawn':
      view.works = view.works.filter((line) => line.work !== event.work);
      return;
    case 'wire.moved':
      view.wires.push({ ...moment, wire: event.wire });
      return;
    case 'note.taken':
      view.notes.push({ ...moment, text: event.text });
      return;
    case 'check.set':
    case 'check.asked':
    case 'check.answered':
    case 'check.unanswered':
    case 'check.ended':
      return foldCheck(view, event, moment);
    case 'remark.made':
      view.remarks.push({ ...moment, author: event.author, text: event.text });
      return;
    case 'injury.reported':
      view.injuries.push(moment);
      return;
    case 'item.reported':
    case 'item.withdrawn':
    case 'recommendation.made':
    case 'recommendation.withdrawn':
    case 'visit.signed':
      return foldJob(view, event, moment);
    case 'prompt.said':
      view.said.push({ ...moment, kind: event.kind, text: event.text });
      return;
    case 'visit.held':
    case 'visit.resumed':
      view.held = event.type === 'visit.held';
      return;
    case 'edge.interrupted':
      view.interruptions.push({ ...moment, sentence: event.sentence });
      return;
    case 'visit.closed':
      view.summary = event.summary;
      return;
    case 'split.judged':
      view.split = { ...moment, split: event.split, minutes: event.minutes, word: event.word };
      return;
    case 'refrigerant.judged':
      view.refrigerant.push({
        ...moment,
        check: event.check,
        value: event.value,
        minutes: event.minutes,
        judged: event.judged,
      });
      return;
    case 'charge.judged': {
      const { type: _type, time: _time, ...judged } = event;
      view.charge.push({ ...moment, ...judged });
      return;
    }
    case 'focus.moved':
      view.focuses.push({ ...moment, focus: event.focus });
      return;
    case 'close.overridden':
      view.overrides.push({ ...moment, why: event.why, reason: event.reason });
      return;
    case 'supervisor.acknowledged':
    case 'unit.gated':
    case 'step.parked':
    case 'contradiction.noticed':
    case 'part.doubted':
    case 'landing.doubted':
    case 'talk.changed':
    case 'close.refused':
      return;
    default: {
      const later: { readonly type: string } = event satisfies never;
      view.unknown.push({ ...moment, type: later.type });
    }
  }
}

type CheckEvent = Extract<
  VisitEvent,
  { type: 'check.set' | 'check.asked' | 'check.answered' | 'check.unanswered' | 'check.ended' }
>;

function foldCheck(view: Mutable<FoldedVisit>, event: CheckEvent, moment: Moment): void {
  switch (event.type) {
    case 'check.set':
      view.check = { minutes: event.minutes, every: event.every, asked: 0 };
      return;
    case 'check.unanswered':
      view.unanswered.push({ ...moment, times: event.times });
      return;
    case 'check.ended':
      delete view.check;
      return;
    case 'check.asked':
    case 'check.answered':
      if (view.check !== undefined)
        view.check = { ...view.check, asked: event.type === 'check.asked' ? event.times : 0 };
      return;
    default:
      event satisfies never;
  }
}

type JobEvent = Extract<
  VisitEvent,
  {
    type: 'item.reported' | 'item.withdrawn' | 'recommendation.made' | 'recommendation.withdrawn' | 'visit.signed';
  }
>;

function foldJob(view: Mutable<FoldedVisit>, event: JobEvent, moment: Moment): void {
  switch (event.type) {
    case 'item.reported':
      view.items.push({ ...moment, item: event.item });
      return;
    case 'item.withdrawn': {
      const last = view.items.findLastIndex((line) => line.item === event.item);
      if (last >= 0) view.items.splice(last, 1);
      return;
    }
    case 'recommendation.made':
      view.recommendations.push({ ...moment, text: event.text });
      return;
    case 'recommendation.withdrawn': {
      const last = view.recommendations.findLastIndex((line) => line.text === event.text);
      if (last >= 0) view.recommendations.splice(last, 1);
      return;
    }
    case 'visit.signed':
      view.signatures = [
        ...view.signatures.filter((line) => line.who !== event.who),
        { ...moment, who: event.who, name: event.name },
      ];
      return;
    default:
      event satisfies never;
  }
}

/** What was heard is shown as it was; of every other input only what came of it. */
function foldInput(view: Mutable<FoldedVisit>, input: VisitInput, moment: Moment): void {
  switch (input.type) {
    case 'heard.utterance': {
      const { understanding, accepted, confidence, ear } = input.utterance;
      view.heard.push({ ...moment, text: understanding.heard, understanding, accepted, confidence, ear });
      return;
    }
    case 'opened.visit':
    case 'touched.command':
    case 'mouth.finished':
    case 'diagnosis.answered':
    case 'timer.elapsed':
    case 'supervisor.acknowledged':
    case 'remarked.visit':
    case 'edge.failed':
      return;
    default:
      // An input of a later version: nothing is shown of it.
      input satisfies never;
  }
}

type ReadingEvent = Extract<
  VisitEvent,
  { type: 'reading.logged' | 'reading.judged' | 'reading.corrected' | 'reading.withdrawn' }
>;

function foldReading(view: Mutable<FoldedVisit>, event: ReadingEvent, moment: Moment): void {
  if (event.type === 'reading.logged') {
    view.readings.push({
      ...moment,
      number: event.number,
      reading: event.reading,
      under: event.under,
      corrected: [],
      withdrawn: false,
    });
    return;
  }
  const index = view.readings.findIndex((line) => line.number === event.number);
  const line = view.readings[index];
  if (line === undefined) return;
  switch (event.type) {
    case 'reading.judged':
      view.readings[index] = { ...line, judged: event.judged };
      return;
    case 'reading.corrected': {
      const { judged: _past, ...rest } = line;
      view.readings[index] = { ...rest, reading: event.to, corrected: [...line.corrected, event.from] };
      return;
    }
    case 'reading.withdrawn':
      view.readings[index] = { ...line, withdrawn: true };
      return;
    default:
      event satisfies never;
  }
}

type EnergyEvent = Extract<
  VisitEvent,
  { type: 'energy.changed' | 'proof.recorded' | 'caution.spoken' | 'caution.acknowledged' | 'hazard.warned' }
>;

function foldEnergy(view: Mutable<FoldedVisit>, event: EnergyEvent, moment: Moment): void {
  switch (event.type) {
    case 'energy.changed':
      view.energy[event.zone] = event.to;
      view.energyChanges.push({ ...moment, zone: event.zone, from: event.from, to: event.to, why: event.why });
      return;
    case 'proof.recorded':
      view.proofs.push({
        ...moment,
        zone: event.zone,
        before: event.before,
        values: event.values,
        after: event.after,
        result: event.result,
      });
      return;
    case 'hazard.warned':
      view.warnings.push({ ...moment, words: event.words });
      return;
    case 'caution.spoken': {
      const { caution, words, source, zone, late } = event;
      view.cautions.push({
        ...moment,
        caution,
        words,
        source,
        late: late === true,
        ...(zone === undefined ? {} : { zone }),
      });
      return;
    }
    case 'caution.acknowledged': {
      const index = view.cautions.findLastIndex((line) => line.caution === event.caution && line.zone === event.zone);
      const line = view.cautions[index];
      if (line !== undefined) view.cautions[index] = { ...line, acknowledgedAt: moment };
      return;
    }
    default:
      event satisfies never;
  }
}
