import { describe, expect, it } from 'vitest';
import { briefReadbackWords, readbackWords } from '../../../client/words/things/reading-words.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { TypedVisit } from '../visit/typed-visit.ts';

const reading = (said: string): Reading => {
  const { meaning } = understand(said);
  if (meaning.kind !== 'reading') throw new Error(`${said} is ${meaning.kind}`);
  return meaning.reading;
};

/** A place alone does not say that a difference of two temperatures was meant: the trade's names do. */
describe('a readback names what was measured', () => {
  it.each([
    ['superheat twenty eight', 'superheat, twenty eight'],
    ['subcooling nine', 'subcooling, nine'],
    ['split twenty one', 'split, twenty one'],
    ['return air wet bulb sixty five', 'return air wet bulb, sixty five'],
    ['suction line fifty six', 'suction line, fifty six'],
    ['return air humidity fifty two percent', 'return air humidity, fifty two'],
    ['line frequency sixty hertz', 'line frequency, sixty'],
  ])('%s', (said, words) => {
    expect(readbackWords(reading(said))).toContain(words);
    expect(briefReadbackWords(reading(said))).toBe(`${words}.`);
  });
});

describe('what was seen', () => {
  it.each([
    ['compressor is humming', 'Compressor hums.'],
    ['compressor hums and trips', 'Compressor hums and trips.'],
    ['filter is clogged', 'Filter is clogged.'],
    ['filter is dirty', 'Filter is dirty.'],
    ['points are pitted', 'Contacts are pitted.'],
  ])('is read back as it was said: %s', async (said, words) => {
    const visit = await TypedVisit.open();
    await visit.type(said);
    expect(visit.mouth.said.map(({ text }) => text)).toContain(words);
  });
});

describe('a number that nobody read', () => {
  it.each([
    ['compressor amps seventy two eleven', 'Compressor: what does it read?'],
    ['it is a sixteen twenty one ton', 'That cannot be.'],
  ])('is not asked back as a question of yes or no: %s', async (said, words) => {
    const visit = await TypedVisit.open();
    await visit.type(said);
    expect(visit.run.context.questions.filter(({ question }) => question.kind !== 'what-value')).toEqual([]);
    expect(visit.mouth.said.some(({ text }) => text.includes(words))).toBe(true);
  });
});
