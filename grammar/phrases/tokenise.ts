import { REFRIGERANT_MARKS, SPELLED } from '../vocabulary/homophones.ts';
import { POSSESSIVE } from './words.ts';

/** One word of what was heard. `numeral` is set where it was written in digits. */
export interface HeardWord {
  readonly text: string;
  readonly numeral?: number;
  /** A comma stands behind it. Kept of a "no" alone, that is said for itself then. */
  readonly pause?: true;
}

const SIGNS: Readonly<Record<string, string>> = {
  '°f': ' degrees fahrenheit ',
  '°c': ' degrees celsius ',
  '°': ' degrees ',
  ω: ' ohms ',
  µ: 'u',
  μ: 'u',
  '%': ' percent ',
  '½': ' and a half ',
  '¼': ' and a quarter ',
  '¾': ' and three quarters ',
  '−': '-',
  '–': ' - ',
  '—': ' - ',
  '’': "'",
  '‘': "'",
};
const SIGN = new RegExp(Object.keys(SIGNS).join('|'), 'g');

/** What is glued to a typed number, spelt as it is said. */
const SUFFIXES: Readonly<Record<string, readonly string[]>> = {
  v: ['volts'],
  vac: ['volts'],
  vdc: ['volts', 'd', 'c'],
  a: ['amps'],
  uf: ['microfarads'],
  mfd: ['microfarads'],
  f: ['fahrenheit'],
  c: ['celsius'],
  psi: ['psi'],
  psig: ['psi'],
  kpa: ['kilopascals'],
  pa: ['pascals'],
  bar: ['bar'],
  kg: ['kilograms'],
  k: ['k'],
  m: ['meg'],
  hz: ['hertz'],
  cfm: ['c', 'f', 'm'],
  mv: ['millivolts'],
  ma: ['milliamps'],
  oz: ['ounces'],
  lb: ['pounds'],
  lbs: ['pounds'],
  min: ['minutes'],
};

/** Terminal marks written in one: "L1", "T2", "R-C". */
const TERMINAL = /^([a-z])([12])$/;

/**
 * Splits heard or typed text into words in small letters: punctuation dropped, digits kept as numerals ("118.5",
 * "1,180", "-2"), units and terminal marks taken apart ("118V" → 118, volts; "L1" → l, 1).
 */
export function tokenise(text: string): HeardWord[] {
  const plain = text
    .normalize('NFC')
    .toLowerCase()
    .replace(SIGN, (sign) => SIGNS[sign]!)
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    .replace(/(\d)\s*\/\s*(?=\d)/g, '$1 over ')
    .replace(/([a-z])\s*[/]\s*(?=[a-z])/g, '$1 to ')
    .replace(/\b[a-z0-9]+(?:-\d+[a-z]?)?(?![\w.])/g, (mark) => REFRIGERANT_MARKS[mark.replace('-', '')] ?? mark);
  const words: HeardWord[] = [];
  for (const piece of plain.match(
    /(?<=\d)'s(?![\p{L}\d])|-?\d+(?:\.\d+)?|-?\.\d+|[\p{L}\p{M}][\p{L}\p{M}']*\d?|[^\s\p{P}\p{S}\p{C}]+/gu,
  ) ?? []) {
    addPiece(piece, words);
  }
  const [first] = words;
  if (first !== undefined && /^\s*(no|nope)\s*[,;:.]/i.test(text)) words[0] = { ...first, pause: true };
  return words;
}

function addPiece(piece: string, words: HeardWord[]): void {
  if (piece === POSSESSIVE) {
    words.push({ text: POSSESSIVE });
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
  const suffix = words.at(-1)?.numeral === undefined ? undefined : SUFFIXES[piece];
  if (suffix !== undefined) words.push(...suffix.map((text) => ({ text })));
  else if (SPELLED[piece] !== undefined) words.push(...SPELLED[piece].split(' ').map((text) => ({ text })));
  else words.push({ text: piece.replace(/^'+|'+$/g, '') });
}
