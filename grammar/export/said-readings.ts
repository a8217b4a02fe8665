import { alternative, type Expression, optional, rule, sequence } from '../phrases/expression.ts';
import { pattern } from '../phrases/pattern.ts';
import { MEASURANDS, type Measurand } from '../vocabulary/measurands.ts';
import type { QuantityId } from '../vocabulary/quantities.ts';
import { contracted } from './contract.ts';
import { namesOf, ownNamesOf, unitNamesOf } from './measurand-names.ts';
import { OPEN_WORDS } from './narrowed-rules.ts';

const NOTHING = pattern('nothing | no (voltage | volts | power)');
const TONES = 'it beeps | shorted | dead short';
/** Beside a place: alone they could be of anything. */
const TONE_WORDS = pattern(`${TONES} | beeps | closed`);

/** What is measured, before its place. */
const MEASURED: Readonly<Partial<Record<QuantityId, string>>> = {
  voltage: '[the] (voltage | volts) (across | between | at | on | in | from | of) [the]',
  current: '[the] [running] (amps | amperage | current | amp draw) (on | of | at) [the]',
  resistance: '(ohms | resistance) (across | between | on | of)',
  temperature: '[the] (temperature | temp) (of | at | on) [the]',
  capacitance: '[the] capacitance (of | on) [the]',
  pressure: '[the] pressure (of | on) [the]',
};

/** Between a place and its value. */
const LINK =
  "is [still | only] [at | got | reading | showing | getting | running [at] | (sitting | hanging) [at] | holding [steady] at | (up | down) (at | to) | coming [in [at]]] | has | reads | at | shows | reading | showing | getting | got | still | (sitting | holding) at | tested [at] | tests [at] | (climbed | dropped | came down | came up) to | came in at | i've got | i have | i'm getting | it's | are";
/** Verbs that only one quantity has. */
const VERBS: Readonly<Partial<Record<QuantityId, string>>> = {
  // "Pulling nine" alone sounds like "point nine".
  current: 'is [still | only] (pulling | drawing | taking) | drawing | draws',
  voltage: 'is (putting out | dropping)',
  resistance: 'out at | is good | ohms out at',
  vacuum: 'is down to | is (holding | steady) at | down to | pulled down to | rose to',
};
/** Before a value, its place behind it. */
const LEAD =
  "[still] (i've | we've) got | (i | we) have | i (got | get | see | read) | [i'm | we're] [still] (getting | seeing | showing | reading) | i'm at | got | still | there's | it's | call it | coming in [at] | [the] meter (says | shows | reads)";
const BEHIND = '(on | at | across | from | of | in) [the]';

/**
 * Around a number, changing nothing of it. Of the matcher's words only those that swallow none of the number: "about
 * nine" and "like nine" sound like "point nine", "around nine" like "hundred nine", "forty even" like "forty seven".
 */
const EXACT = 'flat | exactly | on it | only';
const TRAILER = optional(pattern(`${EXACT} | and (climbing | rising | falling | dropping)`));
/** With its place behind the number: "and falling" then begins something else. */
const BEFORE_PLACE = optional(pattern(EXACT));
const HELD = optional(pattern('after $n-under minutes'));

export const valueFor = (row: Measurand, trailer = TRAILER, tones = TONE_WORDS): Expression => {
  const behind = row.quantity === 'vacuum' ? HELD : trailer;
  const number = sequence(rule(row.shape), optional(unitNamesOf(row)), behind);
  if (row.quantity === 'voltage') return alternative(number, NOTHING);
  if (!row.open) return number;
  return row.quantity === 'resistance' ? alternative(number, OPEN_WORDS, tones) : alternative(number, OPEN_WORDS);
};

/** The value of a reading that is expected, without its place. */
export const bareValueFor = (row: Measurand): Expression => valueFor(row, TRAILER, pattern(TONES));

const linkFor = ({ quantity }: Measurand): Expression =>
  pattern(VERBS[quantity] === undefined ? LINK : `${LINK} | ${VERBS[quantity]}`);

/** Readings that share shape of number and units share one network behind their names. */
export function readingOf(rows: readonly Measurand[]): Expression {
  const [row] = rows;
  const names = namesOf(rows);
  const link = optional(linkFor(row!));
  const run = contracted(ownNamesOf(rows), link);
  const placed = run === undefined ? sequence(names, link) : alternative(sequence(names, link), run);
  const measured = MEASURED[row!.quantity];
  return sequence(...(measured === undefined ? [] : [optional(pattern(measured))]), placed, valueFor(row!));
}

/** The pairs of tips that are said behind their value, too: those of the legs, the control letters, the windings. */
const PAIRED = /^([LT][12]$|ground$|[RCY]@|comp-[CRS]$)/;

/** The value before its place: "two oh nine at the breaker". */
export function valueFirst(rows: readonly Measurand[]): Expression {
  const named = rows.filter((row) => row.say !== undefined);
  const paired = rows.filter((row) => row.at.every((point) => PAIRED.test(point)));
  return sequence(
    optional(pattern(LEAD)),
    valueFor(rows[0]!, BEFORE_PLACE),
    optional(pattern(BEHIND)),
    alternative(...[ownNamesOf(named), namesOf(paired)].filter((names) => !isEmpty(names))),
  );
}

const isEmpty = (names: Expression): boolean => names.kind === 'alternative' && names.items.length === 0;

/** Rows by what they share in the recogniser's eyes. */
export function groupedRows(): readonly Measurand[][] {
  const groups = new Map<string, Measurand[]>();
  for (const row of MEASURANDS) {
    const key = `${row.shape} ${row.quantity} ${row.unit} ${row.open ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()];
}

/** What is said with its value first, often enough to be listened for: by quantity, whatever the shape of its numbers. */
const FIRST: readonly QuantityId[] = [
  'voltage',
  'current',
  'capacitance',
  'resistance',
  'temperature',
  'difference',
  'pressure',
];
export const firstGroups = (): readonly Measurand[][] =>
  groupedRows().filter(([row]) => FIRST.includes(row!.quantity) && row!.unit !== 'mV');
