import { alternative, type Expression, optional, type Rules, rule, sequence } from '../phrases/expression.ts';
import type { Expectation } from '../phrases/meaning.ts';
import { pattern } from '../phrases/pattern.ts';
import { MEASURANDS, type Measurand } from '../vocabulary/measurands.ts';
import { namesOf, sameReading, unitNamesOf } from './measurand-names.ts';
import { NARROWED_RULES, OPEN_WORDS } from './narrowed-rules.ts';
import { reachedRules } from './reached-rules.ts';
import { TIGHT_NUMBERS } from './tight-rules.ts';

export interface JsgfOptions {
  /**
   * `expected`: the expected readings, bare values for them, orders and reports of switches; small, so that it is made
   * and decoded fast. `all`: every reading, report, nameplate line, part and wire as well. `commands`: orders and
   * reports only.
   */
  readonly scope: 'expected' | 'all' | 'commands';
}

const TONE_WORDS = pattern('it beeps | shorted | dead short');
const LINK = pattern("is | reads | at | shows | reading | i've got | i have");
/** Rules of the wide grammar that the recogniser takes over, their numbers narrowed. */
const ORDERS = ['order', 'correction', 'injury', 'note-opening', 'switch', 'check-on-me'] as const;
const REPORTS = ['placeless', 'meter-proof', 'absence', 'discharged', 'observation', 'job-item'] as const;
const DONE = ['moved-narrow', 'cover-narrow', 'deed'] as const;
const RECORDS = [
  'nameplate',
  'nameplate-pair',
  'nameplate-choice',
  'part',
  'work',
  'wire',
  'mass',
  'pair',
  ...DONE,
] as const;

/**
 * A grammar for the offline recogniser (JSGF, W3C Note 5 June 2000), built for the moment: what is expected first.
 * Every sentence of it is understood by `understand` with the same expectation. Words that the recogniser's dictionary
 * lacks stand in `PRONUNCIATIONS`.
 *
 * @returns the text of a grammar whose public rule is `<utterance>`
 */
export function toJsgf(expectation: Expectation | undefined, options: JsgfOptions): string {
  const rules: Record<string, Expression> = { ...NARROWED_RULES, ...TIGHT_NUMBERS };
  const tops: string[] = [];
  const add = (name: string, expression: Expression): void => {
    rules[name] = expression;
    tops.push(name);
  };

  if (options.scope !== 'commands') {
    if (expectation?.question === 'teen-or-ty') add('answer', pattern('$n-digit $n-digit [$n-digit]'));
    (expectation?.readings ?? []).forEach((one, index) => {
      const rows = MEASURANDS.filter((row) => sameReading(row, one));
      rows.forEach((row, variant) => {
        add(`expected-${index}-${variant}`, readingOf([row]));
        if (expectation?.readings.length === 1) add(`value-${index}-${variant}`, valueFor(row));
      });
    });
  }
  if (options.scope === 'all') {
    grouped().forEach((rows, index) => {
      add(`reading-${index}`, readingOf(rows));
    });
  }
  tops.push(...ORDERS);
  if (options.scope !== 'expected') tops.push(...REPORTS);
  if (options.scope === 'all') tops.push(...RECORDS);
  rules['utterance'] = alternative(...tops.map(rule));
  return print(rules, 'utterance');
}

const valueFor = (row: Measurand): Expression => {
  const number = sequence(rule(row.shape), optional(unitNamesOf(row)));
  if (!row.open) return number;
  return row.quantity === 'resistance' ? alternative(number, OPEN_WORDS, TONE_WORDS) : alternative(number, OPEN_WORDS);
};

/** Readings that share shape of number and units share one network behind their names. */
const readingOf = (rows: readonly Measurand[]): Expression =>
  sequence(namesOf(rows), optional(LINK), valueFor(rows[0]!));

function grouped(): Measurand[][] {
  const groups = new Map<string, Measurand[]>();
  for (const row of MEASURANDS) {
    const key = `${row.shape} ${row.quantity} ${row.unit} ${row.open ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()];
}

/** The rules that `root` leads to, as JSGF text. */
function print(rules: Rules, root: string): string {
  const lines = reachedRules(rules, root).map(
    ([name, expression]) => `${name === root ? 'public ' : ''}<${name}> = ${written(expression)};`,
  );
  return `#JSGF V1.0;\ngrammar visit;\n${lines.join('\n')}\n`;
}

function written(expression: Expression): string {
  switch (expression.kind) {
    case 'word':
      return expression.word;
    case 'sequence':
      return expression.items
        .map((item) => (item.kind === 'alternative' ? `(${written(item)})` : written(item)))
        .join(' ');
    case 'alternative':
      return expression.items.map(written).join(' | ');
    case 'optional':
      return `[${written(expression.item)}]`;
    case 'repeat':
      return writtenRepeat(written(expression.item), expression.least, expression.most);
    case 'rule':
      return `<${expression.name}>`;
    case 'tag':
    case 'dictation':
      throw new Error(`a ${expression.kind} has no place in a recogniser's grammar`);
  }
}

function writtenRepeat(item: string, least: number, most: number | undefined): string {
  const needed = Array.from({ length: least }, () => `(${item})`).join(' ');
  if (most === undefined) return least === 0 ? `(${item})*` : `${needed} (${item})*`;
  let spare = '';
  for (let count = least; count < most; count += 1) spare = `[(${item})${spare === '' ? '' : ` ${spare}`}]`;
  return `${needed} ${spare}`.trim();
}
