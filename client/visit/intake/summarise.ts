import type { VisitSummary } from '../../../grammar/visit/events.ts';
import type { PartLine, ReadingLine, WorkLine } from '../../../grammar/visit/facts.ts';
import {
  coversOff,
  hasItem,
  isDeclined,
  leadsOff,
  partsOut,
  repairsMade,
  standingReadings,
  wireMoves,
} from '../../../grammar/visit/standing.ts';
import { ISOLATION_PLACES } from '../../../grammar/vocabulary/isolation-places.ts';
import { PLATE_LINES, type PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import type { FittedPartId } from '../../../grammar/vocabulary/parts.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { plateMissing } from '../../words/talk/plate-words.ts';
import { WORDS_UNSURE } from '../../words/talk/reasons.ts';
import { earlyWords } from '../../words/talk/refrigerant-words.ts';
import { NOT_RECORDED, OPEN, PLAIN, STANDS_OUT, TECHNICAL } from '../../words/talk/summary-words.ts';
import { placeWords } from '../../words/things/place-words.ts';
import type { VisitContext } from '../chart/context.ts';
import { isOpened, provedWith, TAKEN_OFF } from '../rules/isolation.ts';
import { missingOfRefrigerant } from '../rules/refrigerant-plan.ts';
import { PLATE, plateStep } from '../steps/plate-steps.ts';
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

/** Words that were guessed are told to nobody. */
function sureWords({ text, guessed }: VisitContext['recommendations'][number]): string {
  return guessed === true ? WORDS_UNSURE : text;
}

function notRecorded({ passedBy, plate }: VisitContext): readonly string[] {
  const passed = PLATE_FIELDS.filter((field) => passedBy.includes(plateStep(field)));
  return Object.entries(NOT_RECORDED).flatMap(([id, words]) => {
    if (id === PLATE) return plateMissing(passed, Object.keys(plate).length > 0);
    return passedBy.includes(id) ? [words] : [];
  });
}

const PLATE_FIELDS: readonly PlateField[] = PLATE_LINES.flat();

function technicalLines(context: VisitContext): readonly string[] {
  const missing = notRecorded(context);
  return [
    ...context.items.map(({ item }) => TECHNICAL.item(item)),
    ...(missing.length === 0 ? [] : [TECHNICAL.notRecorded(missing)]),
    ...standingReadings(context).map(readingLine),
    findingLine(context),
    ...wireMoves(context).map(TECHNICAL.wire),
    ...repairsMade(context).map(repairLine),
    ...pairs(context),
    ...context.recommendations.map((line) => TECHNICAL.recommended(sureWords(line))),
  ];
}

function repairLine(line: PartLine | WorkLine): string {
  return 'part' in line
    ? TECHNICAL.fitted(line.part as FittedPartId, line.ratings, line.doubts)
    : TECHNICAL.done(line.words);
}

function readingLine({ number, reading, under, judged }: ReadingLine): string {
  return TECHNICAL.reading(number, under.phase, reading, judged?.word);
}

function findingLine(context: VisitContext): string {
  const { finding } = context;
  if (finding === undefined) return TECHNICAL.noFinding;
  return TECHNICAL.finding(finding.fault, finding.probability, unfitting(context));
}

/** The same place read before the repair and in its proof, side by side. */
function pairs(context: VisitContext): readonly string[] {
  const readings = standingReadings(context);
  const after = readings.filter((item) => item.under.phase === 'prove');
  return after.flatMap(({ reading }) => {
    const before = readings.find(
      (item) =>
        item.under.phase !== 'prove' &&
        item.reading.quantity === reading.quantity &&
        placeWords(item.reading.at) === placeWords(reading.at),
    );
    return before === undefined ? [] : [TECHNICAL.beforeAndAfter(before.reading, reading)];
  });
}

/** For the customer: what was found and how sure that is, what was done, what was measured after it, what is advised. */
function plainWords(context: VisitContext): string {
  const { recommendations } = context;
  const repairs = repairsMade(context);
  const proved = standingReadings(context).filter((item) => item.under.phase === 'prove').length;
  const after = proved === 0 ? PLAIN.notMeasured : PLAIN.measured(proved);
  return [
    foundWords(context),
    ...(isDeclined(context) ? [PLAIN.declined] : doneWords(repairs)),
    ...(repairs.length === 0 ? [] : [after]),
    ...(recommendations.length === 0 ? [] : [PLAIN.recommended(recommendations.map(sureWords))]),
  ].join(' ');
}

function foundWords({ finding }: VisitContext): string {
  if (finding === undefined) return PLAIN.noFault;
  return finding.probability < STANDS_OUT
    ? PLAIN.noneStoodOut
    : PLAIN.found(finding.fault, finding.probability >= SURE);
}

/** Parts by their names, and what was done without one. */
function doneWords(repairs: readonly (PartLine | WorkLine)[]): readonly string[] {
  const fitted = repairs.flatMap((line) => ('part' in line ? [line.part as FittedPartId] : []));
  const mended = repairs.flatMap((line) => ('part' in line ? [] : [line.words]));
  return [PLAIN.fitted(fitted), ...(mended.length > 0 ? [PLAIN.done(mended)] : [])];
}

/** Steps that were set aside and never answered, each once with how often. */
function parkedWords({ parked, settled }: VisitContext): readonly string[] {
  const steps = [...new Set(parked.map(({ step }) => step))];
  return steps
    .filter((step) => !step.startsWith('close.') && !settled.includes(step))
    .map((step) => {
      const times = parked.filter((one) => one.step === step);
      return OPEN.parked(times.at(-1)?.words ?? step, times.at(-1)?.why, times.length);
    });
}

/** Zones that were taken off and not reported back, where no switch tells it. */
function leftOff(context: VisitContext): readonly ZoneId[] {
  return ZONES.filter(
    (zone) => provedWith(zone) === zone && TAKEN_OFF.includes(context.energy[zone]) && !isOpened(zone, context),
  );
}

function openItems(context: VisitContext, left: readonly string[]): readonly string[] {
  const { settled, signatures, parts } = context;
  const proved = standingReadings(context).some((item) => item.under.phase === 'prove');
  const unsigned = (who: 'technician' | 'customer') =>
    !signatures.some((one) => one.who === who) && !(who === 'customer' && hasItem(context, 'customer-not-present'));
  return [
    ...left,
    ...(repairsMade(context).length > 0 && !proved ? [OPEN.notProved] : []),
    ...ISOLATION_PLACES.filter((place) => context.isolation[place] === 'open').map(OPEN.switchOpen),
    ...leftOff(context).map(OPEN.zoneOff),
    ...leadsOff(context).map(OPEN.leadsOff),
    ...coversOff(context).map(OPEN.coverOff),
    ...partsOut(context).map(OPEN.partOut),
    ...missingOfRefrigerant(context).map((name) => OPEN.refrigerant[name]),
    ...new Set(context.earlyStarts.map(({ how, lacks }) => earlyWords(how, lacks))),
    ...context.waiting.map(({ words }) => OPEN.waiting(words)),
    ...(settled.includes('energy.covers-on') ? [] : [OPEN.covers]),
    ...(hasItem(context, 'thermostat-as-agreed') ? [] : [OPEN.thermostat]),
    ...parts.flatMap((part) => part.doubts.map((doubt) => OPEN.doubted(part.part as FittedPartId, doubt))),
    ...parkedWords(context),
    ...(['technician', 'customer'] as const).filter(unsigned).map((who) => OPEN.unsigned[who]),
  ];
}
