import { describe, expect, it } from 'vitest';
import { PLAIN_WORDS } from '../../../client/words/talk/plain-words.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';

describe('what the customer is told', () => {
  // Faults that are each other's opposite, or easily taken for one another, and the word that tells them apart.
  it.each([
    ['low-charge', /less refrigerant/],
    ['overcharge', /more refrigerant/],
    ['filter-dirty', /filter/],
    ['condenser-dirty', /outdoor coil/],
    ['indoor-coil-iced', /indoor coil.*iced/],
    ['fan-bearings-seized', /outdoor fan/],
    ['blower-seized', /indoor fan/],
    ['compressor-grounded', /shell/],
    ['thermostat-not-calling', /thermostat/],
    ['float-switch-open', /water/],
    ['transformer-dead', /transformer/],
  ] as const)('of %s says so', (fault, words) => {
    expect(PLAIN_WORDS[fault]).toMatch(words);
  });

  it('names no fault by its trade name, and none by words that promise anything', () => {
    for (const { id } of FAULTS) {
      expect(PLAIN_WORDS[id], id).toMatch(/^[a-z]/);
      expect(PLAIN_WORDS[id], id).not.toMatch(/\b(safe|herm|contactor|superheat|subcooling|psi|microfarads)\b/);
    }
  });
});
