import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import { PHASE_GUARDS } from '../visit/chart/phase-chart.ts';
import type { Exercise } from './exercise.ts';
import type { Ending, LoggedDeed } from './exercise-log.ts';
import { isOfHands } from './judge-safety.ts';

/** What is counted of an exercise. Each stands for itself: they are never added up. */
export interface Counts {
  /** Minutes of walking, making ready and measuring, by the clock that the planner's run is counted with. */
  readonly minutes: number;
  readonly tests: number;
  /** Tests that could tell next to nothing when they were made. */
  readonly redundant: number;
  /** Acts by which somebody would have been hurt, or a meter lost. */
  readonly harmful: number;
  readonly nearMisses: number;
  /** Hands or an ohmmeter where nothing was proven dead, whatever was there. */
  readonly skippedProofs: number;
  /** Of these, where nothing was even switched off. */
  readonly notSwitchedOff: number;
  /** The same, behind a switch that was off and no reading at all. */
  readonly notRead: number;
  /** Readings told of other terminals than those that the probes stood on, or read elsewhere than asked. */
  readonly probesElsewhere: number;
  /** Suspects that were named, and no test made of. */
  readonly untested: number;
  /** Questions, cautions and steps of arrival over which something else was begun. */
  readonly leftOpen: number;
  /** Parts and works that were begun before anything was found. */
  readonly unfounded: number;
  /** Parts that cured nothing. */
  readonly needlessParts: number;
  /** Repairs after which the unit was not read again. */
  readonly notProven: number;
  readonly hints: number;
}

/** One run of an exercise as it is looked back upon. */
export interface RunLookedBack {
  readonly counts: Counts;
  readonly ending: Ending | 'running';
  /** What was named, where something was. */
  readonly finding: FaultId | undefined;
  /** Whether nothing that was hidden is left. */
  readonly mended: boolean;
  readonly log: readonly LoggedDeed[];
}

/** The trainee's run beside the planner's own of the same unit. */
export interface Debrief {
  readonly trainee: RunLookedBack;
  readonly planner: RunLookedBack;
  /** What was hidden, as the list of faults names it. */
  readonly hidden: readonly FaultId[];
}

/** Counts a run by what it logged and by where its visit stands. */
export function lookBack(exercise: Exercise): RunLookedBack {
  const { log, context, work } = exercise;
  const count = (is: (deed: LoggedDeed) => boolean) => log.filter(is).length;
  const isOpen = PHASE_GUARDS['repair to be proved']({ context }) || exercise.disproved;
  const back = new Set(log.flatMap((deed) => (deed.type === 'taken-back' ? [deed.number] : [])));
  const mended = log
    .filter((deed) => deed.type === 'mended')
    .filter(({ number }) => number === undefined || !back.has(number));
  const skipped = log.filter((deed) => deed.type === 'stopped-for').filter(({ error }) => isOfHands(error));
  return {
    counts: {
      minutes: work.minutes,
      tests: count(({ type }) => type === 'tested'),
      redundant: count((deed) => deed.type === 'tested' && deed.redundant),
      harmful: count((deed) => deed.type === 'stopped-for' && deed.weight === 'harm'),
      nearMisses: count((deed) => deed.type === 'stopped-for' && deed.weight === 'near-miss'),
      skippedProofs: skipped.length,
      notSwitchedOff: skipped.filter(({ stage }) => stage === 'not-off').length,
      notRead: skipped.filter(({ stage }) => stage === 'not-read').length,
      probesElsewhere: count(({ type }) => type === 'probes-elsewhere'),
      untested: untestedIn(log),
      leftOpen: count(({ type }) => type === 'left-open'),
      unfounded: count((deed) => deed.type === 'repair-begun' && !deed.found),
      needlessParts: mended.filter(({ cures }) => !cures).length,
      notProven: isOpen ? mended.length : 0,
      hints: count(({ type }) => type === 'hinted'),
    },
    ending: exercise.ended ?? 'running',
    finding: context.finding?.fault,
    mended: exercise.unit.left.length === 0,
    log,
  };
}

/** Suspects that were named and of whom no test was made before the next was named, or the end. */
function untestedIn(log: readonly LoggedDeed[]): number {
  const told = log.filter(({ type }) => type === 'suspected' || type === 'tested');
  return told.filter(({ type }, at) => type === 'suspected' && told[at + 1]?.type !== 'tested').length;
}

/** What is told after an exercise: the trainee's run beside the planner's, near misses before anything else. */
export function debriefOf(trainee: Exercise, planner: RunLookedBack): Debrief {
  const hidden = trainee.drawn.kase.hidden.map(({ cause }) => cause.called[0]!);
  return { trainee: lookBack(trainee), planner, hidden };
}

/** What was stopped for, near misses first, each in its order. */
export function stopsOf(log: readonly LoggedDeed[]): readonly Extract<LoggedDeed, { type: 'stopped-for' }>[] {
  const stops = log.filter((deed) => deed.type === 'stopped-for');
  return [...stops.filter(({ weight }) => weight === 'near-miss'), ...stops.filter(({ weight }) => weight === 'harm')];
}
