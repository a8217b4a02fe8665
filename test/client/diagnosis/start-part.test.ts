import { describe, expect, it } from 'vitest';
import { Settled } from '../../../client/diagnosis/circuit/settle.ts';
import { FAULT_MODELS } from '../../../client/diagnosis/faults/fault-models.ts';
import { makeDiagnosis } from '../../../client/diagnosis/make-diagnosis.ts';
import { seededRandom } from '../../../client/diagnosis/random.ts';
import { settleMoment } from '../../../client/diagnosis/table/build-table.ts';
import { drawUnit } from '../../../client/diagnosis/unit/draw-unit.ts';
import { DiagnoseSession } from '../../../client/terminal/diagnose-session.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { isProved, proofOf, reading } from './held-readings.ts';

const WITH_START_PART = {
  id: 'start-part',
  supply: { nominal: 240 },
  contactorPoles: 2,
  capacitor: { herm: 45, fan: 5 },
  compressor: { rla: 15.4, lra: 77 },
  refrigerant: 'R-410A',
  hardStart: true,
} as UnitProfile;

function moments(fault: FaultId) {
  return Array.from({ length: 40 }, (_, i) => {
    const random = seededRandom(900 + i);
    const unit = drawUnit(WITH_START_PART, random);
    FAULT_MODELS[fault].apply(unit, random);
    const { cooling } = settleMoment(unit, { cooling: new Settled(), idle: new Settled(), dead: new Settled() });
    return { unit, at: cooling.before ?? cooling };
  });
}

describe('a part that helps a compressor start', () => {
  it('is out of the circuit once the rotor turns, and in it while it stands (common practice)', () => {
    for (const { at } of moments('nothing-wrong')) expect(at.amps('hard-start')).toBe(0);
    for (const { at } of moments('compressor-seized')) expect(at.amps('hard-start')).toBeGreaterThan(2);
  });

  it('stays in behind welded contacts, by the trade formula of microfarads: 2652 times amps over volts (common practice)', () => {
    for (const { unit, at } of moments('hard-start-relay-welded')) {
      expect(at.state.compressor).toBe('turning');
      const microfarads = (2652 * at.amps('hard-start')) / at.volts('T1', 'HERM');
      expect(microfarads / unit.hardStartMicrofarads).toBeCloseTo(1, 2);
      // The lead of the start winding carries what both capacitors do.
      expect(at.amps('compressor-start')).toBeGreaterThan(at.amps('capacitor-herm'));
    }
  });

  it('welded is proved by its amps beside a compressor that turns; one that stands proves nothing', () => {
    const amps = reading('amps-start-capacitor', 18);
    const proof = (look: 'compressor-runs-then-trips' | 'compressor-hums-and-trips') =>
      proofOf('hard-start-relay-welded', [amps, reading('look-compressor', look)], [], { hardStart: true });
    expect(isProved(proof('compressor-runs-then-trips'))).toBe(true);
    expect(isProved(proof('compressor-hums-and-trips'))).toBe(false);
  });

  const CALLS: readonly (readonly [FaultId, Readonly<Record<string, string | number>>])[] = [
    [
      'hard-start-relay-welded',
      {
        'look-outdoor-fan': 'fan-turning',
        'look-compressor': 'compressor-runs-then-trips',
        'look-blower': 'blower-running',
        'amps-compressor': 30,
        'amps-start-capacitor': 19,
      },
    ],
    [
      'hard-start-failed',
      {
        'look-outdoor-fan': 'fan-turning',
        'look-compressor': 'compressor-hums-and-trips',
        'microfarads-herm': 44.8,
        'microfarads-hard-start': 3,
      },
    ],
  ];
  it.each(CALLS)('%s leads after what common practice reads of it', (fault, readings) => {
    const session = new DiagnoseSession(makeDiagnosis(WITH_START_PART));
    for (const [test, value] of Object.entries(readings))
      expect(session.hear(JSON.stringify({ test, reading: value })), test).not.toHaveProperty('error');
    const [leader] = session.status().suspects;
    expect(leader!.fault).toBe(fault);
    expect(leader!.probability).toBeGreaterThan(0.5);
  });
});
