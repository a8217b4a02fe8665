import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { NAMEPLATE_FIELDS } from '../../../grammar/vocabulary/nameplate.ts';
import { type UnitChoice, USUAL_CHOICE } from '../../../grammar/vocabulary/unit-choice.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { capital } from '../capital.ts';
import { showPart } from '../shown/show-part.ts';
import { showUnit } from '../shown/show-reading.ts';
import { PLAIN, STANDS_OUT } from '../talk/summary-words.ts';
import { degreesChosen } from '../things/chosen-words.ts';
import { deedWords } from '../things/deed-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { partWords } from '../things/part-words.ts';
import { wireWords } from '../things/wire-words.ts';
import { bandWords, NO_VERDICT, readWhole, valueRead } from './print-readings.ts';
import type { Footnotes } from './print-sources.ts';
import type { PrintTimes } from './print-times.ts';

/** Figures in °F, in the degrees of the visit. */
function figuresIn(units: UnitChoice = USUAL_CHOICE) {
  const degrees = (fahrenheit: number) => degreesChosen(fahrenheit, units);
  const sign = showUnit(units.temperature);
  return {
    sign,
    degrees,
    band: (low: number | undefined, high: number | undefined) =>
      bandWords(low === undefined ? low : degrees(low), high === undefined ? high : degrees(high), sign),
  };
}

/** What was found, how sure that is and what it rests on. */
export function findingLines({ finding, readings }: VisitRecord): readonly string[] {
  if (finding === undefined) return ['No fault was proved on this visit.'];
  const { fault, probability, evidence, unproved = [] } = finding;
  const read = readings.filter(({ number }) => evidence.includes(number));
  if (probability < STANDS_OUT) {
    return [
      'No fault stood out on this visit.',
      `What was left as the likeliest: ${faultWords(fault as never)}, ${surely(probability)}.`,
    ];
  }
  return [
    `${capital(faultWords(fault as never))}: ${surely(probability)}.`,
    read.length === 0
      ? 'No single reading is out of its limits: it rests on all that was measured and seen, taken together.'
      : `It rests on ${read.map((line) => `reading ${line.number}, ${readWhole(line.reading)}`).join('; ')}.`,
    ...(unproved.length === 0 ? [] : ['Found by exclusion: what would have proved it could not be measured.']),
  ];
}

/**
 * The summary as it is put before the customer. A record of an earlier version names a cause that did not stand out;
 * here it is not named.
 */
export function customerSummary({ summary, finding }: VisitRecord): readonly string[] {
  if (summary === undefined) return [];
  if (finding === undefined || finding.probability >= STANDS_OUT) return [summary.plain];
  const named = PLAIN.found(finding.fault as FaultId, false);
  return [summary.plain.replace(named, PLAIN.noneStoodOut)];
}

function surely(probability: number): string {
  const percent = Math.round(probability * 100);
  if (percent === 100) return 'more than 99 in 100 sure by the model that weighs the readings';
  return `${percent} in 100 sure by the model that weighs the readings`;
}

/** Whether it cools now, as far as that was measured. */
export function coolsNow({ split, units }: VisitRecord, notes: Footnotes): string {
  if (split === undefined) return 'Whether it cools now was not shown by readings on this visit.';
  const { value, minutes, word, low, high, source } = split;
  const { sign, degrees, band } = figuresIn(units);
  const wanted = band(low, high);
  const cools = word === 'fits' ? 'It cools now' : 'Measured at the end';
  return `${cools}: the air comes out ${degrees(value)} ${sign} colder than it goes in, after ${minutes} minutes of running; ${wanted} is wanted: ${word}.${notes.mark(source)}`;
}

/** Parts and work of a visit without a summary, which would tell them: a line for the customer. */
export function fittedSoFar({ summary, parts, works }: VisitRecord): readonly string[] {
  if (summary !== undefined) return [];
  const fitted = parts.filter(({ part }) => part !== 'refrigerant').map(({ part }) => partWords(part as never, {}));
  const said = [
    ['Fitted', fitted],
    ['Added', fitted.length === parts.length ? [] : ['refrigerant']],
    ['Done', works.map(({ words }) => words)],
  ] as const;
  const lines = said.flatMap(([deed, what]) => (what.length === 0 ? [] : [`${deed}: ${what.join(', ')}.`]));
  return lines.length === 0 ? [] : [lines.join(' ')];
}

/** Parts, work without one, and what was held against them with its figures. */
export function repairLines({ parts, works, refusedParts }: VisitRecord, times: PrintTimes): readonly string[] {
  return [
    ...parts.map(({ at, part, ratings, doubts }) =>
      [
        `${times.clock(at)}: ${part === 'refrigerant' ? 'added' : 'fitted'} ${showPart(part, ratings)}`,
        ...doubts.map((doubt) => `Doubted: ${doubt}`),
      ].join('. '),
    ),
    ...refusedParts.map(({ at, words }) => `${times.clock(at)}: refused, and not told out again: ${words}`),
    ...works.map(({ at, words }) => `${times.clock(at)}: done: ${words}`),
  ];
}

const FIGURES: Readonly<Record<VisitRecord['charge'][number]['figure'], string>> = {
  superheat: 'superheat',
  subcooling: 'subcooling',
  'condensing-over-ambient': 'condensing temperature over outdoor air',
};

export function chargeLines({ charge, units }: VisitRecord, times: PrintTimes, notes: Footnotes): readonly string[] {
  const { sign, degrees, band } = figuresIn(units);
  return charge.map(({ at, figure, value, refrigerant, readings, judged, noVerdict }) => {
    const why =
      noVerdict === undefined
        ? 'no verdict'
        : `no verdict: ${NO_VERDICT[noVerdict as keyof typeof NO_VERDICT] ?? noVerdict}`;
    const verdict = judged === undefined ? why : `${judged.word} (${band(judged.low, judged.high)})`;
    const source = judged === undefined ? '' : notes.mark(judged.source);
    return `${times.clock(at)}: ${FIGURES[figure]} ${degrees(value)} ${sign} (${refrigerant}, readings ${readings.join(' and ')}): ${verdict}.${source}`;
  });
}

/** Weights are read in pounds and ounces, whatever the plate gives. */
const isWeight = (code: string) => code === '[oz_av]' || code === '[lb_av]';

/** What is known of the unit, and what its plate was read to say. */
export function unitLines({ unit, nameplate }: VisitRecord): readonly string[] {
  const { model, serial, tons, refrigerant, heatPump, supply } = unit as UnitProfile;
  const known = [
    tons === undefined ? '' : `${tons} tons`,
    refrigerant ?? '',
    heatPump === true ? 'heat pump' : '',
    supply === undefined ? '' : `${supply.nominal} V`,
  ].filter((part) => part !== '');
  const named = [
    ['model', model],
    ['serial', serial],
  ].flatMap(([name, mark]) => (mark === undefined ? [] : [`${capital(name ?? '')}: ${mark}`]));
  const plate = nameplate.map(({ field, value, unit: code }) => {
    const name = NAMEPLATE_FIELDS.find(({ id }) => id === field)?.name ?? field.replaceAll('-', ' ');
    if (code === undefined || typeof value === 'string') return `${name} ${value}`;
    return `${name} ${valueRead({ quantity: isWeight(code) ? 'mass' : '', at: [], value, unit: code })}`;
  });
  return [
    ...(known.length === 0 ? [] : [`${known.join(', ')}.`]),
    ...named,
    ...(plate.length === 0 ? ['The nameplate was not read on this visit.'] : [`Nameplate: ${plate.join(', ')}.`]),
  ];
}

/** What hands did at the unit: covers, parts, wires. */
export function handLines({ deeds, wires }: VisitRecord, times: PrintTimes): readonly string[] {
  return [
    ...deeds.map((line) => ({ at: line.at, words: deedOf(line) })),
    ...wires.map(({ at, ...wire }) => ({ at, words: wireWords(wire) })),
  ]
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
    .map(({ at, words }) => `${times.clock(at)}: ${words}`);
}

function deedOf({ deed, of, to }: VisitRecord['deeds'][number]): string {
  switch (deed) {
    case 'part-moved':
      return deedWords({ type: deed, part: of as never, to: to as never });
    case 'cover':
      return deedWords({ type: deed, cover: of as never, state: to as never });
    case 'deed':
      return deedWords({ type: deed, deed: of as never });
  }
}
