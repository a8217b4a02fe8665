import { follow, toAutomaton } from '../../../client/listening/recogniser/automaton.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { readUtterances } from '../../../fixtures/utterances/read-utterances.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { projectFolder } from './project-folder.ts';

/** Talk at work that is no sentence of the grammar. */
export const FOREIGN = [
  'did you see the game last night',
  'my truck needs new tires before winter',
  'the customer says her dog likes you',
  'we should get lunch after this one',
  'tell him i will call back tomorrow',
  'where did you park the van',
  'it is going to rain this afternoon',
  'could you hand me that ladder please',
  'i think the office sent the wrong invoice',
  'she wants to know how long this takes',
  'my phone is almost out of battery',
  'they are painting the hallway upstairs',
] as const;

/** Readings or commands from the utterance fixtures that the recogniser's grammar has and that would be logged. */
export function sentencesOf(kind: 'reading' | 'command'): readonly string[] {
  const network = toAutomaton(parseJsgf(visitGrammar('all') ?? ''));
  return readUtterances(projectFolder('fixtures/utterances'))
    .map(({ text }) => text)
    .filter((text) => /^[a-z' ]+$/.test(text) && follow(network, text).whole)
    .filter((text) => {
      const { meaning, verdict } = understand(text);
      return verdict === 'logged' && meaning.kind === kind;
    });
}
