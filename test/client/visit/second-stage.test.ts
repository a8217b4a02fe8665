import { describe, expect, it } from 'vitest';
import { askWords } from '../../../client/visit/steps/ask-step.ts';
import { actionStep } from '../../../client/visit/steps/plans.ts';
import { LIBRARY_UNIT, TypedVisit } from './typed-visit.ts';

const said = (visit: TypedVisit, words: string) => visit.mouth.said.some(({ text }) => text.includes(words));

describe('a unit with a second stage', () => {
  it('is known by its plate, in whatever words', async () => {
    for (const words of ['nameplate compressor is two stage', 'unit is two stage']) {
      const visit = await TypedVisit.open();
      await visit.type(words);
      expect(visit.run.context.unit).toMatchObject({ twoStage: true, inverterDriven: false });
    }
  });

  it('is called for both stages, and for one where it has one', async () => {
    const asked = async (twoStage: boolean) => {
      const { run } = await TypedVisit.open({ ...LIBRARY_UNIT, twoStage });
      return askWords(actionStep('call-on', 'none'), run.context);
    };
    expect(await asked(true)).toContain('both stages');
    expect(await asked(false)).not.toContain('stage');
  });

  it('takes readings of Y2 into the record', async () => {
    const visit = await TypedVisit.open({ ...LIBRARY_UNIT, twoStage: true });
    await visit.type('Y two to C at the condenser twenty six volts', 'R to Y two at the thermostat zero volts');
    expect(visit.of('reading.logged').map(({ reading }) => [reading.at.join(' '), reading.value])).toEqual([
      ['C@condenser Y2@condenser', 26],
      ['R@thermostat Y2@thermostat', 0],
    ]);
  });

  it('is asked about before a reading of one is taken on a unit listed without', async () => {
    const visit = await TypedVisit.open({ ...LIBRARY_UNIT, twoStage: false });
    await visit.type('Y two to C at the condenser twenty six volts');
    expect(said(visit, 'without a second stage')).toBe(true);
    expect(visit.of('reading.logged')).toEqual([]);
  });
});
