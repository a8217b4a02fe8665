import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { REPAIR_AND_PROOF, TO_PROVEN_DEAD, TypedVisit, WINDINGS_SOUND } from './typed-visit.ts';

async function warnedBy(visit: TypedVisit, ...lines: readonly string[]): Promise<string> {
  const count = visit.mouth.said.length;
  await visit.type(...lines);
  return visit.mouth.said
    .slice(count)
    .filter(({ kind }) => kind === 'warning')
    .map(({ text }) => text)
    .join(' ');
}

/** What stands open, and how it is named when power comes back. */
const OPEN = {
  'a jumper': ['put a jumper across leg one and T one', 'jumper leg one to T one'],
  'a wire off': ['lifted the red wire from T one', 'red wire from T one'],
  'the terminal cover off': ['the terminal cover is off', 'terminal cover off'],
  'a cover off': ['cover is off', 'cover of the unit off'],
  'a part out': ['took the contactor out', 'contactor out'],
  'a fuse that was refused': ['fitted a sixty amp fuse', 'fuse, sixty amps, refused'],
  'a lock': ['panel breaker is pulled and locked', 'panel breaker recorded locked'],
} as const;
const BACK = ['outdoor disconnect is back in', 'power is back on', 'power is on', 'we have power again'] as const;

describe.each(Object.entries(OPEN))('power that comes back with %s', (_, [sentence, name]) => {
  it.each(BACK)('is told of it at that moment, by name: %s', async (back) => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled', sentence);
    expect(await warnedBy(visit, back)).toContain(`Power back with: ${name}`);
  });

  it('is told of it after a reload too', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled', sentence);
    visit.run = await VisitRun.restore(visit.edges(), visit.bodies);
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).toContain(name);
  });

  it('is told nothing where that was taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled', sentence, 'take that back');
    if (name.includes('locked')) return;
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).not.toContain(name);
  });
});

describe('power that comes back', () => {
  it('names all that it meets, in one sentence', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled', ...Object.values(OPEN).map(([sentence]) => sentence));
    const names = Object.values(OPEN).map(([, name]) => name);
    // In the order of the list of open things, whatever was told first.
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).toBe(`Power back with: ${names.join(', ')}.`);
  });

  it.each(['outdoor fan is turning', 'compressor is running', 'leg one to ground one eighteen'])(
    'is also what runs or reads where it was off: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type('outdoor disconnect is pulled and locked', 'lifted the red wire from T one');
      expect(await warnedBy(visit, sentence)).toContain('Power back with: red wire from T one');
    },
  );

  it('says nothing of what was put right before', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'lifted the brown wire from fan', 'landed the brown wire on fan');
    await visit.type('took the contactor out', 'fitted a contactor', 'cover is off', 'covers are on', 'live');
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).toBe('');
  });

  it('names at the air handler only what is there', async () => {
    const visit = await TypedVisit.open();
    await visit.type('lifted the red wire from T one', 'jumper on from R to Y');
    const warned = await warnedBy(visit, 'air handler switch is back on');
    expect(warned).toContain('jumper R at the thermostat to Y at the thermostat');
    expect(warned).not.toContain('red wire');
  });

  it('tells of a lock of another switch at the same place', async () => {
    const visit = await TypedVisit.open();
    await visit.type('service switch is off and locked');
    expect(await warnedBy(visit, 'air handler breaker is on')).toContain('air handler switch recorded locked');
    expect(await warnedBy(visit, 'service switch is on')).not.toContain('locked');
  });
});

describe('fuses back in', () => {
  it.each(['fuses are back in', 'put the fuses back in'])('end the proof behind them: %s', async (sentence) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
    expect(await warnedBy(visit, sentence)).toContain('Power may be back. Proof ended: outdoor unit.');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
  });

  it('end nothing behind a breaker that is locked', async () => {
    const visit = await TypedVisit.open();
    const proof = TO_PROVEN_DEAD.findIndex((line) => line.includes('locked')) + 1;
    const breaker = 'panel breaker is pulled and locked';
    await visit.type(...TO_PROVEN_DEAD.slice(0, proof), breaker, ...TO_PROVEN_DEAD.slice(proof), 'fuses are back in');
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
  });

  it.each(['fuses are back in', 'outdoor disconnect is back in', 'outdoor disconnect is unlocked'])(
    'end the proof where the breaker was locked only after it: nothing showed that it feeds the unit: %s',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type(...TO_PROVEN_DEAD, 'panel breaker is pulled and locked', line);
      expect(['proven-dead', 'in-doubt']).not.toContain(visit.run.context.energy['outdoor-load']);
    },
  );
});

/** From proven dead: what tells that a fuse blew or a breaker tripped. */
const TRIPS = [
  'the breaker is tripped',
  'breaker is tripped',
  'fitted a thirty amp fuse',
  'fitted a thirty amp breaker',
  'fuse one line end to fuse one load end open on the bench',
] as const;

describe.each(TRIPS)('after a trip told by "%s"', (trip) => {
  it('power that comes back with windings not read is warned of at once', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, trip);
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).toMatch(
      /after a trip, and not every winding was read/,
    );
  });

  it('one winding that was left out is enough for that', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, trip, ...WINDINGS_SOUND.slice(0, -1));
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).toMatch(/not every winding was read/);
  });

  it('nothing is said where each winding was read', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, trip, ...WINDINGS_SOUND);
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).not.toMatch(/winding/);
  });

  it('each winding is asked for while it is dead, before power', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, ...REPAIR_AND_PROOF.slice(0, 3), trip);
    const asked: string[] = [];
    for (const line of WINDINGS_SOUND) {
      asked.push(visit.run.context.step?.id.split('-').slice(0, 3).join('-') ?? '');
      await visit.type(line);
    }
    expect(asked).toEqual([
      'energy.winding-comp-C',
      'energy.winding-comp-R',
      'energy.winding-comp-S',
      'energy.winding-fan-C',
    ]);
    expect(visit.of('step.asked').some(({ step }) => step === 'energy.power-on')).toBe(false);
    expect(visit.run.context.step?.id).toBe('energy.clamps-placed');
  });
});

describe('a trip behind windings that were read', () => {
  it.each(['breaker is tripped', 'fuse one line end to fuse one load end open on the bench'])(
    'has them read again: what was read before "%s" tells nothing of what it did',
    async (trip) => {
      const visit = await TypedVisit.open();
      await visit.type(...TO_PROVEN_DEAD, ...WINDINGS_SOUND, trip);
      expect(await warnedBy(visit, 'outdoor disconnect is back in')).toMatch(/not every winding was read/);
    },
  );
});

describe('a winding that reads to its shell', () => {
  const GROUNDED = [
    'compressor common to shell zero ohms',
    'compressor run to shell two ohms',
    'compressor start to shell two hundred ohms',
    'fan motor to ground five ohms',
  ] as const;

  it.each(GROUNDED)('is warned of as it is read, and power is asked for no more: %s', async (sentence) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, ...REPAIR_AND_PROOF.slice(0, 3));
    expect(await warnedBy(visit, sentence)).toContain(
      'A winding reads to its shell. It may vent at the terminals: stay clear, do not reset.',
    );
    const count = visit.of('step.asked').length;
    await visit.type('covers are on', 'what next');
    expect(visit.mouth.last()).toContain('power is not asked for');
    expect(visit.of('step.asked').slice(count)).toEqual([]);
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).toMatch(
      /Power on a winding that reads to its shell/,
    );
  });

  it('is forgotten with its reading, and with a compressor that is fitted after it', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'compressor common to shell zero ohms', 'take that back');
    expect(await warnedBy(visit, 'outdoor disconnect is back in')).not.toMatch(/winding/);
    const other = await TypedVisit.open();
    await other.type(...TO_PROVEN_DEAD, 'compressor common to shell zero ohms', 'fitted a compressor');
    expect(await warnedBy(other, 'outdoor disconnect is back in')).not.toMatch(/winding that reads/);
  });

  it.each(['compressor common to shell open', 'compressor common to shell nine hundred kilohms'])(
    'is not one that reads far over the least: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type(...TO_PROVEN_DEAD);
      expect(await warnedBy(visit, sentence)).not.toMatch(/winding/);
    },
  );
});

describe('a breaker that is reset', () => {
  it.each(['panel breaker is on', 'reset the breaker', 'the breaker is reset'])(
    'again, and once more, is warned of each time: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type('the breaker is tripped');
      expect(await warnedBy(visit, sentence)).not.toMatch(/Reset/);
      expect(await warnedBy(visit, sentence)).toMatch(/Reset two: one is all it gets/);
      await visit.type('the breaker is tripped');
      expect(await warnedBy(visit, sentence)).toMatch(/Reset three: one is all it gets/);
    },
  );

  it('counts nothing where the trip was taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('the breaker is tripped', 'take that back', 'panel breaker is on');
    expect(await warnedBy(visit, 'panel breaker is on')).toBe('');
  });
});

describe('a breaker that is told reset had tripped, whoever said so', () => {
  it.each(['breaker is reset', 'I reset the breaker'])('%s: the windings are named at once', async (sentence) => {
    const visit = await TypedVisit.open();
    expect(await warnedBy(visit, sentence)).toContain('not every winding was read to its shell');
  });

  it('is not named where the windings read whole before', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, ...WINDINGS_SOUND);
    expect(await warnedBy(visit, 'reset the breaker')).not.toContain('not every winding');
  });

  it('counts each reset', async () => {
    const visit = await TypedVisit.open();
    await visit.type('breaker is reset');
    expect(await warnedBy(visit, 'breaker is reset')).toContain('Reset two');
    expect(await warnedBy(visit, 'breaker is reset')).toContain('Reset three');
  });
});

describe('a winding that was told to read to its shell and refused', () => {
  it('is warned of when power comes back, and is no evidence', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled', 'compressor common to shell zero ohms', 'yes');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(await warnedBy(visit, 'disconnect is back in')).toContain('Power on a winding that reads to its shell');
  });

  it('is not where it was taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled', 'compressor common to shell zero ohms', 'yes', 'take that back');
    await visit.type('take that back');
    expect(await warnedBy(visit, 'disconnect is back in')).not.toContain('Power on a winding');
  });
});
