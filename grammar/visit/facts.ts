import type { ToldDanger } from '../vocabulary/danger-signs.ts';
import type { SwitchingDevice } from '../vocabulary/devices.ts';
import type { FaultId } from '../vocabulary/faults.ts';
import type { Focus } from '../vocabulary/focuses.ts';
import type { Isolation, IsolationPlace } from '../vocabulary/isolation-places.ts';
import type { JobItemId, NoteSubject } from '../vocabulary/job-items.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { FittedPartId } from '../vocabulary/parts.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { TestId } from '../vocabulary/tests.ts';
import { type UnitChoice, USUAL_CHOICE } from '../vocabulary/unit-choice.ts';
import type { UnitProfile } from '../vocabulary/unit-profile.ts';
import type { WorkId } from '../vocabulary/works.ts';
import { type EnergyState, ZONES, type ZoneId } from '../vocabulary/zones.ts';
import type { DictatedLine } from './dictated.ts';
import type { CallState, Deed, EarlyStart, Judged, Phase, TakenUnder, WireMove } from './events.ts';
import type { InputTime, RankedSuspects } from './inputs.ts';
import type { OpenQuestion } from './questions.ts';
import { type RefrigerantEntry, type RefrigerantStage, type RefrigerantWork, UNTOUCHED } from './refrigerant-facts.ts';

/** Where in the record something stands: the number of its event, and the time it claims. */
export interface Moment {
  readonly seq: number;
  readonly time: InputTime;
}

export interface ReadingLine extends Moment {
  readonly number: number;
  /** The test that it was asked for by. */
  readonly test?: TestId;
  readonly reading: Reading;
  readonly under: TakenUnder;
  readonly judged?: Judged;
  /** Asked back, and said to be what the meter shows. */
  readonly confirmed?: true;
  /** Values this reading had before it was set right, the oldest first. */
  readonly corrected: readonly Reading[];
  readonly withdrawn: boolean;
}

export interface ObservationLine extends Moment {
  readonly number: number;
  /** The test that it was asked for by. */
  readonly test?: TestId;
  readonly observation: ObservationId;
  readonly under: TakenUnder;
}

export interface PartLine extends Moment {
  readonly number: number;
  readonly part: string;
  readonly ratings: Readonly<Record<string, number | string>>;
  readonly repairs: readonly FaultId[];
  readonly words: string;
  /** What was held against it and overridden. */
  readonly doubts: readonly string[];
}

/** A fuse or breaker that is too large for the unit and was not accepted: it may be in all the same. */
export interface RefusedPart extends Moment {
  readonly part: FittedPartId;
  readonly words: string;
}

/** Something mended without a part. */
export interface WorkLine extends Moment {
  readonly number: number;
  readonly work: WorkId;
  readonly repairs: readonly FaultId[];
  readonly words: string;
}

/** What was done by hand, and whether it settled or reopened the question of the covers. */
export interface DeedLine extends Moment {
  readonly deed: Deed;
  readonly steps?: 'settled' | 'reopened';
}

/** Hands in a zone that was not proven dead; `cause` is the number of the event that told of it. */
export interface UnprovenLine extends Moment {
  readonly what: string;
  readonly zone: ZoneId;
  readonly state: EnergyState;
  readonly cause: number;
}

/** One pair of the proof: where the tips stood, and the volts. */
export interface ProvedPair {
  readonly at: readonly PointId[];
  readonly value: number;
}

/** A proof of absence of voltage in progress, number by number. Volts; `began` on the input clock in milliseconds. */
export interface ProofInProgress {
  readonly zone: ZoneId;
  readonly before: number;
  readonly began: number;
  readonly pairs: readonly ProvedPair[];
}

/** Voltage that was found where power was reported off, while its source is sought. */
export interface Search extends Moment {
  readonly zone: ZoneId;
  readonly at: readonly PointId[];
}

/** What "take that back" takes back next. */
export type Undoable =
  | { readonly kind: 'reading'; readonly number: number }
  | { readonly kind: 'observation'; readonly number: number }
  | { readonly kind: 'part'; readonly number: number }
  | { readonly kind: 'work'; readonly number: number }
  /** A proof, from its meter on or whole. */
  | { readonly kind: 'proof'; readonly zone: ZoneId; readonly seq: number }
  /** With what was told of it before. */
  | {
      readonly kind: 'switch';
      readonly place: IsolationPlace;
      readonly before: Pick<VisitFacts, 'isolation' | 'lockedBy' | 'toldOpen'>;
    }
  | { readonly kind: 'question'; readonly number: number }
  | { readonly kind: 'refused' }
  /** With what was read of the field before. */
  | { readonly kind: 'plate'; readonly field: string; readonly before: number | string | undefined }
  | { readonly kind: 'wire' }
  /** Done to the refrigerant circuit by hand. */
  | { readonly kind: 'refrigerant'; readonly number: number }
  /** Said by a trainee alone, and kept for the supervisor. */
  | { readonly kind: 'waiting'; readonly number: number }
  | { readonly kind: 'supervisor' }
  | { readonly kind: 'deed' }
  /** Work in a zone not proven dead whose telling left nothing else to take back. */
  | { readonly kind: 'unproven'; readonly cause: number }
  | { readonly kind: 'item'; readonly item: JobItemId }
  | { readonly kind: 'recommendation'; readonly text: string };

/** Said by a trainee alone: it counts for nothing, and is asked again under a supervisor. */
export interface WaitingLine extends Moment {
  readonly number: number;
  readonly words: string;
  readonly reading?: Reading;
}

/** Power, a call or a run before an opened refrigerant circuit was closed again. */
export interface EarlyLine extends Moment {
  readonly how: EarlyStart;
  readonly lacks: RefrigerantStage | 'vacuum';
  readonly number?: number;
}

/** The lone-worker check while one runs: when it is due on the input clock, and how often it was put unanswered. */
export interface RunningCheck {
  readonly minutes: number;
  readonly every: boolean;
  readonly due: number;
  readonly asked: number;
}

/**
 * What holds in a visit, by its events alone: the interlocks judge by it, a visit is restored from it, screens and
 * exports show it. Only `evolve` writes it.
 */
export interface VisitFacts {
  /** How many events there are. */
  readonly events: number;
  /** The time of the latest input. */
  readonly now: InputTime;
  /** When words were last understood, on the input clock. Milliseconds. */
  readonly lastHeard: number;
  readonly visit: string;
  readonly site: string;
  readonly complaint: string;
  readonly role: 'technician' | 'trainee';
  readonly software: string;
  /** The exercise that this is, by its name; undefined at a real unit. */
  readonly exercise: string | undefined;
  /** As it was listed when the visit was opened. */
  readonly listed: UnitProfile;
  /** With all that the nameplate said of it. */
  readonly unit: UnitProfile;
  /** Nameplate fields read on this visit. */
  readonly plate: Readonly<Record<string, number | string>>;
  readonly phase: Phase;
  /** Which part of the unit is searched, while testing. */
  readonly focus: Focus | undefined;
  readonly held: boolean;
  /** Somebody was hurt, and the visit was not taken up since. */
  readonly hurt: boolean;
  readonly pace: 'brief' | 'full';
  /** In which units a number without one is. */
  readonly units: UnitChoice;
  /** The supervisor who acknowledged a trainee's live steps, while it counts. */
  readonly supervisor: string | undefined;
  /** Set where the maker's procedure governs instead of the interlocks here. */
  readonly gate: 'inverter-driven' | 'A3-refrigerant' | undefined;
  readonly energy: Readonly<Record<ZoneId, EnergyState>>;
  readonly call: CallState;
  /** What was last reported of each switch. */
  readonly isolation: Readonly<Record<IsolationPlace, Isolation>>;
  /** Which switch was locked at a place, while its lock is recorded. */
  readonly lockedBy: Readonly<Partial<Record<IsolationPlace, SwitchingDevice>>>;
  /** Switches last told open, whatever has been doubted since: none told them closed. */
  readonly toldOpen: readonly IsolationPlace[];
  readonly proof: ProofInProgress | undefined;
  /** The switches that were locked when the latest proof of a zone began. */
  readonly provedBehind: Readonly<Partial<Record<ZoneId, readonly IsolationPlace[]>>>;
  /** Sections and zones whose stored charge was read released. */
  readonly discharged: readonly ZoneId[];
  /** When a zone last came to read dead, on the input clock in milliseconds. */
  readonly deadSince: Readonly<Partial<Record<ZoneId, number>>>;
  /** A start capacitor was fitted, read or named on this visit, whatever the profile says. */
  readonly startCapacitor: boolean;
  readonly search: Search | undefined;
  /** All readings; those taken back stand in it as withdrawn. */
  readonly readings: readonly ReadingLine[];
  readonly observations: readonly ObservationLine[];
  readonly parts: readonly PartLine[];
  readonly works: readonly WorkLine[];
  readonly refusedParts: readonly RefusedPart[];
  /** Fuses told blown and windings told grounded in words that were not understood whole: warned of, never evidence. */
  readonly dangersTold: readonly (Moment & { readonly danger: ToldDanger })[];
  /** Readings refused because their zone was not proven dead, or left unanswered: never evidence, and warned of where they show danger. */
  readonly refusedReadings: readonly (Moment & { readonly reading: Reading })[];
  /** The number that the latest reading, look or repair bears. */
  readonly readingCount: number;
  /** Number of the latest evidence; answers of the diagnosis for an earlier one are stale. */
  readonly evidenceNumber: number;
  /** What the diagnosis answered last, and the answer that was taken. */
  readonly answer: RankedSuspects | undefined;
  readonly assessment: RankedSuspects | undefined;
  readonly finding:
    | {
        readonly fault: FaultId;
        readonly probability: number;
        readonly evidence: readonly number[];
        /** Found by exclusion: the tests that would have proved it and could not be done. */
        readonly unproved?: readonly TestId[];
      }
    | undefined;
  readonly parked: readonly {
    readonly step: string;
    readonly test?: TestId;
    readonly why: string;
    readonly words?: string;
    /** How much had been read and seen of the unit then. */
    readonly since: number;
  }[];
  /** Plan steps that are answered. */
  readonly settled: readonly string[];
  /** Optional steps that were asked and passed by. */
  readonly passedBy: readonly string[];
  /** Cautions acknowledged and still standing, as caution@cabinet. */
  readonly acknowledged: readonly string[];
  /** Cautions that came late and still stand, as caution@cabinet. */
  readonly saidLate: readonly string[];
  readonly questions: readonly OpenQuestion[];
  readonly questionCount: number;
  /** The latest is last. */
  readonly undoable: readonly Undoable[];
  /** Why the visit did not close when it was last asked to; a spoken reason overrides. */
  readonly closeRefused: readonly string[];
  readonly wires: readonly (Moment & { readonly wire: WireMove })[];
  /** What was said of the refrigerant circuit, and what it comes to. */
  readonly refrigerantLog: readonly RefrigerantEntry[];
  readonly deeds: readonly DeedLine[];
  readonly unproven: readonly UnprovenLine[];
  /** Numbers of the events by which the breaker at the panel was reported closed. */
  readonly breakerClosed: readonly number[];
  readonly refrigerantWork: RefrigerantWork;
  readonly earlyStarts: readonly EarlyLine[];
  /** Cautions of a flammable refrigerant that were given with what was told, by their ids. */
  readonly flammableTold: readonly string[];
  /** Waits for the supervisor of a trainee. */
  readonly waiting: readonly WaitingLine[];
  readonly check: RunningCheck | undefined;
  /** What was reported of the job and not withdrawn, in order. */
  readonly items: readonly (Moment & { readonly item: JobItemId; readonly said?: string })[];
  readonly notes: readonly (DictatedLine & { readonly from?: 'customer'; readonly about?: NoteSubject })[];
  readonly recommendations: readonly DictatedLine[];
  /** `text`: the name as it was heard or written. */
  readonly signatures: readonly (DictatedLine & { readonly who: 'technician' | 'customer'; readonly name: string })[];
  /** Words came from a microphone of the page, whose sound could be kept. */
  readonly listens: boolean;
  /** When the unit was last set running, on the input clock. Milliseconds. */
  readonly runningSince: number | undefined;
  readonly lastPrompt: { readonly id: string; readonly text: string } | undefined;
  readonly promptCount: number;
}

/** A caution is known by what it says and at which cabinet: zones behind one cover share it. */
export function cautionKey(id: string, zone: ZoneId | 'none'): string {
  return `${id}@${CABINETS[zone]}`;
}

const CABINETS: Readonly<Record<ZoneId | 'none', 'outdoors' | 'indoors' | 'control' | 'none'>> = {
  'disconnect-line': 'outdoors',
  'outdoor-load': 'outdoors',
  'capacitor-herm': 'outdoors',
  'capacitor-fan': 'outdoors',
  'capacitor-start': 'outdoors',
  'air-handler': 'indoors',
  // Its terminals are in both.
  control: 'control',
  none: 'none',
};

/** What was told of a cabinet is due again: power was off there, or its covers went on. What may burn stays told. */
export function toldAnew(told: readonly string[], zone: ZoneId): readonly string[] {
  return told.filter((key) => key.startsWith('flammable-') || !key.endsWith(`@${CABINETS[zone]}`));
}

/** Who opens one cabinet has left the other. */
export function toldSinceLeft(told: readonly string[], zone: ZoneId | 'none'): readonly string[] {
  if (CABINETS[zone] === 'outdoors') return toldAnew(told, 'air-handler');
  return CABINETS[zone] === 'indoors' ? toldAnew(told, 'outdoor-load') : told;
}

/** What holds before the first event. */
export function noFacts(): VisitFacts {
  return {
    events: 0,
    now: { at: '1970-01-01T00:00:00.000Z', mono: 0 },
    lastHeard: 0,
    visit: '',
    site: '',
    complaint: '',
    role: 'technician',
    software: '',
    exercise: undefined,
    listed: { id: 'unknown' },
    unit: { id: 'unknown' },
    plate: {},
    phase: 'arrive',
    focus: undefined,
    held: false,
    hurt: false,
    pace: 'brief',
    units: USUAL_CHOICE,
    supervisor: undefined,
    gate: undefined,
    energy: Object.fromEntries(ZONES.map((zone) => [zone, 'unknown'])) as Record<ZoneId, EnergyState>,
    call: 'unknown',
    isolation: { outdoor: 'unknown', panel: 'unknown', 'air-handler': 'unknown' },
    lockedBy: {},
    toldOpen: [],
    proof: undefined,
    provedBehind: {},
    discharged: [],
    deadSince: {},
    startCapacitor: false,
    search: undefined,
    readings: [],
    observations: [],
    parts: [],
    works: [],
    refusedParts: [],
    dangersTold: [],
    refusedReadings: [],
    readingCount: 0,
    evidenceNumber: 0,
    answer: undefined,
    assessment: undefined,
    finding: undefined,
    parked: [],
    settled: [],
    passedBy: [],
    acknowledged: [],
    saidLate: [],
    questions: [],
    questionCount: 0,
    undoable: [],
    closeRefused: [],
    wires: [],
    refrigerantLog: [],
    refrigerantWork: UNTOUCHED,
    earlyStarts: [],
    flammableTold: [],
    waiting: [],
    deeds: [],
    unproven: [],
    breakerClosed: [],
    check: undefined,
    items: [],
    notes: [],
    recommendations: [],
    signatures: [],
    listens: false,
    runningSince: undefined,
    lastPrompt: undefined,
    promptCount: 0,
  };
}
