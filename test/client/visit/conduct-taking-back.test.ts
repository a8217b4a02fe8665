import { describe, expect, it } from 'vitest';
import type { EnergyState } from '../../../grammar/vocabulary/zones.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const TO_READS_DEAD = TO_PROVEN_DEAD.slice(0, -2);

async function visitAfter(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, 'compressor runs then trips', ...lines);
  return visit;
}

const outdoors = (visit: TypedVisit): EnergyState => visit.run.context.energy['outdoor-load'];

async function refusesOhms(visit: TypedVisit): Promise<void> {
  await visit.type('fan section five point one microfarads');
  expect(visit.of('reading.refused').at(-1)).toMatchObject({ reason: 'not-proven-dead' });
}

async function byKey(visit: TypedVisit): Promise<void> {
  visit.run.touch('take-back');
  await visit.run.settled();
}

const byWord =
  (words: string) =>
  async (visit: TypedVisit): Promise<void> =>
    void (await visit.type(words));

describe.each([
  ['by word', byWord('take that back')],
  ['in other words', byWord('scratch that')],
  ['by key', byKey],
])('taking back behind proven dead, %s', (_, takeBack) => {
  it.each([
    [1, 'reads-dead', ['capacitor-fan']],
    [2, 'reads-dead', ['capacitor-fan', 'capacitor-herm']],
    [3, 'reported-off', ['capacitor-fan', 'capacitor-herm']],
  ] as const)('%i times leaves the unit %s', async (times, state, sections) => {
    const visit = await visitAfter(...TO_PROVEN_DEAD);
    expect(outdoors(visit)).toBe('proven-dead');
    const count = visit.mouth.said.length;
    for (let time = 0; time < times; time += 1) await takeBack(visit);
    expect(outdoors(visit)).toBe(state);
    for (const section of sections) expect(visit.run.context.energy[section]).toBe('reported-off');
    expect(visit.mouth.said[count]?.text).toMatch(/^Taken back: /);
    await refusesOhms(visit);
  });

  it('of a proof in one breath ends reads dead, and says so', async () => {
    const visit = await visitAfter(...TO_READS_DEAD);
    expect(outdoors(visit)).toBe('reads-dead');
    const count = visit.mouth.said.length;
    await takeBack(visit);
    expect(outdoors(visit)).toBe('reported-off');
    expect(visit.mouth.said[count]?.text).toBe('Taken back: the proof, outdoor unit. Not proven dead: prove it again.');
  });
});

describe('after a reading was taken back', () => {
  it('its section read again proves the unit again', async () => {
    const visit = await visitAfter(...TO_PROVEN_DEAD, 'take that back', 'fan section zero volts d c');
    expect(outdoors(visit)).toBe('proven-dead');
  });

  it('taking back a proof that power has ended makes nothing off', async () => {
    const visit = await visitAfter(...TO_READS_DEAD, 'outdoor disconnect is back in', 'take that back');
    expect(outdoors(visit)).toBe('live');
  });

  it('a pair of a proof in progress is open again', async () => {
    const visit = await visitAfter(
      ...TO_PROVEN_DEAD.slice(0, 4),
      'meter proves two forty',
      'load side zero volts',
      't one to ground zero volts',
      't two to ground zero volts',
      'take that back',
    );
    expect(visit.run.context.proof?.pairs).toHaveLength(2);
    await visit.type('meter proves two forty');
    expect(outdoors(visit)).toBe('proving');
  });
});

describe('a charge on one section', () => {
  it.each(['correction forty', 'correction three volts', 'fan section forty volts d c', 'herm section nine volts d c'])(
    'ends proven dead of the unit with it: %s',
    async (sentence) => {
      const visit = await visitAfter(...TO_PROVEN_DEAD);
      const count = visit.mouth.said.length;
      await visit.type(sentence);
      expect(outdoors(visit)).toBe('reads-dead');
      const said = visit.mouth.said.slice(count).map(({ text }) => text);
      expect(said.join(' ')).toContain('Still charged. Discharge it, read it again');
      await refusesOhms(visit);
    },
  );

  it('released again proves the unit again', async () => {
    const visit = await visitAfter(...TO_PROVEN_DEAD, 'correction forty', 'fan section zero volts d c');
    expect(outdoors(visit)).toBe('proven-dead');
  });
});

describe('a correction', () => {
  it('without a value changes nothing and asks for the number', async () => {
    const visit = await visitAfter('leg one to ground one eighteen');
    const before = visit.run.context.readings;
    expect(await visit.type('correction')).toBe('Correction: say the right number.');
    expect(visit.of('reading.corrected')).toEqual([]);
    expect(visit.run.context.readings).toEqual(before);
  });

  it.each(['correction', 'correction three volts', 'correction one twenty', 'correction two'])(
    'right behind a proof concerns the proof: %s',
    async (sentence) => {
      const visit = await visitAfter(...TO_READS_DEAD);
      const said = await visit.type(sentence);
      expect(visit.of('reading.corrected')).toEqual([]);
      expect(outdoors(visit)).toBe('reported-off');
      expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain('Taken back: the proof, outdoor unit.');
      expect(said).not.toBe('');
    },
  );
});

describe('ohms during a proof', () => {
  it.each(['leg one to ground zero ohms', 'load side zero ohms', 'zero ohms', 'leg two to ground is zero ohms'])(
    'are never offered as volts: %s',
    async (sentence) => {
      const visit = await visitAfter(...TO_PROVEN_DEAD.slice(0, 4), 'meter proves two forty');
      await visit.type(sentence, 'yes');
      // Which place it was may be asked; never whether it was volts.
      expect(visit.run.context.questions.every(({ question }) => question.kind === 'which-place')).toBe(true);
      expect(visit.run.context.proof?.pairs).toEqual([]);
      expect(visit.of('reading.asked').filter(({ reading }) => reading.quantity === 'voltage')).toEqual([]);
      expect(visit.of('reading.logged').filter(({ reading }) => reading.value === 0)).toEqual([]);
    },
  );
});
