import type { Utterance } from '../../../fixtures/utterances/read-utterances.ts';
import { toJsgf } from '../../../grammar/export/jsgf.ts';
import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import { WRITTEN_ENGLISH } from '../../../grammar/phrases/languages/english/written-english.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import { accepts } from './accepts.ts';
import { type ReadGrammar, readJsgf } from './read-grammars.ts';

/** Words as they are spoken: numerals too. */
const spoken = (text: string): string[] =>
  tokenise(text, WRITTEN_ENGLISH).flatMap(({ text: word, numeral }) =>
    numeral === undefined ? word : sayNumber(numeral).split(' '),
  );

/** Lines of people that are logged. That a place was only named is heard the second time; dictation behind its heading. */
export const isOfPeople = ({ where, verdict, meaning }: Utterance): boolean =>
  /^(as-people-say|as-technicians-talk|on-a-hot-roof)/.test(where) &&
  verdict === 'logged' &&
  !meaning.endsWith('unclear') &&
  !/^(note|saying|recommendation)/.test(meaning);

/** Those of the lines that the recogniser has no sentence for, in what it is given at their moment or over everything. */
export function unheard<Line extends Pick<Utterance, 'text' | 'expectation'>>(lines: readonly Line[]): Line[] {
  const everything = readJsgf(toJsgf(undefined, { scope: 'all' }));
  const hears = ({ rules, root }: ReadGrammar, text: string) => accepts(rules, root, spoken(text));
  return lines.filter(
    ({ text, expectation }) =>
      !hears(everything, text) &&
      (expectation === undefined || !hears(readJsgf(toJsgf(expectation, { scope: 'expected' })), text)),
  );
}
