import {
  alternative,
  type Expression,
  optional,
  type Rules,
  repeat,
  rule,
  sequence,
  tag,
} from '../../../grammar/phrases/expression.ts';
import type { Language, NumberWords, SpokenNumber } from '../../../grammar/phrases/language.ts';
import { pattern } from '../../../grammar/phrases/pattern.ts';
import { sentencesOf } from '../../../grammar/phrases/sentences.ts';
import type { FrameId, Tag } from '../../../grammar/phrases/tag.ts';
import { NUMERAL } from '../../../grammar/phrases/words.ts';

/**
 * A language that nobody speaks, invented here: units come before tens and tens before hundreds, the name of the unit
 * before its number, the place behind both. It says a little of what a visit understands.
 */
const ONES = ['nul', 'ba', 'de', 'ka', 'lo', 'mi', 'ne', 'pu', 'ri', 'sa'] as const;
const TENS = ONES.slice(1).map((one) => `${one}ton`);
const HUNDRED = 'mel';
const AND = 'u';
const POINT = 'kom';
const MINUS = 'min';

const digit = (word: string | undefined): number => (ONES as readonly (string | undefined)[]).indexOf(word);
const tens = (word: string | undefined): number => 10 * (TENS.indexOf(word ?? '') + 1);

/** "ri u baton u mel" 118: eight and ten and hundred. */
export function sayTovi(value: number): string {
  if (value < 0) return `${MINUS} ${sayTovi(-value)}`;
  const [whole = '0', decimals] = String(value).split('.');
  const [ones, ten, hundreds] = [...whole].reverse().map(Number);
  const parts = [
    ones === 0 && whole.length > 1 ? '' : ONES[ones!]!,
    ten ? TENS[ten - 1]! : '',
    hundreds === undefined ? '' : hundreds === 1 ? HUNDRED : `${ONES[hundreds]!} ${HUNDRED}`,
  ].filter(Boolean);
  const behind = decimals === undefined ? '' : ` ${POINT} ${[...decimals].map((one) => ONES[Number(one)]).join(' ')}`;
  return parts.join(` ${AND} `) + behind;
}

/** Values 0…999.99 with their sign; undefined for words in any other order. */
function readTovi(words: readonly string[]): SpokenNumber | undefined {
  if (words[0] === MINUS) {
    const number = readTovi(words.slice(1));
    return number && { ...number, value: -number.value };
  }
  const point = words.indexOf(POINT);
  const whole = readWhole(point < 0 ? words : words.slice(0, point));
  const decimals = point < 0 ? [] : words.slice(point + 1).map(digit);
  if (whole === undefined || decimals.includes(-1) || (point >= 0 && decimals.length === 0)) return undefined;
  return { value: decimals.length === 0 ? whole : Number(`${whole}.${decimals.join('')}`), form: 'cardinal' };
}

/** Each part is worth more than the one before it. */
function readWhole(words: readonly string[]): number | undefined {
  const parts = words.join(' ').split(` ${AND} `).map(partOf);
  const grows = parts.every((part, index) => part > 0 && rankOf(part) > rankOf(parts[index - 1] ?? 0));
  if (words.length === 1 && words[0] === ONES[0]) return 0;
  return grows ? parts.reduce((sum, part) => sum + part, 0) : undefined;
}

const rankOf = (part: number): number => String(part).length * Math.sign(part);

function partOf(said: string): number {
  const [first, second, third] = said.split(' ');
  if (third !== undefined) return -1;
  if (second === HUNDRED) return 100 * digit(first);
  if (second !== undefined) return -1;
  return first === HUNDRED ? 100 : tens(first) > 0 ? tens(first) : digit(first);
}

const anyOf = (words: readonly string[]): Expression => pattern(words.join(' | '));

export const TOVI_NUMBER_RULES: Rules = {
  ones: anyOf(ONES.slice(1)),
  digit: anyOf(ONES),
  tens: anyOf(TENS),
  hundreds: pattern(`[$ones] ${HUNDRED}`),
  whole: pattern(
    `${ONES[0]} | $ones [${AND} ($tens [${AND} $hundreds] | $hundreds)] | $tens [${AND} $hundreds] | $hundreds`,
  ),
  number: pattern(`[${MINUS}] ($whole [${POINT} $digit [$digit]] | ${NUMERAL})`),
};

const NUMBERS: NumberWords = {
  all: new Set([...ONES, ...TENS, HUNDRED, AND, POINT, MINUS]),
  digits: new Set(ONES),
  naughts: new Set([ONES[0]]),
  letters: new Set(),
  points: [POINT],
  minus: new Set([MINUS]),
  losable: [...TENS, HUNDRED].flatMap((part) => [
    [part, AND],
    [AND, part],
  ]),
  ofPlaces: new Set(['ba', 'de']),
  and: AND,
  read: readTovi,
  negates: (words) => words.includes(MINUS),
  wordsFor: (numeral) => (ONES[numeral] === undefined ? [] : [ONES[numeral]]),
  twin: () => undefined,
  twinOfNumeral: () => undefined,
};

/** Each with what it means. */
const rows = (...said: readonly (readonly [string, ...Tag[]])[]): Expression =>
  alternative(...said.map(([say, ...tags]) => sequence(pattern(say), ...tags.map(tag))));
const framed = (frame: FrameId, ...items: readonly Expression[]): Expression =>
  sequence(...items, tag({ tag: 'frame', frame }));

const TIPS = rows(
  ['linio ba', { tag: 'tip', points: ['L1'] }],
  ['linio de', { tag: 'tip', points: ['L2'] }],
  ['tero', { tag: 'tip', points: ['ground'] }],
  ['komuna de skatolo', { tag: 'tip', points: ['cap-C'] }],
  ['hermo', { tag: 'tip', points: ['cap-HERM'] }],
);
const VALUE = rule('value');
const NUMBER = sequence(tag({ tag: 'number', edge: 'begin' }), rule('number'), tag({ tag: 'number', edge: 'end' }));

const RULES: Rules = {
  ...TOVI_NUMBER_RULES,
  tip: TIPS,
  'unit-name': rows(
    ['volta', { tag: 'unit', unit: 'V', of: ['voltage'] }],
    ['ampo', { tag: 'unit', unit: 'A', of: ['current'] }],
    ['mikro', { tag: 'unit', unit: 'uF', of: ['capacitance'] }],
  ),
  // In digits the unit is written behind.
  value: alternative(sequence(optional(rule('unit-name')), rule('plain-value')), sequence(NUMBER, rule('unit-name'))),
  'plain-value': alternative(NUMBER, rows(['vakua', { tag: 'value', is: 'open' }])),
  reading: framed('reading', VALUE, rule('tip'), pattern('je'), rule('tip')),
  'bare-value': framed('value', VALUE),
  order: framed(
    'command',
    rows(['ripetu', { tag: 'command', command: 'say-again' }], ['kio sekva', { tag: 'command', command: 'what-next' }]),
  ),
  observation: framed('observation', rows(['vento halta', { tag: 'observation', observation: 'fan-not-turning' }])),
  note: framed(
    'note',
    pattern('skribu'),
    tag({ tag: 'dictated', edge: 'begin' }),
    { kind: 'dictation' },
    tag({ tag: 'dictated', edge: 'end' }),
  ),
  segment: alternative(rule('reading'), rule('observation'), rule('order'), rule('note')),
  utterance: alternative(repeat(sequence(optional(pattern('poste')), rule('segment')), 1), rule('bare-value')),
};

export const TOVI: Language = {
  id: 'x-tovi',
  rules: RULES,
  numbers: NUMBERS,
  words: {
    fillers: new Set(['nu']),
    hesitations: new Set(['em']),
    turning: new Set(['ne', 'volta', 'ampo', 'mikro', 'vato']),
    units: new Set(['volta', 'ampo', 'mikro', 'vato']),
    ohms: /^omo$/,
    homophones: { lino: ['linio'] },
    linking: new Set(),
    swallowed: new Map([['je', 1]]),
    joining: new Set(['poste']),
    remarks: new Set(['poste']),
    calling: new Set(['poste']),
    about: new Set(['cirke']),
    belonging: new Set(['je']),
    headings: new Set(),
  },
  writing: {
    signs: { '−': '-' },
    suffixes: { v: ['volta'] },
    spelled: {},
    refrigerants: {},
    stroke: { numbers: 'je', letters: 'je' },
    denial: /^\s*ne\s*[,;:.]/i,
    note: /^\s*skribu(?!\p{L})/iu,
    letter: /[a-zĉŝ]/i,
  },
  near: '',
  sentences: sentencesOf(['linio ba je tero …', 'kio sekva', 'vento halta']),
};
