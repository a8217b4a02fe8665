/** A fuse or breaker of which the size was told in words that are no phrase: "fuses are sixties", "a pair of thirty fives". */
export interface ToldOvercurrent {
  readonly part: 'fuse' | 'breaker';
  readonly amps: number;
}

const TENS: Readonly<Record<string, number>> = {
  fifteen: 15,
  twent: 20,
  thirt: 30,
  fort: 40,
  fift: 50,
  sixt: 60,
  sevent: 70,
  eight: 80,
  ninet: 90,
};
const SIZE =
  /\b(?:(fifteen)s?|(twent|thirt|fort|fift|sixt|sevent|eight|ninet)(?:y|ies)(?:[ -]?fives?)?|(?:one |a )?hundreds?|([1-9]\d{1,2})(?:s|a)?)\b/;
/** Sizes in which they are made (NEC 240.6 from memory, to what such units take); a number that is none of them is no size. */
const MADE = [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150];
/** What says that it is in, or is being put in. */
const IS_IN =
  /\b(?:put|putting|stuck|install(?:ed|ing)?|fit(?:ted|ting)?|threw|slapped|popped|dropped|running|using|used|got|has|have|are|is|went (?:to|with|up)|upsized|replaced|swapped|changed)\b/;
/** What is not there, or only spoken of. */
const NOT_IN =
  /\b(?:not|n't|should|need|needs|want|wants|were|was|had|took|take|blown|blew|calls? for|max|maximum|plate|says|volts?|no)\b/;

/** The size of a fuse or breaker that is in, where the words tell one. Tried on words that were not understood. */
export function overcurrentTold(heard: string): ToldOvercurrent | undefined {
  const statements = heard
    .toLowerCase()
    .replace(OF_PLATE, ' ')
    .split(/[,;.]|\b(?:and|then|but|so)\b/);
  for (const told of statements) {
    const part = /\bfuses?\b/.test(told) ? 'fuse' : /\bbreakers?\b/.test(told) ? 'breaker' : undefined;
    const amps = part === undefined ? undefined : sizeIn(told);
    if (part !== undefined && amps !== undefined && IS_IN.test(told) && !NOT_IN.test(told)) return { part, amps };
  }
  return undefined;
}

/** What the plate allows, told beside what is in. */
const OF_PLATE =
  /\b(?:the |its |and |but )*(?:name ?plate|plate|sticker|label) (?:says|calls for|wants|allows|max(?:imum)?(?: is)?) \w+(?: amps?)?/g;

/** Of two sizes the larger: one may be what came out. */
function sizeIn(told: string): number | undefined {
  const sizes = [...told.matchAll(new RegExp(SIZE, 'g'))].map(ampsOf).filter((amps) => MADE.includes(amps));
  return sizes.length === 0 ? undefined : Math.max(...sizes);
}

function ampsOf([whole, fifteen, tens, digits]: RegExpMatchArray): number {
  if (digits !== undefined) return Number(digits);
  if (tens !== undefined) return TENS[tens]! + (/fives?$/.test(whole) ? 5 : 0);
  return fifteen !== undefined ? 15 : 100;
}
