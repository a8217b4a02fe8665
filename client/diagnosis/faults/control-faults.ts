import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { between, chance, logBetween } from '../random.ts';
import { type FaultModel, OPEN, PRACTICE, put, putMotor, USUAL_LOSS } from './fault-model.ts';

const twoStage = (profile: UnitProfile) => profile.twoStage === true;
const switches = (profile: UnitProfile) => profile.pressureSwitches !== false;

/** Strands that still touch leave some ohms in one break of four (our figure). */
function breakWire(
  wire: 'rWire' | 'yWireIndoors' | 'yWireOutdoors' | 'cWire' | 'gWire' | 'oWire',
): FaultModel['apply'] {
  return (unit, random) => {
    const severity = random();
    unit[wire] = severity < 0.25 ? 20 * 250 ** (4 * severity) : OPEN;
    // What it feeds sags as soon as it closes anything: mostly the thermostat then closes nothing.
    if (wire === 'rWire' && severity < 0.25 && chance(random, 0.6)) {
      unit.thermostatCalls = false;
      unit.thermostatCallsBlower = false;
    }
  };
}

/** 24 V circuit, thermostat, safety switches, blower. */
export const CONTROL_FAULTS = {
  'transformer-dead': {
    weight: 2,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      const severity = random();
      if (severity < 0.15) {
        // Shorted turns: it sags, more with every load.
        unit.secondaryVolts *= 0.3 + 2.7 * severity;
        unit.leakageOhms *= 2;
        return;
      }
      unit.transformerWorks = false;
      if (chance(random, 0.7)) unit.transformerPrimaryOhms = OPEN;
      else unit.transformerSecondaryOhms = OPEN;
    },
  },
  'control-fuse-open': {
    weight: 1.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ controlFuse: OPEN }),
  },
  'control-short-Y-C': {
    weight: 1,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.shortYC = logBetween(random, 0.05, 4);
    },
  },
  'control-short-R-C': {
    weight: 0.5,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.shortRC = logBetween(random, 0.05, 4);
    },
  },
  'R-wire-broken': {
    weight: 0.4,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: breakWire('rWire'),
  },
  'Y-wire-broken-indoors': {
    weight: 0.6,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: breakWire('yWireIndoors'),
  },
  'Y-wire-broken-outdoors': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: breakWire('yWireOutdoors'),
  },
  'C-wire-broken': {
    weight: 0.6,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: breakWire('cWire'),
  },
  'G-wire-broken': {
    weight: 0.3,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: breakWire('gWire'),
  },
  'thermostat-not-calling': {
    weight: 2,
    source: PRACTICE,
    graded: false,
    lostMinutes: 90,
    // It may still make G: the blower then runs and nothing is cooled.
    apply: (unit, random) => {
      unit.thermostatCalls = false;
      unit.thermostatCallsBlower = chance(random, 0.35);
    },
  },
  'thermostat-no-fan-call': {
    weight: 0.3,
    source: PRACTICE,
    graded: false,
    lostMinutes: 90,
    apply: put({ thermostatCallsBlower: false }),
  },
  'O-wire-broken': {
    weight: 0.3,
    source: 'common practice: most makers energise the valve for cooling',
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: (profile) => profile.heatPump !== false,
    apply: put({ heatPump: true, reversed: true, oWire: OPEN }),
  },
  'delay-stays-open': {
    weight: 0.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ delay: OPEN }),
  },
  'thermostat-no-second-stage': {
    weight: 0.6,
    source: PRACTICE,
    graded: false,
    lostMinutes: 90,
    possible: twoStage,
    apply: put({ thermostatCallsSecond: false }),
  },
  'Y2-wire-broken': {
    weight: 0.6,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: twoStage,
    // Indoors or out, open mostly: strands that still touch leave too few volts for the solenoid.
    apply: (unit, random) => {
      const severity = random();
      unit[chance(random, 0.4) ? 'y2WireIndoors' : 'y2WireOutdoors'] =
        severity < 0.25 ? 90 * 60 ** (4 * severity) : OPEN;
    },
  },
  'unloader-solenoid-open': {
    weight: 0.6,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: twoStage,
    apply: put({ unloaderOhms: OPEN }),
  },
  'unloader-stuck-unloaded': {
    weight: 0.4,
    source: PRACTICE,
    graded: false,
    lostMinutes: 1800,
    possible: twoStage,
    apply: put({ stuckUnloaded: true }),
  },
  'float-switch-open': {
    weight: 3,
    source: 'common practice: a blocked drain is frequent in the season',
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: (profile) => profile.floatSwitch !== 'none',
    apply: (unit, random) => {
      if (unit.floatBreaks === 'none') unit.floatBreaks = chance(random, 0.5) ? 'Y' : 'R';
      unit.float = OPEN;
    },
  },
  'high-switch-open': {
    weight: 0.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: switches,
    apply: put({ hasPressureSwitches: true, highSwitch: OPEN }),
  },
  'low-switch-open': {
    weight: 0.7,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: switches,
    apply: put({ hasPressureSwitches: true, lowSwitch: OPEN }),
  },
  'door-switch-open': {
    weight: 0.8,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ doorSwitch: OPEN }),
  },
  'blower-motor-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: putMotor('blower', { runOpen: true }),
  },
  'blower-seized': {
    weight: 0.8,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: putMotor('blower', { seized: true }),
  },
  'blower-relay-open': {
    weight: 0.7,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ blowerRelayWorks: false }),
  },
  'blower-capacitor-weak': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.blowerMicrofarads = unit.blower.ratedMicrofarads * between(random, 0, 0.8);
    },
  },
} as const satisfies Partial<Record<FaultId, FaultModel>>;
