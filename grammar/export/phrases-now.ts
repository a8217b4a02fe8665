import { firstSentence } from '../phrases/first-sentence.ts';
import { RULES } from '../phrases/languages/english/rules/utterance-rules.ts';
import type { Expectation } from '../phrases/meaning.ts';
import { pattern, sentences } from '../phrases/pattern.ts';
import { ANSWERS } from '../vocabulary/answers.ts';
import { COMMANDS, type CommandId } from '../vocabulary/commands.ts';
import { COVER_SAID } from '../vocabulary/covers.ts';
import { DEEDS } from '../vocabulary/deeds.ts';
import { DEVICES, SWITCH_STATES } from '../vocabulary/devices.ts';
import { DICTATIONS, JOB_ITEMS } from '../vocabulary/job-items.ts';
import { MEASURANDS, type Measurand } from '../vocabulary/measurands.ts';
import { NAMEPLATE_FIELDS, NAMEPLATE_FIELDS_BY_ID, type NameplateField } from '../vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../vocabulary/observations.ts';
import { PARTS } from '../vocabulary/parts.ts';
import { POINTS_BY_ID, type PointId } from '../vocabulary/points.ts';
import { SAID_WORKS } from '../vocabulary/works.ts';
import type { PhraseGroup, PhraseNow } from './find-phrases.ts';
import { sameReading } from './measurand-names.ts';

/**
 * What may be said at a moment, what is asked first: one phrase of each kind, made of the tables that the matcher is
 * made of, so that none is listed that is not understood.
 *
 * @param expectation what the visit waits for
 */
export function phrasesNow(expectation: Expectation): readonly PhraseNow[] {
  const all = [...askedNow(expectation), ...ALWAYS];
  return all.filter((one, at) => all.findIndex(({ phrase }) => phrase === one.phrase) === at);
}

function askedNow({ readings, besides = [], question, options, answers, plate = [], meter }: Expectation) {
  const numbers = readings.length === 1 || meter === true ? [numbered('now', '…')] : [];
  const asked = MEASURANDS.filter((row) => [...readings, ...besides].some((one) => sameReading(row, one)));
  const meant = answers ?? [];
  return [
    ...(options ?? []).map((option) => said('now', [...String(option)].join(' '))),
    ...meant.flatMap(({ answer }) => {
      const row = ANSWERS.find(({ id }) => id === answer);
      return row === undefined ? [] : [said('now', first(row.say))];
    }),
    ...(question === 'confirm' ? [order('now', 'yes'), order('now', 'no')] : []),
    ...(question === 'acknowledge' ? [order('now', 'live')] : []),
    ...numbers,
    ...asked.map((row) => readingPhrase('now', row)),
    ...(plate.length === 0 ? [] : plate.map((id) => platePhrase('now', NAMEPLATE_FIELDS_BY_ID[id]))),
  ];
}

const said = (group: PhraseGroup, phrase: string): PhraseNow => ({ group, phrase });
const numbered = (group: PhraseGroup, phrase: string): PhraseNow => ({ group, phrase, slot: 'number' });
const first = (say: string): string => firstSentence(pattern(say), RULES);

function order(group: PhraseGroup, command: CommandId): PhraseNow {
  return said(group, first(COMMANDS.find(({ id }) => id === command)!.say));
}

const nameOf = (point: PointId): string =>
  first(POINTS_BY_ID[point].say ?? POINTS_BY_ID[point].name.replaceAll(',', ''));

/** What a row is called, with the words that may be left out. */
function namesOfRow({ say, at }: Measurand): readonly string[] {
  if (say === undefined) return [at.map(nameOf).join(' to ')];
  const named = pattern(say);
  return (named.kind === 'alternative' ? named.items : [named]).map((one) => firstSentence(one, RULES, true));
}

/** Everything that the common rows may be called. */
const CALLED = MEASURANDS.filter(({ rare }) => rare !== true).map(({ at, say }) => ({
  at: at.join(),
  names: new Set(say === undefined ? [] : sentences(pattern(say), RULES).map((words) => words.join(' '))),
}));

/** By a name that is of no other place, where there is one ("suction" is a pressure as well as a line). */
function placeOf(row: Measurand): string {
  const names = namesOfRow(row);
  const isOwn = (name: string): boolean => CALLED.every((one) => one.at === row.at.join() || !one.names.has(name));
  return names.find(isOwn) ?? names[0]!;
}

const readingPhrase = (group: PhraseGroup, row: Measurand): PhraseNow => numbered(group, `${placeOf(row)} …`);

function platePhrase(group: PhraseGroup, { say, value, choices = [] }: NameplateField): PhraseNow {
  const line = `nameplate ${first(say)}`;
  if (value === 'choice') return said(group, `${line} ${first(choices[0]?.say ?? '')}`);
  return value === 'mark' ? { group, phrase: `${line} …`, slot: 'words' } : numbered(group, `${line} …`);
}

/** What may be said at any moment, by the tables, in their order. */
const ALWAYS: readonly PhraseNow[] = [
  ...COMMANDS.map(({ say }) => said('orders', first(say))),
  ...DEVICES.flatMap(({ say }) => SWITCH_STATES.map(({ after }) => said('power', `${first(say)} ${first(after)}`))),
  ...MEASURANDS.filter(({ rare }) => rare !== true).map((row) => readingPhrase('readings', row)),
  ...OBSERVATIONS.map(({ say }) => said('seen', first(say))),
  ...NAMEPLATE_FIELDS.map((field) => platePhrase('plate', field)),
  ...PARTS.map(({ say }) => said('work', `fitted a ${first(say)}`)),
  ...SAID_WORKS.flatMap((row) => ('say' in row ? [said('work', first(row.say))] : [])),
  ...DEEDS.map(({ say }) => said('work', first(say))),
  ...COVER_SAID.map(({ say }) => said('work', first(say))),
  ...JOB_ITEMS.map(({ say }) => said('job', first(say))),
  ...DICTATIONS.map(({ say }): PhraseNow => ({ group: 'written', phrase: `${first(say)} …`, slot: 'words' })),
];
