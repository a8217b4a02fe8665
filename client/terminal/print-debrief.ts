import { type Debrief, stopsOf } from '../practice/debrief.ts';
import type { LoggedDeed, TestMade } from '../practice/exercise-log.ts';
import { capital } from '../words/capital.ts';
import { COUNT_NAMES, type CountName, DEBRIEF } from '../words/practice/debrief-words.ts';
import { STOP_WORDS } from '../words/practice/exercise-words.ts';
import { placeWords } from '../words/things/place-words.ts';
import { row } from './print-played.ts';

/** What a test could tell, what each suspect said that it would show, and who is left. */
export function printTest(made: TestMade): readonly string[] {
  const alike = new Map<string, string[]>();
  for (const { fault, expected, unit } of made.expected) {
    const shown = DEBRIEF.shown(expected, unit);
    alike.set(shown, [...(alike.get(shown) ?? []), DEBRIEF.suspected(fault)]);
  }
  const shows = [...alike].map(([shown, faults]) => `${shown}: ${faults.join(', ')}`);
  return [
    row(
      'wouldShow',
      `${shows.length > 0 ? shows.join('; ') : '–'} (${made.redundant ? DEBRIEF.toldNothing : DEBRIEF.couldTell(made.bits, made.open)})`,
    ),
    row('left', DEBRIEF.remains(made.after)),
  ];
}

/** The planner's run by itself. */
export function printPlanner(hidden: Debrief['hidden'], planner: Debrief['planner']): readonly string[] {
  const { minutes } = planner.counts;
  return [
    '',
    DEBRIEF.hidden(hidden),
    `${capital(DEBRIEF.planner)}: ${DEBRIEF.ended(planner)}; ${figure(minutes)} ${COUNT_NAMES.minutes}.`,
    '',
    `${DEBRIEF.tests}, ${DEBRIEF.planner}:`,
    ...testLines(planner.log),
  ];
}

/** The debrief as a person reads it: near misses first, then the counts beside the planner's, then test by test. */
export function printDebrief({ hidden, trainee, planner }: Debrief): readonly string[] {
  const stops = stopsOf(trainee.log).map(
    (stop) => `  ${DEBRIEF.atMinute(stop.minutes).padEnd(8)}${STOP_WORDS[stop.error](stop)}`,
  );
  const elsewhere = trainee.log
    .filter((deed) => deed.type === 'probes-elsewhere')
    .map(
      ({ minutes, said, stood, asked }) =>
        `  ${DEBRIEF.atMinute(minutes).padEnd(8)}${DEBRIEF.elsewhere(placeWords(said), placeWords(stood), asked)}`,
    );
  const counts = (Object.keys(COUNT_NAMES) as CountName[]).map(
    (name) =>
      `  ${COUNT_NAMES[name].padEnd(30)}${figure(trainee.counts[name]).padStart(6)}${figure(planner.counts[name]).padStart(10)}`,
  );
  return [
    '',
    DEBRIEF.title,
    DEBRIEF.hidden(hidden),
    `${capital(DEBRIEF.trainee)}: ${DEBRIEF.ended(trainee)}.`,
    `${capital(DEBRIEF.planner)}: ${DEBRIEF.ended(planner)}.`,
    '',
    `${DEBRIEF.stops}:`,
    ...(stops.length > 0 ? stops : [`  ${DEBRIEF.noStops}`]),
    ...(elsewhere.length > 0 ? ['', `${DEBRIEF.elsewhereTitle}:`, ...elsewhere] : []),
    '',
    `${`${DEBRIEF.counts}:`.padEnd(32)}${DEBRIEF.trainee.padStart(6)}${DEBRIEF.planner.padStart(10)}`,
    ...counts,
    `  ${DEBRIEF.noTotal}`,
    '',
    `${DEBRIEF.tests}, ${DEBRIEF.trainee}:`,
    ...testLines(trainee.log),
    '',
    `${DEBRIEF.tests}, ${DEBRIEF.planner}:`,
    ...testLines(planner.log),
  ];
}

const figure = (value: number): string => String(Math.round(value));

function testLines(log: readonly LoggedDeed[]): readonly string[] {
  const lines = log
    .filter((deed) => deed.type === 'tested')
    .map((made) => {
      const shown =
        typeof made.shown === 'string'
          ? DEBRIEF.shown(made.shown, 'observation')
          : DEBRIEF.shown(made.shown.value, made.shown.unit);
      const told = made.redundant ? ` · ${DEBRIEF.toldNothing}` : '';
      return `  ${DEBRIEF.atMinute(made.minutes).padEnd(8)}${made.what} = ${shown} (${DEBRIEF.suspected(made.hypothesis)})${told}`;
    });
  return lines.length > 0 ? lines : [`  ${DEBRIEF.noTests}`];
}
