import type { ChargeFigure, Judged, NoVerdict } from '../../../grammar/visit/events.ts';
import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { judgeReading, meterError } from '../../../grammar/visit/judge-reading.ts';
import { latestReading, standingReadings } from '../../../grammar/visit/standing.ts';
import { inBaseUnit } from '../../../grammar/vocabulary/in-base-unit.ts';
import { inFahrenheit } from '../../../grammar/vocabulary/in-fahrenheit.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import type { RefrigerantId } from '../../../grammar/vocabulary/unit-profile.ts';
import { DiagnosisError } from '../../diagnosis/errors.ts';
import {
  type Locality,
  type RunningConditions,
  refusal,
  subcooling,
  superheat,
  targetSuperheat,
} from '../../diagnosis/refrigerant/charge-checks.ts';
import { chargeWords, noChargeWords } from '../../words/talk/charge-words.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';

/** Target superheat ±5 °F for a fixed orifice (CEC RA3.2.2.6, 2008 appendices); the target by rule of thumb. */
const ORIFICE_TOLERANCE = 5;
const ORIFICE_SOURCE =
  'fixed orifice: target (3 x indoor wet bulb - 80 - outdoor)/2, rule of thumb; within 5 degrees of it: CEC RA3.2.2.6 (2008)';
/** Condensing over outdoor air, °F: by efficiency class, common practice. */
const CONDENSING_BAND = { low: 15, high: 30 };
const CONDENSING_SOURCE = 'condensing 15 to 30 degrees over outdoor air by efficiency class: common practice';
/** Below this the liquid line holds vapor and shows no subcooling, °F: within what two instruments differ by. */
const LEAST_SUBCOOLING = -1;

/** A pressure and a line temperature that make a figure of the charge. */
interface Pair {
  readonly figure: ChargeFigure;
  readonly pressure: ReadingLine;
  readonly other: ReadingLine;
}

/**
 * Works out superheat, subcooling and condensing over ambient once the readings they stand on are there, and judges
 * them only inside their validity: the unit running long enough, outdoors warm enough, its target known.
 */
export function judgeCharge(turn: Turn): void {
  const latest = latestReading(turn.context);
  if (latest === undefined) return;
  const said = pairsOf(turn.context)
    .filter(({ pressure, other }) => pressure === latest || other === latest)
    .map((pair) => judgePair(turn, pair))
    .filter((words) => words !== '');
  if (said.length > 0) turn.say('answer', said.join(' '));
}

function pairsOf(context: VisitContext): readonly Pair[] {
  const suction = lastOf(context, 'pressure', 'suction-port');
  const liquid = lastOf(context, 'pressure', 'liquid-port');
  const pair = (figure: ChargeFigure, pressure: ReadingLine | undefined, other: ReadingLine | undefined) =>
    pressure === undefined || other === undefined ? [] : [{ figure, pressure, other }];
  return [
    ...pair('superheat', suction, lastOf(context, 'temperature', 'suction-line')),
    ...pair('subcooling', liquid, lastOf(context, 'temperature', 'liquid-line')),
    ...pair('condensing-over-ambient', liquid, lastOf(context, 'temperature', 'outdoor-air')),
  ];
}

/** Figures before the repair and after it are never mixed; the outdoor air of this visit serves both. */
function lastOf(context: VisitContext, quantity: QuantityId, place: PointId): ReadingLine | undefined {
  const ofProof = latestReading(context)?.under.phase === 'prove';
  return standingReadings(context).findLast(
    ({ reading, under }) =>
      reading.quantity === quantity &&
      reading.at[0] === place &&
      typeof reading.value === 'number' &&
      (place === 'outdoor-air' || place === 'return-air' || (under.phase === 'prove') === ofProof),
  );
}

function judgePair(turn: Turn, pair: Pair): string {
  const { context } = turn;
  const { figure, pressure, other } = pair;
  const refrigerant = context.unit.refrigerant;
  if (refrigerant === undefined) return noChargeWords(figure, 'refrigerant-unknown');
  const value = figureOf(pair, refrigerant, context);
  if (value === undefined) return noChargeWords(figure, 'out-of-range');
  const conditions = conditionsOf(context, pair);
  const verdict = verdictOn(figure, value, conditions, context);
  const withheld = typeof verdict === 'string';
  turn.record({
    type: 'charge.judged',
    figure,
    value,
    refrigerant,
    readings: [pressure.number, other.number],
    minutes: Math.round(conditions.minutesRunning),
    ...(withheld ? { noVerdict: verdict } : { judged: verdict }),
  });
  return chargeWords(figure, value, withheld ? verdict : verdict.word, context.units);
}

/** °F, to a tenth; undefined outside the refrigerant's equation, which is never stretched. */
function figureOf({ figure, pressure, other }: Pair, fluid: RefrigerantId, context: VisitContext): number | undefined {
  const psi = inBaseUnit(pressure.reading);
  if (psi === undefined) return undefined;
  const degrees = fahrenheit(other);
  const feet = context.unit.altitudeFeet;
  const place: Locality = feet === undefined ? {} : { altitudeFeet: feet };
  try {
    // Bubble point less the liquid line is subcooling; less the outdoor air it is condensing over ambient.
    return tenth((figure === 'superheat' ? superheat : subcooling)(fluid, psi, degrees, place));
  } catch (error) {
    if (error instanceof DiagnosisError) return undefined;
    throw error;
  }
}

function verdictOn(figure: ChargeFigure, value: number, now: Conditions, context: VisitContext): Judged | NoVerdict {
  if (now.outdoor === undefined) return 'outdoor-unknown';
  const refused = refusal({ ...now, outdoor: now.outdoor });
  if (refused !== undefined) return refused;
  switch (figure) {
    case 'condensing-over-ambient':
      return inBand(value, CONDENSING_BAND, 'condensing-over-ambient', CONDENSING_SOURCE, 'practice');
    case 'subcooling':
      return value < LEAST_SUBCOOLING ? 'mixed-line' : (byRule('liquid-line', value, context) ?? 'no-target');
    case 'superheat':
      return context.unit.metering === 'fixed-orifice'
        ? againstTarget(value, now.outdoor, context)
        : (byRule('suction-line', value, context) ?? 'no-target');
  }
}

function againstTarget(value: number, outdoor: number, context: VisitContext): Judged | NoVerdict {
  const wetBulb = lastOf(context, 'wet-bulb', 'return-air');
  if (wetBulb === undefined) return 'no-target';
  const target = targetSuperheat(fahrenheit(wetBulb), outdoor);
  if (!target.valid) return target.reason;
  const band = { low: target.value - ORIFICE_TOLERANCE, high: target.value + ORIFICE_TOLERANCE };
  return inBand(value, band, 'superheat-orifice', ORIFICE_SOURCE, 'published');
}

/** The rules table judges what the meter could as well have shown by itself. */
function byRule(place: PointId, value: number, context: VisitContext): Judged | undefined {
  return judgeReading(
    { quantity: 'difference', at: [place], value, unit: '[degF]' },
    { power: 'on', call: context.call, phase: context.phase },
    context.unit,
  );
}

function inBand(
  value: number,
  band: { readonly low: number; readonly high: number },
  rule: string,
  source: string,
  tag: Judged['tag'],
): Judged {
  const guard = meterError('difference', value);
  const outside = Math.max(band.low - value, value - band.high);
  const word = outside > guard ? 'does not fit' : outside > -guard ? 'marginal' : 'fits';
  return { word, rule, band, source, tag };
}

type Conditions = Omit<RunningConditions, 'outdoor'> & { readonly outdoor: number | undefined };

/** The earlier of the two readings counts: both must lie late enough in the run. */
function conditionsOf(context: VisitContext, { pressure, other }: Pair): Conditions {
  const { runningSince } = context;
  const air = lastOf(context, 'temperature', 'outdoor-air');
  // Outdoor air hardly moves within a visit: when it was read does not count.
  const { mono } = pressure.time;
  const read = Math.min(mono, other.reading.at[0] === 'outdoor-air' ? mono : other.time.mono);
  return {
    running: runningSince !== undefined,
    minutesRunning: runningSince === undefined ? 0 : Math.max(0, read - runningSince) / MS_A_MINUTE,
    outdoor: air === undefined ? undefined : fahrenheit(air),
  };
}

/** Of readings that lastOf has found: they hold a number. */
function fahrenheit({ reading }: ReadingLine): number {
  return inFahrenheit(reading) as number;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
