import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Assessment, Circumstances, Diagnosis, Evidence } from '../../../client/diagnosis/diagnosis.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';

const library: UnitProfile = JSON.parse(readFileSync('fixtures/units/library.json', 'utf8'));

const CALL: Circumstances = { power: 'on', call: 'cooling', bench: false };
const IDLE: Circumstances = { power: 'on', call: 'none', bench: false };
const BENCH: Circumstances = { power: 'off', call: 'none', bench: true };

let seq = 0;
function read(quantity: QuantityId, at: PointId[], value: Value, unit: UnitCode, c = CALL): Evidence {
  seq += 1;
  return { seq, kind: 'reading', quantity, at, value, unit, ...c };
}
const volts = (a: PointId, b: PointId, value: number, c = CALL) => read('voltage', [a, b], value, 'V', c);
function see(observation: ObservationId, c = CALL): Evidence {
  seq += 1;
  return { seq, kind: 'observation', observation, ...c };
}

const leader = (a: Assessment) => a.suspects[0]!;

describe('the visits of the demo', () => {
  let diagnosis: Diagnosis;
  beforeAll(() => {
    diagnosis = diagnosisOf(library);
  });

  it('finds the weak fan section: fan still, compressor running then tripping, 1.1 of 5 microfarads', () => {
    const before = [
      volts('L1', 'L2', 238),
      volts('L1', 'ground', 119),
      volts('L2', 'ground', 119),
      volts('T1', 'T2', 237),
      volts('coil-1', 'coil-2', 25),
      see('fan-not-turning'),
      see('compressor-runs-then-trips'),
    ];
    const half = diagnosis.assess(before, []);
    expect(half.done).toBe(false);
    expect(half.next.slice(0, 4).some((t) => t.at.includes('cap-FAN') || t.at.includes('fan-S'))).toBe(true);
    const bench = read('capacitance', ['cap-C', 'cap-FAN'], 1.1, 'uF', BENCH);
    const after = diagnosis.assess([...before, bench], []);
    expect(leader(after).fault).toBe('fan-capacitor-weak');
    expect(leader(after).probability).toBeGreaterThan(0.95);
    expect(after.done).toBe(true);
    expect(after.confirm).toBe('microfarads-fan');
    const twice = diagnosis.assess([...before, bench, read('capacitance', ['cap-C', 'cap-FAN'], 1.1, 'uF', BENCH)], []);
    expect(twice.confirm).toBeUndefined();
  });

  it('starts again after the repair, with the readings that still hold', () => {
    const weak = read('capacitance', ['cap-C', 'cap-FAN'], 1.1, 'uF', BENCH);
    const herm = read('capacitance', ['cap-C', 'cap-HERM'], 44, 'uF', BENCH);
    const repaired: Evidence = { seq: 99, kind: 'repair', fault: 'fan-capacitor-weak' };
    const after = diagnosis.assess([see('fan-not-turning'), weak, herm, repaired], []);
    const asked = after.next.map((t) => t.id);
    expect(asked).not.toContain('microfarads-herm');
    expect(asked).toContain('look-outdoor-fan');
    expect(leader(after).fault).toBe('nothing-wrong');
  });

  it('finds the open line fuse by 240 volts across it, and announces the back-feed first', () => {
    const before = [
      see('compressor-not-running'),
      volts('coil-1', 'coil-2', 25.4),
      volts('L1', 'L2', 0.2),
      volts('L1', 'ground', 119),
      volts('L2', 'ground', 120),
    ];
    const half = diagnosis.assess(before, []);
    expect(half.hazards).toContain('back-feed');
    expect(half.next[0]!.hazards).toContain('back-feed');
    // Over blade and fuse at once, or over a fuse alone.
    expect(['volts-fuse-1', 'volts-fuse-2', 'volts-blade-1', 'volts-blade-2']).toContain(half.next[0]!.id);
    const blown = [...before, volts('fuse-1-line', 'fuse-1-load', 239)];
    // A shorted capacitor takes a fuse with it as well.
    expect(diagnosis.assess(blown, []).done).toBe(false);
    const whole = [...blown, read('resistance', ['cap-C', 'cap-HERM'], 'open', 'Ohm', BENCH)];
    const unproved = diagnosis.assess(whole, []);
    expect(leader(unproved)).toMatchObject({ fault: 'line-fuse-1-open' });
    // A fuse may have blown on a grounded winding: both shells are read before it is the finding.
    expect(unproved.done).toBe(false);
    expect(
      unproved.next
        .slice(0, 2)
        .map((t) => t.id)
        .sort(),
    ).toEqual(['ohms-compressor-R-shell', 'ohms-fan-frame']);
    const shells = [
      read('resistance', ['comp-R', 'shell'], 'open', 'Ohm', BENCH),
      read('resistance', ['fan-C', 'fan-frame'], 'open', 'Ohm', BENCH),
    ];
    const after = diagnosis.assess([...whole, ...shells], []);
    expect(after).toMatchObject({ done: true, proof: { unproved: [] } });
    // Passed over, they leave the finding by exclusion, and less sure.
    const passed = diagnosis.assess(whole, ['ohms-compressor-R-shell', 'ohms-compressor-shell', 'ohms-fan-frame']);
    expect(passed.done).toBe(true);
    expect(passed.proof?.unproved).toContain('ohms-fan-frame');
    expect(leader(passed).probability).toBeLessThanOrEqual(0.85);
  });

  it('finds low charge from pressures and line temperatures in the same posterior', () => {
    const evidence = [
      see('fan-turning'),
      see('compressor-running'),
      read('temperature', ['return-air'], 78, '[degF]'),
      read('temperature', ['supply-air'], 67, '[degF]'),
      read('temperature', ['outdoor-air'], 88, '[degF]'),
      read('pressure', ['suction-port'], 95, '[psi]'),
      read('temperature', ['suction-line'], 58, '[degF]'),
      read('pressure', ['liquid-port'], 290, '[psi]'),
      read('temperature', ['liquid-line'], 93, '[degF]'),
    ];
    const dry = diagnosis.assess(evidence, []);
    expect(leader(dry).fault).toBe('low-charge');
    // A coil without air reads like one without refrigerant: until the blower was heard it is not proved, nor said so.
    expect(leader(dry).probability).toBeLessThan(0.9);
    const after = diagnosis.assess([...evidence, see('blower-running')], []);
    expect(leader(after).fault).toBe('low-charge');
    expect(leader(after).probability).toBeGreaterThan(0.9);
  });

  it('finds the pole that failed closed on a one-pole contactor', () => {
    const onePole = diagnosisOf({ ...library, contactorPoles: 1 });
    const evidence = [
      see('compressor-running', IDLE),
      volts('coil-1', 'coil-2', 0.1, IDLE),
      volts('T1', 'T2', 239, IDLE),
    ];
    const after = onePole.assess(evidence, []);
    expect(leader(after).fault).toBe('contactor-pole-1-stuck-closed');
    expect(after.done).toBe(true);
    expect(after.hazards).toContain('contactor-may-not-open');
  });

  it('finds a lead and no winding where the start winding draws nothing and every part reads well', () => {
    const evidence = [
      see('fan-turning'),
      see('compressor-hums-and-trips'),
      read('capacitance', ['cap-C', 'cap-HERM'], 44.6, 'uF', BENCH),
      read('resistance', ['comp-C', 'comp-R'], 1.1, 'Ohm', BENCH),
      read('resistance', ['comp-C', 'comp-S'], 2.3, 'Ohm', BENCH),
      read('resistance', ['comp-R', 'comp-S'], 3.4, 'Ohm', BENCH),
      volts('T1', 'T2', 238),
      read('current', ['compressor'], 74, 'A'),
      read('current', ['comp-S'], 0, 'A'),
      read('current', ['comp-S'], 0, 'A'),
    ];
    const after = diagnosis.assess(evidence, []);
    expect(after.suspects.find((s) => s.fault === 'compressor-seized')!.probability).toBeLessThan(0.05);
    expect(leader(after).fault).toBe('compressor-lead-burnt');
  });

  it('gives the same answer for the same evidence, and probabilities that sum to one', () => {
    const evidence = [volts('L1', 'L2', 236), see('fan-not-turning')];
    const once = diagnosis.assess(evidence, []);
    expect(diagnosis.assess(evidence, [])).toEqual(once);
    expect(once.suspects.reduce((sum, s) => sum + s.probability, 0)).toBeCloseTo(1, 9);
  });

  // Common practice: an internal overload closes again once the compressor has cooled, half an hour at the least.
  it('lets a hot compressor cool before its overload is found open for good, and says the minutes', () => {
    const ohms = (a: PointId, b: PointId, value: Value) =>
      read('resistance', [a, b], value, 'Ohm', { ...BENCH, bench: false });
    const hot = [
      see('fan-turning'),
      see('compressor-not-running'),
      see('contactor-pulled-in'),
      volts('T1', 'T2', 238),
      read('current', ['compressor'], 0, 'A'),
      see('compressor-very-hot'),
      read('capacitance', ['cap-C', 'cap-HERM'], 44.6, 'uF', BENCH),
      ohms('comp-R', 'comp-S', 3.4),
      ohms('comp-C', 'comp-R', 'open'),
      ohms('comp-C', 'comp-S', 'open'),
      ohms('comp-R', 'comp-S', 3.4),
      ohms('comp-C', 'comp-R', 'open'),
    ];
    const first = diagnosis.assess(hot, []);
    const wait = first.next.find(({ id }) => id === 'look-compressor-heat');
    expect(leader(first).fault).toBe('compressor-overload-open');
    expect(wait).toMatchObject({ wait: 30 });
    expect(wait!.minutes).toBeGreaterThan(30);
    const cold = diagnosis.assess([...hot, see('compressor-not-hot')], []);
    expect(cold.next.every((test) => test.wait === undefined)).toBe(true);
  });
});
