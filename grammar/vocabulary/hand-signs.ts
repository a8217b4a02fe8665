import type { CoverId } from './covers.ts';
import type { DeedId } from './deeds.ts';
import type { PartId } from './parts.ts';
import { speltOut } from './spelt-out.ts';
import type { ZoneId } from './zones.ts';

const OFF = '(?:took|taken|take|taking|pulled|pulling|removed|removing|yanked)';

/**
 * What hands do where they may be hurt, by the words alone: for a sentence that was not understood as a whole. Tried on
 * words in small letters; the plain ways to say it, as the deeds, covers and parts have them.
 */
export const HAND_SIGNS: readonly {
  readonly words: RegExp;
  readonly tells:
    | { readonly type: 'deed'; readonly deed: DeedId }
    | { readonly type: 'cover'; readonly cover: CoverId; readonly state: 'off' }
    | { readonly type: 'part-moved'; readonly part: PartId; readonly to: 'out' };
  /** Where hands are by it, if not where they are by that deed alone. */
  readonly at?: readonly ZoneId[];
}[] = [
  {
    words:
      /\b(?:compressor|shell)\b(?:(?! not | isn't )[^,;.])*\b(?:hot|burning|scalding)\b|\bhands? on the (?:compressor|shell)\b/,
    tells: { type: 'deed', deed: 'shell-touched' },
  },
  {
    words:
      /\b(?:press|push|held|hold|forc|clos|pok|jamm|flick|bridg|mash|shov|jabb?|punch|tapp?|wedg|prodd?|squeez|bump|thumb|manually engag)(?:e|ed|ing|s)? (?:in |down |at |on )?(?:the |that |this |my )?(?:contactor|armature|plunger|contactor points)\b|\b(?:stuck|put|wedged|jammed|shoved|propped|used) (?:a |an |my |the |some )?(?:\w+ ){1,3}(?:in|on|into|under|against|to (?:push|hold|press)) (?:the |that )?(?:contactor|armature|plunger)\b/,
    tells: { type: 'deed', deed: 'contactor-pressed' },
  },
  {
    words:
      /\b(?:bypass|defeat|jump|jumper)(?:ed|ing)? (?:out )?(?:the |a |that |both )?(?:\w+ ){0,2}(?:switch|float|high pressure|low pressure|high side|low side|safety|safeties|limit|cutout)\b|\b(?:switch|cutout|safety|float|limit)\b.*\bout of (?:the )?(?:circuit|loop|line)\b|\b(?:nutted|twisted|tied|spliced|connected|wired|hooked) (?:the |both |those |two )*(?:\w+ ){0,3}(?:switch|cutout|float|limit|pressure)\b.*\btogether\b|\b(?:door|interlock|safety|float|pressure) switch (?:is |was )?(?:taped|tied|wedged|zip tied|jammed|held|strapped)\b|\b(?:taped|tied|wedged|zip tied|strapped) (?:down |up )?the (?:\w+ )?(?:door|interlock|float|pressure) switch\b/,
    tells: { type: 'deed', deed: 'switch-bypassed' },
  },
  {
    words:
      /\b(?:jump|jumper|bypass|defeat)(?:ed|ing)? (?:out )?(?:the |a |that |both )?(?:\w+ ){0,2}fuses?\b|\b(?:pennies|penny|coins?|foil|slugs?|nails?|copper|pipe|tubing|screwdriver|wire|jumper)\b.* (?:in|behind|across|around|over|for|instead of|where) (?:the |a |both )?(?:\w+ )?fuses?\b|\bfuses?\b.*\b(?:(?:wrapped )?(?:in|with) (?:tin ?)?foil|penny|slugs?|jumped|jumpered|bypassed)\b|\b(?:stuck|put|clipped|ran|shoved) (?:a |an |the |my )?(?:\w+ ){0,2}(?:jumper|wire|clip|lead)\b.* (?:across|on|over|around) (?:the |a )?(?:\w+ ){0,2}(?:switch|float)\b/,
    tells: { type: 'deed', deed: 'switch-bypassed' },
    at: ['outdoor-load'],
  },
  {
    words: new RegExp(`\\bterminal cover(?: is|'s)? off\\b|\\b${OFF} (?:off )?the terminal cover\\b`),
    tells: { type: 'cover', cover: 'compressor-terminals', state: 'off' },
  },
  ...(
    [
      ['contactor', 'contactor'],
      ['capacitor|cap', 'capacitor'],
      ['fan motor', 'fan-motor'],
      ['compressor', 'compressor'],
      ['transformer', 'transformer'],
    ] as const
  ).map(([name, part]) => ({
    words: new RegExp(`\\b${OFF} (?:out )?the (?:old )?(?:${name})\\b`),
    tells: { type: 'part-moved', part, to: 'out' } as const,
  })),
];

/** What hands or a tool do at conductors, in the trade's plain and rough words; looking and reading volts are none of it. */
const HANDLED =
  '(?:took|take|taking|taken|lifted|lifting|landed|landing|pulled|pulling|yanked|removed|removing|cut|cutting|clipped|unhooked|hooked|unplugged|plugged|disconnected|' +
  'reconnected|connected|loosened|loosening|tightened|tightening|undid|undone|unscrewed|unbolted|touched|touching|grabbed|poked|' +
  'jiggled|wiggled|bent|filed|burnished|sanded|stripped|crimped|spliced|soldered|unsoldered|swapped|swapping|replaced|replacing|' +
  'changed|changing|moved|moving|popped|twisted|mashed|shoved|jumpered out|ohmed|ohming|megged|megging|meggered|rang|ringing|shorted|shorting|(?:dead )?short across|discharged|' +
  'cleaned|cleaning|wiped|hands? (?:is |are )?(?:in|on|inside|at)|fingers? (?:in|on)|reached (?:in|into|inside)|checked continuity|checked resistance|ohms on|continuity (?:on|across)|' +
  'installed|installing|added|adding|bridged|jumped|jumpered|rewired|rewiring|blew|tied|put new|put (?:a |the )?new|stuck (?:a|the)|filed|capped|measured continuity|spun|took off|pulled off|poked|slapped in|fitted|fit|is open|are open|is off|are off|cover off)';

/** Where it is, by its names. Common practice; where a unit is built otherwise, its maker's word. */
const HANDLED_AT: readonly { readonly words: RegExp; readonly zone: ZoneId }[] = [
  {
    words:
      /\b(?:contactor|compressor|capacitors?|cap|condenser|condensing unit|fan motor|outdoor fan|hard start|start relay|lugs?|windings?|common|(?:brown|purple|orange|black|white|red|blue|yellow)(?: one| wire| lead)?|run terminal|start terminal|outdoor unit|control box|electrical (?:box|panel)|leads?|wires?|terminals?|fuses?|points|herm|spade|whip|terminal box|fan blade|fan guard|guard|blade|board|nuts?|coil|hard start kit|cover)\b/,
    zone: 'outdoor-load',
  },
  {
    words:
      /\b(?:disconnect (?:lugs?|line side|jaws?)|line side)\b|\b(?:lugs?|screws?|wires?)\b.*\b(?:disconnect|breaker)\b|\bdisconnect\b.*\boff the wall\b|\b(?:rewired|replaced|changed|swapped|moved) the (?:disconnect|breaker)\b|\bfuse\b/,
    zone: 'disconnect-line',
  },
  {
    words: /\b(?:blower(?: motor)?|transformer|sequencer|air handler|furnace|blower relay|door switch)\b/,
    zone: 'air-handler',
  },
  {
    words: /\b(?:thermostat(?: wires?)?|t ?stat|low voltage|control wires?|float|24 volt|twenty four volt)\b/,
    zone: 'control',
  },
];

/** Not done, not yet, or by nobody. */
const NOT_DONE =
  /\b(?:not|n't|didn'?t|haven'?t|hasn'?t|don'?t|won'?t|never|nobody|before i|about to|going to|will|should i|can i|do i|need to|have to|want to|gonna|if i|customer|owner|tenant|last guy|somebody|someone)\b/;

/** Terminals of the thermostat's circuit tied together, by their letters. */
const JUMPED =
  /\b(?:twisted|jumped|jumpered|tied|connected|touched|bridged|put|nutted) r (?:and|to|onto|with) [ycgw]\b/;

/** "and then": one statement ends and another begins. */
const STATEMENTS = /[,;.]|\b(?:and|then|but|so)\b/;

/**
 * The zones in which hands may have been by words that were not understood: each statement for itself; one that says it
 * was not done tells of none.
 */
export function zonesOfHands(heard: string): readonly ZoneId[] {
  if (JUMPED.test(heard.toLowerCase())) return ['control'];
  const told = speltOut(heard)
    .flatMap((words) => words.split(STATEMENTS))
    .filter((one) => new RegExp(`\\b${HANDLED}\\b`).test(one) && !NOT_DONE.test(one));
  const zones = told.flatMap((one) => {
    const named = HANDLED_AT.filter(({ words }) => words.test(one)).map(({ zone }) => zone);
    // Wires of a place that is named are there; a wire alone is taken for one of the outdoor unit.
    const inside = named.filter((zone) => zone !== 'outdoor-load');
    return /\b(?:wires?|leads?|terminals?|lugs?)\b/.test(one) && inside.length > 0 ? inside : named;
  });
  return [...new Set(zones)];
}
