/** What stays as it was, and that it does: nothing else is in it. */
const SAID =
  /^(?:(?:yes|yeah|yep|okay|and|everything|it all) )*(?:(?:it|that|everything|power|the power|(?:my |the )?(?:disconnect|breaker|switch)) )?(?:is |are |'s )?still (?:off|locked|locked out|locked off|out|open|dead|tagged)(?: and (?:locked|tagged|off|dead))?$/;

/** A lock stays on or there; one that is off or open says the opposite. */
const SAID_OF_LOCK =
  /^(?:(?:yes|yeah|yep|okay|and) )*(?:my |the )?(?:lock|tag|lock and tag)(?: is| are|'s)? still (?:on|there|in place|on it|on there)$/;

/** Whether the words say that what was taken off still is, and nothing else. */
export function saysStillOff(heard: string): boolean {
  const words = heard
    .toLowerCase()
    .replace(/\b(it|that|everything)'s\b/g, '$1 is')
    .replace(/[,.!?]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return SAID.test(words) || SAID_OF_LOCK.test(words);
}

/** A no behind what was just said, or that it was wrong; "no change" says the opposite. */
const TAKEN_BACK =
  /^(?:(?:uh|um|oh|ah|wait|actually|sorry|well|hold on|hang on|i mean|correction) )*(?:no|nope|nah|negative|wrong|not (?:really|sure)|scratch that|strike that|take (?:that|it) back|correction|sorry)\b(?! (?:change|power|voltage|volts|one|body))/;

/** Whether the words take back what was said right before them. */
export function takesBack(heard: string): boolean {
  return TAKEN_BACK.test(
    heard
      .toLowerCase()
      .replace(/[,.!?]+/g, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  );
}
