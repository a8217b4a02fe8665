/** Denies that something was done, in the past or by now: no wish, no order to somebody else, no question. */
const DID_NOT =
  "(?:(?<!(?:why|if|when|since|because) (?:\\w+ )?)\\b(?:(?:didn't|did not|haven't|have not|hadn't|had not|hasn't|has not|ain't|couldn't|could not|can't|cannot|can not)(?! (?:you|he|she|they|we|i)\\b)|never|nobody|no one|none of us|forgot(?:ten)? to|failed to|(?:not|wasn't|wasn) able to|unable to))";
const BETWEEN =
  '(?: (?:yet|actually|really|even|ever|has|have|had|been able to|get to|got to|gotten to|still|to|go|gone|and))*';
const WHAT =
  '(?:it|that|them|(?:the |my |that |this |our )?(?:[a-z]+ ){0,2}?(?:disconnect|breaker|pull ?out|switch|main|isolator|power)s?)';
/** Switches that open a supply; those that guard the unit are parts of it. */
const SWITCH =
  '(?:disconnect|breaker|pull ?out|(?<!(?:float|pressure|high|low|door|limit|safety) )switch|main|isolator)';
const PRONOUN = '(?:it|that|they)';
const IS_NOT =
  "(?:(?:(?:is|was|are|has|have)(?: still| just)? not|isn't|wasn't|aren't|ain't|hasn't|haven't|never|'s not|(?:is|was) never)(?: yet| really| actually| quite| even| been| fully)*)";

const lock = '(?:lock|locked|tag|tagged)(?: out)?';
const open = '(?:pull|pulled|open|opened|kill|killed|shut|turn|turned|switch|switched|cut)(?: off| out| down)?';

/** @param state as said of a switch; @param ofIt as said of "it", which may be a part as well */
const told = (act: string, state: string, ofIt: string): RegExp =>
  new RegExp(
    [
      `${DID_NOT}${BETWEEN} ${act} ${WHAT}\\b`,
      `\\b${SWITCH}(?:'s)?(?: still)? ?${IS_NOT} ${state}\\b`,
      `\\b${PRONOUN}(?:'s)?(?: still)? ?${IS_NOT} ${ofIt}\\b`,
    ].join('|'),
  );

/**
 * A switch that was not opened, or not locked, said plainly: told back as not done, and counted as power that is on. Tried
 * on words in small letters. `as`: how it is told back.
 */
export const DENIAL_SIGNS: readonly { readonly not: 'pulled' | 'off' | 'locked'; readonly words: RegExp }[] = [
  { not: 'locked', words: told(lock, '(?:locked|tagged)(?: out| off)?', '(?:locked|tagged)(?: out| off)?') },
  { not: 'pulled', words: told('(?:pull|pulled)(?: out)?', '(?:pulled|out)', 'pulled') },
  {
    not: 'off',
    words: told(
      open,
      '(?:off|open|opened|shut off|turned off|switched off|killed)',
      '(?:shut off|turned off|switched off)',
    ),
  },
];

/** What of a switch is denied by these words; undefined where nothing is. A question, an order or a wish denies nothing. */
export function deniedOfSwitch(heard: string): 'pulled' | 'off' | 'locked' | undefined {
  const words = heard
    .toLowerCase()
    .replace(/’/g, "'")
    .replace(/[^a-z0-9' ]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (ASKS.test(words)) return undefined;
  return DENIAL_SIGNS.find((sign) => sign.words.test(words))?.not;
}

const ASKS =
  /^(?:is|are|was|were|did|does|do|has|have|had|should|would|could|can|will|who|why|what|when|if|tell|ask|make sure)\b(?! not\b)/;
