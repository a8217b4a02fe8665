/** What a trip leaves behind, as told: a fuse that blew, a breaker that tripped, a winding that reads to its shell. */
export type ToldDanger = 'blown-fuse' | 'tripped-breaker' | 'grounded-winding';

const BLOWN =
  /\bfuses?\b.*\b(?:blown|blew|blows|burn(?:ed|t)(?: out| up)?|popped|toast|fried|gone|shot)\b|\b(?:blown|burn(?:ed|t)(?: out)?|blew (?:a|the|both)|popped (?:a|the)) (?:\w+ )?fuses?\b/;
const TRIPPED =
  /\bbreakers?\b.*\b(?:trip(?:s|ped|ping)?|kick(?:s|ed) (?:off|out)|popp?(?:s|ed)|blew|blows|went|won't hold|will not hold|doesn't hold|let go)\b|\b(?:trip(?:s|ped|ping)|popp(?:s|ed)|kick(?:s|ed)) (?:off |out )?(?:the |that |its )?breakers?\b|\b(?:it|that) (?:just |then )?(?:trip(?:s|ped)|kick(?:s|ed) (?:off|out)|popped)\b(?! (?:on|at|out on) (?:overload|high|low|the (?:overload|high|low)))/;
const GROUNDED =
  /\b(?:windings?|compressor|motor|fan|blower|terminals?)\b.*\b(?:grounded|dead short|shorted|short to|burn(?:ed|t) (?:through|off)|to (?:shell|ground|case|frame))\b|\b(?:burn(?:ed|t)|melted) (?:compressor )?terminal\b|\bdead short to (?:ground|shell|case)\b|\bshell reads\b|\bmegg?(?:ed)? (?:bad|low|zero)\b/;
/** The 24 V fuse guards no winding of a motor; a denial tells of no danger. */
const OTHERWISE =
  /\b(?:control fuse|board fuse|low voltage fuse|24 volt fuse|last (?:week|month|year|summer|season)|years? ago|months? ago|not|isn't|no|never|wasn't|aren't|open|infinite|megohms?|good|clear)\b/;

/** Asked, and not told. */
const ASKS = /^ ?(?:did|does|do|was|were|why|when|could|can|should|would|how|what|if)\b/;

/** What of it the words can tell, where they were not understood as a whole. */
export function dangerTold(heard: string): ToldDanger | undefined {
  const statements = heard.toLowerCase().split(/[,;.]|\b(?:and|then|but|so)\b/);
  const told = statements.filter((one) => !OTHERWISE.test(one) && !ASKS.test(one));
  if (told.some((one) => GROUNDED.test(one))) return 'grounded-winding';
  if (told.some((one) => BLOWN.test(one))) return 'blown-fuse';
  return told.some((one) => TRIPPED.test(one)) ? 'tripped-breaker' : undefined;
}

const ABOUT =
  /\b(?:smok(?:e|es|ing)|smell\w*\b.*\b(?:burn\w*|gas|hot)|burning (?:smell|plastic|insulation)|on fire|flames?|sparks?|sparking|arcing|sizzl\w*|melt(?:ed|ing))\b|\b(?:water|puddle|flood\w*)\b.*\b(?:under|in|around|by|near|at|on) the (?:\w+ )?(?:disconnect|panel|breaker|unit|box|contactor)\b|\boil\b.*\b(?:spray\w*|shoot\w*|squirt\w*)\b|\b(?:spray\w*|shoot\w*|squirt\w*)\b.*\b(?:oil|terminals?)\b/;

/** Whether the words tell of fire, gas, water or oil about the unit: whoever is there stays clear of it. */
export function hazardAboutTold(heard: string): boolean {
  const statements = heard.toLowerCase().split(/[,;.]|\b(?:and|then|but|so)\b/);
  return statements.some(
    (one) => ABOUT.test(one) && !/\b(?:no|not|n't|never|last|yesterday|ago|used to|torch|braz\w*)\b/.test(one),
  );
}

/** It was switched on once more, whatever tripped: "reset it", "flipped it again", "tried it one more time". */
const RESET =
  /\b(?:re ?set|flipped|threw|turned|switched|put|set|pushed|closed|snapped|tried|gave) (?:it|that|them|(?:the|that|both) (?:breakers?|poles?)|the thing)(?: back)?(?: on| in)?\b(?! (?:off|out|down|to off|a (?:minute|second(?! time)|rest)|on the (?:bench|ground|truck)))/;
const ONCE_MORE =
  /\b(?:again|back on|one more|once more|re ?set|(?:second|third|fourth|another|couple(?: of)?|few) (?:time|try|times|more)|twice)\b/;

/** Whether the words can tell that a breaker was reset, where they were not understood as a whole. */
export function resetTold(heard: string): boolean {
  const statements = heard.toLowerCase().split(/[,;.]|\b(?:and|then|but|so)\b/);
  return statements.some((one) => RESET.test(one) && ONCE_MORE.test(one) && !NOT_RESET.test(one));
}

/** So many times that it must have tripped, though nobody had said so. */
export function resetsOftenTold(heard: string): boolean {
  return /\b(?:twice|(?:two|three|four|five|six|several|a few|couple(?: of)?|many) (?:more )?times|(?:third|fourth|fifth) time|over and over|again and again)\b/.test(
    heard.toLowerCase(),
  );
}

const NOT_RESET =
  /\b(?:not|n't|never|before|should|can i|do i|will|going to|gonna|want|if|when|thermostat|high pressure|low pressure|limit|fan|meter|tried to|cover|panel|wire|leads?)\b/;
