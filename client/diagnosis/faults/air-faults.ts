import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { between, chance, type Random } from '../random.ts';
import type { Residuals, Unit } from '../unit/unit.ts';
import { type FaultModel, PRACTICE, USUAL_LOSS } from './fault-model.ts';

/**
 * Shift of each figure at full severity, °F. Signs after Rossi and Braun (1997) for a fixed orifice; overcharge and
 * non-condensables after common practice; sizes are our own.
 */
export const SHIFTS = {
  lowCharge: {
    evaporating: -14,
    superheat: 24,
    condensing: -9,
    subcooling: -10,
    discharge: 28,
    condenserRise: -7,
    airDrop: -8,
    standing: 0,
  },
  overcharge: {
    evaporating: 3,
    superheat: -7,
    condensing: 11,
    subcooling: 13,
    discharge: -4,
    condenserRise: 1,
    airDrop: -1,
    standing: 0,
  },
  restriction: {
    evaporating: -17,
    superheat: 24,
    condensing: -6,
    subcooling: 10,
    discharge: 24,
    condenserRise: -7,
    airDrop: -8,
    standing: 0,
  },
  condenserDirty: {
    evaporating: 5,
    superheat: -6,
    condensing: 22,
    subcooling: -4,
    discharge: 22,
    condenserRise: 11,
    airDrop: -3,
    standing: 0,
  },
  lowIndoorAir: {
    evaporating: -14,
    superheat: -9,
    condensing: -6,
    subcooling: -2,
    discharge: -10,
    condenserRise: -5,
    airDrop: 12,
    standing: 0,
  },
  nonCondensables: {
    evaporating: 2,
    superheat: -1,
    condensing: 17,
    subcooling: 16,
    discharge: 18,
    condenserRise: 0,
    airDrop: -3,
    standing: 12,
  },
  leakingValves: {
    evaporating: 15,
    superheat: -7,
    condensing: -12,
    subcooling: -6,
    discharge: -18,
    condenserRise: -9,
    airDrop: -10,
    standing: 0,
  },
} as const satisfies Record<string, Residuals>;

/** °F: with liquid in the suction line there is none left of the 5 to 25 expected (common practice, our figure). */
const LEAST_SUPERHEAT_SHIFT = -14;

/** Units differ in how far each figure moves. */
function shift(unit: Unit, typical: Residuals, severity: number, random: Random, held: Partial<Residuals> = {}): void {
  const r = unit.residuals;
  for (const figure of Object.keys(typical) as (keyof Residuals)[]) {
    r[figure] += severity * typical[figure] * between(random, 0.3, 1.4) * (held[figure] ?? 1);
  }
  r.superheat = Math.max(r.superheat, LEAST_SUPERHEAT_SHIFT);
}

/** A thermostatic valve holds superheat whatever happens (common practice). */
function shiftAir(unit: Unit, typical: Residuals, severity: number, random: Random): void {
  const valve = unit.metering === 'thermostatic-valve';
  shift(unit, typical, severity, random, valve ? { superheat: 0.35 } : {});
}

/** It also makes up for refrigerant that is short: the coil stays cold longer and subcooling moves first. */
const MADE_UP_BY_VALVE = { evaporating: 0.5, superheat: 0.35, subcooling: 1.2, discharge: 0.8, airDrop: 0.7 } as const;

/** Wide open it makes up for no more: from here on superheat rises as it does behind an orifice, and further (ours). */
const VALVE_OPEN = 1;
const RISES = 1.3;

function shiftCharge(unit: Unit, typical: Residuals, severity: number, random: Random): void {
  const valve = unit.metering === 'thermostatic-valve';
  const superheat = MADE_UP_BY_VALVE.superheat + RISES * Math.max(0, severity - VALVE_OPEN);
  shift(unit, typical, severity, random, valve ? { ...MADE_UP_BY_VALVE, superheat } : {});
}

/** A blower that moves less air has less to do and draws less (common practice, our share). */
function starveOfAir(unit: Unit, severity: number, random: Random): void {
  shiftAir(unit, SHIFTS.lowIndoorAir, severity, random);
  unit.blower.turningAmps *= between(random, 0.7, 1);
}

/** From barely to entirely: a duct that is closed leaves the coil next to no air. Most are milder. */
const starving = (random: Random) => 0.4 + 2.8 * between(random, 0, 1) ** 2;
/** From here on the coil freezes sooner or later (common practice; our figure). */
const FREEZES = 1.2;

const severe = (random: Random) => between(random, 0.45, 1.15);

/** Ice takes air from the coil, whatever made it. */
function ice(unit: Unit, probability: number, random: Random): void {
  if (!chance(random, probability)) return;
  unit.coilIced = true;
  starveOfAir(unit, between(random, 0.3, 1.1), random);
}

/** Indoor air, outdoor coil, refrigerant. */
export const AIR_FAULTS = {
  'filter-dirty': {
    weight: 3,
    source: PRACTICE,
    graded: true,
    lostMinutes: 90,

    apply: (unit, random) => {
      unit.filterDirty = true;
      const severity = starving(random);
      starveOfAir(unit, severity, random);
      ice(unit, severity > FREEZES ? 0.5 : 0.12, random);
    },
  },
  'indoor-coil-iced': {
    weight: 0.7,
    source: PRACTICE,
    graded: true,
    lostMinutes: 180,

    apply: (unit, random) => {
      unit.coilIced = true;
      // From a coil that frosts over to a block of ice: a little air still passes, and it comes out very cold.
      starveOfAir(unit, between(random, 1.2, 3.4), random);
      unit.residuals.airDrop += between(random, -8, 8);
    },
  },
  'low-indoor-air': {
    weight: 1.5,
    source: PRACTICE,
    graded: true,
    lostMinutes: 180,

    // A crushed duct, a wheel that slips on its shaft: milder and entire ones alike.
    apply: (unit, random) => {
      const severity = between(random, 0.4, 3.2);
      starveOfAir(unit, severity, random);
      unit.filterDirty = chance(random, 0.05);
      ice(unit, severity > FREEZES ? 0.5 : 0.07, random);
    },
  },
  'low-charge': {
    weight: 6,
    source: PRACTICE,
    graded: true,
    lostMinutes: 540,

    apply: (unit, random) => {
      const severity = between(random, 0.4, 2.1);
      unit.oilAtJoint = chance(random, 0.4);
      shiftCharge(unit, SHIFTS.lowCharge, severity, random);
      ice(unit, 0.15, random);
      // So little is left that none of it is liquid at rest.
      if (severity > 1.85) unit.residuals.standing = -between(random, 15, 90);
      if (severity > 1.6 && unit.hasPressureSwitches && chance(random, 0.5)) unit.lowSwitch = Number.POSITIVE_INFINITY;
    },
  },
  overcharge: {
    weight: 0.8,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => shiftCharge(unit, SHIFTS.overcharge, severe(random), random),
  },
  'liquid-restriction': {
    weight: 1,
    source: PRACTICE,
    graded: true,
    lostMinutes: 900,

    apply: (unit, random) => {
      shiftCharge(unit, SHIFTS.restriction, between(random, 0.45, 1.9), random);
      ice(unit, 0.12, random);
    },
  },
  'condenser-dirty': {
    weight: 2.5,
    source: PRACTICE,
    graded: true,
    lostMinutes: 135,

    apply: (unit, random) => {
      unit.outdoorCoilDirty = true;
      const severity = severe(random);
      shiftAir(unit, SHIFTS.condenserDirty, severity, random);
      unit.tripsOnHead = severity > 0.9 && chance(random, 0.6);
    },
  },
  'non-condensables': {
    weight: 0.4,
    source: PRACTICE,
    graded: true,
    lostMinutes: 900,

    apply: (unit, random) => {
      const severity = severe(random);
      shiftCharge(unit, SHIFTS.nonCondensables, severity, random);
      // At rest nothing but the amount of gas decides.
      unit.tripsOnHead = severity > 0.9 && chance(random, 0.4);
      unit.residuals.standing = severity * SHIFTS.nonCondensables.standing * between(random, 0.8, 1.2);
    },
  },
  'leaking-valves': {
    weight: 0.7,
    source: PRACTICE,
    graded: true,
    lostMinutes: 1800,

    // Up to valves that pump hardly anything.
    apply: (unit, random) => shiftCharge(unit, SHIFTS.leakingValves, between(random, 0.45, 2.2), random),
  },
  'reversing-valve-stuck': {
    weight: 0.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: 1800,
    possible: (profile) => profile.heatPump !== false,
    apply: (unit) => {
      unit.heatPump = true;
      unit.reversed = true;
    },
  },
} as const satisfies Partial<Record<FaultId, FaultModel>>;
