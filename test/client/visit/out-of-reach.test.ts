import { describe, expect, it } from 'vitest';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** "I cannot get to it", as people say it. Common practice. */
const CANNOT = ["can't get to it", 'cannot reach it', "I can't reach that", "can't get at it", 'skip it'] as const;

const REPAIRED = [
  ...ARRIVAL,
  'compressor runs then trips',
  ...TO_PROVEN_DEAD,
  'fan section one point one microfarads on the bench',
  'fan section one point two microfarads on the bench',
  'fitted a forty five over five dual capacitor four forty volt',
] as const;

/** Where the visit stands, and the way that is asked for there. */
const WAYS = {
  'energy.call-on': [...ARRIVAL, 'compressor runs then trips', 'pass', 'thermostat is not calling'],
  'energy.power-off': [
    ...ARRIVAL,
    'compressor runs then trips',
    'leg one to ground one nineteen',
    'leg two to ground one nineteen',
    'thermostat is not calling',
  ],
  'energy.absence-proved': [
    ...ARRIVAL,
    'compressor runs then trips',
    'leg one to ground one nineteen',
    'leg two to ground one nineteen',
    'thermostat is not calling',
    'outdoor disconnect is pulled and locked',
    'live',
  ],
  'energy.power-on': [...REPAIRED, 'covers are on', 'live'],
  'energy.clamps-placed': REPAIRED,
} as const;

async function passAll(visit: TypedVisit, words: string, rounds: number): Promise<readonly string[]> {
  const asked: string[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const { caution, step } = visit.run.context;
    if (caution !== undefined && !caution.withStep) await visit.type('live');
    asked.push(step?.id ?? 'none');
    await visit.type(words);
  }
  return asked;
}

describe('a step that cannot be reached', () => {
  it.each(CANNOT)('is left with "%s", and none is put again right behind', async (words) => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips');
    const asked = await passAll(visit, words, 14);
    const twice = asked.filter((step, at) => step !== 'none' && step === asked[at + 1]);
    expect(twice, asked.join(' ')).toEqual([]);
  });

  it.each(Object.entries(WAYS))('is not asked for again where it leads to others: %s', async (way, lines) => {
    const visit = await TypedVisit.open();
    await visit.type(...lines);
    if (visit.run.context.step?.id !== way) await visit.type('what next');
    const before = visit.run.context.step?.id;
    const asked = await passAll(visit, 'cannot reach it', 12);
    expect(asked.filter((step) => step === before).length, asked.join(' ')).toBe(1);
  });

  it('is told once as what all that is left wants, and again to who asks', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips');
    await passAll(visit, 'cannot reach it', 16);
    const told = () => visit.mouth.said.filter(({ text }) => text.startsWith('Nothing is left without it: ')).length;
    expect(visit.run.context.step).toBeUndefined();
    const before = told();
    expect(before).toBeGreaterThan(0);
    await visit.type('okay');
    expect(told()).toBe(before);
    expect(await visit.type('what next')).toMatch(/^Nothing is left without it: /);
  });

  it('is asked for again once somebody went there after all', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', 'leg one to ground one nineteen');
    await passAll(visit, 'cannot reach it', 16);
    await visit.type('thermostat is not calling');
    expect(visit.run.context.step?.id).toBe('energy.power-off');
  });
});

describe('a part that is not on the truck', () => {
  it('is passed once, and the visit goes on to its close', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...REPAIRED.slice(0, -1));
    expect(visit.run.context.step?.id).toBe('repair.part-fitted');
    await visit.type('skip');
    // Nobody leaves it open.
    expect(visit.run.context.step?.id).toBe('energy.covers-on');
    await visit.type('covers are on');
    const asked = visit.of('step.asked').filter(({ step }) => step === 'repair.part-fitted');
    expect(asked).toHaveLength(1);
    await visit.type(...REPAIRED.slice(-1));
    expect(visit.run.context.phase).toBe('prove');
  });
});
