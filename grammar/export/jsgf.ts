import { fitOf } from '../phrases/compose/fit.ts';
import { alternative, type Expression, optional, type Rules, rule, sequence, word } from '../phrases/expression.ts';
import type { Expectation } from '../phrases/meaning.ts';
import { pattern } from '../phrases/pattern.ts';
import { ANSWERS } from '../vocabulary/answers.ts';
import { MEASURANDS } from '../vocabulary/measurands.ts';
import { bareUnitOf, type UnitChoice, USUAL_CHOICE } from '../vocabulary/unit-choice.ts';
import { namesOf, sameReading } from './measurand-names.ts';
import { NARROWED_RULES } from './narrowed-rules.ts';
import { plateAnswers } from './plate-answers.ts';
import { reachedRules } from './reached-rules.ts';
import { bareValueFor, firstGroups, groupedRows, readingOf, valueFirst } from './said-readings.ts';
import { TIGHT_NUMBERS } from './tight-rules.ts';

export interface JsgfOptions {
  /**
   * `expected`: the expected readings, bare values for them, orders and reports of switches; small, so that it is made
   * and decoded fast. `all`: every reading, report, nameplate line, part and wire as well. `commands`: orders and
   * reports only.
   */
  readonly scope: 'expected' | 'all' | 'commands';
}

/** Rules of the wide grammar that the recogniser takes over, their numbers narrowed. */
const ORDERS = ['order', 'skip-to', 'correction', 'injury', 'note-opening', 'switch', 'check-on-me'] as const;
const REPORTS = ['placeless', 'recall', 'meter-proof', 'absence', 'discharged', 'observation', 'job-item'] as const;
const DONE = ['moved-narrow', 'cover-narrow', 'deed'] as const;
const RECORDS = [
  'nameplate',
  'nameplate-pair',
  'nameplate-choice',
  'target-read',
  'refrigerant-system',
  'part',
  'work',
  'wire',
  'mass',
  'tons',
  'vacuum',
  'together',
  'none',
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
  const rules: Record<string, Expression> = { ...NARROWED_RULES, ...TIGHT_NUMBERS, ...numbersIn(expectation?.units) };
  const tops: string[] = [];
  const add = (name: string, expression: Expression): void => {
    rules[name] = expression;
    tops.push(name);
  };

  if (options.scope !== 'commands') {
    if (expectation?.plate?.[0] !== undefined) add('asked-of-plate', plateAnswers(expectation.plate));
    if (expectation?.answers?.[0] !== undefined) add('in-a-word', shortAnswers(expectation.answers));
    if (expectation?.question === 'which-switch') tops.push('switch-place');
    if (expectation?.placeless !== undefined) add('where-read', whereRead(expectation.placeless, expectation.units));
    if (expectation?.question === 'teen-or-ty') add('answer', pattern('$n-digit $n-digit [$n-digit]'));
    (expectation?.readings ?? []).forEach((one, index) => {
      const rows = MEASURANDS.filter((row) => sameReading(row, one));
      rows.forEach((row, variant) => {
        add(`expected-${index}-${variant}`, readingOf([row]));
        if (row.say !== undefined) add(`first-${index}-${variant}`, valueFirst([row]));
        if (expectation?.readings.length === 1 || expectation?.question === 'what-value')
          add(`value-${index}-${variant}`, bareValueFor(row));
      });
    });
  }
  if (options.scope === 'all') {
    groupedRows().forEach((rows, index) => {
      add(`reading-${index}`, readingOf(rows));
    });
    firstGroups().forEach((rows, index) => {
      add(`first-${index}`, valueFirst(rows));
    });
  }
  tops.push(...ORDERS);
  if (options.scope !== 'expected') tops.push(...REPORTS);
  if (options.scope === 'all') tops.push(...RECORDS);
  rules['utterance'] = alternative(...tops.map(rule));
  return print(rules, 'utterance');
}

/** What may be answered in a word, by the answers that say something there. */
function shortAnswers(meant: NonNullable<Expectation['answers']>): Expression {
  const ids = new Set(meant.map(({ answer }) => answer));
  return alternative(...ANSWERS.filter(({ id }) => ids.has(id)).map(({ say }) => pattern(say)));
}

/** The places at which a value is commonly read. */
function whereRead({ value, unit }: NonNullable<Expectation['placeless']>, units: UnitChoice | undefined): Expression {
  return namesOf(
    MEASURANDS.filter((row) => row.rare !== true && fitOf(row, value, unit ?? bareUnitOf(row, units)) === 'likely'),
  );
}

/** Where pressures are read in kilopascals their numbers have a digit more. */
function numbersIn(units: UnitChoice = USUAL_CHOICE): Rules {
  if (units.pressure !== 'kPa') return {};
  return {
    'to-699': sequence(optional(word('minus')), rule('to-9999')),
    'n-plate': alternative(NARROWED_RULES['n-plate']!, rule('to-9999')),
  };
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
