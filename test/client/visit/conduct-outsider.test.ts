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

describe('a proof is not kept by words that only sound like something else', () => {
  it.each([
    // the meter moved, and nobody had asked for it
    'my meter jumped to two forty',
    'my meter reads one twenty',
    "my meter's at two thirty eight",
    // a state, and nothing that it is said of
    'back on',
    "it's closed",
    'hot',
    'in',
    // what only a fed conductor has
    'line frequency sixty hertz',
    'two forty',
    // done live
    'swapped the contactor hot',
    "I've got the cover off the live compressor terminals",
    'why is it live',
    // beside what is denied, in one breath
    "I didn't get shocked the power is back on",
    'nobody is at the panel the breaker is on and the fan is turning',
    'nobody got hurt he got shocked',
    // a meter that does not stand still
    'meter flickers between zero and ninety',
    'meter swings between five and a hundred',
    'note this one turned itself on',
    "nobody is at the panel but the breaker's handle is up and the power is on",
  ])('"%s"', async (line) => {
    const visit = await provenDead();
    await visit.type(line);
    expect(outdoors(visit)).not.toBe('proven-dead');
  });

  it('a doubt is left by no correction and by no taking back', async () => {
    const visit = await provenDead();
    await visit.type("it's doing something", 'correction zero', 'fan section zero volts d c');
    expect(outdoors(visit)).not.toBe('proven-dead');
    const other = await provenDead();
    await other.type("it's doing something", 'take that back', 'take that back', 'fan section zero volts d c');
    expect(outdoors(other)).not.toBe('proven-dead');
  });

  it('"yes it is on" answers no question whether it is still off', async () => {
    const visit = await provenDead();
    await visit.type('thanks', 'yes it is on');
    expect(visit.mouth.said.map(({ text }) => text)).not.toContain('Still off.');
    expect(outdoors(visit)).toBe('live');
  });

  it('what was proven for a visit is not proven behind its close', async () => {
    const visit = await provenDead();
    await visit.type('finish the visit', 'note customer cancelled the job', 'power is back on');
    expect(visit.run.context.phase).toBe('closed');
    expect(outdoors(visit)).toBe('live');
  });
});

describe('a proof is not ended by what tells of no power', () => {
  it.each([
    'do not turn it back on yet',
    'should I turn the power back on',
    'nobody is at the panel',
    'customer says it quit on Tuesday',
    'was the compressor running before',
    "I didn't get shocked",
    'did the breaker trip',
    'power is still off',
    'still off and locked',
  ])('"%s"', async (line) => {
    const visit = await provenDead();
    await visit.type(line);
    expect(visit.of('injury.reported')).toHaveLength(0);
    expect(visit.of('hazard.warned').filter(({ words }) => words.includes('tripped'))).toHaveLength(0);
    await visit.saysStillOff();
    expect(outdoors(visit)).toBe('proven-dead');
  });
});

describe('what is dangerous is warned of in rough words', () => {
  it.each([
    ['took the high pressure cutout out of the circuit', 'bypassed'],
    ['wire nutted the two pressure switch wires together', 'bypassed'],
    ['door switch is taped down', 'bypassed'],
    ['wrapped the fuse in foil', 'bypassed'],
    ['put a slug in the fuse holder', 'bypassed'],
    ['swapped the thirty for a fifty amp breaker', 'Refused. 50 amps'],
    ['put in a sixty amp fuse the plate says thirty', 'Refused. 60 amps'],
    ["I've reset it three times now", 'tripped'],
    ['breaker blew as soon as I closed it', 'tripped'],
    ["did an insulation test while it's pulled down to five hundred microns", 'in a vacuum'],
    ['put a new drier in and started it up', 'too early'],
    ['venting the rest to the air', 'recovered, never let out'],
    ['smell something burning at the panel', 'Stay clear'],
    ['there is water standing under the disconnect', 'Stay clear'],
    ['oil is spraying out of the compressor terminals', 'Stay clear'],
    ['smells like gas in the mechanical room', 'Stay clear'],
    ['dead short across the cap with a screwdriver', 'not proven dead'],
  ])('"%s"', async (line, word) => {
    const visit = await TypedVisit.open();
    await visit.type('customer agrees', 'thermostat is calling', 'leg one to ground one eighteen', 'live', line);
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain(word);
  });
});

describe('a yes that it is still off', () => {
  it.each(['no', 'nope', 'wrong', 'actually no', 'sorry no', 'no wait', 'take that back'])(
    'is taken back by "%s" right behind it',
    async (line) => {
      const visit = await provenDead();
      await visit.type('that box sounds funny to me', 'yes', line);
      expect(outdoors(visit)).not.toBe('proven-dead');
    },
  );

  it('stands where nothing has changed', async () => {
    const visit = await provenDead();
    await visit.type('that box sounds funny to me', 'yes', 'no change');
    expect(outdoors(visit)).toBe('proven-dead');
  });
});
