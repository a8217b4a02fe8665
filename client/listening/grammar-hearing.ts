import { PRONUNCIATIONS } from '../../grammar/export/pronunciations.ts';
import { Hearing } from './hearing.ts';
import { adapted } from './profile/voice-profile.ts';
import { follow, toAutomaton } from './recogniser/automaton.ts';
import { GATES } from './recogniser/gates.ts';
import { parseJsgf } from './recogniser/parse-jsgf.ts';
import type { VisitHearingParts } from './visit-hearing.ts';

/** Letters of a word that may be taken for another. */
const LEAST = 4;

/**
 * Hearing by any JSGF grammar, along the very path of a visit: the same noise gate, recogniser and rejection.
 * @throws ListeningError `model-missing`, `grammar-broken`, `grammar-unknown-word`
 */
export async function openGrammarHearing(parts: VisitHearingParts, jsgf: string): Promise<Hearing> {
  const network = toAutomaton(parseJsgf(jsgf));
  return await Hearing.open({
    ...parts,
    ...adapted({ pronunciations: PRONUNCIATIONS, gates: GATES }, parts.profile),
    // Of a grammar nobody knows which words matter: all but the shortest.
    standsFor: (word) => (word.length < LEAST ? undefined : { kind: 'name', value: word }),
    grammarFor: (expectation) => (expectation === 'all' ? jsgf : undefined),
    // What may go on is waited for: people take breath before "with milk".
    endingOf: (text) => {
      const { whole, more } = follow(network, text);
      return whole && !more ? 'whole' : 'open';
    },
    goesOnWith: () => false,
    urgentMargin: () => undefined,
  });
}
