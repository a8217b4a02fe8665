import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { LIBRARY_UNIT, LIBRARY_VISIT, TypedVisit } from './typed-visit.ts';

const ORIFICE_UNIT = JSON.parse(
  readFileSync(new URL('../../../fixtures/units/bakery.json', import.meta.url), 'utf8'),
) as UnitProfile;

/** A running unit with its gauges on, twenty minutes in. */
async function running(unit: UnitProfile, outdoor: string): Promise<TypedVisit> {
  const visit = await TypedVisit.open(unit);
  await visit.type(`outdoor air ${outdoor} degrees`, 'compressor is running');
  await visit.later(20);
  return visit;
}

const SUCTION = ['suction pressure one twenty eight', 'suction line fifty nine degrees'] as const;
const LIQUID = ['liquid pressure three forty two', 'liquid line ninety four degrees'] as const;

describe('the charge in a visit', () => {
  it('holds superheat against the target of a fixed orifice, within five degrees (CEC RA3.2.2.6, 2008)', async () => {
    const visit = await running(ORIFICE_UNIT, 'eighty eight');
    await visit.type('return wet bulb sixty five degrees', ...SUCTION);
    // R-410A at 128 psig: dew point 44.1 °F (CoolProp 8 table of the standards test); (3·65 − 80 − 88)/2 = 13.5 °F.
    expect(visit.of('charge.judged').at(-1)).toMatchObject({
      figure: 'superheat',
      value: expect.closeTo(14.9, 0),
      judged: { word: 'fits', band: { low: 8.5, high: 18.5 } },
    });
  });

  it('is worked out anew when one of its readings is corrected', async () => {
    const visit = await running(ORIFICE_UNIT, 'eighty eight');
    await visit.type('return wet bulb sixty five degrees', ...SUCTION, 'correction seventy nine');
    const [first, second] = visit.of('charge.judged');
    expect(first).toMatchObject({ figure: 'superheat', judged: { word: 'fits' } });
    expect(second).toMatchObject({ figure: 'superheat', judged: { word: 'does not fit' } });
    expect((second?.value ?? 0) - (first?.value ?? 0)).toBeCloseTo(20, 1);
  });

  it('gives no verdict without the wet bulb that the target stands on', async () => {
    const visit = await running(ORIFICE_UNIT, 'eighty eight');
    await visit.type(...SUCTION);
    expect(visit.of('charge.judged')[0]).toMatchObject({ figure: 'superheat', noVerdict: 'no-target' });
    expect(visit.of('charge.judged')[0]?.judged).toBeUndefined();
  });

  it('gives none below 55 degrees outdoors, before fifteen minutes, or without the outdoor temperature', async () => {
    const cold = await running(ORIFICE_UNIT, 'fifty');
    await cold.type(...LIQUID);
    expect(cold.of('charge.judged').map(({ noVerdict }) => noVerdict)).toContain('outdoors-too-cold');
    const early = await TypedVisit.open(ORIFICE_UNIT);
    await early.type('outdoor air eighty eight degrees', 'compressor is running', ...LIQUID);
    expect(early.of('charge.judged').map(({ noVerdict }) => noVerdict)).toEqual([
      'running-too-short',
      'running-too-short',
    ]);
    const blind = await TypedVisit.open(ORIFICE_UNIT);
    await blind.type('compressor is running');
    await blind.later(20);
    await blind.type(...LIQUID);
    expect(blind.of('charge.judged')[0]).toMatchObject({ figure: 'subcooling', noVerdict: 'outdoor-unknown' });
  });

  it('counts the earlier of two readings: one from before the fifteen minutes holds both back', async () => {
    const visit = await TypedVisit.open(ORIFICE_UNIT);
    await visit.type('outdoor air eighty eight degrees', 'return wet bulb sixty five degrees', 'compressor is running');
    await visit.later(5);
    await visit.type(SUCTION[0]);
    await visit.later(15);
    await visit.type(SUCTION[1]);
    expect(visit.of('charge.judged')[0]).toMatchObject({ noVerdict: 'running-too-short', minutes: 5 });
  });

  it('holds subcooling of a thermostatic valve against the plate once it was read (CEC RA3.2.2.6, 2008: 3 degrees)', async () => {
    const visit = await running(LIBRARY_UNIT, 'eighty eight');
    await visit.type(...LIQUID);
    expect(visit.of('charge.judged').find(({ figure }) => figure === 'subcooling')?.noVerdict).toBe('no-target');
    await visit.type('nameplate subcooling ten', LIQUID[1]);
    expect(visit.of('charge.judged').at(-1)).toMatchObject({
      figure: 'subcooling',
      judged: { word: 'fits', band: { low: 7, high: 13 } },
    });
  });

  it('sees vapor in a liquid line that is warmer than its bubble point, and never stretches a table', async () => {
    const visit = await running(LIBRARY_UNIT, 'eighty eight');
    await visit.type('liquid pressure two sixty five', 'liquid line ninety six degrees');
    expect(visit.of('charge.judged').at(-1)).toMatchObject({ figure: 'subcooling', noVerdict: 'mixed-line' });
    const unknown = await running({ ...LIBRARY_UNIT, refrigerant: 'R-134a' }, 'eighty eight');
    await unknown.type('liquid pressure seven hundred', 'yes', LIQUID[1]);
    expect(unknown.of('charge.judged')).toEqual([]);
    expect(unknown.mouth.said.some(({ text }) => /outside this refrigerant's table/.test(text))).toBe(true);
  });

  it('asks for pressures in the proof only where gauges were put on', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIBRARY_VISIT);
    await visit.later(16);
    await visit.type('return air seventy six degrees', 'supply air fifty eight degrees');
    expect(visit.run.context.phase).toBe('close');
  });

  it('counts refrigerant weighed in as a repair only where the charge is the suspect', async () => {
    const visit = await TypedVisit.open(ORIFICE_UNIT);
    await visit.type('outdoor fan is turning', 'added two pounds of refrigerant');
    expect(visit.of('part.fitted')).toEqual([]);
    await visit.type('thermostat is calling', 'compressor is running', 'filter is clean');
    await visit.type('suction pressure one hundred and two', 'suction line sixty four degrees');
    await visit.type(
      'liquid pressure two ninety one',
      'liquid line eighty nine degrees',
      'added two pounds of refrigerant',
    );
    expect(visit.of('part.fitted')).toEqual([expect.objectContaining({ part: 'refrigerant' })]);
    expect(visit.run.context.phase).toBe('prove');
  });
});

/** A dead outdoor unit with its contactor in: the volts across one fuse decide alone. */
const TO_ONE_READING = [
  'outdoor air eighty eight degrees',
  'return air eighty two degrees',
  'thermostat is calling',
  'outdoor fan is not turning',
  'compressor is not running',
  'contactor is pulled in',
  'fuse one two forty volts',
] as const;

describe('a reading that alone carries the finding', () => {
  it('is taken once more before a part is condemned', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_ONE_READING);
    expect(visit.mouth.said.some(({ text }) => /Again: fuse one/.test(text))).toBe(true);
    expect(visit.of('finding.stated')).toEqual([]);
    expect(await visit.type('why')).toContain('read once');
    await visit.type('fuse one two forty volts');
    // What blew it is read before it is found: each winding to its shell, dead.
    expect(visit.run.context.assessment?.suspects[0]).toMatchObject({ fault: 'line-fuse-1-open' });
    expect(visit.run.context.assessment?.confirm).toBeUndefined();
    expect(visit.of('finding.stated')).toEqual([]);
  });

  it('is taken once more at once where the way back to it is long, and asked for as such', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air eighty eight degrees', 'return air eighty two degrees', 'thermostat is calling');
    await visit.type('outdoor fan is turning', 'compressor is running', 'outdoor coil is clean');
    await visit.type('blower is running', 'supply air seventy eight degrees', 'compressor amps four point one');
    expect(visit.run.context.assessment).toMatchObject({ done: false, confirm: 'amps-compressor' });
    expect(visit.mouth.last()).toContain('Again: compressor, amps.');
    await visit.type('compressor amps four point one');
    expect(visit.run.context.assessment?.confirm).not.toBe('amps-compressor');
  });

  it('is let go where it is passed over', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_ONE_READING, 'live', 'skip that');
    expect(visit.of('step.parked').length).toBeGreaterThan(0);
    expect(visit.run.context.step?.test).not.toBe('volts-fuse-1');
    expect(visit.run.context.assessment?.suspects[0]).toMatchObject({ fault: 'line-fuse-1-open' });
  });
});
