import { describe, expect, it } from 'vitest';
import { mishear } from '../../../fixtures/utterances/mishear.ts';
import { readUtterances, short } from '../../../fixtures/utterances/read-utterances.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { seeded } from '../random-sentence.ts';

describe('confidence', () => {
  it('is the share of such understandings that are right, on misheard sentences it was not fitted on', () => {
    const understand = makeUnderstand();
    const random = seeded(99);
    const lines = readUtterances().filter((line) => line.meaning !== '');
    const bins = Array.from({ length: 5 }, () => ({ said: 0, right: 0, count: 0 }));
    for (const line of Array.from({ length: 8 }, () => lines).flat()) {
      const { meaning, confidence } = understand(mishear(line.text, random), line.expectation);
      if (meaning.kind === 'unclear' || meaning.kind === 'note') continue;
      const bin = bins[Math.min(4, Math.floor(confidence * 5))]!;
      bin.said += confidence;
      bin.right += short(meaning) === line.meaning ? 1 : 0;
      bin.count += 1;
    }
    const filled = bins.filter((bin) => bin.count >= 100);
    expect(filled.length).toBeGreaterThanOrEqual(3);
    for (const bin of filled) expect(Math.abs(bin.said - bin.right) / bin.count).toBeLessThan(0.12);
    const shares = filled.map((bin) => bin.right / bin.count);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });
});
