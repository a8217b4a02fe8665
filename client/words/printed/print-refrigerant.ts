import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { NOTE_SUBJECTS, type NoteSubject } from '../../../grammar/vocabulary/job-items.ts';
import { type UnitChoice, USUAL_CHOICE } from '../../../grammar/vocabulary/unit-choice.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { capital } from '../capital.ts';
import { showUnit } from '../shown/show-reading.ts';
import { OPEN } from '../talk/summary-words.ts';
import { pressureChosen } from '../things/chosen-words.ts';
import { valueRead } from './print-readings.ts';
import type { Footnotes } from './print-sources.ts';
import type { PrintTimes } from './print-times.ts';

/**
 * The refrigerant as the trade's log wants it (40 CFR part 82, subpart F, section 608: type, recovered, added, leak;
 * who and with what certificate and cylinder only as far as it was said).
 */
export function refrigerantLines(record: VisitRecord, times: PrintTimes, notes: Footnotes): readonly string[] {
  const { weighed, leaks } = ofRefrigerant(record);
  const opened = record.items.some(({ item }) => item === 'circuit-opened');
  const told = record.notes.some(({ about }) => about !== undefined);
  if (weighed.length + leaks.length + record.refrigerant.length === 0 && !opened && !told) return [];
  const { recovered = 'not weighed', added = 'not weighed' } = weights(record);
  return [
    `Type: ${(record.unit as UnitProfile).refrigerant ?? 'not told'}. Recovered: ${recovered}. Added: ${added}.`,
    ...leaks.map((leak) => `${times.clock(leak.at)}: ${leakWords(leak)}.`),
    ...record.observations
      .filter(({ observation }) => /oil/.test(observation))
      .map(({ at, words }) => `${times.clock(at)}: ${words}.`),
    ...NOTE_SUBJECTS.map((subject) => `${capital(subject)}: ${saidOf(record, subject)}.`),
    ...record.refrigerant.map(
      ({ at, check, value, minutes, judged }) =>
        `${times.clock(at)}: ${CHECKS[check](value, minutes, record.units ?? USUAL_CHOICE)}: ${judged.word}.${notes.mark(judged.source)}`,
    ),
  ];
}

function ofRefrigerant({ readings, items }: VisitRecord) {
  return {
    weighed: readings.filter(({ withdrawn, reading }) => !withdrawn && reading.quantity === 'mass'),
    leaks: items.filter(({ item }) => item === 'leak-found' || item === 'no-leak-found'),
  };
}

function leakWords({ words, said }: VisitRecord['items'][number]): string {
  return `${words}${said === undefined ? '' : `: “${said}”`}`;
}

/** What was weighed out and in, a sum each; nothing where nothing was weighed. */
function weights(record: VisitRecord): { readonly recovered?: string; readonly added?: string } {
  const { weighed } = ofRefrigerant(record);
  const sum = (sign: 1 | -1) => {
    const lines = weighed.filter(({ reading }) => typeof reading.value === 'number' && reading.value * sign > 0);
    const total = lines.reduce((all, { reading }) => all + Number(reading.value), 0);
    return lines[0] === undefined ? undefined : valueRead({ ...lines[0].reading, value: total });
  };
  const [recovered, added] = [sum(-1), sum(1)];
  return { ...(recovered === undefined ? {} : { recovered }), ...(added === undefined ? {} : { added }) };
}

/** What the customer is told of the refrigerant: leaks, and what went out and in. */
export function refrigerantForCustomer(record: VisitRecord): readonly string[] {
  const { recovered, added } = weights(record);
  return [
    ...ofRefrigerant(record).leaks.map((leak) => `${capital(leakWords(leak))}.`),
    ...(recovered === undefined ? [] : [`Refrigerant taken out: ${recovered}.`]),
    ...(added === undefined ? [] : [`Refrigerant put in: ${added}.`]),
  ];
}

/**
 * What is in no line of this record though refrigerant was taken out, put in or seen to leak: a repair of the leak, a
 * pressure test that held, a vacuum that was reached and stood. Common practice.
 */
export function refrigerantLacks(record: VisitRecord): readonly string[] {
  const { recovered, added } = weights(record);
  const leak = ofRefrigerant(record).leaks.at(-1)?.item === 'leak-found';
  const opened = record.items.some(({ item }) => item === 'circuit-opened');
  if (!leak && !opened && (recovered === undefined || added === undefined)) return [];
  const holds = (wanted: VisitRecord['refrigerant'][number]['check']) =>
    record.refrigerant.findLast(({ check }) => check === wanted)?.judged.word === 'fits';
  const repaired =
    record.works.some(({ work }) => work === 'leak-repaired') || record.parts.some(({ part }) => SEALS.has(part));
  const told = record.summary?.openItems ?? [];
  const lacks = (wanted: VisitRecord['refrigerant'][number]['check'], ...said: readonly string[]) =>
    !holds(wanted) && !said.some((words) => told.includes(words));
  const { testStart, testEnd, evacuated, isolated, decay } = OPEN.refrigerant;
  return [
    ...(leak && !repaired ? [added === undefined ? OPEN.leakLeft : OPEN.chargedOverLeak] : []),
    ...(lacks('pressure-test', testStart, testEnd) ? [OPEN.noPressureTest] : []),
    ...(lacks('evacuation', evacuated) ? [OPEN.noEvacuation] : []),
    ...(lacks('decay', isolated, decay) ? [OPEN.noStanding] : []),
  ];
}

/** Parts of the refrigerant circuit: with one of them a place that leaked may be gone. Common practice. */
const SEALS: ReadonlySet<string> = new Set([
  'filter-drier',
  'compressor',
  'reversing-valve',
  'expansion-valve',
  'valve-core',
]);

/** All that was said of it. A note of an older version may tell it in other words. */
function saidOf({ notes, recommendations }: VisitRecord, subject: NoteSubject): string {
  const told = notes.filter(({ about }) => about === subject);
  if (told.length > 0) {
    return told
      .map(({ text, guessed }) => {
        const words = withoutSubject(text, subject);
        return guessed === true ? `${words} (as the recogniser heard it)` : words;
      })
      .join('; ');
  }
  const said = [...notes, ...recommendations].filter(({ text }) => text.toLowerCase().includes(subject));
  return said.length === 0
    ? 'not said on this visit'
    : said.map(({ text }) => withoutSubject(text, subject)).join('; ');
}

/** The heading says what it is of. */
function withoutSubject(text: string, subject: NoteSubject): string {
  return text.replace(new RegExp(`^(my |the )?${subject}( number)?( is)?:? +`, 'i'), '');
}

const CHECKS: Readonly<
  Record<VisitRecord['refrigerant'][number]['check'], (value: number, minutes: number, units: UnitChoice) => string>
> = {
  'pressure-test': (psi, minutes, units) =>
    `pressure test, ${pressureChosen(psi, units)} ${units.pressure === '[psi]' ? 'psi' : showUnit(units.pressure)} lost beyond temperature in ${minutes} minutes`,
  evacuation: (microns) => `evacuated to ${microns} microns`,
  decay: (microns, minutes) => `${microns} microns after the vacuum stood ${minutes} minutes`,
};
