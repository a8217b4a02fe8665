import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { between, chance, type Random } from '../random.ts';
import type { Motor } from '../unit/motor.ts';
import type { Unit } from '../unit/unit.ts';
import { type FaultModel, OPEN, PRACTICE, put, putMotor, USUAL_LOSS } from './fault-model.ts';

/** Share of outdoor units behind a ground-fault breaker (NEC 210.8(F) asks for one since 2020; our share). */
const GROUND_FAULT_BREAKER = 0.2;
/** It trips on 4 to 6 mA, so on less than so many ohms from 120 V to ground (UL 943 class A, from memory). */
const GROUND_FAULT_OHMS = 24_000;

/**
 * A grounded winding takes the breaker with it, or the fuse of the leg that it touches; the other leg feeds the fault
 * through the winding, and in a compressor its fuse mostly goes as well. A leak of kilohms takes neither, but for a
 * ground-fault breaker. (Common practice; the shares are ours.)
 */
function ground(unit: Unit, motor: Motor, bothFuses: number, random: Random): void {
  const severity = random();
  motor.shellOhms = severity < 0.75 ? 0.2 * 300 ** (severity / 0.75) : 60 * 7000 ** (4 * severity - 3);
  if (severity >= 0.75) {
    if (motor.shellOhms < GROUND_FAULT_OHMS && chance(random, GROUND_FAULT_BREAKER)) unit.breaker = [OPEN, OPEN];
    return;
  }
  motor.shellAtRun = chance(random, 0.5);
  if (chance(random, 0.6)) unit.breaker = [OPEN, OPEN];
  else if (chance(random, bothFuses)) unit.fuse = [OPEN, OPEN];
  else unit.fuse[motor.shellAtRun ? 0 : 1] = OPEN;
}

const hasHeater = (profile: UnitProfile) => profile.crankcaseHeater !== false;
const LEADING = 'common practice: the most frequent electrical part replaced';

/** Which lead of a motor is off: common, run or start, each as often. */
function loseLead(motor: Motor, random: Random): 'common' | 'run' | 'start' {
  const lead = (['common', 'run', 'start'] as const)[Math.floor(3 * random())]!;
  if (lead !== 'start') motor.runOpen = true;
  if (lead !== 'run') motor.startOpen = true;
  return lead;
}

/** Capacitors, compressor, outdoor fan. */
export const LOAD_FAULTS = {
  'herm-capacitor-weak': {
    weight: 5,
    source: LEADING,
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => {
      unit.hermMicrofarads = unit.compressor.ratedMicrofarads * between(random, 0.1, 0.86);
    },
  },
  'herm-capacitor-open': {
    weight: 2.5,
    source: LEADING,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.hermMicrofarads = unit.compressor.ratedMicrofarads * between(random, 0, 0.05);
    },
  },
  'herm-capacitor-shorted': {
    weight: 0.4,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    // The start winding alone is left in the circuit: in some units it takes a fuse or the breaker with it.
    apply: (unit, random) => {
      unit.hermShorted = true;
      const severity = random();
      if (severity < 0.3) unit.fuse[severity < 0.15 ? 0 : 1] = OPEN;
      else if (severity < 0.4) unit.breaker = [OPEN, OPEN];
    },
  },
  'fan-capacitor-weak': {
    weight: 6,
    source: LEADING,
    graded: true,
    lostMinutes: USUAL_LOSS,

    apply: (unit, random) => {
      unit.fanMicrofarads = unit.fan.ratedMicrofarads * between(random, 0.1, 0.82);
    },
  },
  'fan-capacitor-open': {
    weight: 3,
    source: LEADING,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.fanMicrofarads = unit.fan.ratedMicrofarads * between(random, 0, 0.05);
    },
  },
  'fan-capacitor-shorted': {
    weight: 0.3,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: put({ fanCapShorted: true }),
  },
  'hard-start-failed': {
    weight: 0.5,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,

    possible: (profile) => profile.hardStart !== false,
    apply: (unit, random) => {
      unit.hardStart = true;
      unit.needsHardStart = true;
      const severity = random();
      // Its capacitor is gone, or whole behind a relay that never closes.
      unit.hardStartMicrofarads = severity < 0.6 ? 40 * (severity / 0.6) : between(random, 88, 230);
    },
  },
  'hard-start-relay-welded': {
    weight: 0.3,
    source: 'common practice: contacts that weld, or a coil that never opens them',
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: (profile) => profile.hardStart === true,
    apply: put({ hardStart: true, startRelayWelded: true }),
  },
  'capacitor-lead-off': {
    weight: 0.3,
    source: PRACTICE,
    graded: true,
    lostMinutes: USUAL_LOSS,
    // Burnt and still conducting it starves the larger section first. Off, the fan may turn all the same: by the wind.
    apply: (unit, random) => {
      const severity = random();
      unit.capacitorLead = severity < 0.4 ? 15 * 40 ** (severity / 0.4) : OPEN;
      unit.fanSpunUp = severity > 0.75;
    },
  },
  'compressor-lead-burnt': {
    weight: 0.8,
    source: 'common practice: the plug at the compressor burns, the start and run leads at the contactor and capacitor',
    graded: true,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.compressorLeadOff = true;
      const severity = random();
      if (severity < 0.3) {
        // Burnt and still conducting: it drops volts as a loose lug does, behind the contactor.
        unit.overload = 0.5 * 80 ** (severity / 0.3);
        return;
      }
      loseLead(unit.compressor, random);
    },
  },
  'compressor-run-winding-open': {
    weight: 0.8,
    source: PRACTICE,
    graded: false,
    lostMinutes: 1800,
    apply: putMotor('compressor', { runOpen: true }),
  },
  'compressor-start-winding-open': {
    weight: 0.8,
    source: PRACTICE,
    graded: false,
    lostMinutes: 1800,
    apply: putMotor('compressor', { startOpen: true }),
  },
  'compressor-grounded': {
    weight: 1.5,
    source: PRACTICE,
    graded: true,
    lostMinutes: 1800,

    apply: (unit, random) => ground(unit, unit.compressor, 0.6, random),
  },
  'compressor-overload-open': {
    weight: 0.7,
    source: PRACTICE,
    graded: false,
    lostMinutes: 1800,
    apply: put({ overload: OPEN }),
  },
  'compressor-seized': {
    weight: 1.2,
    source: PRACTICE,
    graded: false,
    lostMinutes: 1800,
    apply: putMotor('compressor', { seized: true }),
  },
  'crankcase-heater-open': {
    weight: 0.2,
    source: 'common practice: seldom behind "does not cool"',
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: hasHeater,
    apply: put({ heaterOhms: OPEN }),
  },
  'fan-lead-off': {
    weight: 0.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => {
      unit.fanLeadOff = true;
      // With the common lead off the motor's terminals have no volts, mostly: it is off at its other end.
      const lead = loseLead(unit.fan, random);
      if (lead === 'common' && chance(random, 0.8)) unit.defrostRelay = OPEN;
    },
  },
  'fan-run-winding-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: putMotor('fan', { runOpen: true }),
  },
  'fan-start-winding-open': {
    weight: 1,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: putMotor('fan', { startOpen: true }),
  },
  'fan-motor-grounded': {
    weight: 0.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: (unit, random) => ground(unit, unit.fan, 0.15, random),
  },
  'fan-bearings-seized': {
    weight: 1.5,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: putMotor('fan', { seized: true }),
  },
  'defrost-fan-relay-open': {
    weight: 0.7,
    source: PRACTICE,
    graded: false,
    lostMinutes: USUAL_LOSS,
    possible: (profile) => profile.heatPump !== false,
    apply: put({ heatPump: true, defrostRelay: OPEN }),
  },
} as const satisfies Partial<Record<FaultId, FaultModel>>;
