import { describe, expect, it } from 'vitest';
import { TIMES_UNANSWERED } from '../../../client/visit/intake/check-on-me.ts';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { TypedVisit } from './typed-visit.ts';

const times = (visit: TypedVisit) => visit.of('check.asked').length;

describe('the check on a lone worker', () => {
  it('is never put unless it was asked for', async () => {
    const visit = await TypedVisit.open();
    await visit.later(90);
    expect(visit.mouth.said.some((prompt) => prompt.text.startsWith('Check'))).toBe(false);
  });

  it('is put every so many minutes, and begins anew with its answer', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me every twenty minutes');
    expect(visit.mouth.last()).toContain('Checking on you every twenty minutes');
    await visit.later(19);
    expect(times(visit)).toBe(0);
    await visit.later(1.1);
    expect(times(visit)).toBe(1);
    expect(visit.mouth.last()).toBe('Check: say "I am fine".');
    await visit.type('I am fine');
    expect(visit.of('check.answered')).toHaveLength(1);
    await visit.later(19);
    expect(times(visit)).toBe(1);
    await visit.later(1.5);
    expect(times(visit)).toBe(2);
  });

  it('is put once where it was asked for once', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me in ten');
    await visit.later(10.1);
    expect(times(visit)).toBe(1);
    await visit.type('I am okay');
    await visit.later(60);
    expect(times(visit)).toBe(1);
    expect(visit.run.context.check).toBeUndefined();
  });

  it('without an answer is put again each minute with more words, and stands in the record as unanswered', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me in ten');
    await visit.later(10.1);
    await visit.later(1.1);
    expect(visit.mouth.last()).toContain('Check again');
    expect(visit.of('check.unanswered')).toEqual([]);
    await visit.later(1.1);
    expect(times(visit)).toBe(TIMES_UNANSWERED);
    expect(visit.of('check.unanswered')).toHaveLength(1);
    expect(visit.mouth.last()).toContain('call for help');
    expect(foldVisit(visit.events()).unanswered).toHaveLength(1);
    await visit.later(1.1);
    expect(times(visit)).toBe(TIMES_UNANSWERED + 1);
    await visit.type('I am fine');
    await visit.later(30);
    expect(times(visit)).toBe(TIMES_UNANSWERED + 1);
  });

  it('is not answered by other talk', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me in ten');
    await visit.later(10.1);
    await visit.type('outdoor air ninety four degrees');
    await visit.later(1.1);
    expect(times(visit)).toBe(2);
  });

  it('ends when it is cancelled, and with the visit', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me every ten minutes', 'cancel the check');
    await visit.later(30);
    expect(times(visit)).toBe(0);
    await visit.type('check on me every ten minutes', 'finish the visit');
    await visit.later(30);
    expect(times(visit)).toBe(0);
    expect(foldVisit(visit.events()).check).toBeUndefined();
  });

  it('runs on while the visit is held', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me in ten', 'hold the visit');
    await visit.later(10.1);
    expect(times(visit)).toBe(1);
  });

  it('is put within a minute of an injury, however far it was, and goes on until somebody answers', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me every twenty minutes', 'I got bit');
    expect(visit.mouth.said.at(-1)?.text).toContain('Call for help');
    expect(visit.run.context.held).toBe(true);
    await visit.later(1.1);
    expect(times(visit)).toBe(1);
    await visit.later(2.2);
    expect(visit.of('check.unanswered').length).toBeGreaterThan(0);
  });

  it('is taken up after a pause: one that fell due meanwhile is put at once', async () => {
    const visit = await TypedVisit.open();
    await visit.type('check on me in ten');
    const again = new TypedVisit();
    again.clock.step(visit.run.context.now.mono / 60_000 + 25);
    again.bodies.push(...visit.bodies);
    again.run = await VisitRun.restore(again.edges(), visit.bodies);
    await again.later(0.1);
    expect(times(again)).toBe(1);
  });
});
