import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { NOTE_SUBJECTS, type NoteSubject } from '../../../grammar/vocabulary/job-items.ts';
import { NAMEPLATE_FIELDS } from '../../../grammar/vocabulary/nameplate.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { capital } from '../capital.ts';
import { deedWords } from '../things/deed-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { partWords } from '../things/part-words.ts';
import { wireWords } from '../things/wire-words.ts';
import { bandWords, NO_VERDICT, readWhole, valueRead } from './print-readings.ts';
import type { Footnotes } from './print-sources.ts';
import type { PrintTimes } from './print-times.ts';

const FAHRENHEIT = '°F';

/** What was found, how sure that is and what it rests on. */
export function findingLines({ finding, readings }: VisitRecord): readonly string[] {
  if (finding === undefined) return ['No fault was proved on this visit.'];
  const { fault, probability, evidence, unproved = [] } = finding;
  const read = readings.filter(({ number }) => evidence.includes(number));
  if (probability < 0.5) {
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

function surely(probability: number): string {
  const percent = Math.round(probability * 100);
  if (percent === 100) return 'more than 99 in 100 sure by the model that weighs the readings';
  return `${percent} in 100 sure by the model that weighs the readings`;
}

/** Whether it cools now, as far as that was measured. */
export function coolsNow({ split }: VisitRecord, notes: Footnotes): string {
  if (split === undefined) return 'Whether it cools now was not shown by readings on this visit.';
  const { value, minutes, word, low, high, source } = split;
  const wanted = bandWords(low, high, FAHRENHEIT);
  const cools = word === 'fits' ? 'It cools now' : 'Measured at the end';
  return `${cools}: the air comes out ${value} ${FAHRENHEIT} colder than it goes in, after ${minutes} minutes of running; ${wanted} is wanted: ${word}.${notes.mark(source)}`;
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
        `${times.clock(at)}: ${part === 'refrigerant' ? 'added' : 'fitted'} ${partWords(part as never, ratings)}`,
        ...doubts.map((doubt) => `Doubted: ${doubt}`),
      ].join('. '),
    ),
    ...refusedParts.map(({ at, words }) => `${times.clock(at)}: refused, and not told out again: ${words}`),
    ...works.map(({ at, words }) => `${times.clock(at)}: done: ${words}`),
  ];
}

/**
 * The refrigerant as the trade's log wants it (40 CFR part 82, subpart F, section 608: type, recovered, added, leak;
 * who and with what certificate and cylinder only as far as it was said).
 */
export function refrigerantLines(record: VisitRecord, times: PrintTimes, notes: Footnotes): readonly string[] {
  const weighed = record.readings.filter(({ withdrawn, reading }) => !withdrawn && reading.quantity === 'mass');
  const leaks = record.items.filter(({ item }) => item === 'leak-found' || item === 'no-leak-found');
  const opened = record.items.some(({ item }) => item === 'circuit-opened');
  const told = record.notes.some(({ about }) => about !== undefined);
  if (weighed.length + leaks.length + record.refrigerant.length === 0 && !opened && !told) return [];
  const sum = (sign: 1 | -1) => {
    const lines = weighed.filter(({ reading }) => typeof reading.value === 'number' && reading.value * sign > 0);
    const first = lines[0];
    if (first === undefined) return 'not weighed';
    const total = lines.reduce((ounces, { reading }) => ounces + Number(reading.value), 0);
    return valueRead({ ...first.reading, value: total });
  };
  return [
    `Type: ${(record.unit as UnitProfile).refrigerant ?? 'not told'}. Recovered: ${sum(-1)}. Added: ${sum(1)}.`,
    ...leaks.map(({ at, words, said }) => `${times.clock(at)}: ${words}${said === undefined ? '' : `: “${said}”`}.`),
    ...record.observations
      .filter(({ observation }) => /oil/.test(observation))
      .map(({ at, words }) => `${times.clock(at)}: ${words}.`),
    ...NOTE_SUBJECTS.map((subject) => `${capital(subject)}: ${saidOf(record, subject)}.`),
    ...record.refrigerant.map(
      ({ at, check, value, minutes, judged }) =>
        `${times.clock(at)}: ${CHECKS[check](value, minutes)}: ${judged.word}.${notes.mark(judged.source)}`,
    ),
  ];
}

/** All that was said of it. A note of an older version may tell it in other words. */
function saidOf({ notes, recommendations }: VisitRecord, subject: NoteSubject): string {
  const told = notes.filter(({ about }) => about === subject);
  if (told.length > 0) {
    return told
      .map(({ text, guessed }) => {
        const words = text.replace(new RegExp(`^${subject} `), '');
        return guessed === true ? `${words} (as the recogniser heard it)` : words;
      })
      .join('; ');
  }
  const said = [...notes, ...recommendations].filter(({ text }) => text.toLowerCase().includes(subject));
  return said.length === 0 ? 'not said on this visit' : said.map(({ text }) => text).join('; ');
}

const CHECKS: Readonly<
  Record<VisitRecord['refrigerant'][number]['check'], (value: number, minutes: number) => string>
> = {
  'pressure-test': (psi, minutes) => `pressure test, ${psi} psi lost beyond temperature in ${minutes} minutes`,
  evacuation: (microns) => `evacuated to ${microns} microns`,
  decay: (microns, minutes) => `${microns} microns after the vacuum stood ${minutes} minutes`,
};

const FIGURES: Readonly<Record<VisitRecord['charge'][number]['figure'], string>> = {
  superheat: 'superheat',
  subcooling: 'subcooling',
  'condensing-over-ambient': 'condensing temperature over outdoor air',
};

export function chargeLines({ charge }: VisitRecord, times: PrintTimes, notes: Footnotes): readonly string[] {
  return charge.map(({ at, figure, value, refrigerant, readings, judged, noVerdict }) => {
    const why =
      noVerdict === undefined
        ? 'no verdict'
        : `no verdict: ${NO_VERDICT[noVerdict as keyof typeof NO_VERDICT] ?? noVerdict}`;
    const verdict = judged === undefined ? why : `${judged.word} (${bandWords(judged.low, judged.high, FAHRENHEIT)})`;
    const source = judged === undefined ? '' : notes.mark(judged.source);
    return `${times.clock(at)}: ${FIGURES[figure]} ${value} ${FAHRENHEIT} (${refrigerant}, readings ${readings.join(' and ')}): ${verdict}.${source}`;
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
