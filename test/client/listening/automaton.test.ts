import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Automaton, follow, toAutomaton } from '../../../client/listening/recogniser/automaton.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';

const network = (rules: string): Automaton => toAutomaton(parseJsgf(`#JSGF V1.0;\ngrammar test;\n${rules}`));

const accepts = (net: Automaton, text: string): boolean => follow(net, text).whole;

describe('a network made from a JSGF grammar', () => {
  test('takes the sentences of the grammar and no others', () => {
    const net = network(
      'public <s> = (leg | line) <n> [to ground] /2/ one+ | note {tag} <NULL>; <n> = one | two; // end',
    );
    for (const yes of ['leg one one', 'line two to ground one one one', 'note'])
      expect(accepts(net, yes), yes).toBe(true);
    for (const no of ['', 'leg one', 'leg one to one', 'leg three one', 'note note', 'to ground']) {
      expect(accepts(net, no), no).toBe(false);
    }
  });

  // The example grammar of the JSGF specification (W3C Note, 5 June 2000), section 5, "basic commands", from memory.
  test("takes the specification's own example", () => {
    const net = network(`
      public <basicCmd> = <startPolite> <command> <endPolite>;
      <command> = <action> <object>;
      <action> = /10/ open |/2/ close |/1/ delete |/1/ move;
      <object> = [the | a] (window | file | menu);
      <startPolite> = (please | kindly | could you | oh mighty computer) *;
      <endPolite> = [ please | thanks | thank you ];`);
    expect(accepts(net, 'please kindly open the window thank you')).toBe(true);
    expect(accepts(net, 'move a menu')).toBe(true);
    expect(accepts(net, 'open the the window')).toBe(false);
  });

  test('knows whether a sentence may go on', () => {
    const net = network('public <s> = leg one [volts] | note;');
    expect(follow(net, 'leg')).toEqual({ whole: false, more: true });
    expect(follow(net, 'leg one')).toEqual({ whole: true, more: true });
    expect(follow(net, 'note')).toEqual({ whole: true, more: false });
    expect(follow(net, 'leg two')).toEqual({ whole: false, more: false });
  });

  test('is deterministic and has no two states alike: copies of a rule are shared', () => {
    const many = Array.from({ length: 40 }, (_, n) => `w${n} <n>`).join(' | ');
    const net = network(`public <s> = ${many}; <n> = (one | two) (three | four);`);
    expect(net.arcs).toHaveLength(4);
  });

  test('takes what a plain reading of the same tree takes', () => {
    const leaf = fc.constantFrom('a', 'b', 'c');
    const { tree } = fc.letrec<{ tree: string }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 4 },
        leaf,
        fc.tuple(tie('tree'), tie('tree')).map(([x, y]) => `(${x} ${y})`),
        fc.tuple(tie('tree'), tie('tree')).map(([x, y]) => `(${x} | ${y})`),
        tie('tree').map((x) => `[${x}]`),
        tie('tree').map((x) => `(${x})*`),
        tie('tree').map((x) => `(${x})+`),
      ),
    }));
    const words = fc.array(leaf, { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(tree, words, (text, said) => {
        // The same expression for JavaScript's own regular expressions, one letter a word.
        const pattern = text
          .replace(/ (?!\|)/g, '')
          .replace(/ \|/g, '|')
          .replace(/\[/g, '(')
          .replace(/\]/g, ')?');
        expect(accepts(network(`public <s> = ${text};`), said.join(' '))).toBe(
          new RegExp(`^(?:${pattern})$`).test(said.join('')),
        );
      }),
      { numRuns: 400, seed: 5 },
    );
  });

  test.each([
    ['no header', 'public <a> = b;', /does not begin/],
    ['no public rule', '#JSGF V1.0; grammar g; <a> = b;', /no rule is public/],
    ['a missing rule', '#JSGF V1.0; grammar g; public <a> = <b>;', /no rule <b>/],
    ['a rule that names itself', '#JSGF V1.0; grammar g; public <a> = b <a>;', /<a> names itself/],
    ['an open bracket', '#JSGF V1.0; grammar g; public <a> = (b;', /stands where/],
    ['an empty alternative', '#JSGF V1.0; grammar g; public <a> = b | ;', /empty/],
  ])('is refused with %s', (_, jsgf, sentence) => {
    expect(() => toAutomaton(parseJsgf(jsgf))).toThrow(sentence);
  });
});
