import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

/** A number that a reading of one test would be under each draw that the column holds. */
export interface NumberColumn {
  readonly kind: 'number';
  readonly mean: Float32Array;
  readonly spread: Float32Array;
  /** What is read as often before something tripped; NaN where nothing does. Empty for what does not change by it. */
  readonly meanBefore: Float32Array;
  readonly spreadBefore: Float32Array;
  /** Density of a reading that has nothing to do with the unit (misread, misheard): one over the span of the test. */
  readonly strayDensity: number;
  /** For planning: the reading falls into one of `bins`; each draw spreads over three of them. */
  readonly bins: number;
  readonly firstBin: Uint8Array;
  readonly share: Float32Array;
}

/** Chances of each answer of a look under each draw that the column holds, answer by answer. */
export interface LookColumn {
  readonly kind: 'look';
  readonly answers: number;
  readonly chance: Float32Array;
}

export type Column = NumberColumn | LookColumn;

/**
 * A column holds the draws of the faults that can move its test, and of the healthy unit: the others read as that does.
 * `start[f]` is the place of fault f's first draw in the column, −1 for a fault that cannot move it.
 */
export interface TestColumn {
  readonly column: Column;
  readonly start: Int32Array;
}

/**
 * Predicted readings: faults × draws × tests. Particle p belongs to fault `faultOf[p]` (index into `faults`). Plain
 * data in typed arrays: it crosses a worker boundary or a file as it is.
 */
export interface FaultTable {
  readonly version: string;
  readonly profile: UnitProfile;
  /** Particles first[f] … first[f + 1] − 1 are the draws of fault f. */
  readonly first: Uint32Array;
  readonly faults: readonly FaultId[];
  /** Prior weight of each fault; they sum to 1. */
  readonly prior: Float64Array;
  readonly faultOf: Uint8Array;
  /**
   * What every fault shares and a plate may have wrong: supply and contactor poles. Each particle's kind, and the number
   * of kinds.
   */
  readonly kind: Uint8Array;
  readonly kinds: number;
  /** Place of `nothing-wrong` in `faults`. */
  readonly healthy: number;
  /** What each particle counts for among the draws of its fault: how likely it brings a complaint at all. */
  readonly standing: Float32Array;
  /** 1 where the drawn unit has a thermostatic valve. */
  readonly valve: Uint8Array;
  /** Bits of HAZARD_SIGNS that are real for the particle. */
  readonly hazards: Uint32Array;
  readonly tests: readonly TestId[];
  /** Null for readings that only set what is expected of others. */
  readonly columns: readonly (TestColumn | null)[];
}

/** Changes whenever the same evidence could give another answer. */
export const TABLE_VERSION = 'diagnosis-11';
