import { offsetOf } from '../vocabulary/in-base-unit.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { QuantityId } from '../vocabulary/quantities.ts';
import { chosenFor, USUAL_CHOICE } from '../vocabulary/unit-choice.ts';
import type { UnitProfile } from '../vocabulary/unit-profile.ts';
import { unitFor } from '../vocabulary/units.ts';
import type { Judged, TakenUnder } from './events.ts';
import { type Band, nameplateFigure, type ReadingRule, RULES } from './rules.ts';

/**
 * The meter's own error at a value, in the value's unit: the guard band around every limit. Share of the reading plus
 * counts of the last digit, as handheld meters state it (common practice figures; the meter's manual governs).
 */
export function meterError(quantity: QuantityId, value: number): number {
  const size = Math.abs(value);
  switch (quantity) {
    case 'voltage':
    case 'voltage-dc':
      return 0.01 * size + 0.3;
    case 'current':
      return 0.02 * size + 0.05;
    case 'resistance':
    case 'insulation':
      return 0.01 * size + 0.2;
    case 'capacitance':
      return 0.02 * size + 0.05;
    case 'temperature':
    case 'wet-bulb':
    case 'difference':
      return 1;
    case 'pressure':
    case 'vacuum':
    case 'static-pressure':
    case 'airflow':
    case 'frequency':
    case 'humidity':
    case 'mass':
    case 'time':
      return 0.02 * size;
  }
}

/** Whether two probe tips stand at the same places, whichever way round. */
export function samePlaces(a: readonly PointId[], b: readonly PointId[]): boolean {
  return a.length === b.length && a.every((point) => b.includes(point));
}

/**
 * Judges a reading by the first rule that speaks of it: nameplate before default, in the order of the table.
 * Returns undefined where no rule speaks. An open circuit has no value to hold against a band.
 */
export function judgeReading(reading: Reading, under: TakenUnder, unit: UnitProfile): Judged | undefined {
  if (reading.value === 'open') return undefined;
  for (const rule of RULES) {
    const value = inUnitOfRule(rule, reading);
    if (
      value === undefined ||
      !speaksOf(rule, reading, under) ||
      (rule.metering !== undefined && rule.metering !== unit.metering)
    )
      continue;
    const figure = rule.of === undefined ? 1 : nameplateFigure(unit, rule.of);
    if (figure === undefined) continue;
    const bandOn = (band: Band): Band => (rule.shift === true ? shifted(band, figure) : scaled(band, figure));
    const fit = bandOn(rule.fit);
    const limit = bandOn(rule.limit);
    return {
      word: placeInBands(value, fit, limit, meterError(reading.quantity, value)),
      rule: rule.id,
      band: bandIn(reading, rule, fit),
      source: rule.source,
      tag: rule.tag,
    };
  }
  return undefined;
}

/** Temperatures, their differences and pressures are read in one unit or another; what else is read in another unit than the rule's is not judged by it. */
function inUnitOfRule(rule: ReadingRule, { quantity, value, unit }: Reading): number | undefined {
  if (typeof value !== 'number') return undefined;
  if (unit === rule.unit) return value;
  const [from, to] = [unitFor(unit, quantity), unitFor(rule.unit, quantity)];
  if (from === undefined || to === undefined || chosenFor(quantity, USUAL_CHOICE) === undefined) return undefined;
  return (value * from.factor + offsetOf(from, quantity) - offsetOf(to, quantity)) / to.factor;
}

/** The rule's band in the unit of the reading, to a tenth. */
function bandIn({ quantity, unit }: Reading, rule: ReadingRule, band: Band): Band {
  const [from, to] = [unitFor(rule.unit, quantity), unitFor(unit, quantity)];
  if (unit === rule.unit || from === undefined || to === undefined) return band;
  const here = (end: number): number => {
    const base = end * from.factor + offsetOf(from, quantity);
    return Math.round(((base - offsetOf(to, quantity)) / to.factor) * 10) / 10;
  };
  return {
    ...(band.low === undefined ? {} : { low: here(band.low) }),
    ...(band.high === undefined ? {} : { high: here(band.high) }),
  };
}

function speaksOf(rule: ReadingRule, reading: Reading, under: TakenUnder): boolean {
  return (
    rule.quantity === reading.quantity &&
    rule.at.some((places) => samePlaces(places, reading.at)) &&
    (rule.power === undefined || rule.power === under.power) &&
    (rule.call === undefined || rule.call === under.call)
  );
}

function scaled(band: Band, by: number): Band {
  return {
    ...(band.low === undefined ? {} : { low: round(band.low * by) }),
    ...(band.high === undefined ? {} : { high: round(band.high * by) }),
  };
}

function shifted(band: Band, by: number): Band {
  return {
    ...(band.low === undefined ? {} : { low: round(band.low + by) }),
    ...(band.high === undefined ? {} : { high: round(band.high + by) }),
  };
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** Within the meter's error of the fit band's edge, on either side, a value is marginal. */
function placeInBands(value: number, fit: Band, limit: Band, guard: number): Judged['word'] {
  const beyond = (band: Band, by: number): boolean =>
    (band.low !== undefined && value < band.low - by) || (band.high !== undefined && value > band.high + by);
  if (beyond(limit, guard) || (beyond(fit, guard) && fit.low === limit.low && fit.high === limit.high))
    return 'does not fit';
  return beyond(fit, -guard) ? 'marginal' : 'fits';
}
