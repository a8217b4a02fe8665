import type { NameplateFieldId } from '../vocabulary/nameplate.ts';
import type { Rules } from './expression.ts';
import type { PlateMarks } from './plate-mark.ts';
import type { Sentences } from './sentences.ts';

/**
 * One language of the visit: what may be said in it, and all that matcher and composers must know of its words. What is
 * meant (tags, meanings, units, points) is the same in each. English stands in `languages/english`.
 */
export interface Language {
  /** BCP 47. */
  readonly id: string;
  /** Everything that may be said in one breath, in the order this language says it; the whole is `utterance`. */
  readonly rules: Rules;
  readonly numbers: NumberWords;
  readonly words: CommonWords;
  readonly writing: Writing;
  /** Lines of a word and what sounds near it, "word near:12 other:40": distances in hundredths. Empty where unknown. */
  readonly near: string;
  /** For "did you mean …?". */
  readonly sentences: Sentences;
  /** Finds model and serial number as they are written or spelt; left out where the language has no rule for it. */
  readonly readPlateMarks?: (text: string, asked: readonly NameplateFieldId[]) => PlateMarks | undefined;
}

/**
 * How a number was said; it decides whether it has a teen/ty twin and how it is read back. `pointless`: with its point
 * left out, so that it is always asked.
 */
export type NumberForm = 'cardinal' | 'pair' | 'digits' | 'slang' | 'numeral' | 'pointless';

export interface SpokenNumber {
  readonly value: number;
  readonly form: NumberForm;
}

/** Number words and what they are worth in the order that the language says them. */
export interface NumberWords {
  /** Every word that may stand in a number and changes it: never repaired, supplied or passed over. */
  readonly all: ReadonlySet<string>;
  /** Digits said one by one, zeros too. */
  readonly digits: ReadonlySet<string>;
  /** Zeros that no longer number begins with behind a digit. */
  readonly naughts: ReadonlySet<string>;
  /** Zeros that are the name of a letter as well. */
  readonly letters: ReadonlySet<string>;
  /** Before the decimals, the usual word first. */
  readonly points: readonly [string, ...string[]];
  readonly minus: ReadonlySet<string>;
  /** Words that a number may have lost and still be a number, with what joined them. */
  readonly losable: readonly (readonly string[])[];
  /** Digits that end the name of a place ("leg one"): the first digit of the number behind it may have run into one. */
  readonly ofPlaces: ReadonlySet<string>;
  /** Joins the parts of a number; left out where nothing does. */
  readonly and?: string;
  /** The value of number words, or undefined where they are not one number. */
  readonly read: (words: readonly string[]) => SpokenNumber | undefined;
  /** Whether the words beside a number in digits make it negative. */
  readonly negates: (words: readonly string[]) => boolean;
  /** Number words that a numeral may stand for within a name: 1 of "L1". */
  readonly wordsFor: (numeral: number) => readonly string[];
  /** The value that the same words would have with one sound misheard ("fifteen", "fifty"); undefined without such. */
  readonly twin: (words: readonly string[]) => number | undefined;
  readonly twinOfNumeral: (value: number) => number | undefined;
}

/** Words by what they do to a sentence. */
export interface CommonWords {
  /** Say nothing, cost little, change nothing. */
  readonly fillers: ReadonlySet<string>;
  /** Sounds of thinking. */
  readonly hesitations: ReadonlySet<string>;
  /** Without these a sentence says another thing: repair neither passes over them nor makes one of another word. */
  readonly turning: ReadonlySet<string>;
  /** Words that name a unit, also units that nothing is measured in. */
  readonly units: ReadonlySet<string>;
  /** Units in the form that rates a part ("a thirty amp breaker") and reads nothing. */
  readonly ratings?: ReadonlySet<string>;
  /** A word that speaks of ohms. */
  readonly ohms: RegExp;
  /** Words that sound like one of the grammar, taken without a question. */
  readonly homophones: Readonly<Record<string, readonly string[]>>;
  /** Homophones that link more often than they count: as digits they are asked about. */
  readonly linking: ReadonlySet<string>;
  /** Before these a linking word links: it is no digit. */
  readonly linkedTo?: ReadonlySet<string>;
  /** The plural of a singular and the other way round, for a word that the grammar has in the other only. */
  readonly otherNumber?: (word: string) => string;
  /** The glued end of a word that is short for a function word, or for nothing ("compressor's"). */
  readonly ending?: string;
  /** Function words that are easily swallowed, with what it costs to supply one. */
  readonly swallowed: ReadonlyMap<string, number>;
  /** Between two things that were said. */
  readonly joining: ReadonlySet<string>;
  /** Behind a value they end it: the place behind them is the next one ("zero, now leg two"). */
  readonly parting?: ReadonlySet<string>;
  /** Joins a remark to what was said before it; no part of its words. */
  readonly remarks: ReadonlySet<string>;
  /** Passed over at the end, they call for a word behind them. */
  readonly calling: ReadonlySet<string>;
  /** Passed over right before one of `placeless`, they belonged to a place that was lost. */
  readonly articles?: ReadonlySet<string>;
  readonly placeless?: ReadonlySet<string>;
  /** May stand between a filler and the number it belongs to. */
  readonly about: ReadonlySet<string>;
  /** What begins so belongs to what was said before it. */
  readonly belonging: ReadonlySet<string>;
  /** Before dictated words they are a part of the heading ("signs off"). */
  readonly headings: ReadonlySet<string>;
}

/** How heard or typed text comes to words. */
export interface Writing {
  /** Signs and the words that are said for them, or the signs they are the same as. */
  readonly signs: Readonly<Record<string, string>>;
  /** Words that are one word where these stand: "no one pulled" names no number. */
  readonly oneWord?: readonly { readonly words: RegExp; readonly as: string }[];
  /** What is glued to a typed number, as it is said. */
  readonly suffixes: Readonly<Record<string, readonly string[]>>;
  /** Marks written as one word and said letter by letter. */
  readonly spelled: Readonly<Record<string, string>>;
  /** Refrigerants (ASHRAE 34) as they are said. */
  readonly refrigerants: Readonly<Record<string, string>>;
  /** A stroke between numbers and between letters, as it is said. */
  readonly stroke: { readonly numbers: string; readonly letters: string };
  /** An utterance that opens with a denial for itself. */
  readonly denial: RegExp;
  /** An utterance that is a note, however long. */
  readonly note: RegExp;
  /** A letter that the language writes. */
  readonly letter: RegExp;
}
