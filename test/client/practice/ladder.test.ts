import { describe, expect, it } from 'vitest';
import { TEST_IDS, TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { drawExercise, readPlan } from '../../../client/practice/exercise-plan.ts';
import { drawLadder, type Ladder } from '../../../client/practice/ladder/draw-ladder.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

const terminals = (ladder: Ladder) =>
  Object.values(ladder.sections)
    .flat()
    .flatMap(({ items }) => items.flatMap((item) => (item.kind === 'terminal' ? [item.point] : [])));

describe('the ladder diagram', () => {
  it('shows each terminal once', () => {
    for (const seed of [410, 420, 430, 440, 450, 460]) {
      const shown = terminals(drawLadder(drawExercise(readPlan(`motors-${seed}`)).profile));
      expect(shown.filter((point, at) => shown.indexOf(point) !== at)).toEqual([]);
    }
  });

  it('shows every terminal that the planner may ask for between two probes on the whole unit', () => {
    const whole = drawLadder({ id: 'x', floatSwitch: 'breaks-Y', twoStage: true } as UnitProfile);
    const asked = TEST_IDS.map((id) => TEST_MODELS[id])
      .filter(({ at }) => at.length === 2)
      .flatMap(({ at }) => at);
    expect([...new Set(asked)].filter((point) => !terminals(whole).includes(point))).toEqual([]);
  });

  it('draws a unit of which nothing is known, and says what is not', () => {
    const { notSaid, sections } = drawLadder({ id: 'unit' });
    expect(notSaid).toEqual(
      expect.arrayContaining(['crankcase-heater', 'fuse-1', 'pole-2', 'high-switch', 'hard-start']),
    );
    expect(sections.outdoor.length).toBeGreaterThan(4);
  });

  it('leaves out what the unit has not, and names nothing as open where all is told', () => {
    const { profile } = drawExercise(readPlan('motors-411'));
    const told = { ...profile, crankcaseHeater: false, hardStart: false } as UnitProfile;
    const { notSaid, sections } = drawLadder(told);
    expect(notSaid).toEqual([]);
    const parts = Object.values(sections)
      .flat()
      .flatMap(({ items }) => items.flatMap((item) => (item.kind === 'part' ? [item.branch] : [])));
    expect(parts).not.toContain('crankcase-heater');
    expect(parts).not.toContain('hard-start');
  });

  it('draws the second stage of a unit that has one, and of no other', () => {
    const rungs = (unit: UnitProfile) =>
      drawLadder(unit).sections.control.map(({ items }) =>
        items.map((item) => (item.kind === 'terminal' ? item.point : item.branch)),
      );
    const ofStage = rungs({ id: 'x', twoStage: true }).find((items) => items.includes('unloader-solenoid'));
    expect(ofStage).toEqual([
      'R-wire-indoors',
      'call-Y2',
      'Y2@thermostat',
      'Y2-wire-indoors',
      'Y2@air-handler',
      'Y2-wire-outdoors',
      'Y2@condenser',
      'unloader-1',
      'unloader-solenoid',
      'unloader-2',
      'C-wire-outdoors',
    ]);
    expect(rungs({ id: 'x' }).flat()).not.toContain('unloader-solenoid');
  });

  it('hangs the loads on the leg that the wiring has them on', () => {
    const rails = (commonOn: 1 | 2) =>
      drawLadder({ id: 'x' }, commonOn).sections.outdoor.map((rung) => rung.rails.join('-'));
    expect(rails(2)).toContain('T1-T2');
    expect(rails(1)).toContain('T2-T1');
  });
});
