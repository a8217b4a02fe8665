import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { CAUTIONS } from '../../../client/words/talk/caution-words.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import type { RefrigerantId, UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { NEVER_SAID } from './never-said.ts';
import { ARRIVAL, LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit, WEAK_FAN } from './typed-visit.ts';

/** R-32 and R-454B are of class A2L, R-410A and R-22 of A1: ASHRAE 34, from memory. */
const unitWith = (refrigerant: RefrigerantId): UnitProfile => ({ ...LIBRARY_UNIT, refrigerant });
const FLAMMABLE = unitWith('R-454B');

const told = (visit: TypedVisit) => visit.of('flammable.told').map(({ caution }) => caution);
const warned = (visit: TypedVisit) =>
  visit.mouth.said.filter(({ kind }) => kind === 'warning' || kind === 'caution').map(({ text }) => text);
const times = (visit: TypedVisit, words: RegExp) => warned(visit).filter((text) => words.test(text)).length;

describe('a flammable refrigerant', () => {
  it.each(['R-32', 'R-454B'] as const)('is said on arrival, where the unit is known for %s', async (refrigerant) => {
    const visit = await TypedVisit.open(unitWith(refrigerant));
    expect(told(visit)).toEqual(['flammable-arrival']);
    expect(warned(visit)[0]).toMatch(/Flammable refrigerant.*Ventilate.*flame away/);
  });

  it.each(['unit is r thirty two', 'nameplate refrigerant R four fifty four b', 'refrigerant is four five four b'])(
    'is said when the plate tells: %s',
    async (line) => {
      const visit = await TypedVisit.open(unitWith('R-410A'));
      expect(told(visit)).toEqual([]);
      await visit.type(line);
      expect(told(visit)).toEqual(['flammable-arrival']);
    },
  );

  it.each(['R-410A', 'R-22', 'R-407C'] as const)('is none where the unit holds %s', async (refrigerant) => {
    const visit = await TypedVisit.open(unitWith(refrigerant));
    await visit.type('recovered four pounds', 'opened the system', 'lit the torch', 'outdoor disconnect is back in');
    expect(told(visit)).toEqual([]);
    expect(warned(visit).join()).not.toMatch(/flammable/i);
  });

  it.each([
    ['recovered four pounds', 'flammable-opening'],
    ['opened the system', 'flammable-opening'],
    ['valve core is out', 'flammable-opening'],
    ['fixed the leak', 'flammable-opening'],
    ['fitted a filter drier', 'flammable-opening'],
    ['lit the torch', 'flammable-flame'],
    ['brazing the joint in', 'flammable-flame'],
    ['outdoor disconnect is back in', 'flammable-power'],
    ['panel breaker is on', 'flammable-power'],
  ])('is said again with "%s", once', async (line, caution) => {
    // R-290 is of class A3: ASHRAE 34, from memory. Its unit is gated beside, and warned of no less.
    for (const unit of [FLAMMABLE, unitWith('R-290')]) {
      const visit = await TypedVisit.open(unit);
      await visit.type(line, line);
      expect(told(visit).filter((one) => one === caution)).toEqual([caution]);
    }
  });

  it('is said while proving it dead and while proving the repair, before power, each once', async () => {
    const visit = await TypedVisit.open(FLAMMABLE);
    await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
    await visit.type(...WEAK_FAN);
    await visit.type('fitted a forty five over five dual capacitor four forty volt', 'covers are on', 'live');
    await visit.type(
      'outdoor disconnect is back in',
      'thermostat is calling',
      'live',
      'outdoor fan is turning',
      'live',
    );
    await visit.type('compressor amps eleven point two', 'live', 'fan amps point nine', 'live');
    expect(times(visit, /can spark/)).toBe(1);
    expect(times(visit, /sniff for a leak/)).toBe(1);
    expect(times(visit, /watch for leaks/)).toBe(1);
    const order = warned(visit).map((text) => /can spark|sniff for a leak|watch for leaks/.exec(text)?.[0]);
    expect(order.filter((one) => one !== undefined)).toEqual(['can spark', 'sniff for a leak', 'watch for leaks']);
  });

  it('stands in the record as it was said, and is not said anew after a reload', async () => {
    const visit = await TypedVisit.open(FLAMMABLE);
    await visit.type('recovered four pounds');
    const view = foldVisit(visit.events());
    expect(view.flammableTold).toEqual(['flammable-arrival', 'flammable-opening']);
    expect(view.warnings.map(({ words }) => words).join()).toMatch(/Flammable/);
    visit.run = await VisitRun.restore(visit.edges(), [...visit.bodies]);
    await visit.type('recovered four pounds');
    expect(told(visit)).toEqual(['flammable-arrival', 'flammable-opening']);
  });

  it('has words that nothing listens for while they are spoken, each with its source', () => {
    const own = CAUTIONS.filter(({ id }) => id.startsWith('flammable-'));
    expect(own).toHaveLength(6);
    for (const { words, source } of own) {
      expect(words).not.toMatch(NEVER_SAID);
      expect(source).toMatch(/ASHRAE 15 and 34.*maker/);
    }
  });
});

/** A flame on a charged line: 40 CFR 82 subpart F, ASHRAE 15; common practice. */
describe('a flame', () => {
  const FLAMES = [
    'lit the torch',
    'torch is lit',
    'brazing the joint in',
    'brazed the joint',
    'brazed the leak',
    'sweating in the drier',
    'soldering the joint in',
    'started brazing',
    // Understood by half: it counts all the same.
    'lit the torch, I hear the compressor',
    'about to have a flame going at the big line',
  ];
  const FLAME_AWAY = /Flame away: the line is charged/;

  it.each(FLAMES)('on a charged line is warned of, whatever is in it: "%s"', async (line) => {
    for (const unit of [FLAMMABLE, unitWith('R-410A'), unitWith('R-22')]) {
      const visit = await TypedVisit.open(unit);
      await visit.type(line);
      expect(times(visit, FLAME_AWAY)).toBe(1);
    }
  });

  it.each(FLAMES)('is warned of again once it is charged again: "%s"', async (line) => {
    const visit = await TypedVisit.open();
    await visit.type('recovered four pounds', line);
    expect(times(visit, FLAME_AWAY)).toBe(0);
    await visit.type('no', 'added two pounds', line);
    expect(times(visit, FLAME_AWAY)).toBe(1);
  });

  it('on nitrogen under pressure is warned of too, until it is let down', async () => {
    const visit = await TypedVisit.open();
    await visit.type('recovered four pounds', 'opened the system', 'nitrogen pressure three hundred psi');
    await visit.type('found a leak', 'brazed the leak');
    expect(times(visit, /Flame away: nitrogen under pressure/)).toBe(1);
    await visit.type('nitrogen pressure three psi', 'yes', 'brazed the leak');
    expect(times(visit, /Flame away/)).toBe(1);
  });

  it.each(['note brazing is planned for tomorrow', 'no torch yet', 'the torch is out'])(
    'is none in "%s"',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type(line);
      expect(times(visit, FLAME_AWAY)).toBe(0);
    },
  );

  it('taken back takes nothing else with it', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four degrees', 'lit the torch', 'take that back');
    expect(visit.run.context.readings.filter(({ withdrawn }) => withdrawn)).toEqual([]);
  });
});
