/**
 * What can be wrong with a proof, a lock or a person, word by word: for sentences that were not understood as a whole.
 * Wide on purpose, and tried on each statement by itself, in small letters. What was meant is asked for afterwards; what
 * is taken for one wrongly costs a proof.
 */

import { speltOut } from './spelt-out.ts';

/** What a sign of trouble puts in doubt: that power is off; the numbers of the proof; a person. */
export type Trouble = 'power' | 'proof' | 'person';

/** By somebody's own hand, or free: that moves without power. */
const BY_HAND = /\b(?:by hand|free|freely|easy|easily|stiff|rough|seized)\b/;

const SIGNS: readonly { readonly trouble: Trouble; readonly words: RegExp; readonly not?: RegExp }[] = [
  {
    trouble: 'person',
    words:
      /\b(?:ouch|numb|bleeding|ambulance|nine one one|911|knocked (?:me|him|her|on|out)|call for help|burnt my|burned my|(?:my|his|her) (?:hand|arm|finger|thumb|wrist|face|eye|leg|skin|hair)s? (?:is|are|got|gets|feels?) (?:all )?(?:burn\w*|bleeding|numb|tingl\w*|stuck|cut)|hit me|chest pain|(?:is|he's|she's|lying) (?:down )?on the (?:ground|floor)|(?:that|it|damn that) stings?|electrocuted|electrified|jolt|got hurt|is hurt|dizzy|faint(?:ed|ing)?|light ?headed|heat ?stroke|fell off|passed out|can't feel|blew up in my)\b/,
    not: /\b(?:one|part|cap|capacitor|cover|panel|fan|motor|screws?|tools?|wires?|contactor|compressor|drill|meter|bag|box)\b.*\bon the (?:ground|floor)\b/,
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
    // A state in so many words, and nothing said of what.
    trouble: 'power',
    words:
      /^(?:(?:ok|okay|hey|now|and|yep|yeah|nope|whoa|all|it|she|he|that|this|thing|still|is|everything|going|could|might|may|be|probably|definitely) )*(?:hot|live|on|running|going|jumped|kicked|starting|works?|working|runs?|starts?|started|purring|whining|fire|hum|buzz|humming|(?:loud |big )?bang)(?: (?:now|again|fine|great|good|right|up|like a champ|out|already|today|just fine|alright))*$/,
  },
  {
    // A conductor or a body that is hot or live, in any words between.
    trouble: 'power',
    words:
      /\b(?:hot legs?|hot lugs?|hot wires?|live wires?|live legs?(?! source)|both legs (?:are )?(?:there|good|hot|in)|got both legs|(?:leg|legs|line|lines|whip|lug|lugs|wire|case|cabinet|neutral|ground|frame|this|that|it|still|thing|terminal|one|unit|on both legs)\b.*\b(?:is|are|be|still|going|nope)\b.*\b(?:hot|live))\b|\b(?:hot|live) on (?:both|one|the)\b|\b(?:stray|phantom|induced) voltage\b|\b(?:voltage|volts) (?:on|at|across)\b|\b(?:t|l) ?(?:one|two|1|2) is hot\b|\b(?:stick|tick tracer|tracer|tester|pen)\b.*\b(?:hot|going off|says|lights)\b/,
    not: /\b(?:not|isn't|no longer|no hot|no live|never|to the touch)\b|\b(?:live|hot) (?:source|gas|water)\b|\b(?:gas|liquid|suction|discharge|vapou?r) lines?\b/,
  },
  {
    // Whatever is said to be hot, live or fed, but for what the sun, the refrigerant or a stove makes hot.
    trouble: 'power',
    words:
      /\b\w+ (?:is|are|'s) (?:both |still |really |very |all |a )*(?:hot|live|powered|energi[sz]ed)\b|\b(?:both|really|hot|live) (?:are )?(?:hot|live|on)\b|\b(?:this|that|the other) (?:one|unit) is (?:on|running)\b|\bpowered (?:it |her )?(?:back )?up\b|\bpower never went\b|\b(?:don't|do not) trust\b.*\boff\b|\bdid(?:n't| not) open all\b|\bto run\b|\bpulled the wrong\b|\bleft it (?:unlocked|live|on)\b/,
    not: /\b(?:not|isn't|aren't|no longer|never was)\b|\b(?:liquid|suction|discharge|gas|vapou?r) lines?\b|\b(?:coffee|car|van|attic|roof|day|today|sun|weather|air|water|iron|food|lunch|truck|phone|drill|house|kitchen|room|it is hot (?:out|in|up))\b/,
  },
  {
    // Power that is given, in slang.
    trouble: 'power',
    words:
      /\b(?:appl(?:y|ied|ying) (?:the )?power|power applied|about to put power|ignition|hit (?:it|her|them) with|put(?:ting)? (?:the )?power (?:to|on)|giv(?:e|ing|en) (?:it|her) (?:the )?(?:beans|juice|power)|let (?:it|her|him|'er) (?:eat|rip|run|go)|sent it|feed is back|back in business|pulling \w+(?: \w+)? amps|start(?:ed|ing|s)? (?:it|her|the (?:compressor|unit|system|fan|motor)|right)? ?(?:back )?up|started the|crank(?:ed|ing)|fired (?:right )?(?:off|up)|blipped|bumped (?:it|the)|brought (?:it|her) (?:up|online)|(?:compressor|motor|fan) (?:is )?(?:just )?(?:bumped|grunt\w*|trying|took off)|took off|(?:head|suction|discharge)(?: pressure)? (?:is )?(?:climbing|rising|building|dropping)|running great|(?:crankcase )?heater is getting|getting warm|neon|l e d|green light|ticker|non ?contact|touched (?:l|t) ?(?:one|two|1|2)|left it unlocked|sixty cycle|smells? like it is cooking)\b/,
    not: /\bby hand\b|\b(?:took off|pulled off) (?:the|a|my|his)\b|\btimer\b/,
  },
  {
    // A switch that may be closed, or was never all open.
    trouble: 'power',
    words:
      /\b(?:handle|block|pull ?out|plug|fuses?|cartridge) (?:is |are )?(?:back )?(?:up|in|on)\b|\b(?:pushed|put|threw|moved|flipped|rolled|shoved|set|slid) (?:the |that )?(?:handle|block|breaker|fuse block|pull ?out|fuses?)(?: right)? (?:back )?(?:up|in|on|to on)\b|\bmade the breaker\b|\bclos(?:ed|ing) (?:it|the disconnect|the breaker|the switch|in)\b|\bre ?-?fused\b|\bfresh fuses\b|\b(?:only|just) (?:killed|opened|got|breaks|opens|pulled) (?:one|half|a)\b|\b(?:one|a) (?:leg|pole|side|blade) (?:is )?(?:still |stuck )?(?:in|made|closed|stuck|hot|live)\b|\b(?:blade|jaw) is stuck\b|\bpulled (?:it |out )?(?:was )?only half\b|\bonly half\b/,
    not: /\b(?:panel|cover|door|lid|cabinet)\b/,
  },
  {
    // A lock that is none.
    trouble: 'power',
    words:
      /\b(?:lock|lockout|padlock|hasp)\b.*\b(?:never|popped|not (?:on|through|there|closed|mine)|isn't|wasn't|no longer|now it is off|fell|came|open)\b|\b(?:couldn't|could not|can't|cannot|didn't) (?:get|put|find) (?:the |my |a )?lock\b|\bno longer locked\b|\b(?:just|only) taped\b|\btape only\b|\b(?:someone|somebody|he|she|they|customer|owner|helper) (?:has|took|got|have) (?:my |the )?key\b|\bleft it (?:live|unlocked|on|hot)\b|\bnever was (?:dead|off|locked)\b/,
  },
  {
    // Somebody who works at a supply.
    trouble: 'power',
    words:
      /\b(?:guy|man|electrician|somebody|someone|person|people|crew|helper|apprentice|landlord|maintenance|he|she|they)\b.*\b(?:at|in|on|by|near) the (?:panel|breakers?|breaker box|fuse box|electrical (?:room|closet)|switch ?gear|disconnect)\b|\block(?:ed)? (?:out )?unit \w+ not\b|\b(?:isn't|is not) the (?:disconnect|breaker|switch|unit)\b/,
  },
  {
    // Somebody at a conductor, or held by it.
    trouble: 'person',
    words:
      /\b(?:buzz(?:ed)? (?:in|up) my|tickled?\b.*\b(?:by|me|it)|got (?:popped|nailed|tickled|lit up|zapped|shocked|hit|across|between|a (?:tingle|tickle|jolt|shock))|gets? (?:zapped|shocked)|getting shocked|took a hit|bit (?:by|me)|lit me up|threw me|can't let go|won't let go|could not let go|(?:he|she|helper|apprentice|customer|man) is down|shaking from|touched (?:a |something |the )?(?:hot|live)|brushed (?:a |the )?(?:hot|live)|heart is racing|yelled|touched it and jumped|stuck (?:his|her|their) (?:hand|finger)|hurt my|burned my|blew up)\b/,
    not: /\b(?:last (?:guy|tech|fellow|one)|years? ago|yesterday|last (?:week|year|month|summer))\b/,
  },
  {
    // A number that was none, and a meter that could not measure it.
    trouble: 'proof',
    words:
      /\b(?:those|these|that|the) (?:zeros?|numbers?|readings?) (?:are|is|was|were|wasn't|weren't) (?:no good|bad|wrong|not|fake|junk|from|on the other)\b|\b(?:measured|probed|checked|read) (?:\w+ )?(?:the |at the )?wrong\b|\bmeter (?:was not|wasn't|isn't|is not) (?:working|right)\b|\bthose were (?:from|on)\b|\b(?:was not|wasn't) (?:a )?zero\b|\bmeter (?:was )?(?:set )?(?:on|to) (?:d c|dc|ohms|amps|the wrong)\b.*\b(?:whole time|all along|before|then)\b|\bhad the meter on\b|\blead (?:was|is) (?:out|off|loose|broken)\b|\bsomething on the meter\b/,
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
    // The two voltages of a supply, told in passing.
    trouble: 'power',
    words:
      /\b(?:got|getting|have|see|seeing|reads?|reading|shows|showing|the|floating at|meter)\b.*\b(?:two forty|two thirty|two oh eight|one twenty|one fifteen|one eighteen|twenty four|forty|240|230|208|120)\b|\b(?:two forty|one twenty|240|120) (?:on|across|to ground|between|at|here)\b/,
    not: /\b(?:air|degrees?|suction|liquid|gauges?|psi|pressure|superheat|subcooling|amps?|ohms?|microfarads?|mikes|coil|percent|plate|nameplate|source|invoice|number|model|serial|charge|quoted|proves?|known|hours?|minutes?|part|order|dual|over five)\b/,
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
    not: /\bfilter\b|\b(?:set|put|switched|turned|turning|setting) the meter (?:to|on|off|back)\b|\bfresh batter|\bin the bag\b/,
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
  /\b(?:used to|all last week|last (?:night|week|month|year|summer|time|fall|winter|spring|tech|guy|fellow|company)|(?:on )?(?:tuesday|monday|wednesday|thursday|friday|saturday|sunday)|(?:was|were) .*\b(?:before|earlier)\b|before (?:lunch|noon|i (?:came|got))|years? ago|during the storm|yesterday|this morning|earlier today|the other day|before (?:i|we|he|she|they) (?:\w+ )?(?:turn|turned|shut|switch|switched|pull|pulled|lock|locked|kill|killed|start|power|energi[sz]e)(?: (?:it|that|this|them|the \w+))?(?: (?:on|off|back on))?|when (?:i|we) (?:got|came|arrived)|until (?:i|we))\b/;
/** Something is so now: speech has no commas, and what is there may follow in the same breath. */
const NOW = /\b(?:now|again|just|still|back|on|is|are|it's|that's|there's|she's|he's|they're)\b/;
/** What runs, hums or is fed there is no part of this unit. */
const ELSEWHERE =
  /\b(?:neighbou?r(?:'s|s)?|next door|van|truck|radio|phone|refrigerator|fridge|freezer|elevator|pool|sprinkler|hose|ceiling fan|lawn|mower|my (?:van|truck|tablet|drill)|bees?|wasps?|dog|kitchen|exhaust|dryer vent|washing machine|television|in the house|in the shed|on the roof)\b/;
/** But it may feed or be taken for it. */
const CONCERNS_US =
  /\b(?:breaker|disconnect|panel|lock|feeding|feeds|our|this unit|so is|killed|wrong|meter|transfer)\b/;

/** That nobody was: "almost" is no denial. */
const NOBODY_HURT =
  /\b(?:didn't|did not|haven't|hasn't|wasn't|nobody|no one|never|not) (?:\w+ ){0,2}(?:get |got |been |was )?(?:shocked|zapped|hurt|bit|bitten|electrocuted|electrified|jolt)\b/;

/** Whether the words say that nobody was hurt, and nothing else of a person. */
export function deniesInjury(heard: string): boolean {
  const words = heard.toLowerCase();
  return (
    NOBODY_HURT.test(words) &&
    !/\b(?:but|almost|nearly|still|except|besides|only|burn\w*|tingl\w*|numb|my (?:hand|arm|finger)s?|(?:he|she) (?:did|was|is|got))\b/.test(
      words,
    )
  );
}

/** Whether a statement tells of something that is no part of this unit. */
export function isElsewhere(statement: string): boolean {
  return ELSEWHERE.test(statement) && !CONCERNS_US.test(statement);
}

/** "Hot out here": the day, and no conductor. */
const WEATHER =
  /\bi(?:'m| am) (?:so |really |damn )?hot\b|\bhot (?:out here|out|outside|day|today|up here|in here|here|one|summer|weather|sun|attic|as (?:hell|blazes|an oven))(?: (?:up|out|in) (?:here|there))?\b|\bburning up out\b|\b(?:rain|storm|clouds?|wind|front) is (?:coming|moving|rolling|blowing) (?:in|on|up)\b|\b(?:weather|attic|roof|sun) is (?:so |really |damn )?hot\b/g;

/** Whether all of a statement is of another time. */
export function isOfAnotherTime(statement: string): boolean {
  return ANOTHER_TIME.test(statement) && !NOW.test(statement.replace(ANOTHER_TIME, ''));
}

/** Nobody at a supply: what is told beside it counts. */
const NOBODY_THERE =
  /\b(?:nobody|no one)(?: is|'s| was)? (?:at|in|near|by|around) the (?:\w+ )?(?:panel|breakers?|breaker box|box|disconnect|switch)\b/g;

/** The words but for the weather and for who was not hurt or not there: what stands beside them counts. */
export function withoutHarmless(words: string): string {
  return words.replace(WEATHER, '').replace(NOBODY_HURT, '').replace(NOBODY_THERE, '');
}

/** "If", "should I": nothing was done, nothing is so. */
const ONLY_MEANT =
  /\b(?:if (?:i|it|we|you|the)|should i|shall i|can i|could i|do i|will i|going to|gonna|about to|need to|want to|have to|would|supposed to|make sure|don't want)\b/;

/** Of what is to come, or is not to be: "don't turn it on yet", "I'll turn it on when I'm done", "if I put power on". */
const NOT_YET =
  /\b(?:(?:don't|do not|won't|will not|not going to|should i|should we|shall i|can i|can we|when (?:do|should|can) (?:i|we)) (?:you |even )?(?:turn|put|switch|throw|flip|power|start|energi[sz]e)|(?:i'll|we'll|he'll|she'll|they'll|will) (?:\w+ )?(?:turn|put|power|switch|throw|flip|start|energi[sz]e)|if (?:i|we|you) (?:put|turn|switch|power)|when (?:i|we) (?:turn|put|power|switch|flip)|should (?:be )?read|supposed to (?:be|read)|(?:spec|data|cut) sheet|nobody (?:turned|flipped|touched)|once it(?:'s| is)|after (?:i|we)|when (?:i'm|i am|we're|we are) done|wants? it (?:back )?on|did it (?:run|start|come)|no lights?)\b/;

/** Whether a statement is of what is yet to come, and nothing of now stands beside it. */
export function isNotYet(statement: string): boolean {
  return NOT_YET.test(statement) && !/\b(?:now|already|just|still)\b(?! (?:as|when|yet))/.test(statement);
}

/** What of their words can be trouble, whatever the whole was to say. */
export function troublesIn(heard: string): ReadonlySet<Trouble> {
  return new Set(speltOut(heard).flatMap((words) => [...troublesOf(words)]));
}

function troublesOf(words: string): readonly Trouble[] {
  return withoutHarmless(words)
    .split(/[,;.]|\b(?:and|then|but|so)\b/)
    .map((one) => one.trim())
    .filter(
      (one) =>
        !isOfAnotherTime(one) && !isElsewhere(one) && !isNotYet(one) && !(ONLY_MEANT.test(one) && !NOW.test(one)),
    )
    .flatMap((one) => SIGNS.filter(({ words: sign, not }) => sign.test(one) && not?.test(one) !== true))
    .map(({ trouble }) => trouble);
}
