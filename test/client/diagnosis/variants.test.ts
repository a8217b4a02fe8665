import { describe, expect, it } from 'vitest';
import { Settled, settle } from '../../../client/diagnosis/circuit/settle.ts';
import { FAULT_MODELS } from '../../../client/diagnosis/faults/fault-models.ts';
import { PROOF_ROWS } from '../../../client/diagnosis/proof/proof-rows.ts';
import { proveRow } from '../../../client/diagnosis/proof/weigh-proof.ts';
import { seededRandom } from '../../../client/diagnosis/random.ts';
import { testsFor } from '../../../client/diagnosis/table/build-table.ts';
import { drawUnit } from '../../../client/diagnosis/unit/draw-unit.ts';
import type { Unit } from '../../../client/diagnosis/unit/unit.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

const OPEN = Number.POSITIVE_INFINITY;

/** Units with a fault as the table draws them. */
function units(fault: FaultId, plate: Partial<UnitProfile> = {}): Unit[] {
  return Array.from({ length: 240 }, (_, i) => {
    const random = seededRandom(7000 + i);
    const unit = drawUnit({ id: 'x', ...plate } as UnitProfile, random);
    FAULT_MODELS[fault].apply(unit, random);
    return unit;
  });
}

const some = (fault: FaultId, is: (unit: Unit) => boolean, plate: Partial<UnitProfile> = {}) =>
  expect(units(fault, plate).filter(is).length, fault).toBeGreaterThan(0);

/** What units have come to under a call. */
function settled(fault: FaultId, plate: Partial<UnitProfile> = {}) {
  return units(fault, plate).map((unit) => {
    const into = new Settled();
    settle(unit, true, false, into);
    return into.state;
  });
}

/** Everything that a row asks for before anything was read. */
function asked(fault: FaultId): string[] {
  const standing = { all: [], taken: new Map(), repaired: [] };
  const read = { standing, profile: { id: 'x' } as UnitProfile, canBeDone: () => true, isThere: () => true };
  return proveRow(PROOF_ROWS[fault], read).lacking.flat(2);
}

/** Faults and variants that a list of single, whole faults leaves out (common practice). */
describe('faults as they come', () => {
  it('a thermostat makes G and not Y, neither, or Y and not G', () => {
    some('thermostat-not-calling', (u) => !u.thermostatCalls && u.thermostatCallsBlower);
    some('thermostat-not-calling', (u) => !u.thermostatCalls && !u.thermostatCallsBlower);
    some('thermostat-no-fan-call', (u) => u.thermostatCalls && !u.thermostatCallsBlower);
    expect(asked('thermostat-not-calling')).toContain('volts-R-Y-thermostat');
  });

  it('a grounded winding takes one fuse, both, or the breaker; a fuse goes by age as well', () => {
    for (const fault of ['compressor-grounded', 'fan-motor-grounded'] as const) {
      const one = (u: Unit) => u.fuse.filter((ohms) => ohms === OPEN).length === 1;
      some(fault, one);
      some(fault, (u) => u.fuse.every((ohms) => ohms === OPEN));
      some(fault, (u) => u.breaker.every((ohms) => ohms === OPEN));
    }
    some('line-fuse-1-open', (u) => u.fuse[0] === OPEN && u.compressor.shellOhms > 1e6);
  });

  it('windings are read to their shells after any blown fuse and any tripped breaker', () => {
    for (const fault of ['line-fuse-1-open', 'line-fuse-2-open', 'breaker-tripped'] as const) {
      expect(asked(fault)).toEqual(expect.arrayContaining(['ohms-compressor-shell', 'ohms-fan-frame']));
    }
  });

  it('blade and jaw of the disconnect burn through, or conduct and drop volts', () => {
    for (const leg of [0, 1] as const) {
      some(`disconnect-blade-${leg === 0 ? 1 : 2}-burnt`, (u) => u.blade[leg] === OPEN);
      some(`disconnect-blade-${leg === 0 ? 1 : 2}-burnt`, (u) => u.blade[leg] > 0.4 && u.blade[leg] < 100);
    }
  });

  it('leads burn at the compressor, the capacitor and the contactor', () => {
    some('compressor-lead-burnt', (u) => u.compressor.startOpen && !u.compressor.runOpen);
    some('compressor-lead-burnt', (u) => u.compressor.runOpen && !u.compressor.startOpen);
    some('compressor-lead-burnt', (u) => u.overload > 0.4 && u.overload < 100);
    some('capacitor-lead-off', (u) => u.capacitorLead === OPEN && u.fanSpunUp);
    some('capacitor-lead-off', (u) => u.capacitorLead > 10 && u.capacitorLead < 1000);
    some('loose-lug-1', (u) => u.whip[0] > 0.9);
  });

  it('cause and effect come together: what the first did is found beside it', () => {
    expect(settled('herm-capacitor-weak').some((s) => s.overloadTripped)).toBe(true);
    expect(settled('condenser-dirty', { pressureSwitches: true }).some((s) => s.highTripped)).toBe(true);
    some('low-charge', (u) => u.coilIced);
    some('low-charge', (u) => u.lowSwitch === OPEN, { pressureSwitches: true });
    expect(settled('control-short-R-C').filter((s) => s.controlFuseBlown).length).toBeGreaterThan(100);
    expect(settled('control-short-Y-C').filter((s) => s.controlFuseBlown).length).toBeGreaterThan(100);
  });

  it('a valve that starves its coil raises superheat though it is wide open', () => {
    some('liquid-restriction', (u) => u.residuals.superheat > 10 && u.residuals.subcooling > 3, {
      metering: 'thermostatic-valve',
    });
  });

  it('what closes by itself is waited for: an overload half an hour, a delay five minutes', () => {
    expect(PROOF_ROWS['compressor-overload-open'].afterWait?.minutes).toBe(30);
    expect(PROOF_ROWS['delay-stays-open'].afterWait?.minutes).toBe(5);
  });

  it('air handlers hang on 120 volts as well, and a blower with a drive has no capacitor to read', () => {
    const plain = units('filter-dirty');
    expect(plain.some((u) => u.handlerAt120)).toBe(true);
    expect(plain.some((u) => !u.handlerAt120)).toBe(true);
    expect(testsFor({ id: 'x', blowerDrive: 'electronic' })).not.toContain('microfarads-blower');
    expect(testsFor({ id: 'x', blowerDrive: 'capacitor' })).toContain('microfarads-blower');
  });

  it('a leak of kilohms trips a ground-fault breaker and no other', () => {
    const leaks = units('compressor-grounded').filter((u) => u.compressor.shellOhms > 60);
    expect(leaks.some((u) => u.breaker.every((ohms) => ohms === OPEN) && u.compressor.shellOhms < 24_000)).toBe(true);
    expect(leaks.some((u) => u.breaker.every((ohms) => ohms !== OPEN))).toBe(true);
    expect(leaks.every((u) => u.breaker.every((ohms) => ohms !== OPEN) || u.compressor.shellOhms < 24_000)).toBe(true);
  });

  it('a start part is gone, or whole behind a relay that does not close', () => {
    some('hard-start-failed', (u) => u.needsHardStart && u.hardStartMicrofarads < 40);
    some('hard-start-failed', (u) => u.needsHardStart && u.hardStartMicrofarads > 80);
  });
});
