import { describe, expect, it } from 'vitest';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { URGENT_PHRASES, URGENT_WORDS, urgentWhile } from '../../../grammar/vocabulary/urgent-words.ts';

describe('the words that are heeded while the mouth speaks', () => {
  it.each(URGENT_WORDS)('hold "%s", which alone orders to stop or denies', (word) => {
    const { verdict, meaning } = understand(word);
    expect(verdict).toBe('logged');
    expect(meaning.kind === 'command' && ['stop', 'no'].includes(meaning.command)).toBe(true);
  });

  it.each(URGENT_PHRASES)('hold "%s" too, unless the mouth says it itself', (phrase) => {
    const { verdict, meaning } = understand(phrase);
    expect(verdict).toBe('logged');
    expect(['command', 'report']).toContain(meaning.kind);
    expect(urgentWhile('Leg one to ground.')).toContain(phrase);
    expect(urgentWhile(`So: ${phrase.toUpperCase()}, at once.`)).not.toContain(phrase);
  });

  it('are the whole grammar of the recogniser then', () => {
    const rule = /public <utterance> = (.*);/.exec(visitGrammar({ urgentWhile: '' }) ?? '')?.[1];
    expect(rule?.split(' | ')).toEqual([...URGENT_WORDS, ...URGENT_PHRASES]);
  });
});
