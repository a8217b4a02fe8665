import type { Build } from '../../client/practice/plant/plant.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';

/** What a text says is read there: from, to; or a word. */
export type TextReading = readonly [low: number, high: number] | string;

/** A service call as texts tell it: what is wrong, and what they say is read. */
export interface Story {
  readonly title: string;
  /** Where the readings come from. */
  readonly source: string;
  readonly build?: Partial<Build>;
  /** Causes by id, with their severity. */
  readonly hidden: readonly (readonly [cause: string, severity: number])[];
  readonly reads: Readonly<Partial<Record<TestId, TextReading>>>;
}

/** A switch in series: open, it has the whole voltage across it; closed, none (the trade's rule, common practice). */
export const SERIES_RULE = 'an open in series reads the source, what is closed reads nothing: common practice';
/** Service texts for single-phase hermetic compressors: C–R + C–S = R–S; with the overload out C reads open to both. */
export const WINDING_RULE =
  'winding resistances of a single-phase hermetic compressor: common practice of service texts';
/** Superheat, subcooling, suction and head in each refrigerant fault: trade press tables, and Rossi and Braun 1997. */
export const GAUGE_TABLE =
  'table of refrigerant faults: T. Rossi and J. Braun, 1997, and trade press (common practice)';
export const PRACTICE = 'common practice';
