import { describe, expect, it } from 'vitest';
import { isHeldBack } from '../../../client/visit/steps/answers-caution.ts';
import { actionStep } from '../../../client/visit/steps/plans.ts';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

/** A caution whose step was not in its breath: a number that comes then belongs to nothing else. */
const ALONE = { spoken: [], zone: 'outdoor-load', prompts: [], isSpoken: true, withStep: false } as const;

describe('a step that was not in the breath of its caution', () => {
  it('waits, but a discharge: its caution says itself what is to be read', () => {
    expect(isHeldBack({ step: actionStep('absence-proved', 'control'), caution: ALONE })).toBe(true);
    expect(isHeldBack({ step: actionStep('capacitors-discharged', 'outdoor-load'), caution: ALONE })).toBe(false);
    expect(
      isHeldBack({
        step: actionStep('capacitors-discharged', 'outdoor-load'),
        caution: { ...ALONE, isSpoken: false },
      }),
    ).toBe(true);
  });

  it('is asked for by its caution first, and a number is taken for no other place', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL);
    visit.mouth.cutNext = 1;
    await visit.type('compressor is not running');
    expect(visit.run.context.caution).toBeDefined();
    const logged = visit.of('reading.logged').length;
    await visit.type('twenty six point eight');
    expect(visit.of('reading.logged')).toHaveLength(logged);
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.mouth.said.map(({ text }) => text)).toContain('Say "live" first.');
  });
});
