/** Words that say nothing. They cost little and change nothing. */
export const FILLERS: readonly string[] = [
  'okay',
  'ok',
  'so',
  'well',
  'alright',
  'right',
  'like',
  'just',
  'about',
  'now',
  'and',
  'then',
  'hey',
  'yeah',
  'please',
  'the',
  'a',
  'an',
  'my',
  'got',
  'here',
];

/** Sounds of thinking. Before a number they say nothing; inside or after one, the speaker may be about to go on. */
export const HESITATIONS: readonly string[] = ['uh', 'um', 'er', 'erm', 'ah', 'hmm', 'mm', 'eh', 'uhm', 'umm'];

/** Words that turn a sentence round: repair never passes over them. */
export const NEGATIONS: readonly string[] = [
  'no',
  'not',
  'none',
  'never',
  'nothing',
  'without',
  'off',
  'out',
  "isn't",
  "won't",
  "can't",
  "doesn't",
  "don't",
  "aren't",
  "wasn't",
  'cannot',
];
