import { FAULTS_BY_ID } from '../../../grammar/vocabulary/faults.ts';
import { PARTS_BY_ID } from '../../../grammar/vocabulary/parts.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { capital } from '../capital.ts';
import { showPercent } from '../shown/show-likely.ts';
import { workWords } from '../things/job-words.ts';
import { stepName } from '../things/step-name.ts';

const visits = (number: number) => `${number.toLocaleString('en')} ${number === 1 ? 'visit' : 'visits'}`;

/** The list of visits: search, filters and one line a visit. */
export const LIST = {
  search: 'Search',
  searchFor: 'Site, complaint, finding, part, serial number, words said',
  filters: 'Filters',
  state: 'State',
  states: { running: 'running', closed: 'closed', 'not-complete': 'not complete' },
  finding: 'Finding',
  noFinding: 'none stated',
  part: 'Part fitted',
  technician: 'Technician',
  from: 'Opened from',
  until: 'until',
  any: 'any',
  only: 'Only with',
  flags: {
    unproven: 'work not proven dead',
    cautionsOpen: 'cautions not acknowledged',
    repeated: 'a repeat call',
  },
  clear: 'Clear all',
  count: (total: number) => visits(total),
  none: 'No visit fits: take a filter or a word away.',
  noWord: 'The search has signs but no word or number: take them away, or add a word.',
  looking: 'Looking…',
  behind: (number: number) => `${visits(number)} still being taken up; the list fills by itself.`,
  more: (number: number) => `Show ${number} more`,
  choice: (name: string, number: number) => (number === 0 ? name : `${name} (${number})`),
  fleet: 'All visits together',
  fault: (id: string) => nameIn(FAULTS_BY_ID, id),
  partName: (id: string) => nameIn(PARTS_BY_ID, id),
  found: (fault: string, certainty: number) => `${nameIn(FAULTS_BY_ID, fault)}, ${showPercent(certainty)}`,
  likeliest: (fault: string, certainty: number) =>
    `no finding; likeliest ${nameIn(FAULTS_BY_ID, fault)}, ${showPercent(certainty)}`,
  nothingFound: 'no finding',
  done: (parts: readonly string[], works: readonly string[]) =>
    [...parts.map((part) => nameIn(PARTS_BY_ID, part)), ...works.map((work) => workWords(work as never))].join(', '),
  nothingDone: 'nothing fitted or mended',
  before: (number: number, serial: string) =>
    `${number === 1 ? '1 visit' : `${number} visits`} at ${serial === '' ? 'this site' : 'this unit'} in the 90 days before`,
  cautions: (number: number) => `${number} ${number === 1 ? 'caution' : 'cautions'} not acknowledged`,
  unproven: (number: number) => `${number} × work not proven dead`,
  trainee: 'trainee',
} as const;

/** All visits together. */
export const FLEET = {
  title: 'All visits together',
  count: (number: number) => `${visits(number)} counted`,
  from: 'Opened from',
  until: 'until',
  reading: 'Counting…',
  csv: 'Take away as CSV',
  none: 'There is nothing to count yet.',
  chart: (title: string) => `${title}: a bar a row; the table holds the same`,
  tables: {
    findings: 'What was found',
    parts: 'What was fitted',
    ages: 'Age of the unit',
    months: 'Month of the year',
    repeats: 'Followed by another visit within 90 days, by what was found',
    units: 'Units visited more than once',
    steps: 'How long a step takes',
    misheard: 'What is misheard most',
    'set-right': 'What is set right most',
  },
  columns: {
    finding: 'Finding',
    part: 'Part',
    age: 'Years since it was made',
    month: 'Month',
    unit: 'Serial number or site',
    step: 'Step',
    words: 'Words',
    place: 'Place',
    visits: 'Visits',
    share: 'Share',
    'median-certainty': 'Certainty, median',
    fitted: 'Times fitted',
    repeated: 'Followed by another',
    times: 'Times',
    'median-minutes': 'Minutes, median',
    'nine-in-ten-minutes': 'Minutes, nine in ten below',
  },
  notes: {
    ages: 'The year comes from the plate or the opening of a visit; of most units it is not known.',
    steps: 'From the moment a step is asked until the next one, whatever came in between.',
    misheard: 'Heard, and asked back or not believed. The words are as they were heard.',
    'set-right': 'Readings whose value was corrected afterwards.',
  },
  noFinding: 'none stated',
  step: (id: string) => capital(stepName(id)),
  unknown: 'not known',
  /** Two thousand and one began on a Monday: any year names the months. */
  month: (number: string) =>
    new Date(Date.UTC(2001, Number(number) - 1, 15)).toLocaleDateString('en', { month: 'long', timeZone: 'UTC' }),
} as const;
