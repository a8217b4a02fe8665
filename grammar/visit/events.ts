import type { Meaning, Report } from '../phrases/meaning.ts';
import type { ToldDanger } from '../vocabulary/danger-signs.ts';
import type { SwitchingDevice } from '../vocabulary/devices.ts';
import type { FaultId } from '../vocabulary/faults.ts';
import type { Focus } from '../vocabulary/focuses.ts';
import type { HazardId } from '../vocabulary/hazards.ts';
import type { Isolation, IsolationPlace } from '../vocabulary/isolation-places.ts';
import type { JobItemId, NoteSubject } from '../vocabulary/job-items.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { FittedPartId } from '../vocabulary/parts.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { TestId } from '../vocabulary/tests.ts';
import type { UnitChoice } from '../vocabulary/unit-choice.ts';
import type { RefrigerantId, UnitProfile } from '../vocabulary/unit-profile.ts';
import type { WorkId } from '../vocabulary/works.ts';
import type { EnergyState, ZoneId } from '../vocabulary/zones.ts';
import type { Dictation } from './dictated.ts';
import type { AnsweredFrom, InputTime, LastEntry, VisitInput } from './inputs.ts';
import type { KeptPhoto } from './kept-photo.ts';
import type { Question, QuestionEnd } from './questions.ts';
import type { RefrigerantCheck, RefrigerantStage } from './refrigerant-facts.ts';

/** The phases of a visit, by function. Order is the technician's; a phase says what the talk is about. */
export const PHASES = ['arrive', 'testing', 'repair', 'prove', 'close', 'closed'] as const;
export type Phase = (typeof PHASES)[number];

/** How a reading stands against its rule. `impossible` is asked again. */
export type JudgedWord = 'fits' | 'marginal' | 'does not fit' | 'impossible';

export interface Judged {
  readonly word: JudgedWord;
  readonly rule: string;
  /** In the reading's unit; a missing end is open. */
  readonly band: { readonly low?: number; readonly high?: number };
  readonly source: string;
  readonly tag: 'published' | 'memory' | 'practice' | 'derived' | 'nameplate';
}

/** Whether the thermostat calls, as it was last seen. */
export type CallState = 'cooling' | 'none' | 'unknown';

/** Circumstances under which a reading was taken, as the visit held them at that moment. */
export interface TakenUnder {
  readonly power: 'on' | 'off' | 'unknown';
  readonly call: CallState;
  readonly phase: Phase;
  /** Its zone was reported locked off: what it read there says nothing of the ground while it was fed. */
  readonly locked?: true;
}

/** What two instruments say of the charge together. */
export type ChargeFigure = 'superheat' | 'subcooling' | 'condensing-over-ambient';

/** Why a figure of the charge carries no verdict: outside its validity, or without what it is held against. */
export type NoVerdict =
  | 'not-running'
  | 'running-too-short'
  | 'outdoors-too-cold'
  | 'outdoor-unknown'
  | 'outside-the-chart'
  | 'no-valid-test'
  | 'mixed-line'
  | 'no-target';

/** What came too early for an opened refrigerant circuit. */
export type EarlyStart = 'power' | 'call' | 'run';

/** What was done at the unit by hand: a part out or back in, a cover off or on, or another deed. */
export type Deed = Extract<Report, { type: 'part-moved' | 'cover' | 'deed' }>;

export type WireMove = Extract<Meaning, { kind: 'wire' }>['wire'];

/**
 * What came of an input. Past tense; never edited: a correction is a new event. What was judged, ranked or cautioned
 * carries the words and the version of that day, so that a fold never computes it again.
 */
export type VisitOutcome =
  | {
      readonly type: 'visit.opened';
      readonly visit: string;
      readonly site: string;
      readonly complaint: string;
      readonly role: 'technician' | 'trainee';
      readonly unit: UnitProfile;
      readonly software: string;
      /** The exercise that this is, by its name: nobody stood at a unit. */
      readonly exercise?: string;
    }
  /** Another device carries the visit on; whoever carries it is what their role allows. */
  | {
      readonly type: 'visit.taken-over';
      readonly from: LastEntry;
      /** Not in records of before leases had numbers. */
      readonly lease?: number;
      readonly device: string;
      readonly person?: string;
      readonly role: 'technician' | 'trainee';
      readonly missing?: number;
    }
  | { readonly type: 'phase.entered'; readonly phase: Phase }
  | { readonly type: 'focus.moved'; readonly focus: Focus }
  /** `from`: whether it came from a device of the supervisor's own, or was said on this one. */
  | { readonly type: 'supervisor.acknowledged'; readonly supervisor: string; readonly from?: AnsweredFrom }
  | { readonly type: 'supervisor.withdrawn' }
  /** What a trainee alone said of something live: kept, and read again once a supervisor has acknowledged. */
  | {
      readonly type: 'reading.waits';
      readonly number: number;
      readonly words: string;
      readonly reading?: Reading;
      readonly report?: Report;
    }
  | { readonly type: 'waiting.withdrawn'; readonly number: number }
  /** The maker's procedure governs this unit: what the visit does not pretend to cover. */
  | { readonly type: 'unit.gated'; readonly gate: 'inverter-driven' | 'A3-refrigerant'; readonly words: string }
  | {
      readonly type: 'reading.logged';
      readonly reading: Reading;
      /** Names this reading for corrections and for the diagnosis. */
      readonly number: number;
      readonly under: TakenUnder;
      readonly test?: TestId;
      /** Asked back, and said to be what the meter shows. */
      readonly confirmed?: true;
    }
  | { readonly type: 'reading.judged'; readonly number: number; readonly judged: Judged }
  | { readonly type: 'reading.asked'; readonly reading: Reading; readonly why: string; readonly twin?: number }
  | {
      readonly type: 'reading.refused';
      readonly reading: Reading;
      readonly reason:
        | 'not-proven-dead'
        | 'in-vacuum'
        | 'not-on-the-bench'
        | 'not-read-dead'
        | 'impossible'
        | 'read-again'
        | 'withdrawn-by-technician'
        | 'not-answered';
    }
  | {
      readonly type: 'reading.corrected';
      readonly number: number;
      readonly from: Reading;
      readonly to: Reading;
      readonly under?: TakenUnder;
    }
  | { readonly type: 'reading.withdrawn'; readonly number: number }
  | {
      readonly type: 'observation.logged';
      readonly observation: ObservationId;
      readonly number: number;
      readonly under: TakenUnder;
      readonly test?: TestId;
    }
  | { readonly type: 'observation.withdrawn'; readonly number: number }
  /** What was refused is taken back: it stands refused. */
  | { readonly type: 'refusal.withdrawn' }
  | { readonly type: 'nameplate.withdrawn'; readonly field: string }
  /** A question is put, or waits until those before it have ended. */
  | { readonly type: 'question.asked'; readonly number: number; readonly question: Question; readonly words: string }
  | { readonly type: 'question.ended'; readonly number: number; readonly how: QuestionEnd }
  /** What was said of a switch, and whether a call is there. */
  | {
      readonly type: 'switch.reported';
      readonly place: IsolationPlace;
      readonly state: Isolation;
      /** Which of the switches there was told of. */
      readonly device?: SwitchingDevice;
      /** Words that may mean the lock itself. */
      readonly lockOff?: true;
    }
  | { readonly type: 'switch.withdrawn'; readonly place: IsolationPlace }
  | { readonly type: 'call.seen'; readonly call: CallState }
  /** The unit was seen running, or its power was sent away. */
  | { readonly type: 'run.changed'; readonly running: boolean }
  | {
      readonly type: 'nameplate.logged';
      readonly field: string;
      readonly value: number | string;
      readonly unit?: string;
    }
  | {
      readonly type: 'energy.changed';
      readonly zone: ZoneId;
      readonly from: EnergyState;
      readonly to: EnergyState;
      readonly why: string;
    }
  /** The meter read on a known live source opens a proof; its pairs follow, each by its points. */
  | {
      readonly type: 'proof.began';
      readonly zone: ZoneId;
      readonly before: number;
      /** Where its meter was proven before this was told of the zone: on the input clock in milliseconds. */
      readonly began?: number;
    }
  | { readonly type: 'proof.pair'; readonly zone: ZoneId; readonly at: readonly PointId[]; readonly value: number }
  /** A pair that no longer counts; without a place the whole proof in progress is dropped. */
  | { readonly type: 'proof.reopened'; readonly zone: ZoneId; readonly at?: readonly PointId[]; readonly why: string }
  /** A proof, or its meter, that did not count when it was said: something has to come before it. */
  | { readonly type: 'proof.refused'; readonly zone: ZoneId; readonly why: string }
  /** `corrected`: by a correction, which is what is taken back next. */
  | { readonly type: 'proof.withdrawn'; readonly zone: ZoneId; readonly corrected?: true }
  /** The stored charge of a section or zone was read released, or is not known any more. */
  | { readonly type: 'charge.released'; readonly zone: ZoneId }
  | { readonly type: 'charge.doubted'; readonly zones: readonly ZoneId[] }
  | {
      readonly type: 'proof.recorded';
      readonly zone: ZoneId;
      readonly before: number;
      readonly values: readonly number[];
      readonly after: number;
      /** The pair of each value; empty for a value that belongs to none. */
      readonly at?: readonly (readonly PointId[])[];
      readonly result: 'reads dead' | 'voltage present' | 'meter not proven';
    }
  /** Voltage was found where power was reported off: its source is sought before anything else goes on. */
  | { readonly type: 'search.began'; readonly zone: ZoneId; readonly at: readonly PointId[] }
  | { readonly type: 'search.ended'; readonly zone: ZoneId; readonly why: string }
  | {
      readonly type: 'caution.spoken';
      readonly caution: string;
      readonly words: string;
      readonly source: string;
      readonly zone?: ZoneId;
      /** Why it came behind what it warns of. Records of earlier versions say no more than that it did. */
      readonly late?: string | true;
      /** It stood on the screen for as long as it takes to read; no voice spoke it. */
      readonly shown?: true;
    }
  | { readonly type: 'caution.acknowledged'; readonly caution: string; readonly zone?: ZoneId }
  /** `danger`: what was told in words that were not understood whole. */
  | { readonly type: 'hazard.warned'; readonly words: string; readonly zone: ZoneId; readonly danger?: ToldDanger }
  | { readonly type: 'step.asked'; readonly step: string; readonly words: string }
  /** Set aside, and which test with it; `optional`: work went on without it. */
  | {
      readonly type: 'step.parked';
      readonly step: string;
      readonly why: string;
      readonly test?: TestId;
      readonly optional?: true;
      /** As it was asked, for people who read of it. */
      readonly words?: string;
    }
  /** Plan steps that are answered by what came before, or are to be asked again. */
  | { readonly type: 'steps.settled'; readonly steps: readonly string[] }
  | { readonly type: 'steps.reopened'; readonly steps: readonly string[] }
  | {
      readonly type: 'suspects.ranked';
      readonly version: string;
      readonly forSeq: number;
      readonly suspects: readonly { readonly fault: FaultId; readonly probability: number }[];
      readonly hazards: readonly HazardId[];
    }
  | { readonly type: 'contradiction.noticed'; readonly numbers: readonly number[] }
  | {
      readonly type: 'finding.stated';
      readonly fault: FaultId;
      readonly probability: number;
      readonly evidence: readonly number[];
      /** Found by exclusion: the tests that would have proved it and could not be done. */
      readonly unproved?: readonly TestId[];
    }
  | {
      readonly type: 'part.fitted';
      readonly part: FittedPartId;
      readonly ratings: Readonly<Record<string, number | string>>;
      readonly repairs: readonly FaultId[];
      /** Its number among readings, looks and repairs, what it is called, what was held against it and overridden. */
      readonly number?: number;
      readonly words?: string;
      readonly doubts?: readonly string[];
    }
  | {
      readonly type: 'part.doubted';
      readonly part: FittedPartId;
      readonly weight: 'refuse' | 'warn';
      readonly why: string;
      readonly source: string;
      /** What was told of it, where it was refused and nobody has said why it stays. */
      readonly words?: string;
      /** Of a part that was fitted before, by its number: the doubt came later. */
      readonly number?: number;
    }
  | { readonly type: 'part.withdrawn'; readonly part: FittedPartId; readonly number?: number }
  /** Something mended without a part; what it cures no longer counts as a suspect. */
  | {
      readonly type: 'work.done';
      readonly work: WorkId;
      readonly repairs: readonly FaultId[];
      readonly number?: number;
      readonly words?: string;
    }
  | { readonly type: 'work.withdrawn'; readonly work: WorkId; readonly number?: number }
  | { readonly type: 'landing.doubted'; readonly wire: WireMove; readonly why: string }
  | { readonly type: 'close.overridden'; readonly why: readonly string[]; readonly reason: string }
  | { readonly type: 'wire.moved'; readonly wire: WireMove }
  | { readonly type: 'wire.withdrawn'; readonly wire: WireMove }
  /** `steps`: what it made of the question whether covers are on. */
  | { readonly type: 'deed.reported'; readonly deed: Deed; readonly steps?: 'settled' | 'reopened' }
  | { readonly type: 'deed.withdrawn'; readonly deed: Deed }
  /**
   * Hands were in a zone that was not proven dead. `cause` numbers the event that told of it: it is taken back with
   * that; `alone`: that one leaves nothing to take back, so this is taken back by itself.
   */
  | {
      readonly type: 'work.unproven';
      readonly what: string;
      readonly zone: ZoneId;
      readonly state: EnergyState;
      readonly cause: number;
      readonly alone?: true;
    }
  | { readonly type: 'unproven.withdrawn'; readonly cause: number }
  | {
      readonly type: 'split.judged';
      /** Return less supply air, in Fahrenheit degrees. */
      readonly split: number;
      readonly minutes: number;
      readonly word: JudgedWord;
      readonly band: { readonly low: number; readonly high: number };
      readonly source: string;
    }
  | {
      readonly type: 'charge.judged';
      readonly figure: ChargeFigure;
      /** In Fahrenheit degrees. */
      readonly value: number;
      readonly refrigerant: RefrigerantId;
      /** Numbers of the two readings it stands on. */
      readonly readings: readonly [number, number];
      readonly minutes: number;
      readonly judged?: Judged;
      readonly noVerdict?: NoVerdict;
    }
  /** An opened refrigerant circuit: its pressure test, vacuum or standing vacuum against its rule. */
  | {
      readonly type: 'refrigerant.judged';
      readonly check: RefrigerantCheck;
      /** In psi for the pressure test (what was lost beyond temperature), in microns else. */
      readonly value: number;
      readonly minutes: number;
      readonly judged: Judged;
      /** The number of the reading it was passed on. */
      readonly reading?: number;
    }
  /** Done to the refrigerant circuit by hand: opened, evacuated, its vacuum broken, a flame at it. */
  | {
      readonly type: 'refrigerant.told';
      readonly what: 'opened' | 'vacuum-on' | 'vacuum-off' | 'vacuum-off-nitrogen' | 'flame-lit';
      readonly number: number;
      readonly words: string;
    }
  | { readonly type: 'refrigerant.untold'; readonly number: number }
  /** Power, a call or a run while the circuit lacked something; `number`: of the reading or look that told of it. */
  | {
      readonly type: 'circuit.early';
      readonly how: EarlyStart;
      readonly lacks: RefrigerantStage | 'vacuum';
      readonly words: string;
      readonly number?: number;
    }
  /** A flammable refrigerant was said as such. */
  | { readonly type: 'flammable.told'; readonly caution: string; readonly words: string; readonly source: string }
  /** `from`: whose words they are, where they are not the technician's; `about`: what they tell of the refrigerant. */
  | ({
      readonly type: 'note.taken';
      readonly text: string;
      readonly from?: 'customer';
      readonly about?: NoteSubject;
    } & Dictation)
  /** Words written over those of a dictation, by the number of its event. */
  | { readonly type: 'dictation.written'; readonly of: number; readonly text: string }
  /** Something of the job that is no measurement: consent, the meter's category, an opened refrigerant circuit, how it was left. */
  /** `said`: the words, where they tell more: where a leak is. */
  | { readonly type: 'item.reported'; readonly item: JobItemId; readonly said?: string }
  | { readonly type: 'item.withdrawn'; readonly item: JobItemId }
  | ({ readonly type: 'recommendation.made'; readonly text: string } & Dictation)
  | { readonly type: 'recommendation.withdrawn'; readonly text: string }
  | ({ readonly type: 'visit.signed'; readonly who: 'technician' | 'customer'; readonly name: string } & Dictation)
  | {
      readonly type: 'remark.made';
      readonly author: string;
      readonly text: string;
      /** As a reader tells it: a device wrote it in that name, and not the server. */
      readonly from?: 'this-device';
    }
  | ({ readonly type: 'photo.taken' } & KeptPhoto)
  | { readonly type: 'injury.reported' }
  /** The lone-worker check: asked for, put, answered, left without an answer, ended. Minutes. */
  | { readonly type: 'check.set'; readonly minutes: number; readonly every: boolean }
  | { readonly type: 'check.asked'; readonly times: number }
  | { readonly type: 'check.answered' }
  | { readonly type: 'check.unanswered'; readonly times: number }
  | { readonly type: 'check.hastened' }
  | { readonly type: 'check.ended' }
  | { readonly type: 'talk.changed'; readonly pace: 'brief' | 'full' }
  /** In which units a number without one is from here on; before the first of these, in the usual ones. */
  | { readonly type: 'units.chosen'; readonly units: UnitChoice }
  | { readonly type: 'prompt.said'; readonly id: string; readonly kind: string; readonly text: string }
  | { readonly type: 'visit.held' }
  | { readonly type: 'visit.resumed' }
  | {
      readonly type: 'edge.interrupted';
      readonly edge: 'ear' | 'diagnosis' | 'mouth';
      readonly fault: string;
      readonly sentence: string;
    }
  | { readonly type: 'close.refused'; readonly why: readonly string[] }
  | { readonly type: 'visit.closed'; readonly summary: VisitSummary };

export interface VisitSummary {
  readonly finding: FaultId | 'none';
  /** For the next technician: what was measured, what it means. */
  readonly technical: readonly string[];
  /** For the customer, in plain words. */
  readonly plain: string;
  readonly openItems: readonly string[];
}

/** A body as it stands in the record: the input itself, or what came of the input numbered `cause`. */
export type VisitEvent =
  /** `outcomes`: how many events it brought about; fewer behind it are a record that was cut. */
  | { readonly type: 'input.taken'; readonly input: VisitInput; readonly outcomes?: number }
  | (VisitOutcome & { readonly time: InputTime });
