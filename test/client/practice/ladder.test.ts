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
    const whole = drawLadder({ id: 'x', floatSwitch: 'breaks-Y' } as UnitProfile);
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

  it('hangs the loads on the leg that the wiring has them on', () => {
    const rails = (commonOn: 1 | 2) =>
      drawLadder({ id: 'x' }, commonOn).sections.outdoor.map((rung) => rung.rails.join('-'));
    expect(rails(2)).toContain('T1-T2');
    expect(rails(1)).toContain('T2-T1');
  });
});
