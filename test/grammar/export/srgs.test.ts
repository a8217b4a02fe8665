import { describe, expect, it } from 'vitest';
import { SPOKEN_RULES, toSrgsAbnf, toSrgsXml } from '../../../grammar/export/srgs.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { RULES } from '../../../grammar/phrases/languages/english/rules/utterance-rules.ts';
import { match } from '../../../grammar/phrases/match.ts';
import { Network } from '../../../grammar/phrases/network.ts';
import { tries } from '../../how-much.ts';
import { randomPath, seeded, wordsOf } from '../random-sentence.ts';
import { accepts } from './accepts.ts';
import { readAbnf, readSrgsXml } from './read-grammars.ts';

const network = new Network(RULES, 'utterance', ENGLISH);
const COUNT = tries(600, 2_500);

describe.each([
  ['XML', readSrgsXml(toSrgsXml())],
  ['ABNF', readAbnf(toSrgsAbnf())],
])('the grammar in SRGS %s', (_form, exported) => {
  it(`takes ${COUNT} sentences generated from the tables`, () => {
    for (let seed = 0; seed < COUNT; seed += 1) {
      const words = wordsOf(randomPath(RULES, 'utterance', seeded(seed)));
      expect(accepts(exported.rules, exported.root, words), words.join(' ')).toBe(true);
    }
  });

  it(`gives ${COUNT} sentences that the matcher takes word by word`, () => {
    for (let seed = 0; seed < COUNT; seed += 1) {
      const words = wordsOf(randomPath(exported.rules, exported.root, seeded(seed)));
      const [best] = match(
        network,
        words.map((text) => ({ text })),
      );
      // Of several cheap ways the matcher may take another, past a filler: then the rules themselves must have this one.
      const asSaid = best?.steps.every(({ taken }) => taken === undefined || taken.how === 'word');
      expect(asSaid || (best !== undefined && accepts(RULES, 'utterance', words)), words.join(' ')).toBe(true);
    }
  });

  it('refuses what no table holds', () => {
    for (const text of ['leg one to banana one eighteen', 'what', 'ground to', '']) {
      expect(accepts(exported.rules, exported.root, text.split(' ')), text).toBe(false);
    }
  });
});

describe('the exported SRGS text', () => {
  it('names every rule it uses, and every rule by a legal name', () => {
    const { rules } = readSrgsXml(toSrgsXml());
    const used = new Set([...toSrgsXml().matchAll(/uri="#([^"]+)"/g)].map(([, name]) => name!));
    for (const name of used) expect(rules[name], name).toBeDefined();
    for (const name of Object.keys(rules)) expect(name).toMatch(/^[A-Za-z_][A-Za-z0-9_]*$/);
  });

  it('can be cut down to one rule', () => {
    const { rules, root } = readAbnf(toSrgsAbnf(SPOKEN_RULES, 'number'));
    expect(root).toBe('number');
    expect(Object.keys(rules)).not.toContain('reading');
    expect(accepts(rules, root, ['one', 'eighteen'])).toBe(true);
  });
});
