import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { entriesOfDevice, joinDevices } from '../../../grammar/visit/join-devices.ts';
import { wholeBatches } from '../../../grammar/visit/whole-batches.ts';
import { ARRIVAL, LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** As a second device takes the visit over, minutes after the last word of the first. */
async function takenOver(
  first: TypedVisit,
  taking: { readonly role?: 'technician' | 'trainee'; readonly missing?: number; readonly after?: number } = {},
): Promise<TypedVisit> {
  const { after = 1, ...more } = taking;
  const second = new TypedVisit();
  second.clock.step(first.run.context.now.mono / 60_000 + after);
  second.run = VisitRun.takeOver(second.edges(), first.bodies, {
    type: 'took.over.visit',
    from: { device: 'phone', epoch: 1, seq: first.bodies.length, hash: 'a'.repeat(64) },
    lease: 1,
    device: 'tablet',
    role: 'technician',
    software: 'test',
    ...more,
  });
  await second.run.settled();
  return second;
}
const joined = (first: TypedVisit, second: TypedVisit) =>
  joinDevices([...entriesOfDevice('phone', first.events()), ...entriesOfDevice('tablet', second.events())]);

describe('a visit that another device carries on', () => {
  it('holds all that was read, and goes on from there to one record', async () => {
    const first = await TypedVisit.open();
    await first.type(...ARRIVAL, 'leg one to ground one eighteen');
    const second = await takenOver(first);
    expect(second.mouth.said[0]?.text).toBe('Taken over: reading room.');
    await second.type('leg two to ground one nineteen');
    // What the first writes behind that does not count.
    await first.type('leg two to ground zero volts');
    const { entries, leftOut } = joined(first, second);
    const view = foldVisit(entries.map(({ event }) => event));
    expect(view.readings.map(({ reading }) => reading.value)).toEqual([94, 80, 118, 119]);
    expect(view.takeOvers).toMatchObject([{ device: 'tablet', from: { device: 'phone' } }]);
    expect(leftOut).toMatchObject([{ device: 'phone' }]);
    expect(view.readings).toEqual(second.run.context.readings);
  });

  it('believes no proof of other hands (common practice: each who works on it verifies for themselves)', async () => {
    const first = await TypedVisit.open();
    await first.type(...ARRIVAL, ...TO_PROVEN_DEAD);
    expect(first.run.context.energy['outdoor-load']).toBe('proven-dead');
    expect(first.run.context.discharged.length).toBeGreaterThan(0);
    const second = await takenOver(first);
    expect(second.run.context.energy['outdoor-load']).toBe('reported-off');
    expect(second.run.context.discharged).toEqual([]);
    expect(second.mouth.said.map(({ text }) => text)).toContain(
      'Proven by another: prove it dead again before hands go in.',
    );
    await second.type('herm to common thirty two microfarads');
    expect(second.of('reading.refused').map(({ reason }) => reason)).toEqual(['not-proven-dead']);
  });

  it('allows who carries it on what their role allows, whatever a supervisor said to the other', async () => {
    const first = await TypedVisit.open(LIBRARY_UNIT, 'trainee');
    first.run.take({ type: 'supervisor.acknowledged', supervisor: 'S. Visor' });
    await first.run.settled();
    await first.type('leg one to ground one eighteen');
    expect(first.of('reading.logged')).toHaveLength(1);
    const trainee = await takenOver(first, { role: 'trainee' });
    await trainee.type('leg two to ground one nineteen');
    expect(trainee.of('reading.waits')).toHaveLength(1);
    const technician = await takenOver(first);
    await technician.type('leg two to ground one nineteen');
    expect(technician.of('reading.logged')).toHaveLength(1);
  });

  it('puts the question again that stood open, and tells what did not arrive', async () => {
    const first = await TypedVisit.open();
    await first.hear('leg one to ground one sixty');
    expect(first.run.context.questions).not.toEqual([]);
    const second = await takenOver(first, { missing: 3 });
    expect(second.mouth.said.map(({ text }) => text)).toContain(
      '3 entries of the other device did not arrive. Ask what was done.',
    );
    expect(second.run.context.questions).toEqual(first.run.context.questions);
    expect(second.mouth.last()).toBe(first.mouth.last());
  });

  it('is taken up again on the device that took it, and closed there', async () => {
    const first = await TypedVisit.open();
    await first.type(...ARRIVAL);
    const second = await takenOver(first);
    await second.type('leg one to ground one eighteen');
    const again = new TypedVisit();
    again.clock.step(second.run.context.now.mono / 60_000 + 1);
    again.run = await VisitRun.restore(again.edges(), [...first.bodies, ...second.bodies]);
    await again.run.settled();
    expect(again.run.context.readings).toEqual(second.run.context.readings);
    await again.type('finish the visit', 'note the customer sent us away');
    expect(again.of('visit.closed')).toHaveLength(1);
  });

  it('begins behind whole batches: an input of which not all has come does not count', async () => {
    const first = await TypedVisit.open();
    await first.type(...ARRIVAL);
    const events = first.events();
    const starts = events.flatMap(({ type }, at) => (type === 'input.taken' ? [at] : []));
    for (let cut = 1; cut <= events.length; cut += 1) {
      const whole = wholeBatches(events.slice(0, cut));
      expect([...starts, events.length]).toContain(whole);
      expect(whole).toBe([...starts, events.length].findLast((at) => at <= cut));
    }
  });
});
