import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { readbackWords } from '../../../client/words/things/reading-words.ts';
import type { Speech } from '../../../client/words/things/speech.ts';
import { ENGLISH_VALUES } from '../../../client/words/things/value-words.ts';
import type { Language } from '../../../grammar/phrases/language.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { sayTovi, TOVI } from '../../grammar/phrases/tovi.ts';
import { LIBRARY_UNIT, TypedVisit } from '../visit/typed-visit.ts';

const POINTS: Readonly<Partial<Record<PointId, string>>> = {
  L1: 'linio ba',
  L2: 'linio de',
  ground: 'tero',
  'cap-C': 'komuna de skatolo',
  'cap-HERM': 'hermo',
};
const UNITS: Readonly<Partial<Record<UnitCode, string>>> = { V: 'volta', A: 'ampo', uF: 'mikro' };

/** The invented language's own words and order: unit, number, place. */
const TOVI_SPEECH: Speech = {
  id: TOVI.id,
  number: sayTovi,
  digits: (value) => [...String(value)].map((digit) => sayTovi(Number(digit))).join(' '),
  amount: (number, unit) => `${UNITS[unit]} ${number}`,
  weight: (ounces) => sayTovi(ounces),
  open: 'vakua',
  measured: ({ at }) => at.map((point) => POINTS[point]).join(' je '),
  readback: (measured, value) => `${value}, ${measured}.`,
};

const heard = (said: string, language: Language): Reading => {
  const { meaning } = makeUnderstand(language)(said);
  if (meaning.kind !== 'reading') throw new Error(`${said} is ${meaning.kind}`);
  return meaning.reading;
};

const OPENED = {
  type: 'opened.visit',
  visit: 'test-visit',
  site: 'reading room',
  complaint: 'does not cool',
  role: 'technician',
  unit: LIBRARY_UNIT,
  software: 'test',
} as const;

describe('a reading', () => {
  it.each([
    [
      'leg one to ground one eighteen',
      'leg one to ground, one eighteen volts.',
      'volta ri u baton u mel, linio ba je tero.',
    ],
    [
      'leg one to leg two two oh eight',
      'leg one to leg two, two oh eight volts.',
      'volta ri u de mel, linio ba je linio de.',
    ],
  ])('is read back in the words and the order of either language: %s', (said, english, tovi) => {
    const reading = heard(said, ENGLISH);
    expect(readbackWords(reading)).toBe(english);
    expect(readbackWords(reading, false, TOVI_SPEECH)).toBe(tovi);
  });

  it('is one and the same reading, whichever language said it and reads it back', () => {
    for (const said of [
      'volta sa u katon u de mel linio de je linio ba',
      'mikro ne u loton komuna de skatolo je hermo',
    ]) {
      const reading = heard(said, TOVI);
      expect(heard(readbackWords(reading, false, TOVI_SPEECH), TOVI), said).toEqual(reading);
      expect(heard(readbackWords(reading), ENGLISH), said).toEqual(reading);
    }
  });

  it('is read back digit by digit and open in its own words', () => {
    const reading: Reading = { quantity: 'voltage', at: ['L1', 'ground'], value: 118, unit: 'V' };
    expect(readbackWords(reading, true, TOVI_SPEECH)).toBe('volta ba ba ri, linio ba je tero.');
    const open: Reading = { quantity: 'capacitance', at: ['cap-C', 'cap-HERM'], value: 'open', unit: 'uF' };
    expect(readbackWords(open, false, TOVI_SPEECH)).toBe('vakua, komuna de skatolo je hermo.');
  });

  it('is recorded by a visit that was handed the language', async () => {
    const visit = new TypedVisit();
    visit.run = VisitRun.open({ ...visit.edges(), understand: makeUnderstand(TOVI) }, OPENED);
    await visit.run.settled();
    await visit.type('volta ri u baton u mel linio ba je tero', 'vento halta');
    const events = visit.bodies.map((body) => JSON.parse(body) as VisitEvent);
    expect(events.flatMap((event) => (event.type === 'reading.logged' ? [event.reading] : []))).toEqual([
      { quantity: 'voltage', at: ['L1', 'ground'], value: 118, unit: 'V' },
    ]);
    expect(events.map((event) => event.type)).toContain('observation.logged');
  });

  it('in English is of the language that stands for English', () => {
    expect(ENGLISH_VALUES.id).toBe(ENGLISH.id);
  });
});
