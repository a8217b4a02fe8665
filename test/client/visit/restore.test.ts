import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { LONG } from '../../how-much.ts';
import { LIBRARY_VISIT, TO_LIVE_STEP, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const heardIn = (bodies: readonly string[]): number =>
  bodies.filter(
    (body) => (JSON.parse(body) as VisitEvent & { input?: { type: string } }).input?.type === 'heard.utterance',
  ).length;

/** The last time in a record: a clock begun anew goes on from there. */
const lastMono = (bodies: readonly string[]): number => {
  const last = JSON.parse(bodies.at(-1) ?? '{}') as VisitEvent;
  return (last.type === 'input.taken' ? last.input.time : last.time).mono;
};

/** What matters of a visit when two runs of it are compared: everything but the times and the repeated prompts. */
function gist(bodies: readonly string[]) {
  const view = foldVisit(bodies.map((body) => JSON.parse(body) as VisitEvent));
  return {
    readings: view.readings.map(({ number, reading, corrected, withdrawn, judged }) => ({
      number,
      reading,
      corrected,
      withdrawn,
      judged,
    })),
    refused: view.refused.map(({ reading, reason }) => ({ reading, reason })),
    energy: view.energyChanges.map(({ zone, from, to }) => `${zone} ${from} ${to}`),
    cautions: [...new Set(view.cautions.map(({ caution, zone }) => `${caution} ${zone}`))],
    acknowledged: view.cautions.filter((line) => line.acknowledgedAt !== undefined).map(({ caution }) => caution),
    finding: view.finding,
    phase: view.phase,
    parts: view.parts.map(({ part, ratings }) => ({ part, ratings })),
  };
}

describe('a visit whose record was cut', () => {
  /** Where the record is cut: before each input and at three places inside a batch; after every event in a long run. */
  function cutsOf(bodies: readonly string[]): readonly number[] {
    const all = bodies.map((_, index) => index).slice(1);
    const isInput = (cut: number): boolean => bodies[cut]?.includes('"input.taken"') === true;
    const inside = all.filter((cut) => !isInput(cut));
    const three = [0.2, 0.5, 0.8].map((share) => inside[Math.floor(share * inside.length)]);
    return LONG ? all : all.filter((cut) => isInput(cut) || three.includes(cut));
  }

  it('goes on from wherever it was cut to the same end', { timeout: 240_000 }, async () => {
    const lines = [...LIBRARY_VISIT, 'fan common to fan run twelve ohms', 'finish the visit'];
    const whole = await TypedVisit.open();
    await whole.type(...lines);
    const end = gist(whole.bodies);
    expect(end.phase).toBe('closed');

    const cuts = cutsOf(whole.bodies);
    expect(cuts.length).toBeGreaterThan(40);
    for (const cut of cuts) {
      const kept = whole.bodies.slice(0, cut);
      const again = new TypedVisit();
      again.bodies.push(...kept);
      again.clock.step(lastMono(kept) / 60_000);
      again.run = await VisitRun.restore(again.edges(), kept);
      await again.run.settled();
      await again.type(...lines.slice(heardIn(kept)));
      expect(gist(again.bodies), `cut after event ${cut}`).toEqual(end);
    }
  });

  it('is completed with the events that the last input still owed, and no others', async () => {
    const whole = await TypedVisit.open();
    await whole.type('leg one to ground one eighteen');
    const start = whole.bodies.findLastIndex((body) => body.includes('"heard.utterance"'));
    const owed = whole.bodies.slice(
      start + 1,
      whole.bodies.findIndex((body, index) => index > start && body.includes('"input.taken"')),
    );
    expect(owed.length).toBeGreaterThan(2);

    const again = new TypedVisit();
    const kept = whole.bodies.slice(0, start + 2);
    again.bodies.push(...kept);
    again.run = await VisitRun.restore(again.edges(), kept);
    await again.run.settled();
    expect(again.bodies.slice(start + 1, start + 1 + owed.length)).toEqual(owed);
  });

  it('asks again for an acknowledgement that was pending: the caution is spoken anew', async () => {
    const whole = await TypedVisit.open();
    await whole.type(...TO_LIVE_STEP);
    const kept = whole.bodies.slice(
      0,
      whole.bodies.findIndex((body) => body.includes('"mouth.finished"')),
    );
    const again = new TypedVisit();
    again.bodies.push(...kept);
    again.run = await VisitRun.restore(again.edges(), kept);
    await again.run.settled();
    expect(again.mouth.said.at(-1)?.kind).toBe('caution');
    expect(again.run.value).toMatchObject({ step: { cautioning: 'awaiting' } });
  });

  it.each([
    [31, 'reported-off'],
    [10, 'proven-dead'],
  ])('after %i quiet minutes finds its proof %s', async (minutes, energy) => {
    const whole = await TypedVisit.open();
    await whole.type(...TO_PROVEN_DEAD);
    const again = new TypedVisit();
    const { mono } = whole.run.context.now;
    again.clock.step(mono / 60_000 + minutes);
    again.bodies.push(...whole.bodies);
    again.run = await VisitRun.restore(again.edges(), whole.bodies);
    await again.run.settled();
    expect(again.run.context.energy['outdoor-load']).toBe(energy);
    expect(again.mouth.said.some((prompt) => prompt.text.startsWith('Thirty quiet minutes'))).toBe(minutes > 30);
  });
});
