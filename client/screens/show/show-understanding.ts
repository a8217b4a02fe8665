import type { Meaning, Report, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { HeardLine } from '../../../grammar/visit/fold-visit.ts';
import { COMMANDS } from '../../../grammar/vocabulary/commands.ts';
import { DICTATIONS, JOB_ITEMS } from '../../../grammar/vocabulary/job-items.ts';
import { OBSERVATIONS } from '../../../grammar/vocabulary/observations.ts';
import { WORKS } from '../../../grammar/vocabulary/works.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { showPlace, showReading, showUnit, showValue } from './show-reading.ts';

/** What was understood of a heard line, and what became of it, in one line; a dash while nothing was heard. */
export function showUnderstood(heard: HeardLine | undefined): string {
  if (heard === undefined) return '–';
  return `${showMeaning(heard.understanding.meaning)} · ${showVerdict(heard.understanding, heard.accepted)}`;
}

function showMeaning(meaning: Meaning): string {
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
      return WORKS.find((one) => one.id === meaning.work)?.name ?? meaning.work;
    case 'wire': {
      const { colour, size, from, to, action } = meaning.wire;
      const where = [from === undefined ? '' : `from ${from}`, to === undefined ? '' : `to ${to}`];
      return [colour, size, 'wire', action.replace('-', ' '), ...where].filter(Boolean).join(' ');
    }
    case 'note':
      return `note: ${meaning.text}`;
    case 'dictated':
      return `${DICTATIONS.find((row) => row.as === meaning.as)?.name ?? meaning.as}: ${meaning.text}`;
    case 'check-on-me':
      return `check on me ${meaning.every ? 'every' : 'in'} ${meaning.minutes} min`;
    case 'unclear':
      return 'not understood';
  }
}

function showCommand(meaning: Extract<Meaning, { kind: 'command' }>): string {
  const name = COMMANDS.find((command) => command.id === meaning.command)?.name ?? meaning.command;
  const { correction } = meaning;
  if (correction === undefined) return name;
  const at = correction.at === undefined ? '' : ` ${showPlace(correction.at)}`;
  return `${name}:${at}${correction.value === undefined ? '' : ` ${correction.value}`}`;
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
      return OBSERVATIONS.find((one) => one.id === report.observation)?.name ?? report.observation;
    case 'job-item':
      return JOB_ITEMS.find((one) => one.id === report.item)?.name ?? report.item;
    case 'injury':
      return 'somebody is hurt';
  }
}

const VERDICT_WORDS = { logged: 'taken', asked: 'asked back', rejected: 'not taken' } as const;

function showVerdict(understanding: Understanding, accepted: boolean): string {
  return accepted ? VERDICT_WORDS[understanding.verdict] : 'not accepted';
}
