import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { between, chance, logBetween, type Random } from '../random.ts';
import type { Unit } from '../unit/unit.ts';
import { type FaultModel, OPEN, openLeg, PRACTICE, put, USUAL_LOSS } from './fault-model.ts';

const fused = (profile: UnitProfile) => profile.fusedDisconnect !== false;
const twoPoles = (profile: UnitProfile) => profile.contactorPoles !== 1;

/** At the contactor or load lug (whip), or at the line lug of the disconnect (feeder). */
function loosenLug(unit: Unit, leg: 0 | 1, random: Random): void {
  const ohms = logBetween(random, 1, 40);
  const atContactor = chance(random, 0.5);
  if (atContactor) unit.whip[leg] = ohms;
  else unit.feeder[leg] = ohms;
  // Seven in ten are at the contactor or the load lug.
  unit.drawWeight *= atContactor ? 1.4 : 0.6;
}

/** A burnt pole is open or drops many volts. */
function burnPole(unit: Unit, leg: 0 | 1, random: Random): void {
  // One pole in leg two: the bar lies in leg one.
  if (leg === 1 && unit.poles === 1) unit.poleStuck = [true, false];
  if (leg === 1) unit.poles = 2;
  const severity = random();
  const conducts = severity < 0.75;
  unit.poleClosed[leg] = conducts ? 0.5 * 120 ** (severity / 0.75) : OPEN;
  // Two poles in five still conduct; they differ among themselves and need most of the draws.
  unit.drawWeight *= conducts ? 0.4 / 0.75 : 0.6 / 0.25;
}

/** A pole that does not close is open, or burnt and conducts a little (our shares). */
function burnBreakerPole(leg: 0 | 1): FaultModel['apply'] {
  return (unit, random) => {
    const severity = random();
    unit.breaker[leg] = severity < 0.3 ? 15 * 300 ** (severity / 0.3) : OPEN;
  };
}

/** A blade and its jaw: open, or burnt and hot (our shares). */
function burnBlade(leg: 0 | 1): FaultModel['apply'] {
  return (unit, random) => {
    const severity = random();
    const conducts = severity < 0.6;
    unit.blade[leg] = conducts ? 0.5 * 120 ** (severity / 0.6) : OPEN;
    unit.drawWeight *= conducts ? 0.5 / 0.6 : 0.5 / 0.4;
  };
}

/** Line circuit: service, breaker, disconnect, fuses, lugs, contactor. */
export const LINE_FAULTS = {
  'supply-low': {
    weight: 0.6,
    source: 'common practice; below range B of ANSI C84.1',
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => {
      unit.legVolts *= between(random, 0.7, 0.87);
    },
  },
  // Either leg: other 240 V loads feed the lost one, and a voltmeter cannot tell them apart for sure.
  'lost-utility-leg': {
    weight: 0.8,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => {
      unit.house240Ohms = logBetween(random, 15, 200);
      const leg = random() < 0.5 ? 0 : 1;
      unit.house120Ohms[leg] = logBetween(random, 60, 3000);
      // A splice that still conducts a little in one of three.
      const severity = random();
      unit.legOhms[leg] = severity < 0.3 ? 30 * 100 ** (severity / 0.3) : OPEN;
    },
  },
  'breaker-tripped': {
    weight: 3,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ breaker: [OPEN, OPEN] }),
  },
  'breaker-pole-1-open': {
    weight: 0.4,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: burnBreakerPole(0),
  },
  'breaker-pole-2-open': {
    weight: 0.4,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: burnBreakerPole(1),
  },
  'disconnect-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ blade: [OPEN, OPEN] }),
  },
  'disconnect-blade-1-burnt': {
    weight: 0.4,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: burnBlade(0),
  },
  'disconnect-blade-2-burnt': {
    weight: 0.4,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: burnBlade(1),
  },
  'line-fuse-1-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: fused,
    apply: openLeg('fuse', 0),
  },
  'line-fuse-2-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: fused,
    apply: openLeg('fuse', 1),
  },
  'loose-lug-1': {
    weight: 0.7,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => loosenLug(unit, 0, random),
  },
  'loose-lug-2': {
    weight: 0.7,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => loosenLug(unit, 1, random),
  },
  'air-handler-no-power': {
    weight: 1.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ handlerFed: false }),
  },
  'contactor-pole-1-burnt': {
    weight: 2,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => burnPole(unit, 0, random),
  },
  'contactor-pole-2-burnt': {
    weight: 1.5,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => burnPole(unit, 1, random),
  },
  'contactor-pole-1-stuck-closed': {
    weight: 0.6,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ poleStuck: [true, false] }),
  },
  'contactor-pole-2-stuck-closed': {
    weight: 0.3,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: twoPoles,
    apply: put({ poles: 2, poleStuck: [false, true] }),
  },
  'contactor-stuck-closed': {
    weight: 0.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: twoPoles,
    apply: put({ poles: 2, poleStuck: [true, true] }),
  },
  'contactor-jammed-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ armatureJammed: true }),
  },
  'contactor-coil-open': {
    weight: 2.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ coilOhms: OPEN }),
  },
  'contactor-coil-shorted': {
    weight: 0.6,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      // From a few turns to all of them: whatever is left pulls nothing in.
      unit.coilOhms = logBetween(random, 0.2, 7);
      unit.coilReactance = unit.coilOhms * between(random, 0.1, 1);
      unit.pickUpVolts = OPEN;
    },
  },
} as const satisfies Partial<Record<FaultId, FaultModel>>;
