import { cautionsTold } from '../../grammar/visit/cautions-told.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { type FoldedVisit, type VisitFolding, visitFolding } from '../../grammar/visit/fold-visit.ts';
import { MS_A_MINUTE } from '../../grammar/visit/inputs.ts';
import { NOT_READABLE } from '../../grammar/visit/personal.ts';
import { FAULTS_BY_ID } from '../../grammar/vocabulary/faults.ts';
import { pairName } from '../../grammar/vocabulary/pairs.ts';
import { PARTS_BY_ID } from '../../grammar/vocabulary/parts.ts';
import { POINTS_BY_ID } from '../../grammar/vocabulary/points.ts';
import { nameIn } from '../../grammar/vocabulary/rows-by.ts';
import { UNITS_BY_CODE } from '../../grammar/vocabulary/units.ts';
import { WORKS_BY_ID } from '../../grammar/vocabulary/works.ts';
import type { VisitBrief } from '../store/visit-index.ts';

/** What the store tells of a visit beside its events. */
export interface HeldVisit {
  readonly visit: string;
  readonly device: string;
  readonly events: number;
  readonly said?: number;
  readonly lastReceivedAt: number;
}

/** Events are folded in pieces of so many, with a turn for others in between. */
const EVENTS_A_TURN = 250;
/** A note may hold 5,000 characters; what is searched of a visit ends somewhere. Characters. */
const MOST_WORDS = 200_000;
/** So many utterances of a visit are counted as misheard: a broken microphone must not be the whole fleet. */
const MOST_MISHEARD = 50;

/**
 * A visit's line in the list, by a fold over its events: nothing is judged anew.
 *
 * @param turn is awaited between pieces of the fold
 */
export async function summariseVisit(
  held: HeldVisit,
  events: readonly VisitEvent[],
  turn: () => Promise<unknown> = async () => undefined,
): Promise<VisitBrief> {
  const folding: VisitFolding = visitFolding();
  for (let at = 0; at < events.length; at += EVENTS_A_TURN) {
    folding.take(events.slice(at, at + EVENTS_A_TURN));
    await turn();
  }
  const folded = folding.view();
  // A remark is made whenever somebody reads, by another clock.
  const last = events.findLast(({ type }) => type !== 'remark.made');
  const ended = (last?.type === 'input.taken' ? last.input.time : last?.time)?.mono ?? 0;
  return { ...briefOf(held, folded, ended), words: `${held.visit}\n${wordsOf(folded)}` };
}

/** @param ended when its own last event was, by the visit's running clock in milliseconds */
function briefOf(held: HeldVisit, folded: FoldedVisit, ended: number): Omit<VisitBrief, 'words'> {
  const { first, finding, unit, plate } = folded;
  const likeliest = folded.suspects.at(-1)?.suspects[0];
  const claimed = first === undefined ? Number.NaN : Date.parse(first.time.at);
  const signed = folded.signatures.findLast(({ who }) => who === 'technician')?.name ?? '';
  const text = (field: string) => (plate[field] === undefined ? '' : String(plate[field]));
  return {
    ...held,
    openedAt: Number.isFinite(claimed) ? claimed : held.lastReceivedAt,
    closed: folded.summary !== undefined,
    role: folded.role,
    site: readable(folded.site),
    complaint: folded.complaint,
    model: text('model') || textIn(unit.model),
    serial: readable(text('serial') || textIn(unit.serial)),
    ...(isYear(unit.made) ? { made: unit.made } : {}),
    technician: signed === UNNAMED ? '' : signed,
    ...(finding === undefined ? {} : { finding: finding.fault, certainty: finding.probability }),
    ...(finding !== undefined || likeliest === undefined
      ? {}
      : { likeliest: likeliest.fault, certainty: likeliest.probability }),
    parts: folded.parts.map(({ part }) => part),
    works: folded.works.map(({ work }) => work),
    cautionsOpen: cautionsTold(folded.cautions, isAcknowledged).filter(({ open }) => open).length,
    unproven: folded.unproven.length,
    ...(folded.split === undefined ? {} : { cools: folded.split.word }),
    minutes: first === undefined ? 0 : minutesBetween(first.time.mono, ended),
    steps: stepsOf(folded, ended),
    misheard: folded.heard
      .filter(
        ({ understanding, accepted, became }) =>
          !accepted || (became !== 'taken' && NOT_TAKEN.has(understanding.verdict)),
      )
      .map(({ text: words }) => words.trim().toLowerCase())
      .filter((words) => words !== '')
      .slice(0, MOST_MISHEARD),
    setRight: folded.readings.flatMap(({ reading, corrected }) => corrected.map(() => reading.at.join(','))),
  };
}

const isAcknowledged = ({ acknowledgedAt }: FoldedVisit['cautions'][number]) => acknowledgedAt !== undefined;

/** As the device writes a signature that was spoken without a name. */
const UNNAMED = 'by voice';

/** What is inside a unit's profile is not looked at where a record is read: another program may have written it. */
const textIn = (value: unknown) => (typeof value === 'string' ? value : '');
const isYear = (value: unknown): value is number => Number.isInteger(value) && Number(value) > 1900;

/** Verdicts by which nothing was taken of what was heard. */
const NOT_TAKEN: ReadonlySet<string> = new Set(['asked', 'rejected']);

/** A step lasts until the next is asked, or the visit's last event. */
function stepsOf({ steps }: FoldedVisit, ended: number): VisitBrief['steps'] {
  return steps.map(({ step, time }, at) => ({
    step,
    minutes: minutesBetween(time.mono, steps[at + 1]?.time.mono ?? ended),
  }));
}

/** A clock that went back tells nothing. */
const minutesBetween = (from: number, to: number) => Math.max(0, Math.round((to - from) / (MS_A_MINUTE / 10)) / 10);

/** All that was said, written, found and fitted, for the search. */
function wordsOf(folded: FoldedVisit): string {
  const { finding, summary } = folded;
  const faults = [
    ...(finding === undefined ? likeliestOf(folded) : [finding.fault]),
    ...folded.works.flatMap(({ repairs }) => repairs),
  ];
  const texts = [
    folded.site,
    folded.complaint,
    textIn(folded.unit.id),
    textIn(folded.unit.model),
    textIn(folded.unit.serial),
    ...folded.nameplate.map(({ value }) => String(value)),
    ...faults.map((fault) => nameIn(FAULTS_BY_ID, fault)),
    ...folded.parts.flatMap(({ part, words }) => [nameIn(PARTS_BY_ID, part), words]),
    ...folded.works.flatMap(({ work, words }) => [nameIn(WORKS_BY_ID, work), words]),
    ...folded.signatures.map(({ name }) => name),
    ...folded.heard.map(({ text }) => text),
    ...folded.notes.map(({ text }) => text),
    ...folded.recommendations.map(({ text }) => text),
    ...folded.remarks.map(({ text }) => text),
    ...(summary === undefined ? [] : [summary.plain, ...summary.technical, ...summary.openItems]),
    ...new Set(folded.readings.flatMap(({ reading, corrected }) => [reading, ...corrected].map(readingText))),
  ];
  return texts.join('\n').slice(0, MOST_WORDS);
}

/** The likeliest suspect, as the list shows it where nothing was stated. */
function likeliestOf({ suspects }: FoldedVisit): readonly string[] {
  const [likeliest] = suspects.at(-1)?.suspects ?? [];
  return likeliest === undefined ? [] : [likeliest.fault];
}

/** A reading by its place, with the marks on the terminals and in words, and by its value with its unit. */
function readingText({ at, value, unit }: FoldedVisit['readings'][number]['reading']): string {
  const places = at.map((point) => `${point} ${nameIn(POINTS_BY_ID, point)}`);
  const sign = Object.hasOwn(UNITS_BY_CODE, unit) ? UNITS_BY_CODE[unit].sign : unit;
  return [pairName(at, 'shown') ?? '', ...places, value === 'open' ? 'open line' : `${value} ${sign}`].join(' ');
}

/** What was erased tells no visits apart, and none together. */
function readable(text: string): string {
  return text === NOT_READABLE ? '' : text;
}
