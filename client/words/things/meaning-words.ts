import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { Meaning, Report } from '../../../grammar/phrases/meaning.ts';
import { COMMANDS_BY_ID } from '../../../grammar/vocabulary/commands.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { deedWords } from './deed-words.ts';
import { dictationWords, itemWords, workWords } from './job-words.ts';
import { nameplateWords } from './nameplate-words.ts';
import { observationWords } from './observation-words.ts';
import { partWords } from './part-words.ts';
import { readbackWords } from './reading-words.ts';
import { wireWords } from './wire-words.ts';

/** A meaning in words, for asking whether it was meant; undefined where it has none of its own. */
export function meaningWords(meaning: Meaning): string | undefined {
  switch (meaning.kind) {
    case 'reading':
      return readbackWords(meaning.reading).replace(/\.$/, '');
    case 'wire':
      return wireWords(meaning.wire);
    case 'part':
      return `fitted ${partWords(meaning.part, meaning.ratings)}`;
    case 'work':
      return workWords(meaning.work);
    case 'nameplate':
      return nameplateWords(meaning.field, meaning.value, meaning.unit).replace(/\.$/, '');
    case 'command':
      return nameIn(COMMANDS_BY_ID, meaning.command);
    case 'report':
      return reportWords(meaning.report);
    case 'several': {
      const parts = meaning.parts.map(meaningWords);
      return parts.includes(undefined) ? undefined : [...new Set(parts)].join(', and ');
    }
    case 'dictated':
      return `${dictationWords(meaning.as)} ${meaning.text}`;
    case 'check-on-me':
      return `check on you ${meaning.every ? 'every' : 'in'} ${sayNumber(meaning.minutes)} minutes`;
    case 'note':
      return `note ${meaning.text}`;
    case 'value':
    case 'unclear':
      return undefined;
  }
}

function reportWords(report: Report): string | undefined {
  switch (report.type) {
    case 'observation':
      return report.as ?? observationWords(report.observation);
    case 'energy':
      if (report.device === 'thermostat-call') return report.state === 'closed' ? 'call on' : 'call off';
      return `${report.place.replace('-', ' ')} ${report.device.replace('-', ' ')} ${report.state}`;
    case 'meter-proof':
      return `meter proves ${sayNumber(report.value)}`;
    case 'absence-of-voltage':
      return `proof: meter ${[report.before, ...report.values].map(sayNumber).join(', ')}, meter ${sayNumber(report.after)}`;
    case 'discharged':
      return 'capacitor discharged';
    case 'job-item':
      return itemWords(report.item);
    case 'part-moved':
    case 'cover':
    case 'deed':
      return deedWords(report);
    case 'injury':
      return undefined;
  }
}
