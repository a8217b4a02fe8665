import { describe, expect, it } from 'vitest';
import { compare, readUtterances, short } from '../../../fixtures/utterances/read-utterances.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';

const understand = makeUnderstand();
const lines = readUtterances();

describe('what technicians say', () => {
  it('is written down in at least 600 lines', () => {
    expect(lines.length).toBeGreaterThanOrEqual(600);
    expect(new Set(lines.map((line) => `${line.text} ${JSON.stringify(line.expectation)}`)).size).toBe(lines.length);
  });

  it('is understood as written in at least 99 of 100 lines, and never logged as something else', () => {
    const wrong: string[] = [];
    let right = 0;
    for (const line of lines) {
      const understood = understand(line.text, line.expectation);
      const outcome = compare(line, understood);
      if (outcome === 'right') right += 1;
      if (outcome === 'wrong') wrong.push(`${line.where} "${line.text}" → ${short(understood.meaning)}`);
    }
    expect(wrong).toEqual([]);
    expect(right / lines.length).toBeGreaterThanOrEqual(0.99);
  });

  it('means the same in capitals, with punctuation and after a filler', () => {
    for (const line of lines.filter((one) => /^[a-z0-9 ]+$/.test(one.text) && one.verdict === 'logged')) {
      const { meaning } = understand(line.text, line.expectation);
      if (meaning.kind === 'note' || meaning.kind === 'several') continue;
      const shouted = understand(`${line.text.toUpperCase()}.`, line.expectation);
      expect(short(shouted.meaning), line.where).toBe(short(meaning));
      const filled = understand(`okay, ${line.text}`, line.expectation);
      if (filled.verdict === 'logged') expect(short(filled.meaning), line.where).toBe(short(meaning));
    }
  });
});
