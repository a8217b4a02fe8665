import { describe, expect, it } from 'vitest';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { LIBRARY_UNIT, TypedVisit } from './typed-visit.ts';

/** Nothing is known of it but its name. */
const UNKNOWN = { id: 'unknown' };

const asked = (visit: TypedVisit) => visit.run.context.step?.id;

describe('the nameplate on arrival', () => {
  it('is asked field by field where nothing is known, and makes the unit', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees');
    expect(asked(visit)).toBe('arrive.nameplate');
    await visit.type('model 24ACX7, serial 4410B7');
    expect(asked(visit)).toBe('arrive.plate-supply-volts');
    await visit.type('two thirty');
    expect(asked(visit)).toBe('arrive.plate-rla');
    await visit.type('fourteen point one');
    expect(asked(visit)).toBe('arrive.plate-lra');
    await visit.type('seventy seven', 'one point two', 'forty five over five', 'R 410A');
    expect(asked(visit)).not.toMatch(/plate/);
    expect(visit.run.context.plate).toEqual({
      model: '24ACX7',
      serial: '4410B7',
      'supply-volts': 230,
      rla: 14.1,
      lra: 77,
      'fan-fla': 1.2,
      'capacitor-herm': 45,
      'capacitor-fan': 5,
      refrigerant: 'R-410A',
    });
    expect(visit.run.context.unit).toMatchObject({
      supply: { nominal: 230 },
      compressor: { rla: 14.1, lra: 77 },
      capacitor: { herm: 45, fan: 5 },
      refrigerant: 'R-410A',
    });
  });

  it('takes fields in any order and any number in one breath, and asks what is left', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees', 'R410A, 230 volts, 14.1 RLA and 77 LRA', 'model 24ACX7');
    expect(asked(visit)).toBe('arrive.plate-serial');
    await visit.type("can't make it out");
    expect(asked(visit)).toBe('arrive.plate-fan-fla');
  });

  it('moves on from what cannot be read, a line at a time, and names it at the end', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees', "can't read it", "it's worn off", '14.1 RLA', "it's not on the plate");
    expect(asked(visit)).toBe('arrive.plate-fan-fla');
    await visit.type('pass');
    expect(asked(visit)).toBe('arrive.meter');
    await visit.type('meter is cat three', 'finish the visit', 'no reason was given', 'note the customer sent us away');
    const notRecorded = foldVisit(visit.events()).summary?.technical.find((line) => line.startsWith('Not recorded'));
    for (const name of ['model', 'serial', 'supply volts', 'locked rotor amps', 'refrigerant'])
      expect(notRecorded).toContain(`nameplate ${name}`);
    expect(notRecorded).not.toContain('rated load amps');
  });

  it('of a plate that cannot be read at all asks nothing more', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees', 'the plate is unreadable');
    expect(asked(visit)).toBe('arrive.meter');
  });

  it('is asked for no more than what the unit is not listed with', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    await visit.type('customer agrees', 'model 24ACX7 serial 4410B7');
    expect(asked(visit)).toBe('arrive.meter');
    const listed = await TypedVisit.open({ ...LIBRARY_UNIT, model: '24ACX7', serial: '4410B7' });
    await listed.type('customer agrees');
    expect(asked(listed)).toBe('arrive.meter');
  });

  it('spells model and serial back, so that a wrong sign is heard', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees', 'model two four a c x seven');
    expect(visit.mouth.said.map(({ text }) => text)).toContain('2 4 A C X 7.');
  });

  it('asks again for a field that is taken back', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees', 'model 24ACX7', 'take that back');
    expect(visit.run.context.plate).toEqual({});
    expect(asked(visit)).toBe('arrive.nameplate');
  });

  it('passes nothing at "can\'t read it" where no plate is asked, and asks its step again', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT);
    await visit.type("can't read it");
    expect(visit.of('step.parked')).toEqual([]);
    expect(visit.mouth.said.at(-1)?.kind).toBe('step');
    expect(asked(visit)).toBe('arrive.consent');
  });

  it('takes a refrigerant for no serial number, however it is written', async () => {
    for (const said of ['R 410 A', 'R-410A', 'r four ten a', '410a']) {
      const visit = await TypedVisit.open(UNKNOWN);
      await visit.type('customer agrees', 'model 24ACX7', said);
      expect(visit.run.context.plate, said).toEqual({ model: '24ACX7', refrigerant: 'R-410A' });
      expect(asked(visit)).toBe('arrive.plate-serial');
    }
  });

  it('asks whether a line said like a reading stands on the plate, and measures nothing', async () => {
    const visit = await TypedVisit.open(UNKNOWN);
    await visit.type('customer agrees', "can't read it", '230 volts', 'fan motor point nine amps');
    expect(visit.of('reading.logged')).toEqual([]);
    await visit.type('yes');
    expect(visit.run.context.plate).toMatchObject({ 'fan-fla': 0.9 });
    expect(visit.of('reading.logged')).toEqual([]);
  });

  it('lets a question about it go where its line cannot be read, or nobody knows it', async () => {
    for (const said of ["can't read it", 'no idea']) {
      const visit = await TypedVisit.open(UNKNOWN);
      await visit.type('customer agrees', "can't read it", '230 volts', 'fan motor point nine amps');
      expect(visit.run.context.questions).toHaveLength(1);
      await visit.type(said);
      expect(visit.run.context.questions).toEqual([]);
      expect(visit.run.context.plate).not.toHaveProperty('fan-fla');
    }
  });
});
