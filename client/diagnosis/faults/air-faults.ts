import { between, chance, type Random } from '../random.ts';
import type { Residuals, Unit } from '../unit/unit.ts';
import { type FaultModel, PRACTICE } from './fault-model.ts';

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

/**
 * A thermostatic valve holds superheat and lets subcooling move first (common practice). Units differ in how far each
 * figure moves.
 */
function shift(unit: Unit, typical: Residuals, severity: number, random: Random): void {
  const valve = unit.metering === 'thermostatic-valve';
  const r = unit.residuals;
  const by = Object.fromEntries(
    Object.entries(typical).map(([figure, size]) => [figure, size * between(random, 0.3, 1.4)]),
  ) as unknown as Residuals;
  r.evaporating += severity * by.evaporating * (valve ? 0.5 : 1);
  r.superheat += severity * by.superheat * (valve ? 0.35 : 1);
  r.condensing += severity * by.condensing;
  r.subcooling += severity * by.subcooling * (valve ? 1.2 : 1);
  r.discharge += severity * by.discharge * (valve ? 0.8 : 1);
  r.standing += severity * by.standing;
  r.condenserRise += severity * by.condenserRise;
  r.airDrop += severity * by.airDrop * (valve ? 0.7 : 1);
}

const severe = (random: Random) => between(random, 0.45, 1.15);

/** Ice takes air from the coil, whatever made it. */
function ice(unit: Unit, probability: number, random: Random): void {
  if (!chance(random, probability)) return;
  unit.coilIced = true;
  shift(unit, SHIFTS.lowIndoorAir, between(random, 0.3, 0.9), random);
}

/** Indoor air, outdoor coil, refrigerant. */
export const AIR_FAULTS = {
  'filter-dirty': {
    weight: 3,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => {
      unit.filterDirty = true;
      shift(unit, SHIFTS.lowIndoorAir, between(random, 0.4, 1.6), random);
      ice(unit, 0.15, random);
    },
  },
  'indoor-coil-iced': {
    weight: 1,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => {
      unit.coilIced = true;
      shift(unit, SHIFTS.lowIndoorAir, between(random, 0.7, 1.8), random);
      unit.residuals.airDrop += between(random, -12, 8);
    },
  },
  'low-indoor-air': {
    weight: 1.5,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => {
      shift(unit, SHIFTS.lowIndoorAir, between(random, 0.4, 1.6), random);
      unit.filterDirty = chance(random, 0.05);
      ice(unit, 0.07, random);
    },
  },
  'low-charge': {
    weight: 6,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => {
      const severity = between(random, 0.4, 1.3);
      unit.oilAtJoint = chance(random, 0.4);
      shift(unit, SHIFTS.lowCharge, severity, random);
      ice(unit, 0.15, random);
      if (severity > 1.1 && unit.hasPressureSwitches && chance(random, 0.5)) unit.lowSwitch = Number.POSITIVE_INFINITY;
    },
  },
  overcharge: {
    weight: 0.8,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => shift(unit, SHIFTS.overcharge, severe(random), random),
  },
  'liquid-restriction': {
    weight: 1,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => {
      shift(unit, SHIFTS.restriction, severe(random), random);
      ice(unit, 0.12, random);
    },
  },
  'condenser-dirty': {
    weight: 2.5,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => {
      unit.outdoorCoilDirty = true;
      shift(unit, SHIFTS.condenserDirty, severe(random), random);
    },
  },
  'non-condensables': {
    weight: 0.4,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => shift(unit, SHIFTS.nonCondensables, severe(random), random),
  },
  'leaking-valves': {
    weight: 0.7,
    source: PRACTICE,
    graded: true,
    apply: (unit, random) => shift(unit, SHIFTS.leakingValves, severe(random), random),
  },
  'reversing-valve-stuck': {
    weight: 0.5,
    source: PRACTICE,
    possible: (profile) => profile.heatPump !== false,
    apply: (unit) => {
      unit.heatPump = true;
      unit.reversed = true;
    },
  },
} as const satisfies Record<string, FaultModel>;
