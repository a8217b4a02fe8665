import { DENIAL_SIGNS } from './denial-signs.ts';
import type { SwitchPlace } from './devices.ts';
import type { ZoneId } from './zones.ts';

/** A few words that do not turn the sentence round. */
const GAP =
  "(?:(?!(?:not|no|never|nothing|off|out|open|opened|isn't|aren't|wasn't|won't|doesn't|don't|cannot|can't|without|pulled|locked|lock|padlock|tag|tagged|tripped|killed|dead|zero|stopped)\\b)[\\w']+ ){0,3}";
/** "on" or "in" as a state, not before a place: "in the panel", "on the bench". */
const STATE = '(?:on|in|up)(?! (?:the|a|an|my|at|site|off)\\b)';
const SWITCH = '(?:disconnect|pull ?out|breaker|switch|isolator|main)';
const POWER = '(?:power|juice|electricity|mains)';
const LOCK = '(?:lock|padlock|tag|lockout|hasp)';
/** The vacuum pump and the recovery machine run on another supply. */
const PART =
  '(?<!recovery |vacuum )\\b(?:compressor|fan|blower|motor|contactor|unit|condenser|transformer|board|relay|solenoid|heater|system|something|everything|it)';
/** What is put back on at a part, and is no power. */
const NOT_AT_IT = '(?! (?:motor )?(?:leads?|wires?|wiring|plug|harness)\\b)';
const PERSON =
  '\\b(?:somebody|someone|anybody|helper|dude|bro|buddy|fella|lady|homeowner|owner|customer|tenant|apprentice|trainee|partner|buddy|coworker|colleague|electrician|neighbou?r|wife|husband|kids?|guys?|man|woman|he|she|they|janitor|manager|landlord|maintenance|boss|people|supervisor)';
const BY_HAND = '(?!.*\\b(?:by hand|free|freely|easy|easily|stiff|tight|hard|rough|seized)\\b)';
const NEGATED =
  "(?<!\\b(?:no|not|never|without|isn't|don't|doesn't|didn't|can't|cannot|couldn't|won't|de)(?: get| got| been)? )";

function pattern(source: string): RegExp {
  return new RegExp(`(?:${source})`);
}

/**
 * What is said when power, a lock or a switch may have come back, when something runs or lights up, when somebody else
 * is at a switch, or was hurt. Wide on purpose: what is taken for one wrongly costs a proof, what is missed costs more.
 * Tried on words in small letters. `everywhere`: whatever place is named, nothing can be excluded.
 */
export const POWER_SIGNS: readonly { readonly sign: string; readonly words: RegExp; readonly everywhere?: true }[] = [
  {
    sign: 'power',
    words: pattern(
      [
        `${NEGATED}\\b${POWER}(?:'s)? ${GAP}(?:${STATE}|back(?! (?:out|off))|here|there|present|restored|returned|again|live)\\b`,
        `${NEGATED}\\b(?:have|has|got|getting|there's|there is|see|restored|restoring|turned on|switched on|turn on|brought back|put back) (?:the |some )?${POWER}\\b(?! (?:is |was |has been )?(?:off|out|locked|killed|cut))`,
        `\\bvoltage ${GAP}(?:back|again)\\b`,
        '\\bpower(?:ed|ing)? (?:back )?up\\b',
        `${NEGATED}\\b(?:re)?energi[sz]ed\\b`,
        "\\b(?:it's|its|it is|that's|that is|is|are|we're|they're|went|still|now|back) live\\b(?! source)",
        '\\blive again\\b',
        "\\b(?:it's|it is|they're|everything is|leg|leg one|leg two|l 1|l 2|wire|terminal|lugs?|load side) (?:(?:is|are|still) )*hot\\b",
      ].join('|'),
    ),
  },
  {
    sign: 'switch',
    words: pattern(
      [
        `\\b${SWITCH}(?:'s)? ${GAP}(?:${STATE}|back(?! (?:out|off))|closed|reset|restored|flipped|again)\\b`,
        `\\b(?:closed|put|pushed|plugged|flipped|threw|thrown|reset|turned|switched|restored|shoved|snapped) ${GAP}${SWITCH}\\b(?! (?:off|out|open)\\b)`,
        '\\b(?:flipped|threw) (?:it|them|that)\\b(?! (?:off|out)\\b)',
        `\\b(?:turned|switched|put|plugged|pushed|brought|flipped) (?:it|that|them|everything) (?:back )?${STATE}\\b`,
        `\\b(?:turned|switched|flipped|came|come|comes|coming|kicked|kicks|fired|started) (?:right )?(?:back )?${STATE}\\b`,
        `\\b(?:it's|it is|that's|everything's|everything is|unit is|system is|we're) (?:back )?${STATE}\\b`,
        '(?<!covers are |panels are |wires are )\\b(?:on|running) again\\b',
      ].join('|'),
    ),
  },
  {
    sign: 'lock',
    words: pattern(
      [
        `\\b${LOCK}(?:'s)? (?:(?:is|was|has|been|came|fell|got|just|now) )*(?:off|gone|missing|open|removed|cut|broken|taken)\\b`,
        `\\b(?:took|take|taking|taken|pulled|removed|cut|lost|popped|broke|opened|forgot) (?:off )?(?:the |my |our |his |her |their )?${LOCK}\\b`,
        `\\bno ${LOCK}\\b|\\bunlocked\\b|\\b(?:not|isn't|wasn't|never) locked\\b`,
      ].join('|'),
    ),
  },
  // What was told to be off and locked is denied.
  ...DENIAL_SIGNS.map(({ not, words }) => ({ sign: not === 'locked' ? 'lock' : 'switch', words })),
  {
    sign: 'running',
    words: pattern(
      [
        `${PART}${NOT_AT_IT}(?:'s)? ${BY_HAND}${GAP}(?:running|runs|hum|hums|buzzing|buzzes|spinning|spins|turning|turns|started|starting|starts|clicked|clicking|chattering|vibrating|chugging|churning|whirring|purring|grinding|rumbling|thumping|rattling|cycling|kicking|moving|pulled in|pulls in|engaged|lit|on(?! (?:the|a|my)\\b))\\b`,
        '\\bcontactor (?:is )?in\\b(?! the\\b)',
        // What Readback heard is no machine.
        `${NEGATED}(?<!\\bwhat (?:did|do) you )\\b(?:hear|heard|hearing)\\b(?! (?:you|me|nothing|no)\\b)`,
        `${NEGATED}\\b(?:humming|buzzing)\\b`,
        `\\b(?:lights?|leds?|lamps?|display|screen|indicator) ${GAP}(?:came|comes|on(?! (?:the|a|my)\\b)|lit|blinking|flashing|blinks|flashes|glowing)\\b`,
        '\\b(?:lit|lights) up\\b',
        '\\b(?:started|starting|cranked|kicked) (?:it|her|him|them|that|the (?:unit|system|compressor)) (?:back |right )?(?:up|on|again)\\b',
      ].join('|'),
    ),
  },
  {
    sign: 'somebody',
    words: pattern(
      `${PERSON}\\b.*\\b(?:${SWITCH}|panel|flipped|threw|turned|closed|reset|plugged)\\b|\\b(?:${SWITCH}|panel)\\b.*${PERSON}\\b`,
    ),
  },
  {
    // What was told before is unsaid: where a switch or a lock stands is not known any more.
    sign: 'somebody',
    everywhere: true,
    words: pattern(
      [
        '\\bnever (?:pulled|locked|opened|turned|shut|killed|put)\\b',
        '\\bforgot\\b.*\\b(?:lock|pull|breaker|disconnect|switch|tag)\\b',
        '\\b(?:lied|wrong (?:breaker|disconnect|switch|lock|one))\\b',
        '\\b(?:disconnect|breaker|switch|lock|pull ?out) (?:is not|isn.t|was not|wasn.t|ain.t) (?:out|off|on|open|locked|pulled)\\b',
        '\\b(?:he|she|they|somebody|someone|customer|homeowner|owner|boss|helper|kid|apprentice)\\b.*\\b(?:put it back|turned it|flipped it|switched it|plugged it|messing|fiddling|heading over|by the (?:panel|box|breaker|disconnect))\\b',
      ].join('|'),
    ),
  },
  {
    sign: 'power',
    everywhere: true,
    words: pattern(
      [
        '\\b(?:hot again|went hot|goes hot)\\b',
        '\\bcame back on\\b',
        '\\b(?:fell|fallen|slid|slipped|dropped|popped|swung|snapped|went) (?:right )?back (?:in|on)\\b',
        '\\b(?:i|we|there is|there.s) (?:see |seeing |got |get |have )?(?:voltage|volts)\\b',
        '\\bhandle is (?:back )?(?:up|on|in)\\b',
        '\\b(?:generator|battery backup|inverter|solar)\\b.*\\b(?:start|started|kicked|came|running|on)\\b',
        '\\b(?:buzz|buzzing|hum|click|clicked|clicking|bang|banged|clunk|chatter|chattering)\\b.*\\b(?:contactor|transformer|relay|compressor|coil)\\b',
        '\\b(?:contactor|transformer|relay|compressor|coil)\\b.*\\b(?:buzz|buzzed|click|clicked|bang|banged|clunked|chattered|chatters)\\b',
      ].join('|'),
    ),
  },
  {
    // Denials, slang, and what meters and machines do; half understood, they cost a proof.
    sign: 'power',
    everywhere: true,
    words: pattern(
      [
        "(?<!(?:suction|liquid|discharge) )\\b(?:legs?|line|load|terminals?|ground|lugs?|[tl] ?(?:one|two|1|2))\\b[\\w ]*(?<!\\b(?:not|isn't|never|longer|no) )\\b(?:hot|live)\\b(?! (?:source|gas))",
        "\\b(?:not|isn't|wasn't|ain't|never) (?:really |all |quite |actually )?(?:off|dead|de energi[sz]ed|killed)\\b",
        "\\b(?:didn't|did not|haven't|have not|hadn't) (?:actually |really |even )?(?:lock|locked|pull|pulled|kill|killed|shut|turn|turned|tag|tagged) (?:it|that|them|the (?:breaker|disconnect|switch|main|power|pull ?out|unit))\\b",
        "\\b(?:not sure|not certain|don't think|don't believe|doubt)\\b.*\\b(?:dead|off|locked)\\b",
        `\\b(?:giving|gave|give|gives|feeding|sending|sent) (?:it|her|them|this|that)? ?(?:some |the )?${POWER}\\b`,
        '\\b(?:fired|fire|firing|lit|light|lighting|powered) (?:it |her |him |this |that |them |the unit )?up\\b',
        '\\b(?:let|turned|turn|cut|set) (?:her|it|him|them) (?:rip|loose|go)\\b',
        "\\bwe(?:'re| are) (?:cooking|running|rolling|in business|back in business|hot|live)\\b",
        "\\b(?:she|he)(?:'s| is)? (?:running|runs|humming|hums|purring|spinning|cooking|alive|going)\\b",
        '\\b(?:blower|fan|compressor|contactor|unit|system|motor)\\b.*\\b(?:came on|comes on|kick(?:s|ed) (?:on|in)|clack(?:s|ed)|clunk(?:s|ed))\\b',
        '\\b(?:meter|tester|pen|stick|tracer)\\b.*\\b(?:beep(?:s|ed|ing)?|chirp(?:s|ed|ing)?|glow(?:s|ed|ing)?|scream(?:s|ed|ing)?|blink(?:s|ed|ing)?|flash(?:es|ed|ing)?|lit)\\b',
        '\\b(?:lights?|leds?|board)\\b.*\\b(?:blinking|flashing|glowing)\\b',
        '\\b(?:one|half|single) blade\\b',
        // A meter that does not stand still shows something.
        '\\b(?:meter|display|number|reading|it)\\b.*\\b(?:flicker|swing|bounc|jump|danc|wander|drift|fluctuat|spik)\\w*',
        '\\bturned (?:itself|themselves) on\\b',
        // Work that was done live.
        '\\b(?:swapp|chang|replac|pull|fitt|install|work|lift|land|wir|check|test|prob|touch|mov)(?:ed|ing)\\b.*\\b(?:hot|live)\\b(?! (?:source|gas))',
        '\\b(?:the|a|its|that|those|these) live (?:\\w+ ){0,2}(?:terminals?|wires?|lugs?|leads?|parts?|conductors?|contactor|unit|side|legs?)\\b',
        '\\b(?:why|how come)\\b.*\\b(?:live|hot|energi[sz]ed)\\b',
        '\\b(?:closed|buttoned) (?:it|her) up\\b.*\\b(?:loose|on|running)\\b',
      ].join('|'),
    ),
  },
  {
    sign: 'injury',
    everywhere: true,
    words: pattern(
      [
        `${NEGATED}\\b(?:shock|shocked|zap|zapped|jolt|tingle|tingled|tingling|electrocuted|hurt|injured|unconscious|collapsed)\\b`,
        '\\b(?:got|been) (?:bit|bitten|hit|burned|burnt|buzzed|cut|nailed)\\b',
        '\\b(?:it|that) (?:bit|got|nailed|burned) me\\b',
        '\\bburned (?:my|his|her|me)\\b',
        '\\b(?:not breathing|fell off|fell down|down on the ground|passed out|is bleeding|burned bad|(?:hand|arm|face|finger) is (?:burned|burnt|cut))\\b',
        `${NEGATED}\\b(?:arc|arced|arcing|arcs|sparks?|sparked|sparking)\\b`,
      ].join('|'),
    ),
  },
];

/** Places that narrow what a sign can touch: behind a switch. None named, or a part that runs and so is called for and fed: every zone. */
export const POWER_PLACES: readonly {
  readonly words: RegExp;
  readonly reach:
    | { readonly behind: Exclude<SwitchPlace, 'thermostat'> | readonly Exclude<SwitchPlace, 'thermostat'>[] }
    | { readonly zones: readonly ZoneId[] };
  /** A device without its place: it narrows only what is said of a switch, where no place is named. */
  readonly bare?: true;
}[] = [
  {
    words:
      /\bpanel\b|\b(?:condenser|outdoor unit|a c) breaker\b|\bbreaker (?:for|of) the (?:condenser|outdoor unit|a c)\b/,
    reach: { behind: 'panel' },
  },
  {
    words:
      /\b(?:outdoor|outside|condenser|condensing|outdoor unit|condensing unit) (?:disconnect|pull ?out)\b|\b(?:disconnect|pull ?out) (?:at|on|for) the (?:condenser|outdoor|outside)/,
    reach: { behind: 'outdoor' },
  },
  { words: /\b(?:air handler|handler|indoor|blower|furnace|service switch)\b/, reach: { behind: 'air-handler' } },
  { words: /\bbreaker\b/, reach: { behind: ['panel', 'air-handler'] }, bare: true },
  { words: /\b(?:disconnect|pull ?out)\b/, reach: { behind: ['outdoor', 'air-handler'] }, bare: true },
];
