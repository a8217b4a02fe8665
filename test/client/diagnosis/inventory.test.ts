import { describe, expect, it } from 'vitest';
import { FAULT_MODELS } from '../../../client/diagnosis/faults/fault-models.ts';
import { HAZARD_SIGNS } from '../../../client/diagnosis/hazards/hazard-signs.ts';
import { TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { buildTable } from '../../../client/diagnosis/table/build-table.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';
import { HAZARDS } from '../../../grammar/vocabulary/hazards.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import { TESTS } from '../../../grammar/vocabulary/tests.ts';

describe('what the diagnosis knows', () => {
  it('at least 55 faults, each with a weight and where it comes from', () => {
    expect(FAULTS.length).toBeGreaterThanOrEqual(55);
    for (const { id } of FAULTS) {
      expect(FAULT_MODELS[id].weight).toBeGreaterThan(0);
      expect(FAULT_MODELS[id].source).not.toBe('');
    }
  });

  it('at least 75 tests worth asking for, each of which can be said', () => {
    const asked = TESTS.filter(({ id }) => !TEST_MODELS[id].onlyVolunteered);
    expect(asked.length).toBeGreaterThanOrEqual(75);
    const sayable = new Set(MEASURANDS.map((m) => `${m.quantity} ${[...m.at].sort().join()}`));
    for (const { id } of TESTS) {
      const { quantity, at, function: fn } = TEST_MODELS[id];
      if (fn !== 'look') expect(sayable, id).toContain(`${quantity} ${[...at].sort().join()}`);
    }
  });

  it('ids and names that are never used twice', () => {
    for (const rows of [FAULTS, TESTS, HAZARDS]) {
      expect(new Set(rows.map((r) => r.id)).size).toBe(rows.length);
      expect(new Set(rows.map((r) => r.name)).size).toBe(rows.length);
    }
  });

  it('live tests carry line voltage, dead ones what stays live, bench ones a part out of the circuit', () => {
    for (const { id } of TESTS) {
      const { needs, hazards, function: fn, place } = TEST_MODELS[id];
      if (fn === 'volts' && (place === 'disconnect' || place === 'panel'))
        expect(hazards, id).toContain('line-voltage');
      if (fn === 'ohms' || fn === 'microfarads') {
        expect(needs.power, id).toBe('off');
        expect(hazards, id).toContain('line-side-stays-live');
      }
    }
  });

  it('every fault moves some test that is worth asking for', () => {
    const table = buildTable({ id: 'x', hardStart: true, twoStage: true, refrigerant: 'R-410A' }, { fineness: 0.5 });
    for (const [f, fault] of table.faults.entries()) {
      if (fault === 'nothing-wrong' || fault === 'something-else') continue;
      const moved = table.columns.some(
        (c, t) => c !== null && c.start[f]! >= 0 && !TEST_MODELS[table.tests[t]!].onlyVolunteered,
      );
      expect(moved, fault).toBe(true);
    }
  });

  it('no more hazard signs than bits to hold them', () => {
    expect(HAZARD_SIGNS.length).toBeLessThanOrEqual(32);
  });
});
