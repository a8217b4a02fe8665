import type { VisitSummary } from '../../../grammar/visit/events.ts';
import type { FittedPart, LoggedReading, VisitContext } from '../chart/context.ts';
import { ISOLATION_PLACES } from '../rules/isolation-places.ts';
import { missingOfRefrigerant, type RefrigerantStep } from '../rules/refrigerant-work.ts';
import { PLAIN_WORDS } from '../words/plain-words.ts';
import {
  capital,
  faultWords,
  itemWords,
  partWords,
  placeWords,
  readbackWords,
  valueWords,
  wireWords,
} from '../words/prompts.ts';
import { percent } from './answer-status.ts';
import { unfitting } from './take-answer.ts';

/** A finding below this is told to the customer as the likeliest cause, not as the cause. The diagnosis' own bound. */
const SURE = 0.95;

/** What optional steps ask for, as open words when they were passed by. */
const NOT_RECORDED: Readonly<Record<string, string>> = {
  'arrive.consent': 'consent to the work',
  'arrive.nameplate': 'nameplate',
  'arrive.meter': 'category of the meter',
};

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
    ...context.items.map((item) => `${capital(itemWords(item))}.`),
    ...(missing.length === 0 ? [] : [`Not recorded on arrival: ${missing.map(([, words]) => words).join(', ')}.`]),
    ...context.readings.map(readingLine),
    ...findingLine(context),
    ...context.wires.map((wire) => `${capital(wireWords(wire))}.`),
    ...context.parts.map(repairLine),
    ...pairs(context),
    ...context.recommendations.map((text) => `Recommended: ${text}.`),
  ];
}

function repairLine({ part, work, ratings, words, doubts }: FittedPart): string {
  if (work !== undefined) return `Done: ${words}.`;
  return `Fitted: ${[partWords(part, ratings), ...doubts].join('. ').replace(/\.?$/, '.')}`;
}

function readingLine({ number, reading, phase, judgedWord }: LoggedReading): string {
  return `${number}. ${phase}: ${readbackWords(reading)}${judgedWord === undefined ? '' : ` ${capital(judgedWord)}.`}`;
}

/** The finding with its doubt and the numbers of the readings that it stands on. */
function findingLine(context: VisitContext): readonly string[] {
  const { finding } = context;
  if (finding === undefined) return ['Finding: none.'];
  const numbers = unfitting(context);
  const evidence =
    numbers.length === 0 ? 'no reading out of its band' : `readings ${numbers.join(', ')} out of their bands`;
  return [`Finding: ${faultWords(finding.fault)}, ${percent(finding.probability)}; ${evidence}.`];
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
    if (before === undefined) return [];
    const was = valueWords(before.reading.value, before.reading.unit);
    return [`Before and after, ${placeWords(reading.at)}: ${was}, then ${valueWords(reading.value, reading.unit)}.`];
  });
}

/** For the customer: what was found and how sure that is, what was done, what was measured after it, what is advised. */
function plainWords(context: VisitContext): string {
  const { finding, parts, items, recommendations } = context;
  const proved = context.readings.filter((item) => item.phase === 'prove').length;
  const found =
    finding === undefined
      ? 'A fault was not proved on this visit.'
      : `What was measured points to this: ${PLAIN_WORDS[finding.fault]}.${finding.probability < SURE ? ' Other causes are not ruled out.' : ''}`;
  const done = items.includes('consent-refused') ? 'Work was declined.' : doneWords(parts);
  const after =
    parts.length === 0
      ? ''
      : proved === 0
        ? 'It was not measured again after that.'
        : `It was measured again after that: ${proved === 1 ? 'one reading' : `${proved} readings`} in the record.`;
  const advice = recommendations.length === 0 ? '' : `Recommended: ${recommendations.join('; ')}.`;
  return [found, done, after, advice].filter((part) => part !== '').join(' ');
}

/** Parts by their names, and what was done without one. */
function doneWords(parts: readonly FittedPart[]): string {
  const fitted = parts.filter(({ work }) => work === undefined).map(({ part }) => partWords(part, {}));
  const mended = parts.filter(({ work }) => work !== undefined).map(({ words }) => words);
  return [
    fitted.length > 0 ? `Fitted: ${fitted.join(', ')}.` : 'Nothing was fitted.',
    ...(mended.length > 0 ? [`Done: ${mended.join(', ')}.`] : []),
  ].join(' ');
}

/** Steps that were set aside and never answered, each once with how often. */
function parkedWords({ parked, settled }: VisitContext): readonly string[] {
  const steps = [...new Set(parked.map(({ step }) => step))];
  return steps
    .filter((step) => !step.startsWith('close.') && !settled.includes(step))
    .map((step) => {
      const times = parked.filter((one) => one.step === step);
      return `${step}: ${times.at(-1)?.why}${times.length === 1 ? '' : `, ${times.length} times`}`;
    });
}

/** What an opened circuit lacks, for whoever reads the open items. */
const REFRIGERANT_MISSING: Readonly<Record<RefrigerantStep, string>> = {
  recovered: 'the refrigerant recovered was not weighed',
  testStart: 'the opened circuit was not pressure tested',
  searched: 'a leak search was not reported',
  testEnd: 'the test pressure was not read again',
  evacuated: 'the circuit was not evacuated deep enough',
  isolated: 'the vacuum was not valved off to stand',
  decay: 'the vacuum was not read again after standing',
  charged: 'the refrigerant put in was not weighed',
};

function openItems(context: VisitContext, left: readonly string[]): readonly string[] {
  const { settled, items, signed, parts } = context;
  const proved = context.readings.some((item) => item.phase === 'prove');
  const unsigned = (who: 'technician' | 'customer') =>
    signed[who] === undefined && !(who === 'customer' && items.includes('customer-not-present'));
  return [
    ...left,
    ...(parts.length > 0 && !proved ? ['the repair was not proved by readings'] : []),
    ...ISOLATION_PLACES.filter((place) => context.isolation[place] === 'open').map(
      (place) => `the switch at the ${place.replace('-', ' ')} was left open`,
    ),
    ...missingOfRefrigerant(context).map((name) => REFRIGERANT_MISSING[name]),
    ...(settled.includes('energy.covers-on') ? [] : ['covers were not reported back on']),
    ...(items.includes('thermostat-as-agreed') ? [] : ['the thermostat was not reported as agreed']),
    ...parts.flatMap((part) => part.doubts.map((doubt) => `${part.part}: ${doubt}`)),
    ...parkedWords(context),
    ...(unsigned('technician') ? ['the technician has not signed'] : []),
    ...(unsigned('customer') ? ['the customer has not signed'] : []),
  ];
}
