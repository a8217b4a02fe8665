import type { NameplateFieldId } from '../../../vocabulary/nameplate.ts';
import type { PlateMark, PlateMarks } from '../../plate-mark.ts';
import { LEAST_SIGNS, SIGN_WORDS } from './rules/plate-rules.ts';
import { TEEN_WORDS, TENS_WORDS, UNIT_WORDS } from './words/number-words.ts';
import { NOTE } from './words/report-words.ts';

interface Piece {
  readonly text: string;
  /** A comma or a full stop stands behind it. */
  readonly ends: boolean;
}

/**
 * Finds the marks of a nameplate in a sentence: behind "model" and "serial", and alone where they are asked for.
 * Letters that are typed keep their case; letters that are spelt out are capitals.
 *
 * @param asked fields that are asked for now
 * @returns undefined where the sentence holds none
 */
export function readPlateMarks(text: string, asked: readonly NameplateFieldId[]): PlateMarks | undefined {
  if (DICTATED.test(text)) return undefined;
  const pieces = piecesOf(text);
  const marks: PlateMark[] = [];
  const rest: string[] = [];
  for (let at = 0; at < pieces.length; ) {
    const named = nameAt(pieces, at);
    const mark = named === undefined ? undefined : markAt(pieces, named.after);
    if (named === undefined || mark === undefined) {
      const piece = pieces[at]!;
      rest.push(piece.ends ? `${piece.text},` : piece.text);
      at += 1;
      continue;
    }
    while (rest.length > 0 && LEADS.test(rest.at(-1)!)) rest.pop();
    marks.push({ kind: 'nameplate', field: named.field, value: mark.value });
    at = mark.after;
  }
  if (marks.length === 0) return readAlone(pieces, asked);
  return { marks, rest: rest.join(' ').replace(/^((and|um|uh|okay|ok),?\s*)+/i, '') };
}

/** What is dictated is kept as it is, whatever it speaks of. */
const DICTATED = new RegExp(`^\\s*(${NOTE}|(i )?recommend)\\b`, 'i');
/** What may stand before "model": it belongs to the mark. */
const LEADS = /^(the|nameplate|plate|tag|says|reads|and|it's|is)$/i;
const NAMES: Readonly<Record<string, 'model' | 'serial'>> = { model: 'model', serial: 'serial' };
const BEHIND_NAME = /^(number|no|num|nr|is|reads|says|it's)$/i;

function piecesOf(text: string): readonly Piece[] {
  return text
    .split(/\s+/)
    .map((word) => ({ text: word.replace(/^["'(#]+|[,;:.!?"')]+$/g, ''), ends: /[,;.]["')]?$/.test(word) }))
    .filter((piece) => piece.text !== '');
}

function nameAt(pieces: readonly Piece[], at: number): { field: 'model' | 'serial'; after: number } | undefined {
  const field = NAMES[pieces[at]!.text.toLowerCase().replace(/['’]s$/, '')];
  if (field === undefined) return undefined;
  let after = at + 1;
  while (after < pieces.length && BEHIND_NAME.test(pieces[after]!.text)) after += 1;
  return { field, after };
}

/** Abbreviations of other fields, spelt out: they are not of the mark. */
const OTHER_FIELDS: readonly string[] = [
  'r l a',
  'l r a',
  'f l a',
  'm c a',
  'm o c p',
  'rla',
  'lra',
  'fla',
  'mca',
  'mocp',
];

function markAt(pieces: readonly Piece[], from: number): { value: string; after: number } | undefined {
  let value = '';
  let at = from;
  while (at < pieces.length && !beginsOther(pieces, at)) {
    const taken = signsAt(pieces, at);
    if (taken === undefined) break;
    value += taken.signs;
    at = taken.after;
    if (pieces[at - 1]!.ends && value.length >= LEAST_SIGNS) break;
  }
  const mark = value.replace(/^[-/.]+|[-/.]+$/g, '');
  return mark.length < LEAST_SIGNS || at === from ? undefined : { value: mark, after: at };
}

function beginsOther(pieces: readonly Piece[], at: number): boolean {
  const said = (count: number) =>
    pieces
      .slice(at, at + count)
      .map(({ text }) => text.toLowerCase())
      .join(' ');
  return [1, 3, 4].some((count) => OTHER_FIELDS.includes(said(count)));
}

/** The signs that a word stands for: a digit, a letter, "thirty six", or letters and digits as they are written. */
function signsAt(pieces: readonly Piece[], at: number): { signs: string; after: number } | undefined {
  const { text } = pieces[at]!;
  const word = text.toLowerCase();
  const tens = TENS_WORDS[word];
  const unit = UNIT_WORDS[pieces[at + 1]?.text.toLowerCase() ?? ''];
  if (tens !== undefined && unit !== undefined) return { signs: String(tens + unit), after: at + 2 };
  const number = tens ?? TEEN_WORDS[word];
  const signs = SIGN_WORDS[word] ?? (number === undefined ? undefined : String(number)) ?? written(text);
  return signs === undefined ? undefined : { signs, after: at + 1 };
}

function written(text: string): string | undefined {
  if (/^[a-z]$/i.test(text)) return text.toUpperCase();
  if (/^[-/]$/.test(text)) return text;
  const isMark = /^[a-z0-9][-a-z0-9/.]*$/i.test(text) && (/\d/.test(text) || /^[-A-Z0-9/.]+$/.test(text));
  return isMark ? text : undefined;
}

/** Without a name: only where it is asked for, and where it can be nothing else than a mark. */
function readAlone(pieces: readonly Piece[], asked: readonly NameplateFieldId[]): PlateMarks | undefined {
  const marks: PlateMark[] = [];
  let at = 0;
  for (const field of ['model', 'serial'] as const) {
    if (!asked.includes(field) || at >= pieces.length) continue;
    const mark = markAt(pieces, at);
    const fits = field === 'model' || asked.includes('model') ? MODEL : SERIAL;
    if (mark === undefined || !fits.test(mark.value) || REFRIGERANT.test(mark.value)) return undefined;
    marks.push({ kind: 'nameplate', field, value: mark.value });
    at = mark.after;
  }
  return marks.length > 0 && at === pieces.length ? { marks, rest: '' } : undefined;
}

/** Letters and digits; a number alone is rather a reading. */
const MODEL = /^(?=.*\d)(?=.*[a-z]).{5,}$/i;
const SERIAL = /^(?=.*\d).{5,}$/;
/** How refrigerants are written (ASHRAE Standard 34): a line of the plate of its own. */
const REFRIGERANT = /^R-?\d{2,3}[a-z]?$/i;
