import { readFileSync } from 'node:fs';
import { expectationFrom } from '../../client/terminal/expectation-from.ts';
import { short } from '../../fixtures/utterances/read-utterances.ts';
import { inUnitOf } from '../../grammar/phrases/compose/fit.ts';
import type { Expectation, Meaning, Understanding } from '../../grammar/phrases/meaning.ts';
import { MEASURANDS } from '../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../grammar/vocabulary/measurement.ts';
import { unitFor } from '../../grammar/vocabulary/units.ts';

/**
 * A line of a file of lines as people say them: what the visit waited for, what is said, what it should come to, and
 * whether asking or not understanding is right as well.
 */
export interface SaidLine {
  readonly text: string;
  readonly expectation: Expectation | undefined;
  /** Each of several meanings, as `CODE words`; `-` alone is no reading: nothing may be logged. */
  readonly meant: string;
  readonly soft: boolean;
}

/** What became of a line. */
export type Outcome = 'right' | 'asked-right' | 'asked-wrong' | 'not-understood' | 'wrong';

/**
 * Reads lines of four columns apart by tabs: points expected or nothing, what is said, what it should come to, and `soft`
 * or nothing. What it comes to is one of
 *
 * - `R quantity points value`, several apart by " + "; points apart by ",", other right ones by "|", "*" any; the value as
 *   it was said or in the unit of the table, a weight with its own
 * - `C command`, `C correct value`, `O observation`, `E device place state`, `M volts`, `D zone`, `P part`, `K work`,
 *   `N` a note, `NP field value`, `W action …` a wire
 * - `-`: nothing
 *
 * @throws Error naming the line that has not four columns, or points that nothing is read at
 */
export function readSaid(path: string): SaidLine[] {
  return readFileSync(path, 'utf8')
    .split('\n')
    .flatMap((line, index) => {
      if (line.trim() === '' || line.startsWith('#')) return [];
      const [points, text, meant, soft] = line.split('\t');
      const expectation = points ? expectationFrom(points) : undefined;
      if (text === undefined || meant === undefined || (points && expectation === undefined))
        throw new Error(`${path}:${index + 1}: not "points TAB said TAB meaning TAB soft"`);
      return [{ text, expectation, meant, soft: soft?.trim() === 'soft' }];
    });
}

/** What is put on record; a note, somebody's words and a place without a value put nothing there. */
const facts = (meaning: Meaning): Meaning[] =>
  meaning.kind === 'several'
    ? meaning.parts.flatMap(facts)
    : ['unclear', 'note', 'dictated'].includes(meaning.kind)
      ? []
      : [meaning];

/** How what was understood compares with what was meant. */
export function outcomeOf(line: SaidLine, { verdict, meaning, others }: Understanding): Outcome {
  if (line.meant === '-') {
    const kept = verdict !== 'logged' || facts(meaning).every((one) => one.kind === 'command' && !one.correction);
    return kept ? 'right' : 'wrong';
  }
  if (verdict === 'rejected') return 'not-understood';
  const right = (one: Meaning): boolean => isMeant(line.meant, one);
  if (verdict === 'logged') return right(meaning) ? 'right' : 'wrong';
  return [meaning, ...(others ?? [])].some(right) ? 'asked-right' : 'asked-wrong';
}

function isMeant(meant: string, meaning: Meaning): boolean {
  if (meant === 'N') return meaning.kind === 'note';
  const parts = meant.split(' + ');
  const said = facts(meaning);
  return said.length === parts.length && parts.every((part) => said.some((one) => isPart(part, one)));
}

function isPart(part: string, meaning: Meaning): boolean {
  const [code, ...words] = part.split(' ');
  const told = short(meaning).split(' ');
  switch (code) {
    case 'R':
      return meaning.kind === 'reading' && isReading(words as [string, string, string], meaning.reading);
    case 'C':
      return words[0] === 'correct' ? told[0] === 'correct' && told.includes(words[1]!) : told[1] === words[0];
    case 'O':
      return told[0] === 'seen' && told[1] === words[0];
    case 'E':
      return told[0] === 'energy' && words.every((word) => told.includes(word));
    case 'M':
      return told[0] === 'meter' && told[1] === words[0];
    case 'D':
      return told[0] === 'discharged' && told[1] === words[0];
    case 'P':
      return told[0] === 'part' && told[1] === words[0];
    case 'K':
      return told[0] === 'work' && told[1] === words[0];
    case 'NP':
      return told[0] === 'nameplate' && words.every((word) => told.includes(word));
    case 'W':
      return told[0] === 'wire' && words.every((word) => told.includes(word));
    default:
      throw new Error(`no meaning begins with "${code}"`);
  }
}

/** A share of a value that units with other steps may differ by. */
const NEAR = 0.01;

function isReading([quantities, places, value]: readonly [string, string, string], reading: Reading): boolean {
  const at = [...reading.at].sort().join();
  const placed = places.split('|').some((one) => one === '*' || one.split(',').sort().join() === at);
  if (!quantities.split('|').includes(reading.quantity) || !placed) return false;
  if (reading.value === 'open' || value === 'open') return reading.value === value;
  const row = MEASURANDS.find((one) => one.quantity === reading.quantity && one.at.join() === reading.at.join());
  if (reading.value === Number(value)) return true;
  const [, number, unit] = /^(-?[\d.]+)(.*)$/.exec(value)!;
  const table = row?.unit ?? reading.unit;
  const wanted = unit ? Number(number) * UNITS_WRITTEN[unit]! : Number(number);
  const read = row === undefined ? inBase(reading) : inUnitOf(row, reading.value, reading.unit);
  const off = Math.abs((read ?? Number.NaN) - wanted);
  return off <= NEAR * Math.abs(wanted) + (table === '[degF]' ? 0.1 : 1e-9);
}

/** Weights stand in no row: in ounces. */
const UNITS_WRITTEN: Readonly<Record<string, number>> = { oz: 1, lb: 16 };
function inBase({ value, unit, quantity }: Reading): number | undefined {
  const [from, ounce] = [unitFor(unit, quantity), unitFor('[oz_av]', quantity)];
  return typeof value === 'number' && from && ounce ? (value * from.factor) / ounce.factor : undefined;
}
