import { describe, expect, it } from 'vitest';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** What is said first to somebody who was hurt or stands in danger, and what is not said beside it. */
const HURT = [
  'i got shocked',
  'my hand is burned',
  'her arm is numb',
  'my fingers are tingling',
  'his face got burned',
  'ouch that bit me',
  'burned my hand on the sixty amp fuse',
  'my hand is numb and the fan is spinning',
];
const DANGER = ['i smell burning', 'i smell gas', 'there is smoke', 'it is arcing in there'];
const ORDERS = 'Power off. Call for help. See a doctor even if you feel well. Visit held.';

async function visit(...lines: readonly string[]): Promise<TypedVisit> {
  const typed = await TypedVisit.open();
  await typed.type(...lines);
  return typed;
}

/** What was said to one line. */
async function saidTo(typed: TypedVisit, line: string): Promise<readonly string[]> {
  const before = typed.mouth.said.length;
  await typed.type(line);
  return typed.mouth.said.slice(before).map(({ text }) => text);
}

describe('whoever is hurt', () => {
  it.each(HURT)('is told what to do before all else: "%s"', async (line) => {
    for (const lines of [ARRIVAL, TO_PROVEN_DEAD, [...TO_PROVEN_DEAD.slice(0, 6), 'outdoor disconnect is locked']]) {
      const typed = await visit(...lines);
      const said = await saidTo(typed, line);
      expect(said[0]).toBe(ORDERS);
      expect(said.filter((text) => text === ORDERS)).toHaveLength(1);
      expect(typed.of('injury.reported')).toHaveLength(1);
      expect(typed.run.context.held).toBe(true);
    }
  });

  it('keeps the orders until the visit goes on, whatever they answer', async () => {
    const typed = await visit(...ARRIVAL, 'i got shocked');
    expect(await saidTo(typed, 'i am fine')).toEqual(['See a doctor even if you feel well. Visit held.']);
    await typed.type('go on with the visit');
    expect((await saidTo(typed, 'i am fine')).join(' ')).toContain('There is none running');
  });

  it('is nobody by a part that is', async () => {
    const typed = await visit(...ARRIVAL);
    for (const line of ['the contacts are burned', 'the wire is burned', 'the fan motor is stuck'])
      await typed.type(line);
    expect(typed.of('injury.reported')).toEqual([]);
  });
});

describe('whoever tells of fire, gas or smoke', () => {
  it.each(DANGER)('is told to stay clear, and not to say it again: "%s"', async (line) => {
    const said = await saidTo(await visit(...ARRIVAL), line);
    expect(said[0]).toMatch(/^Stay clear\./);
    expect(said.join(' ')).not.toMatch(/[Ss]ay (?:it|the place)|Not understood/);
  });
});

describe('smoke beside a unit that is proven dead', () => {
  it.each(DANGER)('leaves nothing proven without a word that it is still off: "%s"', async (line) => {
    const typed = await visit(...TO_PROVEN_DEAD);
    expect(typed.run.context.energy['outdoor-load']).toBe('proven-dead');
    const said = await saidTo(typed, line);
    expect(said.join(' ')).toContain('Stay clear.');
    await typed.type('fan section one point one microfarads on the bench');
    expect(typed.run.context.energy['outdoor-load']).not.toBe('proven-dead');
  });
});

describe('what is left without an answer', () => {
  it('names a switch, which the next reading would else be read over', async () => {
    const typed = await visit(...ARRIVAL, 'breaker is off');
    const said = await saidTo(typed, 'disconnect line one to disconnect line two two forty');
    expect(said[0]).toBe('Switch left out: say which.');
  });
});

describe('what became of words', () => {
  const became = (typed: TypedVisit) => foldVisit(readBodies(typed.bodies)).heard.map((line) => line.became);

  it('a doubtful number that answers the question about it is taken', async () => {
    const typed = await visit(...ARRIVAL, 'leg one to leg two fifteen');
    if (typed.of('reading.asked').length === 0) await typed.type('live', 'leg one to leg two fifteen');
    const before = became(typed).length;
    expect(became(typed).at(-1)).toBe('asked');
    await typed.type('one five');
    expect(became(typed).slice(before)).toEqual(['taken']);
  });

  it('behind the close nothing is taken, but for somebody who is hurt', async () => {
    const typed = await visit(...ARRIVAL, 'finish the visit', 'finish the visit anyway because the customer left');
    if (typed.run.context.phase !== 'closed') await typed.type('finish the visit');
    expect(typed.run.context.phase).toBe('closed');
    await typed.type('landed the brown wire on fan', 'finish the visit', 'i got shocked');
    expect(became(typed).slice(-3)).toEqual(['after-close', 'after-close', undefined]);
  });
});
