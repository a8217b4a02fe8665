import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import type { Circumstances, Evidence } from '../diagnosis.ts';
import { DiagnosisError } from '../errors.ts';
import { NO_EVIDENCE } from '../measuring/look-tests.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { OPEN_OHMS } from '../table/predict.ts';

/** A reading that answers a test: a number in the test's own unit, or the observation of a look. */
export interface Taken {
  readonly seq: number;
  readonly test: TestId;
  /** V, A, Ohm (open: infinite), µF, °F, psi gauge; NaN for a look. */
  readonly value: number;
  readonly observation?: ObservationId;
  /** How often it was read in a row with the same result: a reading taken again is seldom misread twice. */
  readonly times: number;
}

/** The same result again: the same answer, or a number within what meters and hands differ by. */
function agrees(a: Taken, b: Taken): boolean {
  if (a.observation !== undefined || b.observation !== undefined) return a.observation === b.observation;
  return Math.abs(a.value - b.value) <= 0.06 * Math.max(a.value, b.value) + 1.5;
}

/** Widest value that an instrument at a cooling unit can show, in the quantity's base unit; `no-test` reads the others. */
const LIMITS: Readonly<Record<QuantityId, readonly [number, number] | 'no-test'>> = {
  voltage: [0, 1000],
  'voltage-dc': 'no-test',
  current: [0, 600],
  resistance: [0, Number.POSITIVE_INFINITY],
  insulation: [0, Number.POSITIVE_INFINITY],
  capacitance: [0, 1000],
  temperature: [-60, 400],
  'wet-bulb': [-20, 120],
  pressure: [-15, 900],
  difference: 'no-test',
  vacuum: 'no-test',
  'static-pressure': 'no-test',
  airflow: 'no-test',
  frequency: 'no-test',
  humidity: 'no-test',
  mass: 'no-test',
  time: 'no-test',
};

/**
 * A value in the test's own unit, which is the base unit of its quantity.
 * Errors: `wrong-unit` when unit and quantity do not belong together; `bad-reading` for NaN, negative or absurd values.
 */
export function toOwnUnit(quantity: QuantityId, value: Value, unit: UnitCode): number {
  if (value === 'open') {
    if (quantity === 'resistance' || quantity === 'insulation') return OPEN_OHMS;
    // An open capacitor stores nothing (common practice: a meter shows open or next to nothing).
    if (quantity === 'capacitance') return 0;
    throw new DiagnosisError('bad-reading', `open, for ${quantity}`);
  }
  const limits = LIMITS[quantity];
  const row = unitFor(unit, quantity);
  if (limits === 'no-test' || row === undefined) throw new DiagnosisError('wrong-unit', `${quantity} in ${unit}`);
  const own = value * row.factor + (row.offset ?? 0);
  const [low, high] = limits;
  if (!(own >= low && own <= high)) throw new DiagnosisError('bad-reading', `${value} ${unit} for ${quantity}`);
  return own;
}

/** Tests by quantity and points, whatever the order of the probes. */
export type TestIndex = ReadonlyMap<string, readonly TestId[]>;

const key = (quantity: QuantityId | 'observation', at: readonly PointId[]) =>
  `${quantity === 'insulation' ? 'resistance' : quantity}:${[...at].sort().join(',')}`;

export function indexTests(tests: readonly TestId[]): TestIndex {
  const index = new Map<string, TestId[]>();
  for (const id of tests) {
    const model = TEST_MODELS[id];
    if (model.function === 'look') continue;
    const at = key(model.quantity, model.at);
    index.set(at, [...(index.get(at) ?? []), id]);
  }
  return index;
}

/** How well circumstances meet a test's needs: 2 exactly, 1 by the benefit of the doubt, 0 not. */
function meets(id: TestId, c: Circumstances): 0 | 1 | 2 {
  const { needs } = TEST_MODELS[id];
  if (needs.power === 'on' && (c.power === 'off' || c.bench)) return 0;
  if (needs.power === 'off' && c.power !== 'off' && !c.bench) return 0;
  if (needs.call === 'none' && c.call !== 'none') return 0;
  if (needs.call === 'cooling' && c.call === 'none') return 0;
  if (needs.power === 'off' && needs.bench !== c.bench) return 1;
  return c.power === 'unknown' || (needs.call === 'cooling' && c.call === 'unknown') ? 1 : 2;
}

/** The test that a reading in these circumstances answers. */
export function findTest(
  index: TestIndex,
  reading: { readonly quantity: QuantityId; readonly at: readonly PointId[] } & Circumstances,
): TestId | undefined {
  const candidates = index.get(key(reading.quantity, reading.at)) ?? [];
  return candidates.find((id) => meets(id, reading) === 2) ?? candidates.find((id) => meets(id, reading) === 1);
}

/** The look that an observation in these circumstances answers. */
export function findLook(
  tests: readonly TestId[],
  observation: ObservationId,
  circumstances: Circumstances,
): TestId | undefined {
  if (observation in NO_EVIDENCE) return undefined;
  const looks = tests.filter((id) => {
    const { measure } = TEST_MODELS[id];
    return measure.kind === 'look' && measure.answers.includes(observation);
  });
  return looks.find((id) => meets(id, circumstances) > 0);
}

/** What one piece of evidence says, or undefined when no test of this unit asks for it. */
export function takeReading(tests: readonly TestId[], index: TestIndex, item: Evidence): Taken | undefined {
  if (item.kind === 'repair') return undefined;
  if (item.kind === 'observation') {
    const test = findLook(tests, item.observation, item);
    return test && { seq: item.seq, test, value: Number.NaN, observation: item.observation, times: 1 };
  }
  const test = findTest(index, item);
  return test && { seq: item.seq, test, value: toOwnUnit(item.quantity, item.value, item.unit), times: 1 };
}

/** Readings that still hold, and the faults repaired so far. */
export interface Standing {
  /** Every distinct result, in the order it was last read. Two of one test contradict each other. */
  readonly all: readonly Taken[];
  /** The latest result of each test. */
  readonly taken: ReadonlyMap<TestId, Taken>;
  readonly repaired: readonly FaultId[];
  /** The seq of the last repair: what was read live before it was read on another machine. */
  readonly repairedAt?: number;
}

/** Beyond so many readings of one test another settles nothing. */
const MOST_READINGS = 3;

/** Whether a test was read, all its results together, so seldom that one reading more may settle something. */
export function mayBeReadAgain({ all }: Standing, test: TestId): boolean {
  return all.reduce((sum, reading) => sum + (reading.test === test ? reading.times : 0), 0) < MOST_READINGS;
}

/**
 * Folds the evidence: the same result again counts as one that was read twice; another result stands beside the
 * earlier one, unless a repair lies between them; a repair removes the readings that the repaired fault could have moved.
 */
export function standingReadings(
  tests: readonly TestId[],
  index: TestIndex,
  evidence: readonly Evidence[],
  fallsWith: (fault: FaultId, reading: Taken) => boolean,
): Standing {
  let all: Taken[] = [];
  const repaired: FaultId[] = [];
  let repairedAt: number | undefined;
  for (const item of evidence) {
    if (item.kind === 'repair') {
      repaired.push(item.fault);
      repairedAt = item.seq;
      all = all.filter((reading) => !fallsWith(item.fault, reading));
      continue;
    }
    const reading = takeReading(tests, index, item);
    if (!reading) continue;
    const before = all.find((r) => r.test === reading.test && agrees(r, reading));
    all = all.filter((r) => r !== before && (r.test !== reading.test || !isBefore(r, repairedAt)));
    all.push(before ? { ...reading, times: before.times + 1 } : reading);
  }
  const standing = { all, taken: new Map(all.map((r) => [r.test, r])), repaired };
  return repairedAt === undefined ? standing : { ...standing, repairedAt };
}

const isBefore = ({ seq }: Taken, repairedAt: number | undefined) => repairedAt !== undefined && seq < repairedAt;

/** Whether a reading was taken live and a repair came after it: what then starts may trip what was closed. */
export const isStale = (reading: Taken, { repairedAt }: Standing): boolean =>
  isBefore(reading, repairedAt) && TEST_MODELS[reading.test].needs.power === 'on';
