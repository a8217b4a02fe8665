import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Taken } from '../posterior/take-readings.ts';
import { type Readings, residualOf } from '../refrigerant/expected-figures.ts';
import type { Residuals } from '../unit/unit.ts';

/** A test and what it must show. The test's own needs say in which state of power and call it counts. */
export interface Check {
  readonly test: TestId;
  readonly shows: (taken: Taken, profile: UnitProfile, readings: Readings) => boolean;
  /** Where the unit has no such part there is nothing to show. */
  readonly orAbsent?: true;
  /** The plate alone says whether it is met; where it is not, no reading helps. */
  readonly holds?: (profile: UnitProfile) => boolean;
}

/** Readings that together are one way of proving something. `indirect`: they leave another cause open. */
export interface Way {
  readonly checks: readonly Check[];
  readonly indirect?: true;
}

/** What a careful technician wants to have read before a part is condemned. */
export interface ProofRow {
  /** Each of these must be proved, by any one of its ways. */
  readonly needs: readonly (readonly Way[])[];
  /** What excludes the fault by itself. */
  readonly against?: readonly Check[];
  /** No reading of the row shows the fault by itself: figures are judged together, or it is what others leave. */
  readonly judgedTogether?: true;
  /** It opens on what another fault does: met, it still leaves that fault to be looked for. */
  readonly opensOnCause?: true;
  /** What may end by itself: while this shows, it is read once more after so many minutes, before it is the finding. */
  readonly afterWait?: { readonly check: Check; readonly minutes: number };
  /** The act is costly: at least one of the proving readings is taken twice, unless two ways prove the same. */
  readonly twice?: true;
}

/** A fault that no reading of its own defines. */
export const NOTHING_TO_PROVE: ProofRow = { needs: [] };

const number = (test: TestId, shows: (value: number, profile: UnitProfile) => boolean): Check => ({
  test,
  shows: ({ value }, profile) => shows(value, profile),
});

export const atLeast = (test: TestId, least: number): Check => number(test, (value) => value >= least);
export const below = (test: TestId, most: number): Check => number(test, (value) => value < most);
export const sees = (test: TestId, ...answers: readonly ObservationId[]): Check => ({
  test,
  shows: ({ observation }) => observation !== undefined && answers.includes(observation),
});
export const orAbsent = (check: Check): Check => ({ ...check, orAbsent: true });
/** Whatever it shows: the figures of the refrigerant side are judged together, not one by one. */
export const taken = (test: TestId): Check => ({ test, shows: () => true });

/** Nothing that is asked shows it as the unit stands, this test least of all: the fault is found by exclusion. */
export const beyond = (test: TestId): Check => ({ test, shows: () => false, holds: () => false });

/** Volts at which a line circuit of the plate's supply counts as fed: 5 % below what motors still start on. */
const FED = 0.8;
/** Between legs, and a leg to ground, where the plate says nothing: the lower of the usual supplies. */
const LEAST_SUPPLY = 208;
export const supplyOf = (profile: UnitProfile): number => profile.supply?.nominal ?? LEAST_SUPPLY;

export const fed = (test: TestId): Check => number(test, (volts, profile) => volts >= FED * supplyOf(profile));
/** At a compressor that does not start: less than this and it may only be too weak (common practice: plate less 10 %). */
const STRONG = 0.87;
export const fedWell = (test: TestId): Check => number(test, (volts, profile) => volts >= STRONG * supplyOf(profile));
export const underShare = (test: TestId, share: number): Check =>
  number(test, (volts, profile) => volts < share * supplyOf(profile));
export const atLeastShare = (test: TestId, share: number): Check =>
  number(test, (volts, profile) => volts >= share * supplyOf(profile));

/** A 24 V circuit that carries its volts, and one that does not; ghosts over a broken wire lie between. */
export const carries = (test: TestId): Check => atLeast(test, 18);
export const carriesNone = (test: TestId): Check => below(test, 14);

/** A winding, a switch, a fuse: broken, or whole. Paths beside it read some kilohms. */
const BROKEN_OHMS = 2000;
export const broken = (test: TestId): Check => atLeast(test, BROKEN_OHMS);
export const whole = (test: TestId): Check => below(test, BROKEN_OHMS);
/** A wire of the control cable: strands that still touch leave some tens of ohms and pull no contactor in. */
const WIRE_OHMS = 30;
export const brokenWire = (test: TestId): Check => atLeast(test, WIRE_OHMS);
export const wholeWire = (test: TestId): Check => below(test, WIRE_OHMS);

/**
 * A compressor's winding has a few ohms; where its leads stay on, the fan's winding of some tens is read around a broken
 * one (common practice).
 */
const WINDING_BROKEN_OHMS = 15;
export const brokenWinding = (test: TestId): Check => atLeast(test, WINDING_BROKEN_OHMS);
export const wholeWinding = (test: TestId): Check => below(test, WINDING_BROKEN_OHMS);

/** Winding to shell, hundreds of kilohms at the least (common practice: a megohm is good, less is doubtful). */
const LEAK_OHMS = 5e5;
export const leaks = (test: TestId): Check => below(test, LEAK_OHMS);
export const holds = (test: TestId): Check => atLeast(test, LEAK_OHMS);

/** Below so many ohms a section of a capacitor is shorted: a whole one charges from the meter to "open". */
export const SHORTED_OHMS = 200;

/** Microfarads below a share of the rating on the capacitor; any reading where the plate has none. */
export const underRating = (test: TestId, section: 'herm' | 'fan' | 'blower', share: number): Check =>
  number(test, (microfarads, profile) => {
    const rated = section === 'blower' ? profile.blowerCapacitor : profile.capacitor?.[section];
    return rated === undefined || microfarads < share * rated;
  });
/** Microfarads at least a share of the rating. */
export const ofRating = (test: TestId, section: 'herm' | 'fan', share: number): Check =>
  number(test, (microfarads, profile) => {
    const rated = profile.capacitor?.[section];
    return rated === undefined ? microfarads > 2 : microfarads >= share * rated;
  });

/** Times the plate's locked-rotor amps: supply and clamp on the high side, and some more (ours). */
const MOST_LOCKED = 1.35;

/** A reading beside another: both are taken, in whatever order; while one lacks the other denies nothing. */
const compared = (test: TestId, at: TestId, shows: (value: number, there: number) => boolean): Way => {
  const check: Check = {
    test,
    shows: ({ value }, _profile, readings) => {
      const there = readings.get(at);
      return there === undefined || shows(value, there);
    },
  };
  return { checks: [taken(at), check] };
};

/** Share of a loss along a wire from which on it is not whole (ours: meters and moments differ by half of it). */
const LOST = 0.06;
/** All the volts that are there arrive. */
export const arrives = (test: TestId, from: TestId): Way =>
  compared(test, from, (volts, there) => volts >= (1 - LOST) * there);
/** Some of the volts that are there are lost on the way. */
export const sags = (test: TestId, from: TestId): Way =>
  compared(test, from, (volts, there) => volts < (1 - LOST) * there);

/** A sound coil of a contactor has some ten ohms (common practice); with fewer its turns touch each other. */
export const SOUND_COIL_OHMS = 7;
/** A short beside a coil leaves less than this of its ohms; what of it is shorted, the wires to it add to (ours). */
const BESIDE_COIL = 0.75;
/** Far fewer ohms from here than of the coil alone: what conducts lies beside it. */
export const farBelow = (test: TestId, coil: TestId): Way =>
  compared(test, coil, (ohms, there) => ohms < BESIDE_COIL * there);

/** How far two clamp readings of the same current lie apart at the most (ours: twice the clamp's own error and more). */
const SAME_AMPS = 0.12;
/** One current flows at both places. */
export const sameAmps = (test: TestId, at: TestId): Way =>
  compared(test, at, (amps, there) => Math.abs(amps - there) <= SAME_AMPS * Math.max(amps, there));

/** What a figure of the refrigerant side is made of. */
const FIGURES = {
  evaporating: ['pressure-suction'],
  superheat: ['pressure-suction', 'temperature-suction-line'],
  condensing: ['temperature-outdoor-air', 'pressure-liquid'],
  subcooling: ['pressure-liquid', 'temperature-liquid-line'],
  standing: ['temperature-outdoor-air', 'pressure-standing'],
  condenserRise: ['temperature-outdoor-air', 'temperature-condenser-air-out'],
  airDrop: ['temperature-return-air', 'temperature-supply-air'],
} as const satisfies Partial<Record<keyof Residuals, readonly TestId[]>>;

/** A figure against what its conditions make expected, °F; where the metering device is not known, against either. */
export function figure(name: keyof typeof FIGURES, shows: (residual: number) => boolean): Way {
  const tests: readonly TestId[] = FIGURES[name];
  const last = tests.at(-1)!;
  const judged: Check = {
    test: last,
    shows: (_taken, profile, readings) => {
      const residual = residualOf(name, readings, profile);
      if (residual === undefined) return true;
      const { fixed, valve } = residual;
      if (profile.metering === 'fixed-orifice') return shows(fixed);
      if (profile.metering === 'thermostatic-valve') return shows(valve);
      return shows(fixed) || shows(valve);
    },
  };
  return { checks: [...tests.slice(0, -1).map(taken), judged] };
}

/** Whether the plate says that the contactor has a contact in either leg. */
export const twoPoles = (test: TestId): Check => ({
  test,
  shows: () => true,
  holds: ({ contactorPoles }) => contactorPoles === 2,
});

/** Whether the plate says that there is no part that helps it start. */
export const withoutStartPart: Check = {
  test: 'microfarads-hard-start',
  shows: () => true,
  holds: ({ hardStart }) => hardStart === false,
};

/**
 * Amps of a motor that is fed and does not turn, by the plate's locked-rotor amps. Well above them its windings are not
 * whole, whatever their ohms: turns that touch each other take a few milliohms away (common practice).
 */
export const lockedRotor = (test: TestId): Check =>
  number(test, (amps, { compressor }) =>
    compressor ? amps >= 0.7 * compressor.lra && amps <= MOST_LOCKED * compressor.lra : amps >= 24,
  );

export const by = (...checks: readonly Check[]): Way => ({ checks });
/** Together they leave another cause open: the finding is by exclusion. */
export const indirectly = (...checks: readonly Check[]): Way => ({ checks, indirect: true });
/** Both ways at once, and another cause stays open all the same. */
export const indirect = (...ways: readonly Way[]): Way => indirectly(...ways.flatMap(({ checks }) => checks));
