/**
 * The refrigerant circuit opened, vented, or filled with what explodes, word by word: for sentences that were not
 * understood as a whole. Each statement is tried by itself, in small letters.
 */

/** What cannot be taken out or put in without opening the circuit. */
const IN_CIRCUIT =
  '(?:t ?x v|tev|txv|e ?x v|expansion valve|metering (?:device|valve)|piston|orifice|cap(?:illary)? tube|distributor|(?:filter |liquid line )?dr[iy]er|compressor|accumulator|receiver|muffler|sight ?glass|(?:reversing|four way|service|king|check|solenoid) valve|(?:schrader|valve) cores?|schraders?|(?:evap(?:orator)?|condenser|indoor|outdoor|a) coil|(?:liquid|suction|discharge|vapou?r|gas) line|line ?set|flares?|flare nuts?|u ?bend|joints?)';
/** What is at these and is no part of the circuit: "the compressor lead". */
const BESIDE =
  '(?! (?:wires?|wiring|leads?|plugs?|terminals?|cover|cap|fuses?|contactor|relay|capacitor|insulation|clamp|sensor|bulb|probe|thermometer|temp(?:erature)?|pressure|fan|motor|is (?:cold|hot|warm|iced|frosted|sweating|fine|good|ok|okay)))';
const DONE =
  '(?:replaced|changed|swapped|installed|fitted|cut|unsweated|sweated|unbrazed|brazed|unsoldered|soldered|welded|pulled|took|taken|removed|opened|cracked|broke|loosened|unscrewed|undid|capped|pinched|patched|put|got)';
const SMALL_WORDS = '(?:(?:out|off|in|into|open|up|loose|back|the|a|an|that|this|both|old|new|my|on) )*';

const OPENED: readonly RegExp[] = [
  new RegExp(`\\b${DONE} ${SMALL_WORDS}${IN_CIRCUIT}\\b${BESIDE}`),
  new RegExp(
    `\\b${IN_CIRCUIT} (?:is |are |was |'s |has been )?(?:out|in now|changed|replaced|swapped|cut|open|brazed in|installed)\\b`,
  ),
  /\b(?:opened|broke|cracked)(?: up| into)? the (?:system|circuit|refrigerant (?:circuit|side|lines?|piping|tubing)|lines?)\b|\b(?:system|refrigerant (?:circuit|side)) is (?:wide )?open\b|\bsystem is open to (?:the )?(?:air|atmosphere)\b/,
];

const VENTED: readonly RegExp[] = [
  /\b(?:vented|venting|vents|dumped|dumping|released|releasing|bled|bleeding|blew|blowing|let|letting|purged|purging|burped|burping|lost|cut loose)(?: (?:off|out|all|go))* (?:the |all |its |my |that |rest |of |last |bit )*(?:charge|refrigerant|gas|freon|rest of it)\b/,
  /\b(?:vent|vented|venting|dump|dumped|dumping|bleed|bled|bleeding)\b.*\b(?:to|into) (?:the )?(?:air|atmosphere)\b/,
  /\b(?:charge|refrigerant|gas|freon) (?:is |was |went |got )?(?:out to (?:the )?(?:air|atmosphere)|into the air|vented|dumped|released|blown (?:off|out))\b/,
];

const EXPLODES: readonly RegExp[] = [/\b(?:oxygen|o two|acetylene|compressed air|shop air|air compressor|air tank)\b/];

const IN_VACUUM = '\\b(?:in|into|under|on) (?:a |the )?(?:deep )?vacuum\\b';
/** A winding is read to its shell while microns are told of: whatever else is said. */
const DOWN = '\\b(?:pulled|pulling) down\\b|\\bmicrons?\\b|\\bvacuum pump\\b';
const RUN_IN_VACUUM: readonly RegExp[] = [
  new RegExp(`\\b(?:started|starting|ran|run|running|bumped|fired|powered|kicked)\\b.*${IN_VACUUM}`),
];
const INSULATION_IN_VACUUM: readonly RegExp[] = [
  new RegExp(`\\b(?:megg?(?:ed|ered|ering|ing)?|megger|insulation|hi ?pot(?:ted)?)\\b.*(?:${IN_VACUUM}|${DOWN})`),
];

/** Denied, only meant, of another time, or asked. */
const NOT =
  /\b(?:no|not|never|without|didn't|haven't|hasn't|don't|won't|before|should|shall|can i|do i|did the|will|going to|gonna|need to|needs to|have to|want to|wants to|last (?:week|month|year|summer|time)|years? ago|used to|they|somebody|someone|previous)\b/;

/** What may have been done to the refrigerant circuit. */
export type CircuitTold = 'opened' | 'vented' | 'explodes' | 'run-in-vacuum' | 'insulation-in-vacuum';

const SIGNS: readonly { readonly told: CircuitTold; readonly words: readonly RegExp[] }[] = [
  { told: 'explodes', words: EXPLODES },
  { told: 'run-in-vacuum', words: RUN_IN_VACUUM },
  { told: 'insulation-in-vacuum', words: INSULATION_IN_VACUUM },
  { told: 'vented', words: VENTED },
  { told: 'opened', words: OPENED },
];

/** What the words can mean that was done to the circuit; the worst of it first. */
export function circuitTold(heard: string): readonly CircuitTold[] {
  const statements = heard
    .toLowerCase()
    .split(/[,;.]|\b(?:and|then|but|so)\b/)
    .filter((words) => !NOT.test(words));
  return SIGNS.filter(({ words }) => statements.some((one) => words.some((sign) => sign.test(one)))).map(
    ({ told }) => told,
  );
}
