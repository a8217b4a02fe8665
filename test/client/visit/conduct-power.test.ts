import { describe, expect, it } from 'vitest';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

async function provenDead(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
  expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
  return visit;
}

/** The outdoor unit and its line side both proven dead, each behind its own locked switch. */
async function bothProvenDead(): Promise<TypedVisit> {
  const visit = await provenDead();
  await visit.type('panel breaker is pulled and locked', 'line side meter two forty zero zero zero meter two forty');
  expect(visit.run.context.energy).toMatchObject({ 'disconnect-line': 'proven-dead', 'outdoor-load': 'proven-dead' });
  return visit;
}

const energyOf = (visit: TypedVisit, zone: ZoneId = 'outdoor-load') => visit.run.context.energy[zone];

const KINDS: Readonly<Record<string, readonly string[]>> = {
  'power is back': [
    'power is back on',
    'we have power again',
    'power is off no wait power is on',
    'it is energized',
    'power came back',
    "it's live",
    'somebody turned on the power',
  ],
  'a switch is back': [
    'disconnect is back in i think',
    'disconnect is in',
    'i put the pull out back in',
    'plugged it back in',
  ],
  'it was never off': [
    'power is not off',
    'not dead',
    "I didn't lock it",
    "i don't think it's dead",
    'not sure it is off',
  ],
  'a conductor is live': [
    'leg one to ground hot',
    'leg two to ground live',
    'my meter beeped',
    'the tester is glowing',
  ],
  'power is sent, in the words of the trade': [
    "I'm giving it power now",
    'fired it up',
    'let her rip',
    "we're cooking",
    "she's running",
    'only one blade is out',
  ],
  'a lock is off': ['lock is off', 'took the lock off', 'my lock came off', 'outdoor disconnect is unlocked'],
  'a part runs, hums or lights up': [
    'i hear the compressor',
    'contactor is humming',
    'the lights came on at the board',
    'outdoor fan is turning',
    'fan kicked on',
    'contactor is pulled in',
  ],
  'somebody else is at the switch': [
    'somebody flipped it',
    'homeowner turned it back on',
    'note my helper is at the breaker',
    'there is someone at the disconnect',
  ],
  'somebody was hurt': ['i got a shock', 'it bit me', 'i got zapped by the fan'],
};

describe.each(Object.entries(KINDS))('that %s', (_, sentences) => {
  it.each(sentences)('ends the proof: %s', async (sentence) => {
    const visit = await provenDead();
    const count = visit.mouth.said.length;
    await visit.type(sentence);
    expect(['live', 'unknown']).toContain(energyOf(visit));
    expect(['live', 'unknown']).toContain(energyOf(visit, 'capacitor-fan'));
    expect(visit.mouth.said[count]?.text).toMatch(/Power|unlocked|Hands off|turning|Injury|power/);
    await visit.type('fan section five microfarads');
    expect(visit.of('reading.refused').at(-1)).toMatchObject({ reason: 'not-proven-dead' });
  });
});

describe('what may mean that power is back', () => {
  it('says first, and in few words, what ended, and then asks', async () => {
    const visit = await provenDead();
    const count = visit.mouth.said.length;
    await visit.type('disconnect is back in i think');
    const said = visit.mouth.said.slice(count).map(({ text }) => text);
    expect(said[0]).toBe('Power may be back. Proof ended: outdoor unit.');
    expect(said.at(-1)).toMatch(/right\?$/);
  });

  it.each([false, true])('ends the proof badly heard and not accepted too (accepted: %s)', async (accepted) => {
    const visit = await provenDead();
    const heard = { id: 'n', ear: 'wav', text: 'power is back on', alternatives: [], confidence: 0.3 } as const;
    visit.run.hear({ ...heard, accepted, doubtful: true });
    await visit.run.settled();
    expect(energyOf(visit)).toBe('live');
  });

  it('wants the switch and the proof again', async () => {
    const visit = await provenDead();
    await visit.type('power is back on', 'meter two forty zero zero zero zero zero zero meter two forty');
    expect(energyOf(visit)).toBe('live');
    await visit.type(
      'outdoor disconnect is pulled and locked',
      'meter two forty zero zero zero zero zero zero meter two forty',
      'herm section zero volts d c',
      'fan section zero volts d c',
    );
    expect(energyOf(visit)).toBe('proven-dead');
  });

  it.each(['it is live', 'i hear the compressor', 'power is back on'])(
    'leaves nothing reported off either: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type(...ARRIVAL, 'outdoor disconnect is pulled and locked', sentence);
      expect(energyOf(visit)).toBe('live');
    },
  );

  it('stays inside what a named place can touch', async () => {
    const visit = await bothProvenDead();
    await visit.type('i hear the blower');
    expect(energyOf(visit)).toBe('proven-dead');
  });

  it('leaves the acknowledgement of a caution what it is', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor is not running');
    expect(visit.run.context.caution).toBeDefined();
    await visit.type("it's live");
    expect(visit.of('caution.acknowledged').length).toBeGreaterThan(0);
  });
});

describe('what is said while working dead', () => {
  it.each([
    'load side zero volts',
    'leg one to ground zero volts',
    'herm section zero volts d c',
    'fan section five point one microfarads',
    'common to run two ohms',
    'outdoor disconnect is pulled and locked',
    'disconnect is pulled',
    'breaker in the panel is off',
    'power is off at the outdoor disconnect',
    'power is off and the lock is on',
    'outdoor fan spins freely by hand',
    'compressor is not running',
    "i don't hear anything",
    'liquid line is hot',
    'leg one is not live',
    'customer is not sure about the price',
    'did not pull the wire',
    'contacts are burnt',
    'covers are back on',
    'vacuum pump is running',
    'capacitor is on the bench',
    'fitted a forty five over five dual capacitor four forty volt',
    'lifted the brown wire from fan',
    'what next',
  ])('ends nothing: %s', async (sentence) => {
    const visit = await provenDead();
    await visit.type(sentence);
    await visit.saysStillOff();
    expect(energyOf(visit)).toBe('proven-dead');
  });
});

describe('a breaker closed above a locked disconnect', () => {
  it.each([
    'breaker is back on',
    'the breaker is on again',
    'reset the breaker',
    'panel breaker is back on',
    'i reset the breaker in the panel',
    'panel breaker is unlocked',
  ])('ends the proof of the line side, not of the load side: %s', async (sentence) => {
    const visit = await bothProvenDead();
    await visit.type(sentence);
    expect(['live', 'unknown']).toContain(energyOf(visit, 'disconnect-line'));
    expect(energyOf(visit)).toBe('proven-dead');
    expect(energyOf(visit, 'capacitor-fan')).toBe('proven-dead');
  });

  it('and a disconnect closed below a locked breaker ends nothing', async () => {
    const visit = await bothProvenDead();
    await visit.type('outdoor disconnect is back in');
    expect(energyOf(visit, 'disconnect-line')).toBe('proven-dead');
  });

  it('ends both where the disconnect below is not locked', async () => {
    const visit = await bothProvenDead();
    await visit.type('outdoor disconnect is unlocked', 'panel breaker is back on');
    expect(energyOf(visit)).toBe('live');
    expect(energyOf(visit, 'disconnect-line')).toBe('live');
  });
});

describe('a switch that is told locked again', () => {
  it('is told back without a word that takes a standing proof away', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'outdoor disconnect is pulled and locked');
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
    expect(visit.mouth.said.at(-1)?.text).not.toMatch(/not proven/);
  });
});
