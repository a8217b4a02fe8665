import { inFahrenheit } from '../vocabulary/in-fahrenheit.ts';
import type { VisitFacts } from './facts.ts';
import { type RefrigerantEntry, type RefrigerantStage, type RefrigerantWork, UNTOUCHED } from './refrigerant-facts.ts';

/** What an opened circuit must come through, in this order, and the steps that ask for it. */
const STAGES = [
  { stage: 'recovered', steps: ['refrigerant.recovered'], isDone: (work) => work.recovered !== undefined },
  { stage: 'held', steps: ['refrigerant.test-start', 'refrigerant.test-end'], isDone: (work) => work.held === true },
  { stage: 'evacuated', steps: ['refrigerant.evacuated'], isDone: (work) => work.microns !== undefined },
  { stage: 'stood', steps: ['refrigerant.isolated', 'refrigerant.decay'], isDone: (work) => work.stood === true },
  { stage: 'charged', steps: ['refrigerant.charged'], isDone: (work) => work.charged !== undefined },
] as const satisfies readonly {
  stage: RefrigerantStage;
  steps: readonly string[];
  isDone: (work: RefrigerantWork) => boolean;
}[];

/** Ids of the steps that were set aside. */
type Passed = readonly string[];

/** The first thing that must come before a stage and has not: who passed it has answered for it. */
export function lackingBefore(
  stage: RefrigerantStage,
  work: RefrigerantWork,
  passed: Passed,
): RefrigerantStage | undefined {
  const before = STAGES.slice(
    0,
    STAGES.findIndex((one) => one.stage === stage),
  );
  return before.find((one) => !one.isDone(work) && !isPassed(one, passed))?.stage;
}

/**
 * The first thing that an opened circuit lacks before it may run; undefined where it may. Only the weight of what was
 * recovered can be passed: a circuit that is not tight, dry and charged is not one by anybody's word.
 */
export function lackingToRun({ refrigerantWork: work, parked }: VisitFacts): RefrigerantStage | undefined {
  if (!work.opened) return undefined;
  const passed = parked.map(({ step }) => step);
  return STAGES.find((one) => !one.isDone(work) && !(one.stage === 'recovered' && isPassed(one, passed)))?.stage;
}

function isPassed({ steps }: { readonly steps: readonly string[] }, passed: Passed): boolean {
  return steps.some((step) => passed.includes(step));
}

export function isRefrigerantOpened({ refrigerantWork }: VisitFacts): boolean {
  return refrigerantWork.opened;
}

/** Nitrogen flows through at less than this while a joint is brazed, in psi: common practice. */
const FLOWING_PSI = 5;

/** What a flame would meet in the line: refrigerant, or nitrogen under pressure. */
export function chargeOfLine({ refrigerantWork }: VisitFacts): 'refrigerant' | 'nitrogen' | 'none' {
  const { emptied, nitrogen = 0 } = refrigerantWork;
  if (!emptied) return 'refrigerant';
  return nitrogen > FLOWING_PSI ? 'nitrogen' : 'none';
}

/** The log from its beginning: what comes out of its order does not count, and breaks what came before it. */
export function workOf(log: readonly RefrigerantEntry[], passed: Passed): RefrigerantWork {
  return log.reduce((work, entry) => after(work, entry, passed), UNTOUCHED);
}

function after(work: RefrigerantWork, entry: RefrigerantEntry, passed: Passed): RefrigerantWork {
  switch (entry.is) {
    case 'opened':
      return { ...anew(work), opened: true };
    case 'leak':
      return anew(work);
    case 'searched':
      return { ...work, searched: true };
    case 'vacuum':
    case 'vacuum-on': {
      const { nitrogen: _out, ...rest } = work;
      return { ...rest, inVacuum: true };
    }
    case 'vacuum-off': {
      const { microns: _was, isolatedAt: _when, ...broken } = { ...work, inVacuum: false };
      return work.stood === true ? { ...work, inVacuum: false } : broken;
    }
    case 'vacuum-off-nitrogen':
      return { ...wet(work), inVacuum: false };
    case 'mass':
      return afterMass(work, entry.ounces, passed);
    case 'nitrogen': {
      const { is: _is, within, ...test } = entry;
      const read = { ...(test.psi > FLOWING_PSI && !isCharged(work) ? wet(work) : work), nitrogen: test.psi };
      const begins = work.opened && within && work.held !== true && work.test === undefined;
      return begins && lackingBefore('held', work, passed) === undefined ? { ...read, test } : read;
    }
    case 'isolated':
      return work.microns === undefined ? work : { ...work, isolatedAt: entry.mono };
    case 'judged':
      return afterVerdict(work, entry, passed);
    default:
      entry satisfies never;
      return work;
  }
}

/** Nitrogen was put in where it had been evacuated: it is evacuated again, and stands again. */
function wet({ microns: _was, isolatedAt: _when, stood: _stood, ...work }: RefrigerantWork): RefrigerantWork {
  return work;
}

/** Its pressure is that of its refrigerant. */
function isCharged({ charged, emptied }: RefrigerantWork): boolean {
  return charged !== undefined || !emptied;
}

/** What was not put in by weight behind all the rest has to come out again. */
function afterMass(work: RefrigerantWork, ounces: number, passed: Passed): RefrigerantWork {
  if (ounces <= 0) return { ...work, recovered: -ounces, emptied: true };
  const { nitrogen: _out, ...rest } = work;
  const charged = { ...rest, emptied: false, inVacuum: false };
  if (!work.opened) return charged;
  if (work.charged !== undefined || lackingBefore('charged', work, passed) === undefined) {
    return { ...charged, charged: ounces };
  }
  return { ...UNTOUCHED, opened: true };
}

function afterVerdict(work: RefrigerantWork, entry: Judged, passed: Passed): RefrigerantWork {
  const { check, value, fits } = entry;
  switch (check) {
    case 'pressure-test':
      if (work.test === undefined || work.held === true) return work;
      return fits ? { ...work, held: true } : anew(work);
    case 'evacuation':
      return fits && work.opened && lackingBefore('evacuated', work, passed) === undefined
        ? { ...work, microns: value }
        : work;
    case 'decay': {
      if (work.isolatedAt === undefined) return work;
      const { microns: _was, isolatedAt: _when, ...rest } = work;
      return fits ? { ...work, stood: true } : rest;
    }
    default:
      // A damaged record may name none of these.
      check satisfies never;
      return work;
  }
}
type Judged = Extract<RefrigerantEntry, { is: 'judged' }>;

/** All tests begin anew; what was recovered stays recovered where nothing was put in since. */
function anew({ opened, emptied, inVacuum, nitrogen, recovered }: RefrigerantWork): RefrigerantWork {
  return {
    opened,
    emptied,
    inVacuum,
    ...(nitrogen === undefined ? {} : { nitrogen }),
    ...(emptied && recovered !== undefined ? { recovered } : {}),
  };
}

/** The outdoor air as it was read last, in degrees Fahrenheit. */
export function outdoorFahrenheit({ readings }: VisitFacts): number | undefined {
  const line = readings.findLast(
    ({ reading, withdrawn }) => !withdrawn && reading.quantity === 'temperature' && reading.at[0] === 'outdoor-air',
  );
  return line === undefined ? undefined : inFahrenheit(line.reading);
}
