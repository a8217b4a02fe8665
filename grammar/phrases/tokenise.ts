import type { Language, Writing } from './language.ts';

/** What of a language tells its words apart; its rules are no part of it. */
export type WrittenLanguage = Pick<Language, 'writing' | 'words' | 'numbers'>;

/** One word of what was heard. `numeral` is set where it was written in digits. */
export interface HeardWord {
  readonly text: string;
  readonly numeral?: number;
  /** A comma stands behind it. Kept of a "no" alone, that is said for itself then. */
  readonly pause?: true;
  /** A comma or a full stop stands behind it. */
  readonly stop?: true;
}

/** Terminal marks written in one: "L1", "T2", "R-C". */
const TERMINAL = /^([a-z])([12])$/;

/**
 * Splits heard or typed text into words in small letters: punctuation dropped, digits kept as numerals ("118.5",
 * "1,180", "-2"), units and terminal marks taken apart ("118V" → 118, volts; "L1" → l, 1).
 */
export function tokenise(text: string, language: WrittenLanguage): HeardWord[] {
  const { writing } = language;
  const joined = (writing.oneWord ?? []).reduce(
    (left, { words, as }) => left.replace(words, as),
    text.normalize('NFC').toLowerCase(),
  );
  const plain = joined
    .replace(signsOf(writing), (sign) => writing.signs[sign]!)
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    // A decimal comma, of two numbers alone: in a list, or with a space behind it, another number begins.
    .replace(/(?<![\d,.])(\d+),(\d{1,2})(?![\d,]|\.\d)/g, '$1.$2')
    .replace(/(\d)\s*\/\s*(?=\d)/g, `$1 ${writing.stroke.numbers} `)
    .replace(/([a-z])\s*[/]\s*(?=[a-z])/g, `$1 ${writing.stroke.letters} `)
    .replace(
      /\br[ -](\d{2,3}) ?([a-z])(?![\w.])/g,
      (mark, number, letter) => writing.refrigerants[`r${number}${letter}`] ?? mark,
    )
    .replace(/\b[a-z0-9]+(?:-\d+[a-z]?)?(?![\w.])/g, (mark) => writing.refrigerants[mark.replace('-', '')] ?? mark);
  const words: HeardWord[] = [];
  for (const found of plain.matchAll(
    /(?<=\d)'s(?![\p{L}\d])|-?\d+(?:\.\d+)?|-?\.\d+|[\p{L}\p{M}][\p{L}\p{M}']*\d?|[^\s\p{P}\p{S}\p{C}]+/gu,
  )) {
    const [piece] = found;
    addPiece(piece, words, writing, language.words.ending);
    const last = words.at(-1);
    if (last !== undefined && /^[,.;]\s/.test(plain.slice(found.index + piece.length)))
      words[words.length - 1] = { ...last, stop: true };
  }
  letterUnits(words, language);
  const [first] = words;
  if (first !== undefined && writing.denial.test(text)) words[0] = { ...first, pause: true };
  return words;
}

const patterns = new WeakMap<Writing, RegExp>();
/** The signs of a language as one pattern, made once. */
function signsOf(writing: Writing): RegExp {
  const made = patterns.get(writing) ?? new RegExp(Object.keys(writing.signs).join('|'), 'g');
  patterns.set(writing, made);
  return made;
}

function addPiece(piece: string, words: HeardWord[], writing: Writing, ending: string | undefined): void {
  if (piece === ending) {
    words.push({ text: piece });
    return;
  }
  const numeral = Number(piece);
  if (/^-?[\d.]+$/.test(piece) && Number.isFinite(numeral)) {
    words.push({ text: piece, numeral });
    return;
  }
  const terminal = TERMINAL.exec(piece);
  if (terminal) {
    words.push({ text: terminal[1]! }, { text: terminal[2]!, numeral: Number(terminal[2]) });
    return;
  }
  const suffix = words.at(-1)?.numeral === undefined ? undefined : writing.suffixes[piece];
  if (suffix !== undefined) words.push(...suffix.map((text) => ({ text })));
  else if (writing.spelled[piece] !== undefined)
    words.push(...writing.spelled[piece].split(' ').map((text) => ({ text })));
  else words.push({ text: piece.replace(/^'+|'+$/g, '') });
}

/**
 * A letter behind the words of a number, with nothing but "and" behind it, is a unit as it is behind digits: "sixty C".
 * In "R two C" the number is a word between two letters; "four ten A" is a refrigerant.
 */
function letterUnits(words: HeardWord[], { writing, numbers, words: common }: WrittenLanguage): void {
  const marks = Object.keys(writing.refrigerants).map((mark) => mark.replace(/^r/, ''));
  for (let at = words.length - 1; at > 0; at -= 1) {
    const [heard, before, two] = [words[at]!, words[at - 1]!, words[at - 2]];
    const letter = [heard.text, ...(common.homophones[heard.text] ?? [])].find((text) => text.length === 1);
    const ends = at === words.length - 1 || common.joining.has(words[at + 1]!.text);
    const suffix = letter !== undefined && ends && numbers.all.has(before.text) ? writing.suffixes[letter] : undefined;
    if (suffix === undefined || (two?.text.length === 1 && !numbers.all.has(two.text))) continue;
    const first = words.findLastIndex(({ text }, index) => index < at && !numbers.all.has(text)) + 1;
    const number = numbers.read(words.slice(first, at).map(({ text }) => text))?.value;
    if (marks.includes(`${number}${letter}`)) continue;
    words.splice(at, 1, ...suffix.map((text) => ({ text })));
  }
}
