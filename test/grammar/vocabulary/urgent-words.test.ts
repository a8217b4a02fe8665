import { describe, expect, it } from 'vitest';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { URGENT_WORDS } from '../../../grammar/vocabulary/urgent-words.ts';

describe('the words that are heeded while the mouth speaks', () => {
  it.each(URGENT_WORDS)('hold "%s", which alone orders to stop or denies', (word) => {
    const { verdict, meaning } = understand(word);
    expect(verdict).toBe('logged');
    expect(meaning.kind === 'command' && ['stop', 'no'].includes(meaning.command)).toBe(true);
  });

  it('are the whole grammar of the recogniser then', () => {
    const rule = /public <utterance> = (.*);/.exec(visitGrammar('urgent') ?? '')?.[1];
    expect(rule?.split(' | ')).toEqual([...URGENT_WORDS]);
  });
});
