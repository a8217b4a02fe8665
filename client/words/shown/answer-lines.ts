import { cautionsTold } from '../../../grammar/visit/cautions-told.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { isDeclined } from '../../../grammar/visit/standing.ts';
import { capital } from '../capital.ts';
import { STANDS_OUT } from '../talk/summary-words.ts';
import { exclusionWords } from '../things/exclusion-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { workWords } from '../things/job-words.ts';
import { showLikely, showPercent } from './show-likely.ts';
import { showPart } from './show-part.ts';

/** The five questions of the first screen of a review. */
export const ANSWERS = {
  title: 'The visit in short',
  questions: {
    wrong: 'What was wrong',
    sure: 'How sure',
    done: 'What was done',
    cools: 'Does it cool',
    rightly: 'Was it done rightly',
  },
} as const;

export interface Answer {
  readonly id: keyof typeof ANSWERS.questions;
  readonly question: string;
  readonly answer: string;
  readonly details: readonly string[];
  /** Somebody may have been in danger. */
  readonly danger: boolean;
}

const count = (number: number, one: string, more: string) => `${number} ${number === 1 ? one : more}`;

/** Answers as far as the record holds them: nothing is judged anew, and nothing is called safe. */
export function answersOf(folded: FoldedVisit): readonly Answer[] {
  const of = (id: Answer['id'], [answer, ...details]: readonly string[], danger = false): Answer => ({
    id,
    question: ANSWERS.questions[id],
    answer: answer ?? '',
    details: details.filter((detail) => detail !== ''),
    danger,
  });
  return [
    of('wrong', wrong(folded)),
    of('sure', sure(folded)),
    of('done', done(folded)),
    of('cools', cools(folded)),
    of('rightly', rightly(folded), folded.unproven.length + folded.injuries.length + folded.earlyStarts.length > 0),
  ];
}

function wrong({ finding, suspects }: FoldedVisit): readonly string[] {
  const likeliest = suspects.at(-1)?.suspects ?? [];
  if (finding === undefined) {
    return [
      'No fault was stated',
      likeliest.length === 0 ? '' : `likeliest: ${likeliest.slice(0, 2).map(showLikely).join(', ')}`,
    ];
  }
  if (finding.probability < STANDS_OUT) return ['No fault stood out', `likeliest: ${faultWords(finding.fault)}`];
  return [capital(faultWords(finding.fault))];
}

function sure({ finding, readings, contradictions }: FoldedVisit): readonly string[] {
  if (finding === undefined) return ['–', 'nothing was stated that could be sure'];
  const { fault, probability, evidence, unproved = [] } = finding;
  const rests = readings.filter(({ number }) => evidence.includes(number)).length;
  return [
    probability > 0.99 ? 'More than 99 %' : showPercent(probability),
    `by the model that weighs the readings; on ${rests === 0 ? 'all that was read and seen together' : count(rests, 'reading', 'readings')}`,
    unproved.length === 0 ? '' : `by exclusion: ${exclusionWords(fault, unproved)}`,
    contradictions.length === 0 ? '' : count(contradictions.length, 'contradiction', 'contradictions'),
  ];
}

function done(folded: FoldedVisit): readonly string[] {
  const { parts, works } = folded;
  const all = [
    ...parts.map(({ part, ratings }) => `${part === 'refrigerant' ? 'added' : 'fitted'} ${showPart(part, ratings)}`),
    ...works.map(({ work }) => workWords(work)),
  ].map(capital);
  const declined = isDeclined(folded) ? 'the customer declined the work' : '';
  return all.length === 0 ? ['Nothing was fitted or mended', declined] : [...all, declined];
}

function cools({ split, charge }: FoldedVisit): readonly string[] {
  const figures = charge
    .slice(-2)
    .map(({ figure, value, judged }) => `${figure.replaceAll('-', ' ')} ${value} °F: ${judged?.word ?? 'no verdict'}`);
  if (split === undefined) return ['Not shown by readings', ...figures];
  const { word, minutes, band } = split;
  return [
    `${word === 'fits' ? 'It cools' : capital(word)}: ${split.split} °F colder`,
    `after ${minutes} minutes; ${band.low} to ${band.high} °F wanted`,
    ...figures,
  ];
}

function rightly(folded: FoldedVisit): readonly string[] {
  const { unproven, cautions, injuries, overrides, refused, earlyStarts, unanswered, proofs, parked } = folded;
  const told = cautionsTold(cautions, ({ acknowledgedAt }) => acknowledgedAt !== undefined);
  const unheeded = told.filter(({ open }) => open).length;
  const late = told.filter(({ lines }) => lines.some((line) => line.late)).length;
  const against = [
    [injuries.length, 'injury', 'injuries'],
    [unproven.length, 'time in a zone not proven dead', 'times in zones not proven dead'],
    [earlyStarts.length, 'start too early for the refrigerant circuit', 'starts too early for the refrigerant circuit'],
    [unheeded, 'caution not acknowledged', 'cautions not acknowledged'],
    [late, 'caution told late', 'cautions told late'],
    [overrides.length, 'close with something left', 'closes with something left'],
    [unanswered.length, 'check without an answer', 'checks without an answer'],
  ] as const;
  const found = against.filter(([number]) => number > 0).map(([number, one, more]) => count(number, one, more));
  const beside = [
    `${count(told.length - unheeded, 'caution', 'cautions')} acknowledged`,
    `${count(proofs.filter(({ result }) => result === 'reads dead').length, 'proof', 'proofs')} of absence`,
    refused.length === 0 ? '' : `${count(refused.length, 'reading', 'readings')} refused`,
    parked.length === 0 ? '' : `${count(parked.length, 'step', 'steps')} set aside`,
  ];
  if (found.length > 0) return [...found, ...beside];
  return [
    folded.summary === undefined ? 'Nothing against it so far' : 'Nothing in the record speaks against it',
    ...beside,
  ];
}
