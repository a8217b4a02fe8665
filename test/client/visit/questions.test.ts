import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

/** Two readings that are asked back, in one breath. */
const TWO_DOUBTS = 'leg one to ground one thirty five, leg two to ground one thirty six';

const put = (visit: TypedVisit) => visit.mouth.said.filter(({ kind }) => kind === 'question').map(({ text }) => text);

describe('a question', () => {
  it('waits while another stands, and is put when that is answered', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS);
    expect(visit.run.context.questions).toHaveLength(2);
    expect(put(visit)).toHaveLength(1);
    await visit.type('yes');
    expect(put(visit)).toHaveLength(2);
    await visit.type('no');
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('reading.logged').map(({ reading }) => reading.value)).toEqual([135]);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'withdrawn-by-technician', reading: { value: 136 } }]);
    expect(visit.of('question.ended').map(({ number, how }) => [number, how])).toEqual([
      [1, 'answered'],
      [2, 'answered'],
    ]);
  });

  it('holds the next step back, which is asked once none is left', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL);
    const steps = visit.of('step.asked').length;
    await visit.type('no', 'leg one to ground one thirty five');
    expect(visit.of('step.asked')).toHaveLength(steps);
    await visit.type('no');
    expect(visit.run.context.questions).toEqual([]);
  });

  it('that nobody answers is let go after a minute, and what it asked of does not count', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one thirty five');
    await visit.later(0.5);
    expect(visit.run.context.questions).toHaveLength(1);
    await visit.later(1);
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('question.ended')).toMatchObject([{ how: 'expired' }]);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'not-answered', reading: { value: 135 } }]);
    expect(visit.mouth.said.map(({ text }) => text)).toContain('Not answered. Left out.');
  });

  it('is given a minute of its own, however long the one before it stood', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS);
    await visit.later(0.8);
    await visit.type('yes');
    await visit.later(0.5);
    expect(openQuestion(visit.run.context)).toMatchObject({ reading: { value: 136 } });
    await visit.later(1);
    expect(visit.run.context.questions).toEqual([]);
  });

  it('is withdrawn by taking back what it asks of', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg two to ground one nineteen', 'leg one to ground one thirty five', 'take that back');
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('question.ended')).toMatchObject([{ how: 'withdrawn' }]);
    expect(visit.of('reading.withdrawn')).toEqual([]);
    await visit.type('take that back');
    expect(visit.of('reading.withdrawn')).toHaveLength(1);
  });

  it('is withdrawn when the visit closes over it', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS, 'finish the visit', 'note the meter is broken');
    expect(visit.run.context.phase).toBe('closed');
    expect(visit.of('question.ended').map(({ how }) => how)).toEqual(['withdrawn', 'withdrawn']);
  });

  it('is put again when the visit is taken up from its record', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS);
    const again = new TypedVisit();
    again.bodies.push(...visit.bodies);
    again.clock.step(visit.run.context.now.mono / 60_000);
    again.run = await VisitRun.restore(again.edges(), visit.bodies);
    await again.run.settled();
    expect(put(again)).toEqual(put(visit));
    await again.type('yes', 'yes');
    expect(again.of('reading.logged').map(({ reading }) => reading.value)).toEqual([135, 136]);
  });
});
