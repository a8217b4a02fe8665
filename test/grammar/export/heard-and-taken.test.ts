import { dictionary } from 'cmu-pronouncing-dictionary';
import { describe, expect, it } from 'vitest';
import { readUtterances } from '../../../fixtures/utterances/read-utterances.ts';
import { possessive, withContractions } from '../../../grammar/export/contract.ts';
import { POSSESSIVE_PRONUNCIATIONS } from '../../../grammar/export/possessive-pronunciations.ts';
import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { isOfPeople, unheard } from './heard-lines.ts';

const said = (text: string): string[] => sentences(pattern(text)).map((words) => words.join(' '));

describe('what the recogniser may hear', () => {
  it.each([
    ['as-people-say', 0.9],
    ['on-a-hot-roof', 0.8],
    ['as-technicians-talk', 0.75],
  ])('is most of what the matcher takes of the lines that other people say: %s', (file, least) => {
    const lines = readUtterances().filter((line) => isOfPeople(line) && line.where.startsWith(file));
    const outside = unheard(lines);
    expect(lines.length).toBeGreaterThan(40);
    expect(1 - outside.length / lines.length, outside.map((line) => line.text).join('\n')).toBeGreaterThanOrEqual(
      least,
    );
  });
});

describe('a name run together with its "is"', () => {
  it('ends in the last word of the name, whichever may be the last', () => {
    const owner = possessive(pattern('[the] contactor | low side [pressure]'), {})!;
    const found = [...new Set(sentences(owner).map((words) => words.join(' ')))].sort();
    expect(found).toEqual(["contactor's", "low side pressure's", "low side's", "the contactor's"]);
  });

  it('stands beside the sentence in full', () => {
    const both = sentences(withContractions(pattern('[the] coil (is | looks) (iced [up] | a block of ice)'), {}));
    const found = new Set(both.map((words) => words.join(' ')));
    for (const text of [
      "coil's iced",
      "the coil's iced up",
      "coil's a block of ice",
      'coil is iced',
      'coil looks iced',
    ]) {
      expect(found, text).toContain(text);
    }
    expect(said('coil is iced')).toEqual(['coil is iced']);
  });

  it('sounds as English has it: the name of the dictionary, and its ending', () => {
    for (const [word, [phones]] of Object.entries(POSSESSIVE_PRONUNCIATIONS)) {
      const name = word.replace(/'s$/, '');
      const base = PRONUNCIATIONS[name]?.[0] ?? dictionary[name]?.replace(/\d/g, '');
      if (base === undefined) continue;
      const last = base.split(' ').at(-1)!;
      const hiss = ['S', 'Z', 'SH', 'ZH', 'CH', 'JH'].includes(last);
      const ending = hiss ? 'IH Z' : ['P', 'T', 'K', 'F', 'TH'].includes(last) ? 'S' : 'Z';
      expect(phones, word).toBe(`${base} ${ending}`);
    }
  });
});
