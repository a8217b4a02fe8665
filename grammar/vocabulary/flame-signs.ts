/** Words by which a flame may be lit, in however little of a sentence they were understood; and those that take it back. */
const FLAME = /\b(?:torch|flame|braz(?:e|ed|ing)|solder(?:ed|ing)?|(?:un)?sweat(?:ed|ing))\b/;
const NO_FLAME =
  /\b(?:no|not|never|without|before|after)\b|\b(?:torch|flame)(?:'s| is| was)?(?: now)? (?:out|off)\b|\b(?:put|turned|shut|blew) (?:out |off )?(?:the |my )?(?:torch|flame)\b/;

/** Whether the words can mean that there is a flame. */
export function canMeanFlame(heard: string): boolean {
  const statements = heard.toLowerCase().split(/[,;.]|\b(?:and|then|but|so)\b/);
  return statements.some((words) => FLAME.test(words) && !NO_FLAME.test(words));
}
