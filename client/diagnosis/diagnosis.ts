import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { HazardId } from '../../grammar/vocabulary/hazards.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';

/** The circumstances of a reading: they decide which test it answers. */
export interface Circumstances {
  readonly power: 'on' | 'off' | 'unknown';
  readonly call: 'cooling' | 'none' | 'unknown';
  readonly bench: boolean;
}

/** What the diagnosis is told, in the order of the record. `seq` is the number of the event it came from. */
export type Evidence =
  | ({
      readonly seq: number;
      readonly kind: 'reading';
      readonly quantity: QuantityId;
      readonly at: readonly PointId[];
      readonly value: Value;
      readonly unit: UnitCode;
    } & Circumstances)
  | ({ readonly seq: number; readonly kind: 'observation'; readonly observation: ObservationId } & Circumstances)
  | { readonly seq: number; readonly kind: 'repair'; readonly fault: FaultId };

/** What must hold before a test is done. */
export interface TestNeeds {
  readonly power: 'on' | 'off' | 'any';
  readonly call: 'cooling' | 'none' | 'any';
  /** The part is out of the unit or its leads are lifted: only from proven dead. */
  readonly bench: boolean;
}

export interface NextTest {
  readonly id: TestId;
  readonly function: 'volts' | 'ohms' | 'amps' | 'microfarads' | 'look' | 'temperature' | 'pressure';
  readonly quantity: QuantityId | 'observation';
  readonly at: readonly PointId[];
  /** For a look: the observations that answer it. */
  readonly answers?: readonly ObservationId[];
  readonly needs: TestNeeds;
  /** The wait counted in. */
  readonly minutes: number;
  /** Minutes to let pass before: a hot compressor has to cool until its overload can close. */
  readonly wait?: number;
  readonly hazards: readonly HazardId[];
}

export interface Suspect {
  readonly fault: FaultId;
  /** 0…1; all suspects, "something else" among them, sum to 1. */
  readonly probability: number;
}

/** The answer of the diagnosis, for the evidence up to and with `forSeq`. */
export interface Assessment {
  readonly version: string;
  readonly forSeq: number;
  readonly suspects: readonly Suspect[];
  /** Tests that may follow, the best first; parked and answered ones are left out. */
  readonly next: readonly NextTest[];
  /** Hazards that any plausible fault makes real now. */
  readonly hazards: readonly HazardId[];
  /** Readings that no single fault explains together: their seqs. */
  readonly contradiction?: readonly number[];
  /** True once one suspect stands out enough to be proved and repaired. */
  readonly done: boolean;
  /** The leader rests on this one reading, taken once: worth reading again, now or before a part is condemned. Leads `next`. */
  readonly confirm?: TestId;
  /** What proves the leader, where it is a part that could be condemned. */
  readonly proof?: {
    /** The seqs of the readings that prove it. */
    readonly readings: readonly number[];
    /** Tests that would have proved it and were passed over or cannot be done: it is found by exclusion. */
    readonly unproved: readonly TestId[];
  };
  /** What the leading suspects would show at the first of `next`: for whoever asks why, never told unasked. */
  readonly expects?: readonly Expected[];
  /** Where nothing of the list is left: what the readings deny, the likeliest before first. `next` is then empty. */
  readonly excluded?: readonly FaultId[];
}

/** What a test shows: a number or `open`, or an answer of a look. */
export type Shown =
  | { readonly expected: Value; readonly unit: UnitCode }
  | { readonly expected: ObservationId; readonly unit: 'observation' };

/** What a test would show if a suspect were the fault. */
export type Expected = { readonly fault: FaultId } & Shown;

/** A diagnosis made ready for one unit profile. Pure: the same evidence gives the same answer. */
export interface Diagnosis {
  assess(evidence: readonly Evidence[], parked: readonly TestId[]): Assessment;
  /** The test that a reading in these circumstances answers, if any. */
  testFor(
    reading: { readonly quantity: QuantityId; readonly at: readonly PointId[] } & Circumstances,
  ): TestId | undefined;
  /**
   * What the test would show under the leading suspects, each as far as it agrees with the evidence. Given only when
   * asked, and after the reading in a live visit.
   */
  explain(test: TestId, suspects: readonly Suspect[], evidence?: readonly Evidence[]): readonly Expected[];
  /** How much a test can still tell of which fault it is, in bits; 0 where this unit has no such test. */
  tells(test: TestId, evidence: readonly Evidence[]): number;
}
