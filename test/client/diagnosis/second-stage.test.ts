import { describe, expect, it } from 'vitest';
import { Settled } from '../../../client/diagnosis/circuit/settle.ts';
import { FAULT_MODELS } from '../../../client/diagnosis/faults/fault-models.ts';
import { makeDiagnosis } from '../../../client/diagnosis/make-diagnosis.ts';
import { seededRandom } from '../../../client/diagnosis/random.ts';
import { buildTable, settleMoment, testsFor } from '../../../client/diagnosis/table/build-table.ts';
import { drawUnit } from '../../../client/diagnosis/unit/draw-unit.ts';
import { DiagnoseSession } from '../../../client/terminal/diagnose-session.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { isProved, proofOf, reading } from './held-readings.ts';

const STAGE_FAULTS = [
  'thermostat-no-second-stage',
  'Y2-wire-broken',
  'unloader-solenoid-open',
  'unloader-stuck-unloaded',
] as const satisfies readonly FaultId[];

/** An invented unit of three tons with two stages. */
const TWO_STAGE = {
  id: 'two-stage',
  supply: { nominal: 240 },
  contactorPoles: 2,
  capacitor: { herm: 45, fan: 5 },
  compressor: { rla: 15.4, lra: 77 },
  refrigerant: 'R-410A',
  metering: 'thermostatic-valve',
  heatPump: false,
  hardStart: false,
  twoStage: true,
} as UnitProfile;

/** What a unit with a fault has come to under a call, for units as the table draws them. */
function moments(fault: FaultId, count = 40) {
  return Array.from({ length: count }, (_, i) => {
    const random = seededRandom(500 + i);
    const unit = drawUnit(TWO_STAGE, random);
    FAULT_MODELS[fault].apply(unit, random);
    const { cooling, dead } = settleMoment(unit, { cooling: new Settled(), idle: new Settled(), dead: new Settled() });
    return { unit, cooling, dead };
  });
}

describe('a second stage', () => {
  it('is in where its solenoid has its volts, and the compressor then draws a quarter to two thirds more (common practice: from two thirds of the load to all of it)', () => {
    const loaded = moments('nothing-wrong');
    const stuck = moments('unloader-stuck-unloaded');
    loaded.forEach(({ cooling }, i) => {
      expect(cooling.state).toMatchObject({ compressor: 'turning', unloaded: false });
      expect(cooling.volts('Y2-condenser', 'C-condenser')).toBeGreaterThan(19);
      const without = stuck[i]!.cooling;
      expect(without.state.unloaded).toBe(true);
      const rise = cooling.amps('overload') / without.amps('overload');
      expect(rise).toBeGreaterThan(1.15);
      expect(rise).toBeLessThan(1.8);
    });
  });

  it.each(STAGE_FAULTS)('%s: it runs, and one stage is all there is', (fault) => {
    for (const { cooling } of moments(fault))
      expect(cooling.state).toMatchObject({ contactor: true, compressor: 'turning', fan: 'turning', unloaded: true });
  });

  it('needs the common of its contactor: without it neither has volts', () => {
    for (const { unit, cooling } of moments('C-wire-broken')) {
      if (unit.cWire !== Number.POSITIVE_INFINITY) continue;
      expect(cooling.state.contactor).toBe(false);
      expect(cooling.volts('Y2-condenser', 'C-condenser')).toBeLessThan(5);
    }
  });

  it('is asked about, and blamed, on units that have one alone', () => {
    const { twoStage: _, ...oneStage } = TWO_STAGE;
    for (const plate of [oneStage, { ...oneStage, twoStage: false }] as UnitProfile[]) {
      expect(testsFor(plate).filter((id) => /Y2|unloader|second-stage/.test(id))).toEqual([]);
      const { faults } = buildTable(plate, { fineness: 0.1 });
      expect(faults.filter((id) => (STAGE_FAULTS as readonly FaultId[]).includes(id))).toEqual([]);
    }
    expect(buildTable(TWO_STAGE, { fineness: 0.1 }).faults).toEqual(expect.arrayContaining([...STAGE_FAULTS]));
  });
});

/** Common practice: volts at the end of the wire, then the coil, then the way back; what no lead reaches by exclusion. */
describe('what a second stage is proved by', () => {
  const calls = [reading('volts-R-Y-thermostat', 0.2), reading('volts-Y-C-condenser', 26)];
  const proof = (fault: FaultId, ...readings: Parameters<typeof proofOf>[1]) =>
    proofOf(fault, [...calls, ...readings], [], { twoStage: true });

  it('a thermostat that calls for one stage: its volts stand between R and Y2', () => {
    const held = [reading('volts-R-Y2-thermostat', 26.1), reading('volts-Y2-C-condenser', 0.3)];
    expect(isProved(proof('thermostat-no-second-stage', ...held))).toBe(true);
    expect(proof('Y2-wire-broken', ...held).denied).not.toEqual([]);
  });

  it('a broken wire: none between R and Y2, and none at its other end', () => {
    const broken = [reading('volts-R-Y2-thermostat', 0.1), reading('volts-Y2-C-condenser', 0.2)];
    expect(isProved(proof('Y2-wire-broken', ...broken))).toBe(true);
    expect(proof('thermostat-no-second-stage', ...broken).denied).not.toEqual([]);
  });

  it('an open solenoid by its ohms; a stuck valve by what is left, never outright', () => {
    const fed = reading('volts-Y2-C-condenser', 26);
    expect(isProved(proof('unloader-solenoid-open', reading('ohms-unloader', 'open')))).toBe(true);
    const stuck = [fed, reading('ohms-unloader', 34), reading('look-second-stage', 'second-stage-no-change')];
    const left = proof('unloader-stuck-unloaded', ...stuck);
    expect(left).toMatchObject({ lacking: [], denied: [] });
    expect(left.unproved).not.toEqual([]);
    expect(
      proof('unloader-stuck-unloaded', ...stuck.slice(0, 2), reading('look-second-stage', 'second-stage-loads')).denied,
    ).not.toEqual([]);
  });
});

/** Calls for "cools, not enough on hot days", read through the lines of the tool: what common practice would name. */
describe('a weak second stage in the lines of diagnose', () => {
  const diagnosis = makeDiagnosis(TWO_STAGE);
  const RUNS = {
    'look-outdoor-fan': 'fan-turning',
    'look-compressor': 'compressor-running',
    'look-blower': 'blower-running',
    'look-filter': 'filter-clean',
    'look-outdoor-coil': 'outdoor-coil-clean',
    'temperature-return-air': 80,
    'wet-bulb-return-air': 67,
    'temperature-supply-air': 66,
    'look-second-stage': 'second-stage-no-change',
  } as const;
  const CALLS: readonly (readonly [FaultId, Readonly<Record<string, string | number>>])[] = [
    [
      'thermostat-no-second-stage',
      { 'volts-Y2-C-condenser': 0.2, 'volts-R-Y2-thermostat': 26.3, 'volts-R-Y-thermostat': 0.1 },
    ],
    ['Y2-wire-broken', { 'volts-Y2-C-condenser': 0.2, 'volts-R-Y2-thermostat': 0.1, 'volts-Y-C-condenser': 26 }],
    ['unloader-solenoid-open', { 'volts-Y2-C-condenser': 26, 'ohms-unloader': 'open' }],
    ['unloader-stuck-unloaded', { 'volts-Y2-C-condenser': 26, 'ohms-unloader': 36 }],
  ];

  it.each(CALLS)('%s leads', (fault, own) => {
    const session = new DiagnoseSession(diagnosis);
    for (const [test, value] of Object.entries({ ...RUNS, ...own })) {
      const said = session.hear(JSON.stringify({ test, reading: value }));
      expect(said, test).not.toHaveProperty('error');
    }
    const { suspects } = session.status();
    expect(suspects[0]!.fault).toBe(fault);
    // Each was read once, and the last is what is left.
    expect(suspects[0]!.probability).toBeGreaterThan(0.45);
  });
});
