import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Automaton, follow, toAutomaton } from '../../../client/listening/recogniser/automaton.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';
import { differByOneMore, rivalsOf } from '../../../client/listening/recogniser/rivals.ts';
import { standsFor, visitGrammar } from '../../../client/listening/visit-hearing.ts';

const network = (sentences: string): Automaton =>
  toAutomaton(parseJsgf(`#JSGF V1.0;\ngrammar test;\npublic <s> = ${sentences};\n`));

/** Every sentence of a network without circles. */
function* sentencesOf({ arcs, final }: Automaton, at = 0, said: readonly string[] = []): Generator<string> {
  if (final[at]) yield said.join(' ');
  for (const [word, to] of arcs[at]!) yield* sentencesOf({ arcs, final }, to, [...said, word]);
}

const rivalsIn = (sentences: string, text: string): readonly string[] => {
  const rivals = rivalsOf(network(sentences), text, standsFor);
  return rivals === undefined ? [] : [...sentencesOf(rivals)].sort();
};

describe('the rivals of a sentence', () => {
  test('have another number in one place, one number less, or one more', () => {
    expect(rivalsIn('[two] (one | two | five) (eighteen | eighty | eight) [point six]', 'one eighteen')).toEqual([
      'five eighteen',
      'one eight',
      'one eighty',
      'two eighteen',
      'two one eighteen',
    ]);
  });

  test('are sentences of the grammar only', () => {
    expect(rivalsIn('leg (one | two) (one eighteen | two forty)', 'leg one one eighteen')).toEqual([
      'leg two one eighteen',
    ]);
  });

  test('are none where two words stand for the same number, or where no number was said', () => {
    expect(rivalsIn('two (oh | zero) (nine | niner)', 'two oh nine')).toEqual([]);
    expect(rivalsIn('why | what next', 'why')).toEqual([]);
  });

  test('have the opposite place, which is never left out', () => {
    expect(rivalsIn('[line | load | leg] side [open]', 'line side')).toEqual(['load side']);
  });

  test('lose a point, or gain one', () => {
    expect(rivalsIn('two [point] six [volts]', 'two point six volts')).toEqual(['two six volts']);
    expect(rivalsIn('two [point] six', 'two six')).toEqual(['two point six']);
  });

  test('of any reading by digits are just those that differ in one digit, told one by one', () => {
    const grammar = toAutomaton(
      parseJsgf(visitGrammar({ readings: [{ quantity: 'voltage', at: ['L1', 'L2'] }] }) ?? ''),
    );
    const digits = 'zero one two three four five six seven eight nine'.split(' ');
    const digit = fc.integer({ min: 0, max: 9 });
    fc.assert(
      fc.property(fc.constantFrom(1, 2), digit, digit, (hundreds, tens, units) => {
        const said = [hundreds, tens, units].map((one) => digits[one]!);
        const rivals = rivalsOf(grammar, said.join(' '), standsFor);
        expect(rivals).toBeDefined();
        said.forEach((_, place) => {
          for (const other of digits) {
            const sentence = said.map((word, index) => (index === place ? other : word)).join(' ');
            const isRival = other !== said[place] && follow(grammar, sentence).whole;
            expect(follow(rivals!, sentence).whole, sentence).toBe(isRival);
          }
        });
      }),
      { numRuns: 40 },
    );
  });

  test('of which some have one word more or less, wherever that stands', () => {
    expect(differByOneMore('one point one', 'one point two one')).toBe(true);
    expect(differByOneMore('one point two one', 'two one')).toBe(false);
    expect(differByOneMore('one four', 'one four oh')).toBe(true);
    expect(differByOneMore('four', 'one four')).toBe(true);
    expect(differByOneMore('one fourteen', 'one forty')).toBe(false);
    expect(differByOneMore('one fourteen', 'one forty five')).toBe(false);
  });
});
