import { latestReading, standingReadings } from '../../../grammar/visit/standing.ts';
import { inFahrenheit } from '../../../grammar/vocabulary/in-fahrenheit.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { degreesChosen } from '../../words/things/chosen-words.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { minutesRunning } from '../steps/choose-step.ts';
import { SPLIT_AFTER_MINUTES } from '../steps/plans.ts';

/** Dry-bulb drop across the indoor coil, in Fahrenheit degrees: common practice; less when humid, more when dry. */
const SPLIT_BAND = { low: 16, high: 22 };
const SPLIT_SOURCE =
  'temperature split 16 to 22 degrees Fahrenheit dry bulb: common practice; after 15 minutes running: CEC RA3.2.2';

/** Judges the temperature split once return and supply air were both read in the proof, after long enough running. */
export function judgeSplit(turn: Turn): void {
  const { context } = turn;
  const latest = latestReading(context)?.reading.at[0];
  if (latest !== 'return-air' && latest !== 'supply-air') return;
  const minutes = minutesRunning(context);
  if (
    minutes < SPLIT_AFTER_MINUTES ||
    !context.settled.includes('prove.return-air') ||
    !context.settled.includes('prove.supply-air')
  )
    return;
  const returned = lastFahrenheit(context, 'return-air');
  const supplied = lastFahrenheit(context, 'supply-air');
  if (returned === undefined || supplied === undefined) return;
  const split = Math.round((returned - supplied) * 10) / 10;
  const fits = split >= SPLIT_BAND.low && split <= SPLIT_BAND.high;
  turn.record({
    type: 'split.judged',
    split,
    minutes: Math.round(minutes),
    word: fits ? 'fits' : 'does not fit',
    band: SPLIT_BAND,
    source: SPLIT_SOURCE,
  });
  turn.say('answer', SAY.split(degreesChosen(split, context.units), fits));
}

function lastFahrenheit(context: VisitContext, place: PointId): number | undefined {
  const line = standingReadings(context).findLast(
    ({ reading, under }) => under.phase === 'prove' && reading.quantity === 'temperature' && reading.at[0] === place,
  );
  return line === undefined ? undefined : inFahrenheit(line.reading);
}
