import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const MINUTE = 60_000;
const JUMPED = 'The clock jumped. Proof ended.';

async function provenDead(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
  expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
  return visit;
}

const isProven = (visit: TypedVisit) => visit.run.context.energy['outdoor-load'] === 'proven-dead';
const wasSaid = (visit: TypedVisit, text: string) => visit.mouth.said.some((prompt) => prompt.text === text);

async function noise(visit: TypedVisit, text: string, accepted: boolean): Promise<void> {
  visit.run.hear({ id: `n${visit.bodies.length}`, ear: 'wav', text, alternatives: [], confidence: 0.2, accepted });
  await visit.run.settled();
}

describe('a clock that jumps while a proof stands', () => {
  it.each([-60, -5, -1, 3, 60])('by %i minutes ends it aloud', async (minutes) => {
    const visit = await provenDead();
    visit.clock.jumpWall(minutes);
    await visit.type('status');
    expect(isProven(visit)).toBe(false);
    expect(wasSaid(visit, JUMPED)).toBe(true);
  });

  it.each([1, 0])('by %i minutes leaves it', async (minutes) => {
    const visit = await provenDead();
    visit.clock.jumpWall(minutes);
    await visit.type('status');
    expect(isProven(visit)).toBe(true);
    expect(wasSaid(visit, JUMPED)).toBe(false);
  });

  it('by a little each time ends it once they are apart by more than two minutes', async () => {
    const visit = await provenDead();
    for (let time = 0; time < 3; time += 1) {
      visit.clock.jumpWall(0.9);
      await visit.type('status');
    }
    expect(isProven(visit)).toBe(false);
  });

  it.each([
    ['words', 'fan section five microfarads'],
    ['a key', undefined],
  ])('ends it before anything is judged by it, for %s', async (_, text) => {
    const visit = await provenDead();
    await visit.type('fan section one point five microfarads');
    const open = visit.run.context.questions[0];
    visit.clock.jumpWall(-10);
    if (text === undefined) visit.run.touch('yes');
    else await visit.type(text);
    await visit.run.settled();
    expect(isProven(visit)).toBe(false);
    if (open !== undefined || text !== undefined) {
      expect(visit.of('reading.refused').at(-1)).toMatchObject({ reason: 'not-proven-dead' });
    }
  });

  it('before a proof was begun ends nothing', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips');
    visit.clock.jumpWall(-60);
    await visit.type(...TO_PROVEN_DEAD);
    expect(isProven(visit)).toBe(true);
  });

  it('is restored from the record as it ended', async () => {
    const visit = await provenDead();
    visit.clock.jumpWall(-60);
    await visit.type('fan section five microfarads');
    const again = new TypedVisit();
    again.run = await VisitRun.restore(again.edges(), visit.bodies);
    expect(again.run.context.energy).toEqual(visit.run.context.energy);
    expect(again.of('energy.changed')).toEqual([]);
  });
});

describe('thirty quiet minutes', () => {
  it.each([
    ['noise that was not accepted', 'mumble', false],
    ['words that were not accepted', 'what next', false],
    ['words that were not understood', 'the quick brown dog jumps', true],
  ])('are not broken by %s', async (_, text, accepted) => {
    const visit = await provenDead();
    await visit.later(29);
    await noise(visit, text, accepted);
    await visit.later(5);
    expect(isProven(visit)).toBe(false);
  });

  it.each(['what next', 'status', 'say again'])('are broken by words: %s', async (text) => {
    const visit = await provenDead();
    await visit.later(29);
    await visit.type(text);
    await visit.later(5);
    expect(isProven(visit)).toBe(true);
  });

  it.each(['status', 'fan section five microfarads'])('without a timer end it at the next word: %s', async (text) => {
    const visit = await provenDead();
    const { at, mono } = visit.run.context.now;
    visit.clock.beginAnew({ at: new Date(Date.parse(at) - 40 * MINUTE).toISOString(), mono });
    visit.clock.jumpWall(40);
    await visit.type(text);
    expect(isProven(visit)).toBe(false);
  });
});
