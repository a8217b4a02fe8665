import type { Understanding } from '../phrases/meaning.ts';
import type { CommandId } from '../vocabulary/commands.ts';
import type { SwitchingDevice } from '../vocabulary/devices.ts';
import type { FaultId } from '../vocabulary/faults.ts';
import type { Focus } from '../vocabulary/focuses.ts';
import type { Isolation, IsolationPlace } from '../vocabulary/isolation-places.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { EnergyState, ZoneId } from '../vocabulary/zones.ts';
import type { Phase, VisitEvent, VisitOutcome, VisitSummary } from './events.ts';
import { evolve } from './evolve.ts';
import { type Moment, noFacts, type VisitFacts } from './facts.ts';
import type { AnsweredFrom, VisitInput } from './inputs.ts';
import { isWhole } from './is-whole.ts';
import type { KeptPhoto } from './kept-photo.ts';
import type { KeptSound } from './kept-sound.ts';
import { inTodaysNames } from './older-events.ts';
import { type Became, becameAtFirst, becameBy } from './what-became.ts';

export interface HeardLine extends Moment {
  readonly text: string;
  readonly understanding: Understanding;
  readonly accepted: boolean;
  readonly confidence: number;
  readonly ear: string;
  readonly sound?: KeptSound;
  /** What became of it, where that is not that it was taken as it was understood. */
  readonly became?: Became;
}

export interface SaidLine extends Moment {
  readonly kind: string;
  readonly text: string;
}

/** What only a time line wants beside the facts: everything in its order, with its moment. */
interface TimeLine {
  readonly first?: Moment;
  readonly last?: Moment;
  readonly heard: readonly HeardLine[];
  readonly said: readonly SaidLine[];
  /** The key of an order that was touched last. */
  readonly touched?: Moment & { readonly command: CommandId };
  readonly refused: readonly (Moment & { readonly reading: Reading; readonly reason: string })[];
  readonly asked: readonly (Moment & { readonly reading: Reading; readonly why: string; readonly twin?: number })[];
  readonly nameplate: readonly (Moment & {
    readonly field: string;
    readonly value: number | string;
    readonly unit?: string;
  })[];
  readonly energyChanges: readonly (Moment & {
    readonly zone: ZoneId;
    readonly from: EnergyState;
    readonly to: EnergyState;
    readonly why: string;
  })[];
  /** What was reported of the switches that isolate, each with whether it was taken back. */
  readonly switches: readonly (Moment & {
    readonly place: IsolationPlace;
    readonly state: Isolation;
    readonly device?: SwitchingDevice;
    readonly withdrawn: boolean;
  })[];
  readonly proofs: readonly (Moment & {
    readonly zone: ZoneId;
    readonly before: number;
    readonly values: readonly number[];
    readonly after: number;
    readonly at?: readonly (readonly PointId[])[];
    readonly result: string;
  })[];
  readonly cautions: readonly (Moment & {
    readonly caution: string;
    readonly words: string;
    readonly source: string;
    readonly zone?: ZoneId;
    readonly late: boolean;
    /** Why it came late. */
    readonly why?: string;
    /** No voice spoke it: it stood on the screen for as long as it takes to read. */
    readonly shown?: true;
    readonly acknowledgedAt?: Moment;
  })[];
  readonly suspects: readonly (Moment & {
    readonly version: string;
    readonly suspects: readonly { readonly fault: FaultId; readonly probability: number }[];
  })[];
  readonly steps: readonly (Moment & { readonly step: string; readonly words: string })[];
  readonly phases: readonly (Moment & { readonly phase: Phase })[];
  /** Who acknowledged a trainee's live steps, and from whose device where the record tells. */
  readonly acknowledgements: readonly (Moment & { readonly supervisor: string; readonly from?: AnsweredFrom })[];
  /** What a trainee alone said of something live, whatever became of it. */
  readonly waited: readonly (Moment & { readonly words: string })[];
  readonly unanswered: readonly (Moment & { readonly times: number })[];
  readonly injuries: readonly Moment[];
  /** What was judged of an opened refrigerant circuit. */
  readonly refrigerant: readonly (Moment & Omit<Extract<VisitOutcome, { type: 'refrigerant.judged' }>, 'type'>)[];
  readonly remarks: readonly (Moment & {
    readonly author: string;
    readonly text: string;
    readonly from?: 'this-device';
  })[];
  readonly photos: readonly (Moment & KeptPhoto)[];
  readonly focuses: readonly (Moment & { readonly focus: Focus })[];
  /** Closes that went through with something left, and the reason that was spoken. */
  readonly overrides: readonly (Moment & { readonly why: readonly string[]; readonly reason: string })[];
  readonly warnings: readonly (Moment & { readonly words: string })[];
  /** Each time another device carried the visit on. */
  readonly takeOvers: readonly (Moment & Omit<Extract<VisitOutcome, { type: 'visit.taken-over' }>, 'type'>)[];
  readonly interruptions: readonly (Moment & { readonly sentence: string })[];
  readonly split?: Moment & Omit<Extract<VisitOutcome, { type: 'split.judged' }>, 'type'>;
  /** Readings that contradict each other, by their numbers. */
  readonly contradictions: readonly (Moment & { readonly numbers: readonly number[] })[];
  /** The time zone of the device that opened the visit, by its IANA name. */
  readonly zone?: string;
  /** Superheat, subcooling and condensing over ambient, before the repair and in its proof. */
  readonly charge: readonly (Moment & ChargeJudged)[];
  readonly summary?: VisitSummary;
  /** Event types this version does not know: shown as such, never dropped from the record. */
  readonly unknown: readonly (Moment & { readonly type: string })[];
  /** Events of a known type without what belongs to it: shown as damaged, and nothing is made of them. */
  readonly damaged: readonly (Moment & { readonly type: string })[];
}

/** A visit as read from its record: its facts and its time line. Every screen, print and export shows this and nothing else. */
export interface FoldedVisit extends VisitFacts, TimeLine {}

type ChargeJudged = Omit<Extract<VisitOutcome, { type: 'charge.judged' }>, 'type'>;

type Mutable<T> = {
  -readonly [K in keyof T]: T[K] extends readonly (infer Item)[] ? Item[] : T[K];
};

function emptyTimeLine(): Mutable<TimeLine> {
  return {
    heard: [],
    said: [],
    refused: [],
    asked: [],
    nameplate: [],
    energyChanges: [],
    switches: [],
    proofs: [],
    cautions: [],
    suspects: [],
    steps: [],
    phases: [],
    charge: [],
    acknowledgements: [],
    waited: [],
    unanswered: [],
    injuries: [],
    refrigerant: [],
    remarks: [],
    photos: [],
    focuses: [],
    overrides: [],
    warnings: [],
    contradictions: [],
    interruptions: [],
    takeOvers: [],
    unknown: [],
    damaged: [],
  };
}

/**
 * Turns a record into a view: the facts, by the same `evolve` as the running visit, and a line for all that happened.
 * Nothing is judged, ranked or cautioned anew; what was said that day is shown. `events[i]` is the event numbered
 * `from + i`. Events of an unknown type are listed as unknown, those that lack what belongs to them as damaged.
 */
export function foldVisit(events: readonly VisitEvent[], from = 1): FoldedVisit {
  const folding = visitFolding(from);
  folding.take(events);
  return folding.view();
}

/** The same fold in pieces: whoever folds a long visit lets others have their turns in between. */
export interface VisitFolding {
  take(events: readonly VisitEvent[]): void;
  /** What holds after the events taken so far. */
  facts(): VisitFacts;
  /** As it is now: events that are taken later change nothing of it. */
  view(): FoldedVisit;
}

/** Begins a fold; the first event that is taken is numbered `from`. */
export function visitFolding(from = 1): VisitFolding {
  let facts: VisitFacts = { ...noFacts(), events: from - 1 };
  const line = emptyTimeLine();
  /** Of the utterance whose outcomes follow: whether a reading of it was taken. */
  let taken: { readonly logged: boolean } | undefined;
  const followHeard = (event: VisitEvent) => {
    const last = line.heard.at(-1);
    if (event.type === 'input.taken') taken = event.input.type === 'heard.utterance' ? { logged: false } : undefined;
    else if (taken !== undefined && last !== undefined) {
      line.heard[line.heard.length - 1] = withBecame(
        last,
        becameBy(event, last.became, taken.logged, last.understanding),
      );
      if (event.type === 'reading.logged') taken = { logged: true };
    }
  };
  const takeOne = (recorded: VisitEvent) => {
    const event = inTodaysNames(recorded);
    const moment: Moment = { seq: facts.events + 1, time: timeOf(event) ?? line.last?.time ?? facts.now };
    line.first ??= moment;
    line.last = moment;
    if (isWhole(event)) {
      addToLine(line, event, moment);
      followHeard(event);
      facts = evolve(facts, event);
    } else {
      line.damaged.push({ ...moment, type: typeOf(event) });
      facts = { ...facts, events: facts.events + 1 };
    }
  };
  return {
    take: (events) => events.forEach(takeOne),
    facts: () => facts,
    view: () => ({ ...facts, ...copied(line) }),
  };
}

function copied(line: Mutable<TimeLine>): TimeLine {
  const lists = Object.entries(line).map(([name, value]) => [name, Array.isArray(value) ? [...value] : value]);
  return Object.fromEntries(lists) as TimeLine;
}

function typeOf(event: unknown): string {
  const type = (event as { readonly type?: unknown } | null)?.type;
  return typeof type === 'string' ? type : '?';
}

function timeOf(event: VisitEvent): Moment['time'] | undefined {
  const held = event?.type === 'input.taken' ? event.input : event;
  const time = (held as { readonly time?: Moment['time'] } | null | undefined)?.time;
  return typeof time?.at === 'string' && typeof time.mono === 'number' ? time : undefined;
}

function addToLine(view: Mutable<TimeLine>, event: VisitEvent, moment: Moment): void {
  switch (event.type) {
    case 'input.taken':
      return addInput(view, event.input, moment);
    case 'phase.entered':
      view.phases.push({ ...moment, phase: event.phase });
      return;
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
    case 'nameplate.withdrawn': {
      const last = view.nameplate.findLastIndex(({ field }) => field === event.field);
      if (last >= 0) view.nameplate.splice(last, 1);
      return;
    }
    case 'nameplate.logged':
      view.nameplate.push({
        ...moment,
        field: event.field,
        value: event.value,
        ...(event.unit === undefined ? {} : { unit: event.unit }),
      });
      return;
    case 'switch.reported': {
      const { place, state, device } = event;
      view.switches.push({ ...moment, place, state, ...(device === undefined ? {} : { device }), withdrawn: false });
      return;
    }
    case 'switch.withdrawn': {
      const last = view.switches.findLastIndex(
        ({ place, state, withdrawn }) => place === event.place && state !== 'unknown' && !withdrawn,
      );
      const line = view.switches[last];
      if (line !== undefined) view.switches[last] = { ...line, withdrawn: true };
      return;
    }
    case 'energy.changed':
    case 'proof.recorded':
    case 'caution.spoken':
    case 'caution.acknowledged':
    case 'hazard.warned':
      return addEnergy(view, event, moment);
    case 'step.asked':
      view.steps.push({ ...moment, step: event.step, words: event.words });
      return;
    case 'suspects.ranked':
      view.suspects.push({ ...moment, version: event.version, suspects: event.suspects });
      return;
    case 'supervisor.acknowledged': {
      const { supervisor, from } = event;
      view.acknowledgements.push({ ...moment, supervisor, ...(from === undefined ? {} : { from }) });
      return;
    }
    case 'reading.waits':
      view.waited.push({ ...moment, words: event.words });
      return;
    case 'check.unanswered':
      view.unanswered.push({ ...moment, times: event.times });
      return;
    case 'remark.made':
      view.remarks.push({
        ...moment,
        author: event.author,
        text: event.text,
        ...(event.from === 'this-device' ? { from: event.from } : {}),
      });
      return;
    case 'photo.taken':
      view.photos.push({ ...moment, of: event.of, sha256: event.sha256 });
      return;
    case 'injury.reported':
      view.injuries.push(moment);
      return;
    case 'prompt.said':
      view.said.push({ ...moment, kind: event.kind, text: event.text });
      return;
    case 'edge.interrupted':
      view.interruptions.push({ ...moment, sentence: event.sentence });
      return;
    case 'visit.taken-over': {
      const { type: _type, time: _time, ...taken } = event;
      view.takeOvers.push({ ...moment, ...taken });
      return;
    }
    case 'visit.closed':
      view.summary = event.summary;
      return;
    case 'split.judged': {
      const { type: _type, time: _time, ...judged } = event;
      view.split = { ...moment, ...judged };
      return;
    }
    case 'contradiction.noticed':
      view.contradictions.push({ ...moment, numbers: event.numbers });
      return;
    case 'refrigerant.judged': {
      const { type: _type, time: _time, ...judged } = event;
      view.refrigerant.push({ ...moment, ...judged });
      return;
    }
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
    case 'visit.opened':
    case 'supervisor.withdrawn':
    case 'waiting.withdrawn':
    case 'refrigerant.told':
    case 'refrigerant.untold':
    case 'circuit.early':
    case 'flammable.told':
    case 'unit.gated':
    case 'reading.logged':
    case 'reading.judged':
    case 'reading.corrected':
    case 'reading.withdrawn':
    case 'observation.logged':
    case 'observation.withdrawn':
    case 'refusal.withdrawn':
    case 'question.asked':
    case 'question.ended':
    case 'call.seen':
    case 'run.changed':
    case 'proof.began':
    case 'proof.pair':
    case 'proof.reopened':
    case 'proof.refused':
    case 'proof.withdrawn':
    case 'charge.released':
    case 'charge.doubted':
    case 'search.began':
    case 'search.ended':
    case 'step.parked':
    case 'steps.settled':
    case 'steps.reopened':
    case 'finding.stated':
    case 'part.fitted':
    case 'part.doubted':
    case 'part.withdrawn':
    case 'work.done':
    case 'work.withdrawn':
    case 'landing.doubted':
    case 'wire.moved':
    case 'wire.withdrawn':
    case 'deed.reported':
    case 'deed.withdrawn':
    case 'work.unproven':
    case 'unproven.withdrawn':
    case 'item.reported':
    case 'item.withdrawn':
    case 'note.taken':
    case 'dictation.written':
    case 'recommendation.made':
    case 'recommendation.withdrawn':
    case 'visit.signed':
    case 'check.set':
    case 'check.asked':
    case 'check.answered':
    case 'check.hastened':
    case 'check.ended':
    case 'talk.changed':
    case 'units.chosen':
    case 'visit.held':
    case 'visit.resumed':
    case 'close.refused':
      return;
    default: {
      const later: { readonly type: string } = event satisfies never;
      view.unknown.push({ ...moment, type: later.type });
    }
  }
}

/** What was heard is shown as it was; of every other input only what came of it. */
function addInput(view: Mutable<TimeLine>, input: VisitInput, moment: Moment): void {
  if (input.type === 'opened.visit' && typeof input.zone === 'string') view.zone = input.zone;
  if (input.type === 'touched.command') view.touched = { ...moment, command: input.command };
  if (input.type !== 'heard.utterance') return;
  const { understanding, accepted, confidence, ear, sound } = input.utterance;
  const kept = sound === undefined ? {} : { sound };
  const text = understanding.heard;
  view.heard.push(
    withBecame(
      { ...moment, text, understanding, accepted, confidence, ear, ...kept },
      becameAtFirst(understanding, accepted, view.summary !== undefined),
    ),
  );
}

function withBecame({ became: _before, ...line }: HeardLine, became: Became | undefined): HeardLine {
  return became === undefined ? line : { ...line, became };
}

type EnergyEvent = Extract<
  VisitEvent,
  { type: 'energy.changed' | 'proof.recorded' | 'caution.spoken' | 'caution.acknowledged' | 'hazard.warned' }
>;

function addEnergy(view: Mutable<TimeLine>, event: EnergyEvent, moment: Moment): void {
  switch (event.type) {
    case 'energy.changed':
      view.energyChanges.push({ ...moment, zone: event.zone, from: event.from, to: event.to, why: event.why });
      return;
    case 'proof.recorded':
      view.proofs.push({
        ...moment,
        zone: event.zone,
        before: event.before,
        values: event.values,
        after: event.after,
        ...(event.at === undefined ? {} : { at: event.at }),
        result: event.result,
      });
      return;
    case 'hazard.warned':
      view.warnings.push({ ...moment, words: event.words });
      return;
    case 'caution.spoken': {
      const { caution, words, source, zone, late, shown } = event;
      view.cautions.push({
        ...moment,
        caution,
        words,
        source,
        late: late !== undefined,
        ...(typeof late === 'string' ? { why: late } : {}),
        ...(shown === true ? { shown } : {}),
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
