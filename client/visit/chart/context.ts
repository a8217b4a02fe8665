import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { Focus, Phase, WireMove } from '../../../grammar/visit/events.ts';
import type { InputTime, RankedSuspects, RankedTest } from '../../../grammar/visit/inputs.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { FittedPartId } from '../../../grammar/vocabulary/parts.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { WorkId } from '../../../grammar/vocabulary/works.ts';
import type { EnergyState, ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Evidence } from '../../diagnosis/diagnosis.ts';
import type { SpokenCaution } from '../../words/talk/caution-words.ts';
import type { Isolation, IsolationPlace } from '../rules/isolation-places.ts';

/** One thing the visit asks for. Where it comes from decides when it is offered, its needs decide what guards it. */
export interface Step {
  readonly id: string;
  /** For a test of the planner's. */
  readonly test?: TestId;
  readonly source: 'arrive' | 'planner' | 'energy' | 'repair' | 'prove' | 'close';
  readonly ask:
    | { readonly kind: 'reading'; readonly quantity: Reading['quantity']; readonly at: Reading['at'] }
    | { readonly kind: 'look'; readonly answers: readonly ObservationId[] }
    /** Answered by a report, a part or a command; `done` says by which. */
    | { readonly kind: 'action'; readonly done: ActionDone };
  readonly needs: RankedTest['needs'];
  readonly hazards: readonly HazardId[];
  /** Offered only once the unit has run this long, in minutes. */
  readonly afterMinutes?: number;
  /** Offered only where gauges were put on in this visit: a charge that nobody doubts is left alone. */
  readonly withGauges?: true;
  /** Asked once; when something else is said instead it is passed by, and named when the visit closes. */
  readonly optional?: true;
  /** The zone whose energy the hands or probes meet. */
  readonly zone: ZoneId | 'none';
}

/** What answers a step that asks for an action. */
export type ActionDone =
  | 'call-on'
  | 'call-off'
  | 'power-off'
  | 'absence-proved'
  | 'capacitors-discharged'
  | 'part-fitted'
  | 'wires-landed'
  | 'tug-tested'
  | 'covers-on'
  | 'power-on'
  | 'consent-asked'
  | 'meter-named'
  | 'nameplate-read'
  | 'leak-searched'
  | 'vacuum-isolated'
  | 'thermostat-agreed'
  | 'recommended'
  | 'technician-signed'
  | 'customer-signed'
  | 'visit-finished';

/** A question that stands open, and what is done with its answer. */
export type Question =
  | { readonly kind: 'teen-or-ty'; readonly reading: Reading; readonly options: readonly [number, number] }
  | { readonly kind: 'confirm-reading'; readonly reading: Reading; readonly why: string }
  /** Anything else that was understood with a doubt: taken at a yes. */
  | { readonly kind: 'confirm-meaning'; readonly meaning: Meaning; readonly confirmed?: true };

/** One pair of the proof: where the tips stood, and the volts. */
export interface ProvedPair {
  readonly at: readonly PointId[];
  readonly value: number;
}

/** What is known of a refrigerant circuit that was opened. Weights in ounces, psi, microns, input clock in milliseconds. */
export interface RefrigerantWork {
  readonly recovered?: number;
  readonly test?: { readonly psi: number; readonly fahrenheit: number | undefined; readonly mono: number };
  readonly held?: true;
  readonly searched?: true;
  readonly microns?: number;
  readonly isolatedAt?: number;
  readonly stood?: true;
  readonly charged?: number;
}

/** A part fitted, or what was mended without one: its work then stands in both fields. */
export type FittedPart = (
  | { readonly work?: undefined; readonly part: FittedPartId }
  | { readonly work: WorkId; readonly part: WorkId }
) & {
  readonly ratings: Readonly<Record<string, number | string>>;
  readonly words: string;
  /** Number of its repair evidence. */
  readonly number: number;
  /** What was held against it and overridden. */
  readonly doubts: readonly string[];
};

export type Undoable =
  | { readonly kind: 'reading'; readonly number: number }
  | { readonly kind: 'observation'; readonly number: number }
  | { readonly kind: 'part'; readonly number: number }
  /** A proof, from its meter on or whole. */
  | { readonly kind: 'proof'; readonly zone: ZoneId }
  | { readonly kind: 'wire' }
  | { readonly kind: 'item'; readonly item: JobItemId }
  | { readonly kind: 'recommendation'; readonly text: string };

export interface LoggedReading {
  readonly number: number;
  readonly reading: Reading;
  readonly phase: Phase;
  /** When, on the input clock. Milliseconds. */
  readonly mono: number;
  readonly judgedWord?: string;
  /** Asked back, and said to be what the meter shows. */
  readonly confirmed?: true;
}

/** All that a visit holds; together with the regions' states it is what a fold of the inputs restores. */
export interface VisitContext {
  readonly visit: string;
  readonly site: string;
  readonly role: 'technician' | 'trainee';
  readonly unit: UnitProfile;
  /** Nameplate fields read on this visit. */
  readonly plate: Readonly<Record<string, number | string>>;
  readonly now: InputTime;
  readonly phase: Phase;
  /** Which part of the unit is searched, while testing; the step region moves it with the planner's next test. */
  readonly focus: Focus | undefined;
  /** The supervisor who acknowledged a trainee's live steps, while it counts. */
  readonly supervisor: string | undefined;
  /** Set where the maker's procedure governs instead of the interlocks here. */
  readonly gate: 'inverter-driven' | 'A3-refrigerant' | undefined;
  /** When the technician's words were last understood, on the input clock. Milliseconds. */
  readonly lastHeard: number;
  /** The time of the last input before a proof began: both clocks are held against it while one stands. */
  readonly clockBase: InputTime;
  readonly pace: 'brief' | 'full';
  readonly held: boolean;
  /** Mirror of the energy region, written only by the entry of its states. */
  readonly energy: Readonly<Record<ZoneId, EnergyState>>;
  readonly call: 'cooling' | 'none' | 'unknown';
  /** What was last reported of each switch. */
  readonly isolation: Readonly<Record<IsolationPlace, Isolation>>;
  /** A proof of absence of voltage in progress, number by number. Volts. */
  readonly proof: { readonly zone: ZoneId; readonly before: number; readonly pairs: readonly ProvedPair[] } | undefined;
  readonly discharged: readonly ZoneId[];
  readonly readings: readonly LoggedReading[];
  readonly evidence: readonly Evidence[];
  /** Number of the latest evidence; answers of the diagnosis for an earlier one are stale. */
  readonly evidenceNumber: number;
  /** Number the diagnosis was last asked for. */
  readonly askedFor: number;
  readonly assessment: RankedSuspects | undefined;
  readonly parked: readonly { readonly step: string; readonly test?: TestId; readonly why: string }[];
  /** Plan steps (arrive, prove, close) that are answered. */
  readonly settled: readonly string[];
  readonly step: Step | undefined;
  readonly question: Question | undefined;
  /** Cautions acknowledged in this visit, as caution@zone. */
  readonly acknowledged: readonly string[];
  /** The step for which cautions were acknowledged last: its further hazards do not hold it up again. */
  readonly cautionedFor: string | undefined;
  /** Late cautions already spoken in this visit, as caution@zone: recorded each time, said once. */
  readonly saidLate: readonly string[];
  /** The caution that is being spoken or waits for its acknowledgement. */
  readonly caution:
    | { readonly spoken: readonly SpokenCaution[]; readonly zone: ZoneId | 'none'; readonly prompt: string }
    | undefined;
  readonly finding: { readonly fault: FaultId; readonly probability: number } | undefined;
  readonly parts: readonly FittedPart[];
  /** What "take that back" takes back next: the latest is last. */
  readonly undoable: readonly Undoable[];
  /** Why the visit did not close when it was last asked to; a spoken reason overrides. */
  readonly closeRefused: readonly string[];
  readonly wires: readonly WireMove[];
  readonly refrigerantWork: RefrigerantWork;
  /** The lone-worker check while one runs: when it is due on the input clock, and how often it was put unanswered. */
  readonly check:
    | { readonly minutes: number; readonly every: boolean; readonly due: number; readonly asked: number }
    | undefined;
  readonly items: readonly JobItemId[];
  readonly recommendations: readonly string[];
  readonly signed: Readonly<Partial<Record<'technician' | 'customer', string>>>;
  /** Optional steps that were asked and passed by. */
  readonly passedBy: readonly string[];
  /** When the unit was last set running, on the input clock. Milliseconds. */
  readonly runningSince: number | undefined;
  readonly lastPrompt: { readonly id: string; readonly text: string } | undefined;
  readonly promptCount: number;
  readonly readingCount: number;
}
