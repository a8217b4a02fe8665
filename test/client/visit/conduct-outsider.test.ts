import { describe, expect, it } from 'vitest';
import { LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** Kinds of sentences by which an outsider got past the interlocks, each with several wordings. */

async function provenDead(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...TO_PROVEN_DEAD);
  expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
  return visit;
}

const outdoors = (visit: TypedVisit) => visit.run.context.energy['outdoor-load'];

describe('a proof ends at once, and ohms are refused behind it', () => {
  it.each([
    // a voltage in a sentence that is not understood
    'meter two forty, leg one to ground one eighteen',
    'meter two forty, T one to ground one twenty',
    'leg one to ground one eighteen volts d c',
    'leg two to ground two forty volts d c',
    // what was told before is unsaid
    'no the disconnect is not out any more',
    'actually I never pulled the disconnect',
    'note I forgot to put the lock on',
    'that was the wrong breaker I locked',
    'I lied the lock is not on',
    // power in other words
    'we are hot again',
    'line side just went hot again',
    'I see voltage',
    'the handle is up again',
    'recommend the breaker that came back on be replaced',
    'the standby generator just started',
    'the battery backup kicked over',
    // a part that answers
    "there's a buzz coming from the contactor",
    'thermostat just clicked and the contactor banged',
    // somebody at the switch
    'she put it back',
    'gave my key to the homeowner and he is heading over there',
    'homeowner is in the garage by the panel',
    'the boss is messing with the box outside',
    // somebody hurt
    'my buddy is down on the ground',
    'my apprentice is not breathing',
    'he fell off the ladder',
    'my hand is burned bad',
  ])('by "%s"', async (sentence) => {
    const visit = await provenDead();
    await visit.type(sentence);
    expect(['proven-dead', 'in-doubt']).not.toContain(outdoors(visit));
    const logged = visit.of('reading.logged').length;
    await visit.type('common to run four ohms');
    expect(visit.of('reading.logged')).toHaveLength(logged);
  });

  it.each([
    'the filter is dirty',
    'outdoor air ninety four degrees',
    'fan section five point one microfarads',
    'what next',
    'note the lid is bent',
    'recommend a new filter',
  ])('but not by "%s"', async (sentence) => {
    const visit = await provenDead();
    await visit.type(sentence);
    expect(outdoors(visit)).toBe('proven-dead');
  });
});

describe('a proof that is said again from its meter on', () => {
  it('begins anew: no value moves to another pair', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD.slice(0, 4));
    await visit.type(
      'meter two forty zero zero meter two forty',
      'meter two forty zero zero zero zero meter two forty',
    );
    expect(visit.run.context.proof?.pairs.map(({ at }) => at.join(' '))).toEqual([
      'L1 ground',
      'L2 ground',
      'L1 L2',
      'T1 ground',
    ]);
    expect(outdoors(visit)).toBe('proving');
  });
});

describe('power that comes back', () => {
  const warnings = (visit: TypedVisit) =>
    visit.mouth.said.filter(({ kind }) => kind === 'warning').map(({ text }) => text);

  it('meets a jumper wherever it is', async () => {
    const visit = await provenDead();
    await visit.type('jumper on from R to Y', 'outdoor disconnect is back in');
    expect(warnings(visit).join(' ')).toMatch(/jumper/i);
  });

  it.each(['the juice is on again', 'compressor kicked on', 'somebody reset it'])(
    'meets a lock that is still recorded: %s',
    async (sentence) => {
      const visit = await provenDead();
      await visit.type(sentence);
      expect(warnings(visit).join(' ')).toMatch(/recorded locked/);
    },
  );
});

describe('what is said', () => {
  it('of a hard start kit fitted in a dead unit blames nobody', async () => {
    const visit = await provenDead();
    await visit.type('fitted a hard start kit');
    expect(visit.of('work.unproven')).toEqual([]);
  });

  it('of a note without words is a question', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    expect(await visit.type('note')).toBe('Note what?');
    expect(visit.of('note.taken')).toEqual([]);
  });
});
