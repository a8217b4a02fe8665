import { expect, test } from 'vitest';
import { loadHearingParts } from '../../../client/listening/node/load-hearing.ts';
import { learnFromReading } from '../../../client/listening/profile/learn-from-reading.ts';
import { READ_ALOUD } from '../../../client/words/talk/read-aloud-words.ts';
import { inAccent } from '../../../fixtures/accent.ts';
import { speak } from '../../../fixtures/speak.ts';

/** As the page has them read, by a synthetic voice: as the dictionary has the words, and otherwise. */
const read = (accent: boolean) =>
  READ_ALOUD.map(({ words }) => ({ words, sound: speak({ name: 'slt' }, accent ? inAccent(words) : words) }));

test('a voice that says four, five, eight and nine otherwise is heard better by what it is not learnt from', async () => {
  const parts = await loadHearingParts({ models: 'bundled' });
  const shares: number[] = [];
  const { before, after, of, profile } = await learnFromReading(parts, read(true), (share) => shares.push(share));
  expect(of).toBeGreaterThanOrEqual(60);
  expect(after).toBeGreaterThan(before);
  expect(Object.keys(profile.pronunciations).length).toBeGreaterThan(0);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.at(-1)).toBe(1);
}, 900_000);

test('a voice that says them as written learns no word, and loses none', async () => {
  const parts = await loadHearingParts({ models: 'bundled' });
  const { before, after, of, profile } = await learnFromReading(parts, read(false), () => undefined);
  expect(after).toBe(before);
  expect(before).toBeGreaterThan(of / 2);
  expect(profile.pronunciations).toEqual({});
}, 900_000);
