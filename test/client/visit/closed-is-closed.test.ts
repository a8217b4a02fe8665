import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

describe('a visit that is closed', () => {
  const closed = async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'check on me in ten minutes', 'finish the visit', 'the customer wants no more work');
    if (visit.run.context.phase !== 'closed') await visit.type('finish the visit', 'the customer wants no more work');
    expect(visit.run.context.phase).toBe('closed');
    return visit;
  };

  it('is added to by no timer that ran, though hours go by', async () => {
    const visit = await closed();
    const entries = visit.bodies.length;
    for (let left = 240; left > 0; ) {
      left = visit.clock.step(left);
      await visit.run.settled();
    }
    expect(visit.bodies.slice(entries)).toEqual([]);
  });

  it('is added to by no page that opens it again, which is told how it stands all the same', async () => {
    const visit = await closed();
    const entries = visit.bodies.length;
    const again = await VisitRun.restore(visit.edges(), visit.bodies);
    expect(again.context.phase).toBe('closed');
    expect(visit.bodies.slice(entries)).toEqual([]);
  });

  it('still takes what somebody says', async () => {
    const visit = await closed();
    const entries = visit.bodies.length;
    await visit.type('leg one to ground one eighteen');
    expect(visit.bodies.length).toBeGreaterThan(entries);
  });
});
