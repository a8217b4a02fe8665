import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { isStale, type Standing, type Taken } from '../posterior/take-readings.ts';
import type { Readings } from '../refrigerant/expected-figures.ts';
import { OPEN_OHMS } from '../table/predict.ts';
import type { Check, ProofRow, Way } from './proof-row.ts';

/** What is known when a row is held against the readings. */
export interface Read {
  readonly standing: Standing;
  readonly profile: UnitProfile;
  /** Whether a test can be done on this unit and was not passed over. */
  readonly canBeDone: (test: TestId) => boolean;
  /** Whether this unit has what the test reads. */
  readonly isThere: (test: TestId) => boolean;
}

/** How far a row is met. */
export interface Proof {
  /** Readings that prove. */
  readonly shown: readonly Taken[];
  /** Something of the row is proved by two ways. */
  readonly byTwoWays: boolean;
  /** For each thing that is not proved yet: the ways that are open, each with the tests that it lacks. */
  readonly lacking: readonly (readonly (readonly TestId[])[])[];
  /** Tests that would prove and cannot be done, or prove only indirectly: what the finding then rests on is exclusion. */
  readonly unproved: readonly TestId[];
  /** Of these, what was taken and would prove at another moment, as the amps of a compressor that tries to start. */
  readonly again: readonly TestId[];
  /** Readings that the fault cannot have given. */
  readonly denied: readonly Taken[];
}

const numbers = new WeakMap<Standing, Readings>();

/** The latest number of each test, as the figures of the refrigerant side want them. */
function numbersOf(standing: Standing): Readings {
  const known = numbers.get(standing) ?? new Map([...standing.taken].map(([test, { value }]) => [test, value]));
  numbers.set(standing, known);
  return known;
}

/** What stands there may run at one moment and rest at another: two looks at it contradict nothing. */
const CHANGES: ReadonlySet<TestId> = new Set(['look-outdoor-fan', 'look-compressor']);

/** A reading that a probe beside its metal gives as well, and an answer of who did not look. */
export const mayBeNothing = ({ test, value, observation }: Taken): boolean => {
  if (observation !== undefined) return true;
  const { function: fn } = TEST_MODELS[test];
  if (fn === 'ohms') return value >= OPEN_OHMS;
  if (fn === 'volts') return value < NO_VOLTS;
  return fn === 'amps' ? value < NO_AMPS : fn === 'microfarads' && value < NO_MICROFARADS;
};

/** A meter that hangs in the air shows less. */
const NO_VOLTS = 1;
const NO_AMPS = 0.1;
const NO_MICROFARADS = 1;

/** Amps come and go with each try to start; what else a way lacks does not come by waiting. */
const isOfAMoment = (test: TestId): boolean => TEST_MODELS[test].function === 'amps';

type Outcome = 'met' | 'failed' | 'cannot' | 'missing';

function outcome({ test, shows, orAbsent, holds }: Check, { standing, profile, canBeDone, isThere }: Read): Outcome {
  if (holds) return holds(profile) ? 'met' : 'cannot';
  if (orAbsent && !isThere(test)) return 'met';
  const reading = standing.taken.get(test);
  if (reading && isStale(reading, standing) && canBeDone(test)) return 'missing';
  if (reading && !shows(reading, profile, numbersOf(standing))) return 'failed';
  // What shows it against another result of the same test shows nothing: where a probe slips it often slips again.
  if (reading) return standing.all.some(isAgainst) ? 'cannot' : 'met';
  return canBeDone(test) ? 'missing' : 'cannot';

  function isAgainst(other: Taken): boolean {
    if (!reading || other.test !== test || other === reading || CHANGES.has(test) || !mayBeNothing(reading))
      return false;
    const isOutweighed = other.observation !== undefined && other.times < reading.times;
    return !isOutweighed && !shows(other, profile, numbersOf(standing));
  }
}

function outcomeOf(way: Way, read: Read): Outcome {
  const all = way.checks.map((check) => outcome(check, read));
  return (['failed', 'cannot', 'missing'] as const).find((one) => all.includes(one)) ?? 'met';
}

const testsOf = (way: Way, read: Read, which: Outcome): TestId[] =>
  way.checks.filter((check) => outcome(check, read) === which).map(({ test }) => test);

/** Holds one thing that must be proved against the readings. */
function proveOne(ways: readonly Way[], read: Read): Proof {
  const readings = (which: Outcome, among: readonly Way[]): Taken[] =>
    among.flatMap((way) => testsOf(way, read, which)).flatMap((test) => read.standing.taken.get(test) ?? []);
  const outcomes = ways.map((way) => [way, outcomeOf(way, read)] as const);
  const those = (which: Outcome) => outcomes.filter(([, o]) => o === which).map(([way]) => way);
  const met = those('met');
  const direct = met.filter((way) => !way.indirect);
  const shown = readings('met', direct.length > 0 ? direct : met);
  // Where something leaves another cause open, the direct way is gone first.
  const missing = those('missing');
  const open = met.length > 0 ? missing.filter((way) => !way.indirect) : missing;
  const none = { shown, byTwoWays: direct.length > 1, lacking: [], unproved: [], again: [], denied: [] };
  if (direct.length > 0) return none;
  if (open.length > 0) return { ...none, lacking: [open.map((way) => testsOf(way, read, 'missing'))] };
  if (met.length > 0) {
    const direct = ways.filter((way) => !way.indirect);
    const failed = direct.map((way) => testsOf(way, read, 'failed'));
    const unproved = [...failed.flat(), ...direct.flatMap((way) => testsOf(way, read, 'cannot'))];
    return { ...none, unproved, again: failed.filter((tests) => tests.every(isOfAMoment)).flat() };
  }
  const cannot = those('cannot');
  if (cannot.length > 0) return { ...none, unproved: cannot.flatMap((way) => testsOf(way, read, 'cannot')) };
  return { ...none, denied: readings('failed', ways) };
}

/** Holds a row against the standing readings: the latest of each test counts. */
export function proveRow({ needs, against = [] }: ProofRow, read: Read): Proof {
  const parts = needs.map((ways) => proveOne(ways, read));
  const excluding = against
    .filter((check) => outcome(check, read) === 'met')
    .map(({ test }) => read.standing.taken.get(test)!);
  return {
    shown: [...new Set(parts.flatMap(({ shown }) => shown))],
    byTwoWays: parts.some(({ byTwoWays }) => byTwoWays),
    lacking: parts.flatMap(({ lacking }) => lacking),
    unproved: [...new Set(parts.flatMap(({ unproved }) => unproved))],
    again: [...new Set(parts.flatMap(({ again }) => again))],
    denied: [...new Set([...parts.flatMap(({ denied }) => denied), ...excluding])],
  };
}
