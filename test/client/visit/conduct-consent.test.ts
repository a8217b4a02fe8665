import { describe, expect, it } from 'vitest';
import { ARRIVAL, LIBRARY_VISIT, TO_PROVEN_DEAD, TypedVisit, WEAK_FAN } from './typed-visit.ts';

const FOUND = [...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD] as const;
const WEAK = WEAK_FAN;

/** Work goes on where its facts left it: our rule. */
describe('a customer who agrees after all', () => {
  it.each([
    ['on arrival', [], 'arrive'],
    ['in the middle of arrival', ARRIVAL.slice(0, 2), 'arrive'],
    ['while testing', [...ARRIVAL, 'compressor runs then trips'], 'testing'],
    ['after the finding', [...FOUND, ...WEAK], 'repair'],
    ['while the repair is proved', LIBRARY_VISIT, 'prove'],
  ] as const)('%s takes up the work there', async (_, lines, phase) => {
    for (const [no, yes] of [
      ['customer declined', 'customer agrees'],
      ['the work is declined', 'the work is approved'],
      ['consent refused', 'we have consent'],
    ] as const) {
      const visit = await TypedVisit.open();
      await visit.type(...lines);
      expect(visit.run.context.phase).toBe(phase);
      const { step } = visit.run.context;
      await visit.type(no);
      expect(visit.run.context.phase).toBe('close');
      await visit.type(yes);
      expect(visit.run.context.phase).toBe(phase);
      if (phase !== 'arrive') expect(visit.run.context.step?.id).toBe(step?.id);
      expect(visit.mouth.said.map(({ text }) => text)).toContain('The work goes on.');
    }
  });

  it('has agreed no more where that is taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'customer declined', 'customer agrees', 'take that back');
    expect(visit.run.context.phase).toBe('close');
    await visit.type('take that back');
    expect(visit.run.context.phase).toBe('testing');
  });
});
