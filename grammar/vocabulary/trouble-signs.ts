/**
 * What can be wrong with a proof, a lock or a person, word by word: for sentences that were not understood as a whole.
 * Wide on purpose, and tried on each statement by itself, in small letters. What was meant is asked for afterwards; what
 * is taken for one wrongly costs a proof.
 */

/** What a sign of trouble puts in doubt: that power is off; the numbers of the proof; a person. */
export type Trouble = 'power' | 'proof' | 'person';

/** By somebody's own hand, or free: that moves without power. */
const BY_HAND = /\b(?:by hand|free|freely|easy|easily|stiff|rough|seized)\b/;

const SIGNS: readonly { readonly trouble: Trouble; readonly words: RegExp; readonly not?: RegExp }[] = [
  {
    trouble: 'person',
    words:
      /\b(?:ouch|numb|bleeding|ambulance|nine one one|911|knocked (?:me|him|her|on|out)|call for help|burnt my|burned my|hit me|chest pain|(?:is|he's|she's|lying) (?:down )?on the (?:ground|floor)|(?:that|it|damn that) stings?|electrocuted|electrified|jolt|got hurt|is hurt|fell off|passed out|can't feel|blew up in my)\b/,
  },
  {
    // What turns, jerks or comes to life.
    trouble: 'power',
    words:
      /\b(?:blades?|fan|prop(?:eller)?|blower|motor|compressor|contactor|relay|valve|something|everything|it|it's|she|she's|he's|thing)\b.*\b(?:moving|moved|spinning|spins|spun|turning|jerk(?:ed|s)?|twitch(?:ed|es)?|whir+(?:s|red|ring)?|woke up|back to life|came to life|alive|going again|doing it again|slammed|clunk(?:ed|s)?|thump(?:ed|s)?|whin(?:es|ing)|roar(?:s|ing)?|cycl(?:ed|ing)|run(?:s|ning)?|ticking)\b/,
    not: BY_HAND,
  },
  {
    // What gives light, sound, cold or heat.
    trouble: 'power',
    words:
      /\b(?:lit|lights?|led|display|screen|indicator)\b.*\b(?:lit|on|up|came|went|flash\w*|blink\w*|glow\w*)\b|\b(?:glow\w*|beep\w*|chirp\w*|alarm)\b|\bcold air\b|\b(?:cooling|blowing|working) (?:now|again|cold)\b|\b(?:a c|ac|air|air conditioner|heat) is (?:on|back|working)\b|\b(?:heater|transformer|unit|compressor|motor|she's|she is) (?:is )?(?:getting |still )?(?:warm|hot)\b/,
  },
  {
    // What burns, smokes, flashes or snaps.
    trouble: 'power',
    words:
      /\b(?:smok(?:e|es|ing)|smell\w* .*burn\w*|burning|on fire|melt\w*|sizzl\w*|crackl\w*|flash(?:ed|es)?|arc(?:s|ed|ing)?|spark\w*|explod\w*|vapori[sz]ed|welded itself)\b|\b(?:it|something|that|thing|wire|breaker)(?: just)? (?:popped|snapped|blew|shorted|exploded|banged)\b/,
  },
  {
    // A switch, a block or a fuse that is in again.
    trouble: 'power',
    words:
      /\b(?:switched|put|turned|plugged|flipped|shoved|stuck|pushed|set|slid|snapped|jammed) (?:it|them|that|(?:the |both |all )?(?:block|fuses?|plug|pull ?out|cartridge|handle|head|key))(?: right)? (?:back|in|on)\b|\bfuses? (?:are|is) (?:back )?in\b/,
    not: /\b(?:out|off)\b/,
  },
  {
    // Somebody at a supply, or at the lock, its key or its tag.
    trouble: 'power',
    words:
      /\b[a-z']+ (?:is|are|was|'s|went|heading|going|walked)\b.*\b(?:panel|breakers?|breaker box|fuse box|electrical (?:room|closet)|switch ?gear|disconnect|meter base)\b|\bguy\b.*\bmeter\b|\b(?:putting|pulled|pulling|set|setting) the meter (?:back|in)\b|\b(?:key|tag|lock)\b.*\b(?:missing|gone|gave|lost|has|have|else|blew|fell|homeowner|customer|owner)\b|\b(?:gave|give|handed|lost)\b.*\b(?:key|lock)\b|\b(?:has|have) a key\b/,
    not: /\b(?:off|locked|open|pulled|outside|label(?:led)?|clear)\b/,
  },
  {
    // Another unit, another feed.
    trouble: 'power',
    words:
      /\bwrong (?:unit|one|box|condenser|system|house|breaker|disconnect|circuit|switch)\b|\b(?:locked|killed|pulled|shut|turned)\b.*\b(?:other|different|neighbou?r'?s) (?:unit|condenser|system|box)\b|\bnext door\b|\bnot the right\b|\b(?:isn't|is not|ain't|not) (?:mine|ours)\b|\b(?:second|another|two|third|separate|extra|different) (?:feeds?|circuits?|disconnects?|breakers?|sources?|suppl(?:y|ies)|leg|panel)\b|\bback ?fe(?:e)?d\w*\b|\b(?:solar|generator|transfer switch|battery (?:backup|wall)|inverter) \b/,
  },
  {
    // A voltage that somebody sees.
    trouble: 'power',
    words:
      /\b(?:see|seeing|reading|read|reads|getting|got|have|having|still|shows?|showing|is|are|picking up)\b.*\b(?:voltage|volts?|potential|juice|current)\b|\bnot (?:a )?(?:zero|dead)\b|\bmeter\b.*\b(?:something|jumped|climb\w*|went up|moved|twenty|thirty|forty|fifty|hundred|one \w+teen|one twenty)\b|\b(?:a |got a )reading\b.*\b(?:meter|of)\b/,
    not: /\b(?:no|zero|without|nothing) (?:voltage|volts?|potential|juice|current)\b|\b(?:no|zero) reading\b|\bat the source\b|\blive source\b|\bknown source\b/,
  },
  {
    // A number that is read, and nothing that says of what.
    trouble: 'power',
    words:
      /^\W*(?:it |it's |that |now |still |this |and |hey )*(?:reads?|reading|showing|shows|says|seeing)\b.*\b(?:three|four|five|six|seven|eight|nine|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|[3-9]|\d{2,3})\b/,
    not: /\b(?:air|degrees?|suction|liquid|gauges?|psi|pressure|superheat|subcooling|amps?|ohms?|microfarads?|coil|return|supply|percent|plate|nameplate)\b/,
  },
  {
    // Numbers that were not measured, and a meter that did not measure.
    trouble: 'proof',
    words:
      /\b(?:didn't|did not|never|haven't|have not)(?: actually| really| even)* (?:measure|check|test|read|probe|touch|try|prove|verify)\w*\b|\bmade\b.*\bup\b|\b(?:skipped|misread|guess(?:ed|ing)|faked|mixed up|swapped the (?:leads|probes))\b|\bmeter\b.*\b(?:ohms|amps|setting|mode|battery|batteries|dead|broken|broke|off|wrong|fell|dropped|lead|bad|range|acting up|lying)\b|\b(?:leads?|probes?|tips?)\b.*\b(?:amps jack|wrong|fell|broken|broke|loose|off|bad|slipped|not touching|wasn't|weren't)\b/,
    not: /\bfilter\b/,
  },
  {
    // A charge, and a capacitor that nobody has read.
    trouble: 'proof',
    words:
      /\b(?:cap|caps|capacitors?)\b.*\b(?:charged?|snapped|popped|bit|another|second)\b|\bcharge\b.*\b(?:cap|capacitor)\b|\b(?:start|second|another|extra) (?:run )?(?:caps?|capacitors?)\b|\bhard start\b|\bstart kit\b/,
    not: /\b(?:system|refrigerant|no charge|discharged|zero)\b/,
  },
];

/** Of another time, or only meant: "it used to hum", "before I turn it on", "when I got here the fan was running". */
const ANOTHER_TIME =
  /\b(?:used to|last (?:night|week|month|year|summer|time|fall|winter|spring)|yesterday|this morning|earlier today|the other day|before (?:i|we|he|she|they) (?:\w+ )?(?:turn|turned|shut|switch|switched|pull|pulled|lock|locked|kill|killed|start|power|energi[sz]e)(?: (?:it|that|this|them|the \w+))?(?: (?:on|off|back on))?|when (?:i|we) (?:got|came|arrived)|until (?:i|we))\b/;
/** Something is so now: speech has no commas, and what is there may follow in the same breath. */
const NOW = /\b(?:now|again|just|still|back|on|is|are|it's|that's|there's|she's|he's|they're)\b/;
/** "Hot out here": the day, and no conductor. */
const WEATHER =
  /\bhot (?:out here|out|outside|day|today|up here|in here|here|one|summer|weather|sun|attic)\b|\b(?:weather|attic|roof|sun) is (?:so |really |damn )?hot\b/g;

/** Whether all of a statement is of another time. */
export function isOfAnotherTime(statement: string): boolean {
  return ANOTHER_TIME.test(statement) && !NOW.test(statement.replace(ANOTHER_TIME, ''));
}

/** The words but for those that tell of the weather: what stands beside them counts. */
export function withoutWeather(words: string): string {
  return words.replace(WEATHER, '');
}

/** "If", "should I": nothing was done, nothing is so. */
const ONLY_MEANT =
  /\b(?:if (?:i|it|we|you|the)|should i|shall i|can i|could i|do i|will i|going to|gonna|about to|need to|want to|have to|would|supposed to|make sure|don't want)\b/;

/** What of their words can be trouble, whatever the whole was to say. */
export function troublesIn(heard: string): ReadonlySet<Trouble> {
  const statements = withoutWeather(heard.toLowerCase()).split(/[,;.]|\b(?:and|then|but|so)\b/);
  return new Set(
    statements
      .filter((one) => !isOfAnotherTime(one) && !(ONLY_MEANT.test(one) && !NOW.test(one)))
      .flatMap((one) => SIGNS.filter(({ words, not }) => words.test(one) && not?.test(one) !== true))
      .map(({ trouble }) => trouble),
  );
}
