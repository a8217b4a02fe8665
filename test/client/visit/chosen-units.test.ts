import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { testLimits } from '../../../grammar/visit/refrigerant-rules.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { type UnitChoice, USUAL_CHOICE } from '../../../grammar/vocabulary/unit-choice.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { LIBRARY_UNIT, LIBRARY_VISIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const METRIC: UnitChoice = { temperature: 'Cel', pressure: 'kPa' };
const BAKERY = JSON.parse(
  readFileSync(new URL('../../../fixtures/units/bakery.json', import.meta.url), 'utf8'),
) as UnitProfile;

const readings = (visit: TypedVisit): readonly Reading[] =>
  visit.run.context.readings.filter(({ withdrawn }) => !withdrawn).map(({ reading }) => reading);
const last = (visit: TypedVisit): string => {
  const { value, unit } = readings(visit).at(-1)!;
  return `${value} ${unit}`;
};
const saidOf = (visit: TypedVisit): string => visit.mouth.said.map(({ text }) => text).join(' ');
async function choose(visit: TypedVisit, units: UnitChoice): Promise<string> {
  visit.run.take({ type: 'chose.units', units });
  await visit.run.settled();
  return visit.mouth.last();
}

describe('a visit in Celsius and kilopascals', () => {
  it('takes a bare number in them, and says which scale it took', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT, 'technician', METRIC);
    expect(visit.of('units.chosen').map(({ units }) => units)).toEqual([METRIC]);
    await visit.type('outdoor air thirty four');
    expect(last(visit)).toBe('34 Cel');
    await visit.type('liquid line thirty eight');
    expect(saidOf(visit)).toContain('Liquid line, thirty eight degrees Celsius.');
    await visit.type('suction pressure eight hundred twenty');
    expect(last(visit)).toBe('820 kPa');
  });

  it('takes a unit that is said, and never reads it back as if it were the chosen one', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT, 'technician', METRIC);
    const before = visit.mouth.said.length;
    await visit.type('outdoor air ninety four fahrenheit');
    expect(last(visit)).toBe('94 [degF]');
    const said = visit.mouth.said.slice(before).map(({ text }) => text);
    expect(said.join(' ')).toContain('ninety four degrees Fahrenheit');
    for (const words of said) expect(words).not.toMatch(/degrees(?! (?:Fahrenheit|Celsius))/);
  });

  it('does the same the other way round: Celsius said where Fahrenheit is chosen is told', async () => {
    const visit = await TypedVisit.open();
    const before = visit.mouth.said.length;
    await visit.type('outdoor air thirty four celsius');
    expect(last(visit)).toBe('34 Cel');
    expect(
      visit.mouth.said
        .slice(before)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('degrees Celsius');
  });

  it('comes to the same suspects and the same next test as one in Fahrenheit', async () => {
    const usual = await TypedVisit.open(BAKERY);
    await usual.type('outdoor air eighty eight', 'compressor is running');
    await usual.later(20);
    await usual.type('return wet bulb sixty five', 'suction pressure one twenty eight', 'suction line fifty nine');
    const metric = await TypedVisit.open(BAKERY, 'technician', METRIC);
    // The same by NIST SP 811: (88 − 32)/1.8, (65 − 32)/1.8, (59 − 32)/1.8; 128 psi × 6.894757.
    await metric.type('outdoor air thirty one point one', 'compressor is running');
    await metric.later(20);
    await metric.type(
      'return wet bulb eighteen point three',
      'suction pressure eight hundred eighty two point five',
      'suction line fifteen',
    );
    const [one, other] = [usual, metric].map((visit) => visit.of('charge.judged').at(-1)!);
    expect(other!.value).toBeCloseTo(one!.value, 0);
    expect(other!.judged?.word).toBe(one!.judged?.word);
    const suspects = (visit: TypedVisit) => visit.run.context.assessment?.suspects ?? [];
    expect(suspects(metric)[0]?.fault).toBe(suspects(usual)[0]?.fault);
    expect(suspects(metric)[0]?.probability).toBeCloseTo(suspects(usual)[0]!.probability, 1);
    expect(metric.run.context.step?.id).toBe(usual.run.context.step?.id);
    // Superheat 14.9 °F is 8.3 °C: what is said is in the chosen scale.
    const told = metric.mouth.said.map(({ text }) => text).find((text) => text.includes('Superheat'));
    expect(told).toMatch(/Superheat eight point/);
  });

  it('changes no rule of conduct: each caution, refusal and proof is the same', async () => {
    const usual = await TypedVisit.open();
    await usual.type(...LIBRARY_VISIT);
    const metric = await TypedVisit.open(LIBRARY_UNIT, 'technician', METRIC);
    await metric.type(
      ...LIBRARY_VISIT.map((line) =>
        line.replace('ninety four degrees', 'ninety four fahrenheit').replace('eighty degrees', 'eighty fahrenheit'),
      ),
    );
    const conduct = (visit: TypedVisit) =>
      visit
        .events()
        .filter(({ type }) => /^(caution|energy|proof|charge\.released|work|hazard|reading\.refused)/.test(type))
        .map((event) => JSON.stringify({ ...event, time: undefined }));
    expect(conduct(metric)).toEqual(conduct(usual));
    expect(conduct(usual).length).toBeGreaterThan(10);
  });
});

describe('a change in the middle of a visit', () => {
  it('is told, recorded, and leaves what was read as it was', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four', 'liquid line ninety five');
    const before = readings(visit);
    expect(await choose(visit, METRIC)).toBe(
      'From now on degrees Celsius and kilopascals. What was read stays as it was.',
    );
    expect(readings(visit)).toEqual(before);
    await visit.type('suction line twelve');
    expect(readings(visit).map(({ value, unit }) => `${value} ${unit}`)).toEqual(['94 [degF]', '95 [degF]', '12 Cel']);
    await choose(visit, USUAL_CHOICE);
    await visit.type('return air eighty');
    expect(last(visit)).toBe('80 [degF]');
    expect(visit.of('units.chosen').map(({ units }) => units)).toEqual([METRIC, USUAL_CHOICE]);
  });

  it('is no change where the same is chosen again', async () => {
    const visit = await TypedVisit.open();
    await choose(visit, USUAL_CHOICE);
    expect(visit.of('units.chosen')).toEqual([]);
  });

  it('lets a number go that is still asked about, so that no answer mixes two units', async () => {
    const visit = await TypedVisit.open();
    await visit.type('liquid line thirty eight');
    expect(visit.run.context.questions).toHaveLength(1);
    await choose(visit, METRIC);
    expect(visit.run.context.questions).toHaveLength(0);
    expect(readings(visit)).toEqual([]);
    await visit.type('yes');
    expect(readings(visit)).toEqual([]);
  });

  it('keeps the question whether it is still off, and the proof', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four', 'compressor is not running', ...TO_PROVEN_DEAD);
    const { energy } = visit.run.context;
    expect(energy['outdoor-load']).toBe('proven-dead');
    await choose(visit, METRIC);
    expect(visit.run.context.energy).toEqual(energy);
  });

  it('asks for the unit of a correction that may be in either', async () => {
    const visit = await TypedVisit.open();
    await visit.type('liquid line ninety five');
    await choose(visit, METRIC);
    expect(await visit.type('correction thirty six')).toBe('In which unit? Say the correction with its unit.');
    expect(last(visit)).toBe('95 [degF]');
    await visit.type('correction thirty six celsius');
    expect(last(visit)).toBe('36 Cel');
    await visit.type('correction thirty seven');
    expect(last(visit)).toBe('37 Cel');
  });

  it('is the same after the visit is taken up again from its record', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four');
    await choose(visit, METRIC);
    await visit.type('suction line twelve');
    const again = new TypedVisit();
    again.bodies.push(...visit.bodies);
    again.run = await VisitRun.restore(again.edges(), visit.bodies);
    await again.run.settled();
    expect(again.run.context.units).toEqual(METRIC);
    expect(readings(again)).toEqual(readings(visit));
    await again.type('liquid line thirty eight');
    expect(last(again)).toBe('38 Cel');
  });
});

describe('limits in the chosen unit', () => {
  it('hold the pressure of nitrogen to the plate, whichever unit each was said in', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT, 'technician', METRIC);
    await visit.type('nameplate low side test one thousand kilopascals');
    // 1000 kPa = 145.0 psi (NIST SP 811).
    expect(testLimits(visit.run.context).high).toBeCloseTo(145.04, 1);
    const before = visit.mouth.said.length;
    await visit.type('nitrogen pressure twelve hundred', 'yes');
    const said = visit.mouth.said
      .slice(before)
      .map(({ text }) => text)
      .join(' ');
    expect(said).toContain('Too high. The plate allows one thousand kilopascals.');
  });
});
