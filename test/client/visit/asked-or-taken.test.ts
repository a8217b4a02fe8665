import { describe, expect, it } from 'vitest';
import { ARRIVAL, LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit, WEAK_FAN } from './typed-visit.ts';

describe('digits typed by hand', () => {
  it('are taken as typed, where the same number spoken is asked for its teen or ty', async () => {
    const typed = await TypedVisit.open();
    await typed.type('suction pressure 118 psi');
    expect(typed.of('reading.asked')).toEqual([]);
    expect(typed.of('reading.logged')).toMatchObject([{ reading: { at: ['suction-port'], value: 118 } }]);

    const spoken = await TypedVisit.open();
    const text = 'suction pressure 118 psi';
    spoken.run.hear({ id: 'w1', ear: 'wav', text, alternatives: [], confidence: 1, accepted: true });
    await spoken.run.settled();
    expect(spoken.of('reading.asked')).toMatchObject([{ why: 'teen or ty', twin: 180 }]);
  });
});

describe('what fits its words badly', () => {
  let count = 0;
  async function badlyHeard(visit: TypedVisit, text: string): Promise<string> {
    count += 1;
    const heard = { id: `b${count}`, ear: 'wav', text, alternatives: [], confidence: 0.6 } as const;
    visit.run.hear({ ...heard, accepted: true, doubtful: true });
    await visit.run.settled();
    return visit.mouth.last();
  }

  it('is asked before a reading, an opened switch or a part goes on record; a switch closed is believed', async () => {
    const visit = await TypedVisit.open();
    expect(await badlyHeard(visit, 'leg one to ground one eighteen')).toBe('Leg one to ground, one one eight volts?');
    expect(visit.of('reading.logged')).toEqual([]);
    await visit.type('yes');
    expect(visit.of('reading.logged')).toHaveLength(1);
    expect(await badlyHeard(visit, 'outdoor disconnect is pulled and locked')).toMatch(/: is that right\?$/);
    expect(visit.run.context.energy['outdoor-load']).not.toBe('reported-off');
    await visit.type('yes');
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
    await badlyHeard(visit, 'outdoor disconnect is back in');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    const part = 'fitted a forty five over five dual capacitor four forty volt';
    expect(await badlyHeard(visit, part)).toMatch(/is that right\?$/);
    expect(visit.of('part.fitted')).toEqual([]);
  });

  it('is taken at once where it is a voltage on what was proven dead, or somebody hurt', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, ...TO_PROVEN_DEAD);
    const before = visit.of('reading.logged').length;
    await badlyHeard(visit, 'load side two thirty volts');
    expect(visit.of('reading.logged')).toHaveLength(before + 1);
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    const hurt = await TypedVisit.open();
    await badlyHeard(hurt, 'i got bit');
    expect(hurt.of('injury.reported')).toHaveLength(1);
  });

  it('moves on at a command all the same', async () => {
    const visit = await TypedVisit.open();
    expect(await badlyHeard(visit, 'what next')).not.toMatch(/right\?$/);
  });
});

describe('"same on the other"', () => {
  it('means the reading taken last on its other leg, and is asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen');
    expect(await visit.type('same on the other')).toBe('Leg two to ground, one one eight volts?');
    await visit.type('yes');
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { at: ['L2', 'ground'], value: 118 } });
  });

  it('means nothing before anything was read', async () => {
    const visit = await TypedVisit.open();
    await visit.type('same on the other', 'yes');
    expect(visit.of('reading.logged')).toEqual([]);
  });
});

describe('a reading at a place the unit is listed without', () => {
  const bare = { ...LIBRARY_UNIT, id: 'bare', floatSwitch: 'none', fusedDisconnect: false } as const;

  it('is asked before it is taken, once for its place', async () => {
    const visit = await TypedVisit.open(bare);
    const asked = await visit.type('fuse one two forty volts');
    expect(asked).toMatch(/volts\? This unit is listed without fuses at the disconnect\.$/);
    expect(visit.of('reading.logged')).toEqual([]);
    await visit.type('yes');
    expect(visit.of('reading.logged')).toHaveLength(1);
    await visit.type('fuse one two forty one volts');
    expect(visit.of('reading.logged')).toHaveLength(2);
  });

  it('is set aside at a no, and kept in the record', async () => {
    const visit = await TypedVisit.open(bare);
    await visit.type('float switch twenty four volts', 'no');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'withdrawn-by-technician', reading: { value: 24 } }]);
  });

  it('is taken at once where the unit has the place, or nobody knows', async () => {
    const visit = await TypedVisit.open({ id: 'unknown' });
    await visit.type('float switch twenty four volts');
    expect(visit.of('reading.logged')).toHaveLength(1);
  });
});

/** 1.1 µF of a plated 5 is far outside ±6 % (common practice for run capacitors). */
describe('a value that does not fit', () => {
  const TO_FAN_SECTION = [...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD] as const;

  it('is taken where a test asked for it, with a remark behind the readback, and looked at once more', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_FAN_SECTION);
    expect(visit.run.context.step?.test).toBe('microfarads-fan');
    await visit.type(WEAK_FAN[0]);
    expect(visit.of('reading.asked')).toEqual([]);
    expect(visit.of('reading.judged').at(-1)).toMatchObject({ judged: { word: 'does not fit' } });
    expect(visit.mouth.said.findLast(({ kind }) => kind === 'readback')?.text).toMatch(/does not fit/i);
    expect(visit.run.context.step?.test).toBe('microfarads-fan');
    await visit.type(WEAK_FAN[1]);
    expect(visit.of('finding.stated')).toMatchObject([{ fault: 'fan-capacitor-weak' }]);
    expect(visit.of('reading.asked')).toEqual([]);
  });

  it.each([
    ['nobody asked for it', 'herm section thirty three microfarads on the bench'],
    ['it cannot be read there at all', 'fan section sixty microfarads on the bench'],
  ])('is asked where %s', async (_why, line) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_FAN_SECTION);
    const taken = visit.of('reading.logged').length;
    await visit.type(line);
    expect(visit.of('reading.asked')).toHaveLength(1);
    expect(visit.of('reading.logged')).toHaveLength(taken);
  });

  it('is asked where the ear doubts it, though a test asked for it', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_FAN_SECTION);
    const taken = visit.of('reading.logged').length;
    const heard = { id: 'd1', ear: 'wav', text: WEAK_FAN[0], alternatives: [], confidence: 0.6 } as const;
    visit.run.hear({ ...heard, accepted: true, doubtful: true });
    await visit.run.settled();
    expect(visit.of('reading.asked')).toHaveLength(1);
    expect(visit.of('reading.logged')).toHaveLength(taken);
  });
});
