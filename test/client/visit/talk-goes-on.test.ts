import { describe, expect, it } from 'vitest';
import { LIBRARY_UNIT, TypedVisit } from './typed-visit.ts';

/** What was said last, and whether it asks the step that stands. */
const lastKind = (visit: TypedVisit) => visit.mouth.said.at(-1)?.kind;
const step = (visit: TypedVisit) => visit.run.context.step?.id;

describe('the next step', () => {
  it.each(['nameplate model a b c one two three', 'supply air fifty eight', 'outdoor fan is not turning'])(
    'is asked again where something else was told: %s',
    async (said) => {
      const visit = await TypedVisit.open(LIBRARY_UNIT);
      await visit.type('customer agrees', "can't read it", 'meter is cat three');
      const before = step(visit);
      await visit.type(said);
      expect(step(visit)).toBe(before);
      expect(lastKind(visit)).toBe('step');
    },
  );

  it('is put again at an "okay" that agrees to nothing, and at "go ahead"', async () => {
    for (const said of ['okay', 'got it', 'go ahead', 'carry on']) {
      const visit = await TypedVisit.open(LIBRARY_UNIT);
      await visit.type(said);
      expect(visit.of('item.reported'), said).toEqual([]);
      expect(step(visit)).toBe('arrive.consent');
      expect(lastKind(visit), said).toBe('step');
    }
  });

  it('is not put again by an "okay" over what the hands are at', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    await visit.type('customer agrees', "can't read it", 'meter is cat three');
    const before = visit.mouth.said.length;
    await visit.type('okay');
    expect(visit.mouth.said).toHaveLength(before);
  });

  it('leaves a question standing at "okay" and says it again', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    await visit.type('customer agrees', 'pulled the disconnect', 'okay');
    expect(visit.run.context.questions).toHaveLength(1);
    expect(lastKind(visit)).toBe('question');
  });
});

describe('a lock that is told in a word', () => {
  it.each(['locked it', "it's locked", 'lock is on', 'tagged it', 'hung my lock on it', 'locked and tagged'])(
    'is that of the switch told open last, whatever is asked: %s',
    async (said) => {
      const visit = await TypedVisit.open(LIBRARY_UNIT);
      await visit.type('customer agrees', "can't read it", 'meter is cat three', '90', '78');
      await visit.type('breaker at the panel is off', said);
      expect(visit.run.context.isolation.panel).toBe('locked');
      expect(visit.run.context.isolation.outdoor).not.toBe('locked');
    },
  );

  it('is nothing where no switch was told open, and none twice', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    await visit.type('customer agrees', "can't read it", 'meter is cat three', 'locked it');
    expect(Object.values(visit.run.context.isolation)).not.toContain('locked');
  });
});

describe('what people ask', () => {
  it('is told what it may be, by name, without a number', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    await visit.type('customer agrees', "can't read it", 'meter is cat three', '90', '78', 'thermostat is calling');
    await visit.type('outdoor fan is not turning', 'compressor is running', 'what else could it be');
    const told = visit.mouth.said.filter(({ kind }) => kind === 'answer').at(-1)?.text ?? '';
    expect(told).toMatch(/capacitor/);
    expect(told).not.toMatch(/percent|\d/);
  });
});
