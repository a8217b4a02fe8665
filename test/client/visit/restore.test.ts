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
  const isInput = (body: string | undefined): boolean => body?.includes('"input.taken"') === true;

  /** Before each input, and right behind it: nothing has come of it there. */
  function cutsBetween(bodies: readonly string[]): readonly number[] {
    const all = bodies.map((_, index) => index).slice(1);
    return all.filter((cut) => isInput(bodies[cut]) || (isInput(bodies[cut - 1]) && (LONG || cut % 5 === 0)));
  }

  it('goes on from wherever it was cut between two inputs to the same end', { timeout: 240_000 }, async () => {
    const lines = [...LIBRARY_VISIT, 'fan common to fan run twelve ohms', 'take that back', 'finish the visit'];
    const whole = await TypedVisit.open();
    await whole.type(...lines);
    const end = gist(whole.bodies);
    expect(end.phase).toBe('closed');

    const cuts = cutsBetween(whole.bodies);
    expect(cuts.length).toBeGreaterThan(40);
    for (const cut of cuts) {
      const kept = whole.bodies.slice(0, cut);
      const again = new TypedVisit();
      again.bodies.push(...kept);
      again.clock.step(lastMono(kept) / 60_000);
      again.run = await VisitRun.restore(again.edges(), kept);
      await again.run.settled();
      // An order that nothing came of is given again.
      const repeated = isInput(kept.at(-1)) && kept.at(-1)?.includes('"kind":"command"') === true ? 1 : 0;
      await again.type(...lines.slice(heardIn(kept) - repeated));
      const { acknowledged, ...came } = gist(again.bodies);
      const { acknowledged: all, ...wanted } = end;
      expect(came, `cut after event ${cut}`).toEqual(wanted);
      // An answer of which nothing had come is taken on before its caution was spoken anew, and what was heard whole
      // before the cut is not told again: neither is claimed to be acknowledged.
      const heardWhole = gist(kept).cautions;
      const claimed = all.filter(
        (one) =>
          acknowledged.includes(one) ||
          !(isInput(kept.at(-1)) || heardWhole.some((said) => said.startsWith(`${one} `))),
      );
      // In another order where one of them was heard whole before the cut.
      expect(acknowledged.toSorted(), `cut after event ${cut}`).toEqual(claimed.toSorted());
      // The standing rules are two, and one of a step comes with them.
      expect(all.length - claimed.length).toBeLessThanOrEqual(3);
    }
  });

  it('is taken on with what was heard last, once, where nothing had come of it', async () => {
    const whole = await TypedVisit.open();
    await whole.type('leg one to ground one eighteen');
    const start = whole.bodies.findLastIndex((body) => body.includes('"heard.utterance"'));
    const again = new TypedVisit();
    const kept = whole.bodies.slice(0, start + 1);
    again.bodies.push(...kept);
    again.run = await VisitRun.restore(again.edges(), kept);
    await again.run.settled();
    expect(foldVisit(again.events()).readings).toMatchObject([{ number: 1, reading: { value: 118 } }]);
    expect(again.run.context.energy['outdoor-load']).toBe('live');
  });

  it('asks for what was said last, and believes no proof, where only a part of what came of it is there', async () => {
    const whole = await TypedVisit.open();
    await whole.type(...TO_PROVEN_DEAD, 'leg one to ground one eighteen');
    const start = whole.bodies.findLastIndex((body) => body.includes('"heard.utterance"'));
    const again = new TypedVisit();
    const kept = whole.bodies.slice(0, start + 2);
    again.bodies.push(...kept);
    again.clock.step(lastMono(kept) / 60_000);
    again.run = await VisitRun.restore(again.edges(), kept);
    await again.run.settled();
    expect(again.mouth.said.map(({ text }) => text)).toContain(
      'The record broke off inside what was said last. Say it again.',
    );
    expect(Object.values(again.run.context.energy)).not.toContain('proven-dead');
    await again.type('leg one to ground one eighteen');
    expect(again.run.context.energy['outdoor-load']).toBe('live');
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
    expect(again.run.value).toMatchObject({ open: { cautioning: 'awaiting' } });
  });

  it.each([
    [31, 'reported-off'],
    [3, 'reported-off'],
    [1, 'proven-dead'],
  ])('after a gap of %i minutes finds its proof %s', async (minutes, energy) => {
    const whole = await TypedVisit.open();
    await whole.type(...TO_PROVEN_DEAD);
    const again = new TypedVisit();
    const { mono } = whole.run.context.now;
    again.clock.step(mono / 60_000 + minutes);
    again.bodies.push(...whole.bodies);
    again.run = await VisitRun.restore(again.edges(), whole.bodies);
    await again.run.settled();
    expect(again.run.context.energy['outdoor-load']).toBe(energy);
    expect(again.mouth.said.some((prompt) => prompt.text.startsWith('Taken up again'))).toBe(minutes > 2);
  });
});
