import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

async function provenDead(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
  expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
  return visit;
}

const POWER = ['disconnect is back in', 'outdoor disconnect is back in', 'outdoor disconnect is unlocked'] as const;
const OHMS = ['fan section five ohms', 'common to run two ohms', 'fan section five point one microfarads'] as const;
const PAIRED = POWER.flatMap((power) => OHMS.map((ohms) => [power, ohms] as const));

describe('in one breath', () => {
  it.each(PAIRED)('power that is back refuses what comes behind it: %s and %s', async (power, ohms) => {
    const visit = await provenDead();
    const logged = visit.of('reading.logged').length;
    await visit.type(`${power} and ${ohms}`);
    expect(['live', 'unknown']).toContain(visit.run.context.energy['outdoor-load']);
    expect(visit.of('reading.logged')).toHaveLength(logged);
    expect(visit.of('reading.refused').at(-1)).toMatchObject({ reason: 'not-proven-dead' });
  });

  it.each(PAIRED)('%s ends the proof behind what was read before it: %s', async (power, ohms) => {
    const visit = await provenDead();
    const logged = visit.of('reading.logged').length;
    await visit.type(`${ohms} and ${power}`);
    expect(['live', 'unknown']).toContain(visit.run.context.energy['outdoor-load']);
    expect(visit.of('reading.logged')).toHaveLength(logged + 1);
    expect(visit.of('reading.refused')).toEqual([]);
  });

  it('a voltage refuses the ohms behind it', async () => {
    const visit = await provenDead();
    await visit.type('leg one to ground one eighteen and common to run two ohms');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    expect(visit.of('reading.refused').at(-1)).toMatchObject({ reading: { quantity: 'resistance' } });
  });

  it('both charges released let the ohms behind them count', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD.slice(0, -2));
    await visit.type('herm section zero volts d c and fan section zero volts d c');
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
  });

  it('is restored from the record as it was', async () => {
    const visit = await provenDead();
    await visit.type('outdoor disconnect is back in and common to run two ohms');
    const again = new TypedVisit();
    again.clock.step(visit.run.context.now.mono / 60_000);
    again.run = await VisitRun.restore(again.edges(), visit.bodies);
    await again.run.settled();
    expect(again.run.context.energy).toEqual(visit.run.context.energy);
    expect(again.run.context.readings).toEqual(visit.run.context.readings);
    expect(again.of('energy.changed')).toEqual([]);
  });
});
