/** What a trip leaves behind, as told: a fuse that blew, a winding that reads to its shell. */
export type ToldDanger = 'blown-fuse' | 'grounded-winding';

const BLOWN =
  /\bfuses?\b.*\b(?:blown|blew|blows|burn(?:ed|t)(?: out| up)?|popped|toast|fried|gone|shot)\b|\b(?:blown|burn(?:ed|t)(?: out)?|blew (?:a|the|both)|popped (?:a|the)) (?:\w+ )?fuses?\b/;
const GROUNDED =
  /\b(?:windings?|compressor|motor|fan|blower|terminals?)\b.*\b(?:grounded|dead short|shorted|short to|burn(?:ed|t) (?:through|off)|to (?:shell|ground|case|frame))\b|\b(?:burn(?:ed|t)|melted) (?:compressor )?terminal\b|\bdead short to (?:ground|shell|case)\b|\bshell reads\b|\bmegg?(?:ed)? (?:bad|low|zero)\b/;
/** The 24 V fuse guards no winding of a motor; a denial tells of no danger. */
const OTHERWISE =
  /\b(?:control fuse|board fuse|low voltage fuse|24 volt fuse|not|isn't|no|never|wasn't|aren't|open|infinite|megohms?|good|clear)\b/;

/** What of it the words can tell, where they were not understood as a whole. */
export function dangerTold(heard: string): ToldDanger | undefined {
  const statements = heard.toLowerCase().split(/[,;.]|\b(?:and|then|but|so)\b/);
  const told = statements.filter((one) => !OTHERWISE.test(one));
  if (told.some((one) => GROUNDED.test(one))) return 'grounded-winding';
  return told.some((one) => BLOWN.test(one)) ? 'blown-fuse' : undefined;
}
