import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { mendingsOf } from '../visit/rules/repairs.ts';
import { PracticeError } from './errors.ts';
import type { Cause } from './plant/causes.ts';
import { Dice } from './plant/dice.ts';
import { drawBuild } from './plant/draw-plant.ts';
import { CAUSES_INSIDE, causesOf, drawAgain, drawCaseOf, type ForeignCase, soundSplit } from './plant/hidden-case.ts';
import { profileOfBuild } from './plant/profile-of-build.ts';

/** What is hidden: one fault of a family, or two of any. */
export const FAMILIES = ['power', 'motors', 'control', 'cooling', 'two'] as const;
export type PracticeFamily = (typeof FAMILIES)[number];

/** An exercise as it is set: the same numbers give the same unit with the same fault. */
export interface ExercisePlan {
  readonly family: PracticeFamily;
  /** 1 to 99999. Ten that follow one another, such as 410 to 419, are ten faults of one unit. */
  readonly seed: number;
  /** Minutes of work after which it ends; as many as it takes where nothing is said. */
  readonly minutes?: number;
  /** Hints after which none is given; 0: none at all. */
  readonly hints?: number;
}

/** An exercise ready to be begun. */
export interface DrawnExercise {
  readonly plan: ExercisePlan;
  readonly profile: UnitProfile;
  readonly kase: ForeignCase;
}

/** The name of an exercise: its family and its number. */
export const nameOf = ({ family, seed }: ExercisePlan): string => `${family}-${seed}`;

/**
 * Reads the name of an exercise and its limits.
 * @throws {PracticeError} bad-exercise, unknown-family, bad-seed, bad-limit
 */
export function readPlan(name: string, minutes?: string | null, hints?: string | null): ExercisePlan {
  const parts = /^([a-z]+)-([0-9]+)$/.exec(name.trim());
  if (parts === null) throw new PracticeError('bad-exercise', name);
  const family = FAMILIES.find((one) => one === parts[1]);
  if (family === undefined) throw new PracticeError('unknown-family', parts[1]!);
  const seed = Number(parts[2]);
  if (seed < 1 || seed > 99_999) throw new PracticeError('bad-seed', parts[2]!);
  const [most, many] = [limitOf(minutes, 1), limitOf(hints, 0)];
  return {
    family,
    seed,
    ...(most === undefined ? {} : { minutes: most }),
    ...(many === undefined ? {} : { hints: many }),
  };
}

/** @param least none is no minutes at all; no hints at all is a limit */
function limitOf(text: string | null | undefined, least: 0 | 1): number | undefined {
  if (text === null || text === undefined || text === '') return undefined;
  if (!/^[0-9]{1,3}$/.test(text) || Number(text) < least) throw new PracticeError('bad-limit', text);
  return Number(text);
}

/** The part of an address that sets an exercise. */
export function linkOf(plan: ExercisePlan): string {
  const limits = [
    ...(plan.minutes === undefined ? [] : [`minutes=${plan.minutes}`]),
    ...(plan.hints === undefined ? [] : [`hints=${plan.hints}`]),
  ];
  return `/practice?${[`exercise=${nameOf(plan)}`, ...limits].join('&')}`;
}

/** Somebody at a unit can mend it by one thing that is said. */
function isMendable({ called }: Cause): boolean {
  return called.some((fault) => mendingsOf(fault).parts.length + mendingsOf(fault).works.length > 0);
}

/** What is hidden, by the names of the causes: what a worker that drew it hands over. */
export interface DrawnCase {
  readonly seed: number;
  readonly hidden: readonly { readonly cause: string; readonly severity: number }[];
}

const buildOf = ({ seed }: ExercisePlan) => drawBuild(Math.floor(seed / 10) * 7919 + 11);
const profileOf = (plan: ExercisePlan) => profileOfBuild(buildOf(plan), `practice-${Math.floor(plan.seed / 10)}`);

/** What a worker drew, as an exercise. */
export function takeDrawn(plan: ExercisePlan, { seed, hidden }: DrawnCase): DrawnExercise {
  const kase: ForeignCase = {
    build: buildOf(plan),
    seed,
    hidden: hidden.flatMap(({ cause, severity }) => {
      const known = CAUSES_INSIDE.find(({ id }) => id === cause);
      return known === undefined ? [] : [{ cause: known, severity }];
    }),
  };
  return { plan, profile: profileOf(plan), kase };
}

/** What another page or worker can be handed of a drawn case. */
export function handOver({ kase }: DrawnExercise): DrawnCase {
  return { seed: kase.seed, hidden: kase.hidden.map(({ cause, severity }) => ({ cause: cause.id, severity })) };
}

/** Draws the unit of an exercise and what is hidden in it: some tenths of a second. */
export function drawExercise(plan: ExercisePlan): DrawnExercise {
  const { family, seed } = plan;
  const build = buildOf(plan);
  const causes = (family === 'two' ? CAUSES_INSIDE : causesOf(family)).filter(isMendable);
  // Runs of the dice that begin alike are alike for a while: the seeds are spread.
  const kase = drawCaseOf(
    causes,
    build,
    Math.floor(new Dice(seed * 31 + family.length).roll() * 1e9),
    family === 'two' ? 2 : 1,
  );
  return { plan, profile: profileOf(plan), kase: onAFairDay(kase) };
}

/**
 * What a sound unit takes off the air on a day of an exercise, °F: well inside the 16 to 22 by which a visit judges a
 * repair (common practice), so that the scatter of a thermometer seldom carries it out. In humid air a unit takes off
 * less, in dry air more: a repair that is well done would not be proven then.
 */
const FAIR_SPLIT = { low: 17.5, high: 20.8 };
const MOST_DAYS = 60;

/** The same fault on the first day, from its own on, by whose split its repair can be judged. */
function onAFairDay(kase: ForeignCase): ForeignCase {
  for (let day = 0; day < MOST_DAYS; day += 1) {
    const seed = kase.seed + 7919 * day;
    const split = soundSplit(kase.build, seed) ?? 0;
    if (split < FAIR_SPLIT.low || split > FAIR_SPLIT.high) continue;
    const again = day === 0 ? kase : drawAgain(kase, seed);
    if (again !== undefined) return again;
  }
  return kase;
}
