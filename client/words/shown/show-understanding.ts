import type { Meaning, Report, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { Became } from '../../../grammar/visit/what-became.ts';
import { COMMANDS_BY_ID, type CommandId } from '../../../grammar/vocabulary/commands.ts';
import { OBSERVATIONS_BY_ID, type ObservationId } from '../../../grammar/vocabulary/observations.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { deedWords } from '../things/deed-words.ts';
import { dictationWords, itemWords, workWords } from '../things/job-words.ts';
import { showPlace, showReading, showUnit, showValue } from './show-reading.ts';

/** What was understood, in one line. */
export function showMeaning(meaning: Meaning): string {
  switch (meaning.kind) {
    case 'reading':
      return showReading(meaning.reading);
    case 'value':
      return meaning.unit === undefined ? `${meaning.value}` : showValue(meaning.value, meaning.unit);
    case 'several':
      return meaning.parts.map(showMeaning).join('; ');
    case 'command':
      return showCommand(meaning);
    case 'report':
      return showReport(meaning.report);
    case 'nameplate':
      return `nameplate ${meaning.field.replaceAll('-', ' ')} ${meaning.value}${meaning.unit === undefined ? '' : ` ${showUnit(meaning.unit)}`}`;
    case 'part':
      return ['fitted', meaning.part.replaceAll('-', ' '), ...Object.values(meaning.ratings)].join(' ');
    case 'work':
      return workWords(meaning.work);
    case 'wire': {
      const { colour, size, from, to, action } = meaning.wire;
      const where = [from === undefined ? '' : `from ${from}`, to === undefined ? '' : `to ${to}`];
      return [colour, size, 'wire', action.replace('-', ' '), ...where].filter(Boolean).join(' ');
    }
    case 'note':
      return `note: ${meaning.text}`;
    case 'dictated':
      return `${dictationWords(meaning.as)}: ${meaning.text}`;
    case 'check-on-me':
      return `check on me ${meaning.every ? 'every' : 'in'} ${meaning.minutes} min`;
    case 'unclear':
      return meaning.at === undefined ? 'not understood' : `${showPlace(meaning.at)}, without a number`;
  }
}

function showCommand(meaning: Extract<Meaning, { kind: 'command' }>): string {
  const name = nameIn(COMMANDS_BY_ID, meaning.command);
  const { correction } = meaning;
  if (correction === undefined) return name;
  const at = correction.at === undefined ? '' : ` ${showPlace(correction.at)}`;
  return `${name}:${at}${correction.value === undefined ? '' : ` ${correction.value}`}`;
}

/** As the table names it, on a key too; what is spoken may be another name. */
export function showObservation(id: ObservationId): string {
  return nameIn(OBSERVATIONS_BY_ID, id);
}

function showReport(report: Report): string {
  switch (report.type) {
    case 'energy':
      return `${report.device.replace('-', ' ')} at ${report.place.replace('-', ' ')}: ${report.state}`;
    case 'absence-of-voltage':
      return `meter ${report.before}; ${report.values.join(', ')}; meter ${report.after} (${ZONE_NAMES[report.zone]})`;
    case 'meter-proof':
      return `meter proven at ${report.value} V`;
    case 'discharged':
      return `discharged: ${ZONE_NAMES[report.zone]}`;
    case 'observation':
      return report.as ?? showObservation(report.observation);
    case 'job-item':
      return itemWords(report.item);
    case 'part-moved':
    case 'cover':
    case 'deed':
      return deedWords(report);
    case 'injury':
      return 'somebody is hurt';
  }
}

const VERDICT_WORDS = { logged: 'taken', asked: 'asked back', rejected: 'not taken' } as const;

/** How it ended where that is told by what came of it. `early`: it answers a caution that is still being given. */
const BECAME_WORDS: Readonly<Record<Became | 'early', string>> = {
  refused: 'refused',
  'refused-in-part': 'refused in part',
  asked: 'asked back',
  waits: 'waits for the supervisor',
  nothing: 'nothing to answer',
  taken: 'taken',
  'after-close': 'the visit is closed',
  early: 'wait: the caution comes first',
};

export function showVerdict(understanding: Understanding, accepted: boolean, became?: Became | 'early'): string {
  if (!accepted) return 'not accepted';
  return became === undefined ? VERDICT_WORDS[understanding.verdict] : BECAME_WORDS[became];
}

/** An order that was given by its key. */
export function showTouched(command: CommandId): { readonly text: string; readonly understood: string } {
  return { text: 'touched', understood: nameIn(COMMANDS_BY_ID, command) };
}
