import { spokenForms } from '../phrases/languages/english/numbers/spoken-forms.ts';
import { NAMES } from '../phrases/languages/english/words/names.ts';
import type { Expectation } from '../phrases/meaning.ts';
import { COMMANDS } from '../vocabulary/commands.ts';
import { COVER_NAMES } from '../vocabulary/covers.ts';
import { DEEDS } from '../vocabulary/deeds.ts';
import { CHARGED_PARTS, DEVICES, SWITCH_STATES } from '../vocabulary/devices.ts';
import { DICTATIONS, JOB_ITEMS } from '../vocabulary/job-items.ts';
import { MEASURANDS, type Measurand } from '../vocabulary/measurands.ts';
import { PUTTING, TAKING } from '../vocabulary/moved-parts.ts';
import { NAMEPLATE_FIELDS } from '../vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../vocabulary/observations.ts';
import { PART_RATINGS, PARTS } from '../vocabulary/parts.ts';
import { POINTS_BY_ID } from '../vocabulary/points.ts';
import { UNITS, UNITS_BY_CODE } from '../vocabulary/units.ts';
import { WIRE_COLOURS, WIRE_SIZES } from '../vocabulary/wires.ts';
import { SAID_WORKS } from '../vocabulary/works.ts';
import { sameReading } from './measurand-names.ts';
import { wrapLine } from './wrap-line.ts';

/**
 * What can be said, for people: plain text to print, straight from the tables. Brackets mark words that may be left out,
 * a bar stands between choices.
 *
 * @param expectation only what belongs to this step: its readings and the orders; everything where left out
 */
export function toPhraseSheet(expectation?: Expectation): string {
  const rows =
    expectation === undefined
      ? MEASURANDS
      : MEASURANDS.filter((row) => expectation.readings.some((one) => sameReading(row, one)));
  const readings = section('Readings: place, then value; or value, then place', rows.map(readingLine));
  const orders = section(
    'Orders',
    COMMANDS.map((row) => line(row.name, 'moment' in row ? `${row.say} | ${row.moment}` : row.say)),
  );
  if (expectation !== undefined) return [readings, orders].join('\n');
  return [
    readings,
    section(
      'Units',
      UNITS.map((unit) => line(`${unit.sign} (${unit.code})`, unit.say)),
    ),
    section('Numbers', NUMBER_LINES),
    orders,
    section(
      'Switches: always the device and its place',
      DEVICES.map((row) => line(`${row.device}, ${row.place}`, row.say)),
    ),
    section(
      '… then what it is',
      SWITCH_STATES.map((row) => line(row.state, row.after)),
    ),
    section('Absence of voltage, in one breath', [
      'meter two forty, zero, zero, zero, meter two forty',
      'each zero with its place: leg one to ground zero, leg one to leg two zero, t one to t two zero …',
    ]),
    section(
      'Discharged',
      CHARGED_PARTS.map((row) => line(row.zones.join(' and '), row.say)),
    ),
    section(
      'Seen, heard, felt',
      OBSERVATIONS.map((row) => line(row.name, row.say)),
    ),
    section(
      'Nameplate, then the line and its value',
      NAMEPLATE_FIELDS.map((row) => line(row.name, row.say)),
    ),
    section(
      'Fitted, then the part with its ratings',
      PARTS.map((row) => line(row.name, row.say)),
    ),
    section(
      'Ratings',
      PART_RATINGS.map((row) => line(row.id, row.say)),
    ),
    section(
      'Mended without a part',
      SAID_WORKS.map((row) => line(row.name, row.say)),
    ),
    section('Parts taken out or put back', [
      line('out', `(${TAKING.needs}) … out | (${TAKING.has}) … | … (is | are) (taken out | out of the unit)`),
      line('in', `(${PUTTING.needs}) … back in | … is back in`),
    ]),
    section(
      'Covers',
      Object.entries(COVER_NAMES).map(([id, say]) => line(`${id.replace('-', ' ')}: off, or back on`, say)),
    ),
    section(
      'Done by hand',
      DEEDS.map((row) => line(row.name, `${row.say} | ${row.seen}`)),
    ),
    section('Wires: lifted or landed, size, colour, from or on a terminal', [
      ...wrapLine(`colours: ${WIRE_COLOURS.join(', ')}`),
      ...wrapLine(`sizes: ${WIRE_SIZES.map((row) => row.size).join(', ')}`),
      'jumper from R to Y; jumper off R to Y',
    ]),
    section(
      'The job',
      JOB_ITEMS.map((row) => line(row.name, row.say)),
    ),
    section('Anything else', [
      'note …',
      ...DICTATIONS.map((row) => `${row.name} …`),
      'check on me every twenty minutes; check on me in ten',
      'I got bit',
    ]),
  ].join('\n');
}

const NUMBER_LINES = [118, 208, 44.1, 0.4, 1250].flatMap((value) =>
  wrapLine(`${value}: ${spokenForms(value).slice(0, 8).join(', ')}`),
);

function readingLine(row: Measurand): string {
  const tips = row.at.map((point) => POINTS_BY_ID[point].name);
  const own = row.say === undefined ? '' : row.say;
  const both = tips.length === 2 && !row.onlyByName ? tips.join(' to ') : '';
  const said = [both, own].filter((part) => part !== '').join(' | ');
  return line(`${row.quantity}, ${UNITS_BY_CODE[row.unit].sign}`, said === '' ? tips.join(', ') : said);
}

const line = (name: string, say: string): string => wrapLine(`${name}: ${spelt(say)}`).join('\n');

/** Names used inside phrases written out. */
const spelt = (say: string): string =>
  Object.entries(NAMES).reduce((text, [name, meant]) => text.replaceAll(`$${name}`, meant), say);

const section = (title: string, lines: readonly string[]): string =>
  `${title}\n${'-'.repeat(title.length)}\n${lines.join('\n')}\n`;
