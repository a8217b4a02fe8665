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

/** What stands before the source of a story whose readings were read in a published text; the others are common practice. */
export const PUBLISHED = 'published: ';

/** A switch in series: open, it has the whole voltage across it; closed, none. */
export const SERIES_RULE = `${PUBLISHED}U.S. Navy, Utilitiesman (NAVEDTRA 14259), chapter 14, voltage readings: volts across a path say that it is open, none that it is closed, volts across a load that it is fed`;
/** C–R and C–S make R–S; an infinite one is open; a reading to the frame is a ground. */
export const WINDING_RULE = `${PUBLISHED}Heating and Cooling Essentials (textbook, 2022), section 25.8, terminals of single-phase compressors; that a tripped overload opens C to both is common practice`;
/** Superheat, subcooling, suction and head in each refrigerant fault. */
export const GAUGE_TABLE = `${PUBLISHED}T. Rossi and J. Braun, 1997, signs of refrigerant faults; sizes after the trade press (achrnews.com 142656: coil 35 °F under the return air)`;
/** Both motors hum on it and do not run. */
export const CAPACITOR_RULE = `${PUBLISHED}S. Meenen, air conditioning problems (web page): on a dead run capacitor the motors hum, draw much and do not run; the overload takes the compressor out and closes again when it has cooled`;
export const FUSE_RULE = `${PUBLISHED}a heating contractor's diary (boroair.com, October 2013): the 24 volt fuse was open, and blew again until the short in the cable was found`;
export const PRACTICE = 'common practice';
