import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Hearing } from '../../../client/listening/hearing.ts';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { acceptedTalk, FOUR, score, under } from './few-sentences.ts';

/** A glance; conditions.long.test.ts looks longer, and breaks the ear on purpose. */
describe('beside a condenser', { timeout: 120_000 }, () => {
  let hearing: Hearing;
  beforeAll(async () => {
    hearing = await loadHearing();
  }, 120_000);
  afterAll(() => hearing.close());

  test('three of four sentences are taken and right, and none wrong', () => {
    const { right, wrong } = score(hearing, under(10), FOUR);
    expect(right).toBeGreaterThanOrEqual(3);
    expect(wrong).toBe(0);
  });

  test('nothing is taken of other talk', () => {
    expect(acceptedTalk(hearing)).toBe(0);
  });
});
