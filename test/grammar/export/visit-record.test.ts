import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { type VisitRecord, VisitRecordSchema } from '../../../grammar/export/visit-record-schema.ts';
import { LIBRARY_VISIT, TypedVisit } from '../../client/visit/typed-visit.ts';

// An independent validator of JSON Schema draft 2020-12 reads the schema as it is written out.
const schema = JSON.parse(JSON.stringify(VisitRecordSchema));
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

let record: VisitRecord;

beforeAll(async () => {
  const visit = await TypedVisit.open();
  await visit.type('customer agrees', 'nameplate herm capacitor forty five microfarads', 'meter is cat three');
  await visit.type(...LIBRARY_VISIT.slice(0, -1), 'fan amps fourteen', 'no', 'fan amps point nine');
  await visit.type('compressor to ground twelve megohms', 'note the panel door is bent', 'recommend a new filter');
  await visit.type('jumper on from R to Y');
  await visit.later(16);
  await visit.type('return air seventy six degrees', 'supply air fifty eight degrees', 'technician signs robin vale');
  await visit.type('finish the visit', 'note the jumper is needed');
  record = toVisitRecord(visit.events());
}, 60_000);

describe('the record of a visit', () => {
  it('is valid by its own schema, read by an independent validator', () => {
    expect(validate(JSON.parse(JSON.stringify(record))), JSON.stringify(validate.errors)).toBe(true);
  });

  it('holds the visit whole: readings, proof, cautions, repair, signatures, summary', () => {
    expect(record).toMatchObject({ phase: 'closed', finding: { fault: 'fan-capacitor-weak' } });
    expect(record.items.map(({ item }) => item)).toEqual(['consent-given', 'meter-category-three']);
    expect(record.proofs[0]).toMatchObject({
      before: 240,
      values: [0, 0, 0, 0, 0, 0],
      places: [
        ['L1', 'ground'],
        ['L2', 'ground'],
        ['L1', 'L2'],
        ['T1', 'ground'],
        ['T2', 'ground'],
        ['T1', 'T2'],
      ],
      after: 240,
      result: 'reads dead',
    });
    expect(record.cautions.some((line) => line.acknowledged !== undefined)).toBe(true);
    expect(record.parts).toMatchObject([{ part: 'dual-capacitor', ratings: { 'herm-uF': 45, 'fan-uF': 5 } }]);
    expect(record.refused.length).toBeGreaterThan(0);
    expect(record.wires).toMatchObject([{ action: 'jumper-on' }]);
    expect(record.overrides[0]?.reason).toBe('the jumper is needed');
    expect(record.recommendations).toMatchObject([{ text: 'a new filter' }]);
    expect(record.signatures).toMatchObject([{ who: 'technician', name: 'robin vale' }]);
    expect(record.summary?.openItems.join(' ')).toContain('jumper');
  });

  it('tells a reading that was taken back, and one that was corrected, from those that stand', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four degrees', 'return air eighty degrees', 'take that back');
    await visit.type('return air eighty two degrees', 'correction eighty one');
    const { readings } = toVisitRecord(visit.events());
    expect(readings.map(({ reading, withdrawn, corrected }) => [reading.value, withdrawn, corrected.length])).toEqual([
      [94, false, 0],
      [80, true, 0],
      [81, false, 1],
    ]);
  });

  it('is valid at every event of the visit, from the first on', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIBRARY_VISIT);
    const events = visit.events();
    for (let count = 1; count <= events.length; count += 1) {
      const part = JSON.parse(JSON.stringify(toVisitRecord(events.slice(0, count))));
      // Before the visit is opened it has no name yet.
      if (part.visit === '') continue;
      expect(validate(part), `${count}: ${JSON.stringify(validate.errors)}`).toBe(true);
    }
  });
});

describe('the schema', () => {
  type Doc = Record<string, unknown>;
  const broken: readonly (readonly [string, (doc: Doc) => unknown])[] = [
    ['a time that is none', (doc) => ({ ...doc, opened: 'yesterday' })],
    ['a field that it does not know', (doc) => ({ ...doc, price: 12 })],
    ['a missing list', ({ readings: _gone, ...doc }) => doc],
    ['a phase of another program', (doc) => ({ ...doc, phase: 'lunch' })],
    ['a zone that does not exist', (doc) => ({ ...doc, energy: { ...(doc['energy'] as object), roof: 'live' } })],
    ['a probability above one', (doc) => ({ ...doc, finding: { fault: 'low-charge', probability: 97, evidence: [] } })],
    [
      'a reading without its unit',
      (doc) => ({
        ...doc,
        readings: (doc['readings'] as { reading: { unit?: string } }[]).map((line) => ({
          ...line,
          reading: { ...line.reading, unit: undefined },
        })),
      }),
    ],
    [
      'a summary without plain words',
      (doc) => ({ ...doc, summary: { finding: 'none', technical: [], openItems: [] } }),
    ],
  ];

  it.each(broken)('refuses %s', (_name, mutate) => {
    const whole = JSON.parse(JSON.stringify(record));
    expect(validate(whole)).toBe(true);
    expect(validate(JSON.parse(JSON.stringify(mutate(whole))))).toBe(false);
  });

  it('with one requirement taken away would let a broken record through', () => {
    const loose = structuredClone(schema) as { additionalProperties?: boolean; $id?: string };
    delete loose.additionalProperties;
    const lax = new Ajv2020({ strict: true }).compile(loose);
    const wrong = { ...JSON.parse(JSON.stringify(record)), price: 12 };
    expect(lax(wrong)).toBe(true);
    expect(validate(wrong)).toBe(false);
  });
});
