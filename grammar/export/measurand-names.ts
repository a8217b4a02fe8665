import { alternative, type Expression, optional, sequence } from '../phrases/expression.ts';
import type { Expectation } from '../phrases/meaning.ts';
import { pattern } from '../phrases/pattern.ts';
import type { Measurand } from '../vocabulary/measurands.ts';
import { POINTS_BY_ID, type PointId } from '../vocabulary/points.ts';
import { UNITS, UNITS_BY_CODE, type Unit } from '../vocabulary/units.ts';

const units: readonly Unit[] = UNITS;

/** Whether a row is the reading that is expected: same quantity, same points in any order. */
export const sameReading = (row: Measurand, one: Expectation['readings'][number]): boolean =>
  row.quantity === one.quantity && [...row.at].sort().join() === [...one.at].sort().join();

/** Everything that rows of the table may be called: their own names, and their tips in both orders. */
export function namesOf(rows: readonly Measurand[]): Expression {
  const pairs = rows.flatMap((row) => {
    const [one, other] = row.at;
    if (one === undefined || other === undefined || row.onlyByName) return [];
    return [tips(one, other), tips(other, one)];
  });
  return alternative(...ownOf(rows), ...pairs);
}

/** Their own names alone. */
export const ownNamesOf = (rows: readonly Measurand[]): Expression => alternative(...ownOf(rows));

const ownOf = (rows: readonly Measurand[]): readonly Expression[] =>
  rows.flatMap((row) => (row.say === undefined ? [] : [pattern(row.say)]));

function tips(one: PointId, other: PointId): Expression {
  const place = POINTS_BY_ID[one].place;
  const at = place === 'thermostat' || place === 'air-handler' || place === 'condenser' ? place : undefined;
  const said = {
    thermostat: '(thermostat | stat)',
    'air-handler': '(air handler | board)',
    condenser: '(condenser | outdoor unit)',
  };
  const where = at === undefined ? [] : [optional(pattern(`at the ${said[at]}`))];
  return sequence(tip(one), optional(pattern('(to | and)')), tip(other), ...where);
}

const tip = (id: PointId): Expression => {
  const point = POINTS_BY_ID[id];
  return pattern(point.say ?? point.name);
};

/**
 * Names of units that are understood and not listened for. "psi" is left to its letters: a dictionary says it like the
 * Greek letter. A letter behind "degrees": the hiss that ends the word makes a "c" of itself, and Fahrenheit Celsius.
 * "a c" counts behind "volts" alone: by itself it takes "one hundred eighteen" for "one hundred a c".
 */
const NOT_LISTENED_FOR = /^(psi|psi gauge|bar g|degrees [cfk]|v [ad] c|a c \[volts\])$/;

/** A unit as the recogniser listens for it. */
export function unitName(unit: { readonly say: string }): Expression {
  const names = unit.say.split('|').map((name) => name.trim());
  return pattern(names.filter((name) => !NOT_LISTENED_FOR.test(name)).join(' | '));
}

/** How the units of a row are said aloud. */
export function unitNamesOf(row: Measurand): Expression {
  const { base } = UNITS_BY_CODE[row.unit];
  const said = units.filter(
    (unit) => unit.quantities.includes(row.quantity) && unit.base === base && unit.unheard !== true,
  );
  return alternative(...said.map(unitName));
}
