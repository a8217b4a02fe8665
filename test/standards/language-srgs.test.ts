import { describe, expect, it } from 'vitest';
import type { Expression, Rules } from '../../grammar/phrases/expression.ts';
import { repeat, rule, sequence, word } from '../../grammar/phrases/expression.ts';
import { ENGLISH } from '../../grammar/phrases/languages/english/english.ts';
import { WRITTEN_ENGLISH } from '../../grammar/phrases/languages/english/written-english.ts';
import { match } from '../../grammar/phrases/match.ts';
import { Network } from '../../grammar/phrases/network.ts';
import { PatternError, pattern, sentences } from '../../grammar/phrases/pattern.ts';
import { tokenise } from '../../grammar/phrases/tokenise.ts';

/**
 * Small grammars after the W3C Recommendation "Speech Recognition Grammar Specification Version 1.0" (16 March 2004),
 * sections 2.2 to 2.7 and 3, and the assertions of its Implementation Report, translated from memory into our notation:
 * what each must take and what it must refuse.
 */
const takes = (rules: Rules, text: string): boolean => {
  const network = new Network(rules, 'main', ENGLISH);
  return match(network, tokenise(text, WRITTEN_ENGLISH)).some((path) =>
    path.steps.every(({ taken }) => taken === undefined || taken.how === 'word'),
  );
};
const grammar = (main: string | Expression, others: Record<string, string> = {}): Rules => ({
  main: typeof main === 'string' ? pattern(main) : main,
  ...Object.fromEntries(Object.entries(others).map(([name, text]) => [name, pattern(text)])),
});

describe.each<[string, Rules, string[], string[]]>([
  [
    '2.3 sequence: all parts, in order',
    grammar('this is a test'),
    ['this is a test'],
    ['this is a', 'is this a test', 'this is a test test', 'test'],
  ],
  [
    '2.2 rule reference',
    grammar('$action $object', { action: 'open | close | delete', object: 'the window | a file' }),
    ['open the window', 'delete a file'],
    ['open', 'the window open', 'open close', 'delete the file'],
  ],
  [
    '2.4 alternatives: exactly one',
    grammar('michael | yuriy | mary | duke'),
    ['michael', 'duke'],
    ['michael duke', 'mary mary', 'peter'],
  ],
  [
    '2.4.1 weights change no language',
    {
      main: {
        kind: 'alternative',
        items: ['small', 'medium', 'large'].map(word),
        weights: [10, 2, 0.1],
      },
    },
    ['small', 'medium', 'large'],
    ['small large', 'huge'],
  ],
  [
    '2.5 optional',
    grammar('[please] open the window [now]'),
    ['open the window', 'please open the window', 'open the window now', 'please open the window now'],
    ['please please open the window', 'please open now the window', 'please'],
  ],
  [
    '2.5 repeat <0-> : none or more',
    grammar(sequence(repeat(word('very'), 0), word('good'))),
    ['good', 'very good', 'very very very very good'],
    ['very', 'good very'],
  ],
  [
    '2.5 repeat <1-> : one or more',
    grammar(repeat(rule('digit'), 1), { digit: 'one | two | three' }),
    ['one', 'one two three two one'],
    ['one four', 'four'],
  ],
  [
    '2.5 repeat <2-4>',
    grammar(repeat(rule('digit'), 2, 4), { digit: 'one | two | three' }),
    ['one two', 'one two three', 'three three three three'],
    ['one', 'one one one one one'],
  ],
  [
    '2.5 repeat <3-3> of a sequence',
    grammar(repeat(pattern('ring the bell'), 3, 3)),
    ['ring the bell ring the bell ring the bell'],
    ['ring the bell ring the bell', 'ring ring ring'],
  ],
  [
    '3 precedence: a sequence binds tighter than |',
    grammar('black coffee | white tea'),
    ['black coffee', 'white tea'],
    ['black tea', 'white coffee', 'black coffee tea', 'coffee'],
  ],
  [
    '3 precedence: ( ) bind first',
    grammar('black (coffee | tea) | water'),
    ['black coffee', 'black tea', 'water'],
    ['black water', 'tea', 'black coffee tea'],
  ],
  [
    '3 precedence: [ ] groups its own alternatives',
    grammar('go [left | right at the corner] home'),
    ['go home', 'go left home', 'go right at the corner home'],
    ['go left at the corner home', 'go left right at the corner home'],
  ],
  [
    '2.2.3 a rule in a rule in a rule',
    grammar('$a fourth', { a: '$b third', b: '$c second', c: 'first' }),
    ['first second third fourth'],
    ['first second fourth'],
  ],
])('%s', (_name, rules, taken, refused) => {
  it.each(taken)('takes "%s"', (text) => {
    expect(takes(rules, text)).toBe(true);
  });
  it.each(refused)('refuses "%s"', (text) => {
    expect(takes(rules, text)).toBe(false);
  });
});

describe('a phrase that is no SRGS ABNF', () => {
  it.each(['(open', 'open)', '[a | ]', '| a', 'a || b', '()', ''])('"%s" is refused with its place', (text) => {
    expect(() => pattern(text)).toThrow(PatternError);
  });

  it('names a rule that does not exist', () => {
    expect(() => new Network(grammar('$nowhere'), 'main', ENGLISH)).toThrow('nowhere');
    expect(() => sentences(pattern('$nowhere'))).toThrow('nowhere');
  });
});
