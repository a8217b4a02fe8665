import { describe, expect, it } from 'vitest';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

/** What the ear delivers; the words are those of the whole where it goes on from what was given before. */
async function hear(
  visit: TypedVisit,
  text: string,
  more: { continues?: true; accepted?: boolean; doubtful?: boolean } = {},
) {
  visit.run.hear({ id: `h-${text}`, ear: 'wav', text, alternatives: [], confidence: 1, accepted: true, ...more });
  await visit.run.settled();
}

async function afterFirstPart(words: string): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, 'compressor runs then trips', words);
  return visit;
}

const values = (visit: TypedVisit): readonly unknown[] =>
  visit.run.context.readings
    .filter(({ withdrawn, reading }) => !withdrawn && reading.quantity === 'voltage')
    .map(({ reading }) => [reading.at[0], reading.value]);
const saidLater = (visit: TypedVisit, from: number): string =>
  visit.mouth.said
    .slice(from)
    .map(({ text }) => text)
    .join(' ');

describe('a number that went on after its first part was taken', () => {
  it('is one reading, corrected aloud', async () => {
    const visit = await afterFirstPart('leg one to ground one twelve');
    const from = visit.mouth.said.length;
    await hear(visit, 'one twelve point six', { continues: true });
    expect(values(visit)).toEqual([['L1', 112.6]]);
    expect(visit.of('reading.corrected')).toHaveLength(1);
    expect(saidLater(visit, from)).toMatch(/^Corrected: leg one to ground, one twelve point six volts/);
  });

  it('keeps the place of its first part, whatever is asked by then', async () => {
    const visit = await afterFirstPart('leg two to ground one eleven');
    await hear(visit, 'one eleven point four volts', { continues: true });
    expect(values(visit)).toEqual([['L2', 111.4]]);
  });

  it('answers the question about its first part', async () => {
    const visit = await afterFirstPart('leg one to ground one');
    expect(visit.run.context.questions).toHaveLength(1);
    await hear(visit, 'one twelve', { continues: true });
    expect(visit.run.context.questions).toHaveLength(0);
    expect(values(visit)).toEqual([['L1', 112]]);
  });

  it.each([
    ['nobody understood the rest', { continues: true, accepted: false }],
    ['the whole was heard badly', { continues: true, doubtful: true }],
  ] as const)('is taken back where %s', async (_, how) => {
    const visit = await afterFirstPart('leg one to ground one twelve');
    const from = visit.mouth.said.length;
    await hear(visit, 'one twelve point six', how);
    expect(values(visit)).toEqual([]);
    expect(saidLater(visit, from)).toContain('Taken back');
  });

  it('touches no reading of long ago', async () => {
    const visit = await afterFirstPart('leg one to ground one twelve');
    visit.clock.step(1);
    await hear(visit, 'one twelve point six', { continues: true });
    expect(values(visit)).toEqual([['L1', 112]]);
  });

  it('touches no reading where something else was told since', async () => {
    const visit = await afterFirstPart('leg one to ground one twelve');
    await visit.type('drain pan is full');
    await hear(visit, 'one twelve point six', { continues: true });
    expect(values(visit)).toEqual([['L1', 112]]);
  });
});
