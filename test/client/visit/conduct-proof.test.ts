import { describe, expect, it } from 'vitest';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { EnergyState, ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { NEVER_SAID } from './never-said.ts';
import { LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** Every conductor at the point of work to ground and to each other, both sides of an open contactor: NFPA 70E 120.5. */
const PAIRS = [
  'leg one to ground',
  'leg two to ground',
  'leg one to leg two',
  'T one to ground',
  'T two to ground',
  'T one to T two',
] as const;
const ROAD = ['leg one to ground one eighteen', 'thermostat is not calling', 'outdoor disconnect is pulled and locked'];
const BREATH = 'meter two forty zero zero zero zero zero zero meter two forty';
const SECTIONS = ['herm section zero volts d c', 'fan section zero volts d c'] as const;

async function visitAfter(lines: readonly string[], unit?: UnitProfile): Promise<TypedVisit> {
  const visit = await TypedVisit.open(unit);
  await visit.type(...lines);
  return visit;
}

const energyOf = (visit: TypedVisit, zone: ZoneId = 'outdoor-load'): EnergyState => visit.run.context.energy[zone];
const saidBy = (visit: TypedVisit): string => visit.mouth.said.map(({ text }) => text).join('\n');
const named = (pair: string): string => `${pair} zero volts`;

describe('a proof number by number', () => {
  it('asks each pair in its order, binds a bare zero to it, and the meter again', async () => {
    const visit = await visitAfter([...ROAD, 'meter proves two forty']);
    for (const pair of PAIRS) {
      expect(visit.mouth.last().toLowerCase()).toBe(`${pair.toLowerCase()}.`);
      await visit.type('zero');
    }
    expect(visit.mouth.last()).toBe('Meter again.');
    expect(energyOf(visit)).toBe('proving');
    await visit.type('two forty');
    expect(energyOf(visit)).toBe('reads-dead');
    expect(visit.of('proof.recorded')).toMatchObject([{ before: 240, values: [0, 0, 0, 0, 0, 0], after: 240 }]);
  });

  it('asks in at most six words, and none is one that is listened for', async () => {
    const visit = await visitAfter([...ROAD, 'meter proves two forty', ...PAIRS.map(named)]);
    const asked = visit.of('step.asked').filter(({ step }) => /^energy\.(pair|meter)/.test(step));
    expect(asked).toHaveLength(7);
    for (const { words } of asked) {
      expect(words.split(' ').length).toBeLessThanOrEqual(6);
      expect(words).not.toMatch(NEVER_SAID);
    }
  });

  it.each(PAIRS.map((pair, index) => [pair, index] as const))('is not whole without %s', async (_, left) => {
    const pairs = PAIRS.filter((__, index) => index !== left).map(named);
    const visit = await visitAfter([...ROAD, 'meter proves two forty', ...pairs, 'meter proves two forty']);
    expect(energyOf(visit)).toBe('proving');
    await visit.type(named(PAIRS[left]!), 'meter proves two forty');
    expect(energyOf(visit)).toBe('reads-dead');
  });

  it.each([
    ['the same pair again', PAIRS.map(() => named('leg one to ground'))],
    ['one side for the other', [...PAIRS.slice(0, 3), ...PAIRS.slice(0, 3)].map(named)],
    ['T1 with L2', [...PAIRS.slice(0, 5), 'T one to leg two'].map(named)],
    ['a pole', [...PAIRS.slice(0, 5), 'leg one to T one'].map(named)],
    ['the disconnect for the contactor', [...PAIRS.slice(0, 5), 'disconnect load side'].map(named)],
    ['ohms', [...PAIRS.slice(0, 5).map(named), 'T one to T two zero ohms', 'yes']],
    ['a.c. that is no volts at all', [...PAIRS.slice(0, 5).map(named), 'T one to T two open', 'yes']],
  ])('takes no %s', async (_, lines) => {
    const visit = await visitAfter([...ROAD, 'meter proves two forty', ...lines, 'meter proves two forty']);
    expect(energyOf(visit)).toBe('proving');
    expect(visit.of('proof.recorded')).toEqual([]);
  });

  it.each(['correction zero', 'correction one', 'correction two volts', 'take that back', 'scratch that'])(
    'opens a pair again: %s',
    async (words) => {
      const visit = await visitAfter([...ROAD, 'meter proves two forty', ...PAIRS.map(named), words]);
      expect(visit.mouth.last()).toBe('T one to T two.');
      await visit.type('meter proves two forty');
      expect(energyOf(visit)).toBe('proving');
    },
  );

  it.each([
    ['disconnect-line', 'line side one', 'panel breaker is off and locked'],
    ['air-handler', 'air handler leg one', 'air handler switch is off and locked'],
  ] as const)('is for the place of its first pair: %s', async (zone, leg, locked) => {
    const visit = await visitAfter([`${leg} to ground one eighteen`, 'thermostat is not calling', locked]);
    await visit.type('meter proves two forty', `${leg} to ground zero volts`, 'zero', 'zero', 'two forty');
    expect(energyOf(visit, zone)).toMatch(/dead/);
  });

  it('on the 24 volt side is R to C alone, without a ground', async () => {
    const visit = await visitAfter(['thermostat is not calling', 'air handler switch is off and locked']);
    await visit.type('control circuit meter twenty five zero meter twenty five');
    expect(energyOf(visit, 'control')).toBe('proven-dead');
  });
});

describe('a proof in one breath', () => {
  it('is read back with its places, and recorded with them', async () => {
    const visit = await visitAfter([...ROAD, BREATH]);
    expect(saidBy(visit)).toContain('Leg one, leg two, leg one to leg two, T one, T two, T one to T two: zero volts.');
    expect(visit.of('proof.recorded')[0]?.at).toEqual([
      ['L1', 'ground'],
      ['L2', 'ground'],
      ['L1', 'L2'],
      ['T1', 'ground'],
      ['T2', 'ground'],
      ['T1', 'T2'],
    ]);
  });

  it.each([
    ['three values', 'meter two forty zero zero zero meter two forty', 'T one to ground.'],
    ['one named value', 'meter two forty leg one zero meter two forty', 'Leg two to ground.'],
    [
      'a name three times',
      'meter two forty leg one zero leg one zero leg one zero meter two forty',
      'Leg two to ground.',
    ],
    ['the load side alone', 'meter two forty T one zero T two zero T to T zero meter two forty', 'Leg one to ground.'],
  ])('with %s stands begun, and the rest is asked', async (_, breath, next) => {
    const visit = await visitAfter([...ROAD, breath]);
    expect(energyOf(visit)).toBe('proving');
    expect(visit.mouth.last()).toBe(next);
    for (let left = 6; visit.mouth.last() !== 'Meter again.' && left > 0; left -= 1) await visit.type('zero');
    await visit.type('two forty');
    expect(energyOf(visit)).toBe('reads-dead');
  });

  it('does not count a repeated place, and says so', async () => {
    const visit = await visitAfter([...ROAD, 'meter two forty leg one zero leg one zero leg two zero meter two forty']);
    expect(saidBy(visit)).toContain('Not counted: one without a pair.');
    expect(visit.run.context.proof?.pairs.map(({ at }) => at)).toEqual([
      ['L1', 'ground'],
      ['L2', 'ground'],
    ]);
  });

  it.each([
    ['before', 'meter zero zero zero zero zero zero zero meter two forty'],
    ['behind', 'meter two forty zero zero zero zero zero zero meter zero'],
  ])('wants the meter proven %s', async (_, breath) => {
    const visit = await visitAfter([...ROAD, breath]);
    expect(energyOf(visit)).not.toMatch(/dead/);
    expect(visit.run.context.proof).toBeUndefined();
  });
});

describe('the order of a proof', () => {
  it.each([
    ['the call taken off', [ROAD[0]!, ROAD[2]!], /call off first/i],
    ['the switch opened', [ROAD[0]!, ROAD[1]!], /which switch is open and locked/],
    ['the lock', [ROAD[0]!, ROAD[1]!, 'outdoor disconnect is pulled'], /not locked/],
    ['its ground read while fed', [ROAD[1]!, ROAD[2]!], /no live leg was read to this ground/],
  ])('wants %s, and says so', async (_, road, words) => {
    for (const meter of [BREATH, 'meter proves two forty']) {
      const visit = await visitAfter([...road, meter]);
      expect(energyOf(visit)).not.toMatch(/dead|proving/);
      expect(visit.run.context.proof).toBeUndefined();
      expect(saidBy(visit)).toMatch(words);
      expect(visit.of('proof.refused')).toHaveLength(1);
    }
  });

  it('asks for no call off where the thermostat is blank', async () => {
    const visit = await visitAfter([ROAD[0]!, 'thermostat is blank', ROAD[2]!, BREATH]);
    expect(energyOf(visit)).toBe('reads-dead');
  });
});

describe('the age of a proof', () => {
  it.each([0, 3, 6])('is ten minutes: %i pairs read before count no more', async (count) => {
    const visit = await visitAfter([...ROAD, 'meter proves two forty', ...PAIRS.slice(0, count).map(named)]);
    await visit.later(11);
    expect(visit.run.context.proof).toBeUndefined();
    expect(energyOf(visit)).toBe('reported-off');
    expect(saidBy(visit)).toContain('Over ten minutes: the proof starts again');
    await visit.type('meter proves two forty', ...PAIRS.slice(count).map(named), 'meter proves two forty');
    expect(energyOf(visit)).toBe(count === 0 ? 'reads-dead' : 'proving');
  });

  it('is counted from its first meter number', async () => {
    const visit = await visitAfter([...ROAD, 'meter proves two forty', ...PAIRS.slice(0, 3).map(named)]);
    await visit.later(6);
    await visit.type('meter proves two forty');
    await visit.later(6);
    expect(visit.run.context.proof).toBeUndefined();
  });

  it.each(['outdoor disconnect is back in', 'power is back on', 'lock is off', 'leg one to ground one eighteen'])(
    'is over with power: "%s" leaves half a proof nothing',
    async (words) => {
      const half = [...ROAD, 'meter proves two forty', ...PAIRS.slice(0, 3).map(named)];
      const visit = await visitAfter([...half, words, ROAD[2]!, 'meter proves two forty']);
      expect(visit.run.context.proof?.pairs ?? []).toEqual([]);
      await visit.type(...PAIRS.slice(3).map(named), 'meter proves two forty');
      expect(energyOf(visit)).not.toMatch(/dead/);
    },
  );
});

describe('stored charge', () => {
  const HARD_START: UnitProfile = { ...LIBRARY_UNIT, id: 'hard-start', hardStart: true };
  const UNKNOWN: UnitProfile = { id: 'unknown' };
  const PROOF = [...ROAD, BREATH] as const;

  it.each([
    ['by the profile', HARD_START, PROOF],
    ['once a kit was fitted', UNKNOWN, ['fitted a hard start kit', 'yes', ...PROOF]],
    ['once it was named on a wire', UNKNOWN, ['lifted the red wire from start cap side one', 'yes', ...PROOF]],
  ])('of a start capacitor is read: %s', async (_, unit, road) => {
    const visit = await visitAfter([...road, ...SECTIONS], unit);
    expect(energyOf(visit)).toBe('reads-dead');
    await visit.type('start cap zero volts d c');
    expect(energyOf(visit)).toBe('proven-dead');
  });

  it('of a start capacitor that turns up in a dead unit reopens it', async () => {
    const visit = await visitAfter([...PROOF, ...SECTIONS], UNKNOWN);
    expect(energyOf(visit)).toBe('proven-dead');
    await visit.type('fitted a hard start kit', 'yes');
    expect(energyOf(visit)).toBe('reads-dead');
  });

  it.each(['correction zero', 'correction one', 'take that back'])('is open again after "%s"', async (words) => {
    for (const zone of ['outdoor-load', 'air-handler'] as const) {
      const indoors = [
        'thermostat is not calling',
        'air handler leg one to ground one eighteen',
        'air handler switch is off and locked',
        'air handler meter one eighteen zero zero zero meter one eighteen',
        'blower cap zero volts d c',
      ];
      const visit = await visitAfter(zone === 'air-handler' ? indoors : TO_PROVEN_DEAD);
      expect(energyOf(visit, zone)).toBe('proven-dead');
      await visit.type(words);
      expect(energyOf(visit, zone)).toBe('reads-dead');
    }
  });

  it('of an electronically driven blower is left for its time, by the clock and by word', async () => {
    const visit = await visitAfter([
      'nameplate blower is electronic',
      'thermostat is not calling',
      'air handler leg one to ground one eighteen',
      'air handler switch is off and locked',
      'air handler meter one eighteen zero zero zero meter one eighteen',
    ]);
    expect(visit.run.context.unit.blowerDrive).toBe('electronic');
    expect(energyOf(visit, 'air-handler')).toBe('reads-dead');
    expect(saidBy(visit)).toContain("the maker's time");
    await visit.type('done');
    expect(energyOf(visit, 'air-handler')).toBe('reads-dead');
    expect(saidBy(visit)).toContain("minutes left. The maker's figure governs.");
    await visit.later(6);
    expect(energyOf(visit, 'air-handler')).toBe('reads-dead');
    await visit.type('done');
    expect(energyOf(visit, 'air-handler')).toBe('proven-dead');
  });
});

describe('a.c. is not d.c.', () => {
  it.each([
    ['where nothing is known', []],
    ['where it is live', ['leg one to ground one eighteen']],
    ['where it was reported off', ROAD],
    ['within a proof', [...ROAD, 'meter proves two forty']],
  ])('d.c. of a section is not taken for its charge %s', async (_, road) => {
    for (const dc of ['herm section zero volts d c', 'fan section thirty seven volts d c']) {
      const visit = await visitAfter([...road, dc]);
      expect(visit.of('reading.logged').filter(({ reading }) => reading.quantity === 'voltage-dc')).toEqual([]);
      expect(visit.of('charge.released')).toEqual([]);
      expect(saidBy(visit)).not.toMatch(/Discharge it/);
      expect(saidBy(visit)).toMatch(/DC counts|Prove it first/);
    }
  });

  it('volts across a running capacitor are asked, and taken as a.c. at a yes', async () => {
    const visit = await visitAfter(['leg one to ground one eighteen', 'herm section three fifty two volts d c']);
    expect(visit.mouth.last()).toContain('Was that AC?');
    await visit.type('yes');
    expect(visit.of('reading.logged').at(-1)?.reading).toMatchObject({
      quantity: 'voltage',
      at: ['cap-C', 'cap-HERM'],
    });
  });

  it.each(['capacitor is discharged', 'discharged the capacitor'])(
    '"%s" of a live unit is answered with proof first',
    async (words) => {
      const visit = await visitAfter([words]);
      expect(saidBy(visit)).toContain('does not read dead: prove that first');
    },
  );
});
