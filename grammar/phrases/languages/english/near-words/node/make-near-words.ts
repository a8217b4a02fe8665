import { writeFileSync } from 'node:fs';
import { dictionary } from 'cmu-pronouncing-dictionary';
import { PRONUNCIATIONS } from '../../../../../export/pronunciations.ts';
import { Network } from '../../../../network.ts';
import { ENGLISH } from '../../english.ts';
import { RULES } from '../../rules/utterance-rules.ts';
import { FILLERS, HESITATIONS } from '../../words/fillers.ts';
import { HOMOPHONES } from '../../words/homophones.ts';
import { NUMBER_WORDS } from '../../words/number-words.ts';
import { phoneticDistance } from './phonetic-distance.ts';

/**
 * Writes near-words.json: for each word of the grammar the English words of the CMU Pronouncing Dictionary that sound
 * near it, each with its distance in hundredths. Run after words were added: `npm run near-words` (about a minute).
 */
const FUNCTION_WORDS =
  "a an and are at be been by do for from go got had has have he i i'm i've in is it it's me my no not of off on or out so that the there this to up was we what why with you".split(
    ' ',
  );
const kept = new Set([...NUMBER_WORDS, ...FILLERS, ...HESITATIONS, ...FUNCTION_WORDS, ...Object.keys(HOMOPHONES)]);

const phonesOf = (pronunciation: string): string[] => pronunciation.replace(/\d/g, '').split(' ');
const pronunciationsOf = (word: string): string[][] => {
  const known = dictionary[word];
  return [...(known === undefined ? [] : [known]), ...(PRONUNCIATIONS[word] ?? [])].map(phonesOf);
};

/** The largest distance at which a word may still have been misheard: short words have many neighbours. */
const reach = (phones: readonly string[]): number => (phones.length <= 3 ? 0.45 : Math.min(1.1, 0.2 * phones.length));

const grammarWords = [...new Network(RULES, 'utterance', ENGLISH).words].filter(
  (word) => /^[a-z']{3,}$/.test(word) && !kept.has(word),
);
const heardWords = Object.entries(dictionary)
  .filter(([word]) => /^[a-z]{3,}$/.test(word) && !kept.has(word))
  .map(([word, pronunciation]) => ({ word, phones: phonesOf(pronunciation) }));

const lines = grammarWords.sort().flatMap((target) => {
  const near = new Map<string, number>();
  for (const phones of pronunciationsOf(target)) {
    for (const heard of heardWords) {
      if (heard.word === target || Math.abs(heard.phones.length - phones.length) > 1) continue;
      const distance = phoneticDistance(heard.phones, phones, reach(phones));
      if (distance > reach(phones)) continue;
      near.set(heard.word, Math.min(distance, near.get(heard.word) ?? Number.POSITIVE_INFINITY));
    }
  }
  const best = [...near].sort((a, b) => a[1] - b[1] || a[0].localeCompare(b[0])).slice(0, 24);
  if (best.length === 0) return [];
  return [[target, best.map(([word, distance]) => `${word}:${Math.round(distance * 100)}`).join(' ')]] as const;
});

writeFileSync(
  new URL('../../../../../../../grammar/phrases/languages/english/near-words/near-words.json', import.meta.url),
  `${JSON.stringify(Object.fromEntries(lines), null, 1)}\n`,
);
process.stdout.write(`${lines.length} words of the grammar have neighbours\n`);
