import type { VisitSummary } from '../../../grammar/visit/events.ts';
import { NOT_RECORDED, OPEN, PLAIN, TECHNICAL } from '../../words/talk/summary-words.ts';
import { placeWords } from '../../words/things/place-words.ts';
import type { FittedPart, LoggedReading, VisitContext } from '../chart/context.ts';
import { ISOLATION_PLACES } from '../rules/isolation-places.ts';
import { missingOfRefrigerant } from '../rules/refrigerant-work.ts';
import { unfitting } from './take-answer.ts';

/** A finding below this is told to the customer as the likeliest cause, not as the cause. The diagnosis' own bound. */
const SURE = 0.95;

/** The visit in two forms: for the next technician with its evidence, for the customer in plain words. */
export function summarise(context: VisitContext, left: readonly string[]): VisitSummary {
  return {
    finding: context.finding?.fault ?? 'none',
    technical: technicalLines(context),
    plain: plainWords(context),
    openItems: openItems(context, left),
  };
}

function technicalLines(context: VisitContext): readonly string[] {
  const missing = Object.entries(NOT_RECORDED).filter(([id]) => context.passedBy.includes(id));
  return [
    ...context.items.map(TECHNICAL.item),
    ...(missing.length === 0 ? [] : [TECHNICAL.notRecorded(missing.map(([, words]) => words))]),
    ...context.readings.map(readingLine),
    findingLine(context),
    ...context.wires.map(TECHNICAL.wire),
    ...context.parts.map(repairLine),
    ...pairs(context),
    ...context.recommendations.map(TECHNICAL.recommended),
  ];
}

function repairLine({ part, work, ratings, words, doubts }: FittedPart): string {
  return work === undefined ? TECHNICAL.fitted(part, ratings, doubts) : TECHNICAL.done(words);
}

function readingLine({ number, reading, phase, judgedWord }: LoggedReading): string {
  return TECHNICAL.reading(number, phase, reading, judgedWord);
}

function findingLine(context: VisitContext): string {
  const { finding } = context;
  if (finding === undefined) return TECHNICAL.noFinding;
  return TECHNICAL.finding(finding.fault, finding.probability, unfitting(context));
}

/** The same place read before the repair and in its proof, side by side. */
function pairs(context: VisitContext): readonly string[] {
  const after = context.readings.filter((item) => item.phase === 'prove');
  return after.flatMap(({ reading }) => {
    const before = context.readings.find(
      (item) =>
        item.phase !== 'prove' &&
        item.reading.quantity === reading.quantity &&
        placeWords(item.reading.at) === placeWords(reading.at),
    );
    return before === undefined ? [] : [TECHNICAL.beforeAndAfter(before.reading, reading)];
  });
}

/** For the customer: what was found and how sure that is, what was done, what was measured after it, what is advised. */
function plainWords(context: VisitContext): string {
  const { finding, parts, items, recommendations } = context;
  const proved = context.readings.filter((item) => item.phase === 'prove').length;
  const after = proved === 0 ? PLAIN.notMeasured : PLAIN.measured(proved);
  return [
    finding === undefined ? PLAIN.noFault : PLAIN.found(finding.fault, finding.probability >= SURE),
    ...(items.includes('consent-refused') ? [PLAIN.declined] : doneWords(parts)),
    ...(parts.length === 0 ? [] : [after]),
    ...(recommendations.length === 0 ? [] : [PLAIN.recommended(recommendations)]),
  ].join(' ');
}

/** Parts by their names, and what was done without one. */
function doneWords(parts: readonly FittedPart[]): readonly string[] {
  const fitted = parts.filter(({ work }) => work === undefined).map(({ part }) => part);
  const mended = parts.filter(({ work }) => work !== undefined).map(({ words }) => words);
  return [PLAIN.fitted(fitted), ...(mended.length > 0 ? [PLAIN.done(mended)] : [])];
}

/** Steps that were set aside and never answered, each once with how often. */
function parkedWords({ parked, settled }: VisitContext): readonly string[] {
  const steps = [...new Set(parked.map(({ step }) => step))];
  return steps
    .filter((step) => !step.startsWith('close.') && !settled.includes(step))
    .map((step) => {
      const times = parked.filter((one) => one.step === step);
      return OPEN.parked(step, times.at(-1)?.why, times.length);
    });
}

function openItems(context: VisitContext, left: readonly string[]): readonly string[] {
  const { settled, items, signed, parts } = context;
  const proved = context.readings.some((item) => item.phase === 'prove');
  const unsigned = (who: 'technician' | 'customer') =>
    signed[who] === undefined && !(who === 'customer' && items.includes('customer-not-present'));
  return [
    ...left,
    ...(parts.length > 0 && !proved ? [OPEN.notProved] : []),
    ...ISOLATION_PLACES.filter((place) => context.isolation[place] === 'open').map(OPEN.switchOpen),
    ...missingOfRefrigerant(context).map((name) => OPEN.refrigerant[name]),
    ...(settled.includes('energy.covers-on') ? [] : [OPEN.covers]),
    ...(items.includes('thermostat-as-agreed') ? [] : [OPEN.thermostat]),
    ...parts.flatMap((part) => part.doubts.map((doubt) => OPEN.doubted(part.part, doubt))),
    ...parkedWords(context),
    ...(['technician', 'customer'] as const).filter(unsigned).map((who) => OPEN.unsigned[who]),
  ];
}
