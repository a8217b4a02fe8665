import { FAULTS, type FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { putDeadCircuit } from '../circuit/branch-values.ts';
import { Settled, settle } from '../circuit/settle.ts';
import { AIR_FAULTS } from '../faults/air-faults.ts';
import { FAULT_MODELS } from '../faults/fault-models.ts';
import { hazardBits } from '../hazards/hazard-signs.ts';
import type { Moment } from '../measuring/test-model.ts';
import { TEST_IDS, TEST_MODELS } from '../measuring/test-models.ts';
import { evenly, seededRandom } from '../random.ts';
import { checkProfile } from '../unit/check-profile.ts';
import { drawUnit } from '../unit/draw-unit.ts';
import { copyUnit, type Unit } from '../unit/unit.ts';
import { binReadings } from './bin-readings.ts';
import { complaintChance } from './complaint.ts';
import { type Drawn, roomFor, writeDraw } from './drawn-readings.ts';
import { type FaultTable, type NumberColumn, TABLE_VERSION, type TestColumn } from './fault-table.ts';
import { moves } from './moved-tests.ts';

/** Draws for a fault, and for one whose readings move a long way with its severity. */
const DRAWS = 48;
const GRADED_DRAWS = 112;
/** The healthy unit has the most draws: it is what the others are compared with, kind by kind. */
const HEALTHY_DRAWS = 200;
/** By its first draws it is seen which tests a fault can move; the rest are worked out for those alone. */
const FIRST_DRAWS = 48;

export interface BuildOptions {
  /** Times the usual number of draws. */
  readonly fineness?: number;
  readonly seed?: number;
  /** Called with 0…1 after each fault. */
  readonly onProgress?: (share: number) => void;
}

/** Settles a drawn unit in its three circumstances. The workspaces are used again for the next unit. */
export function settleMoment(unit: Unit, work: { cooling: Settled; idle: Settled; dead: Settled }): Moment {
  settle(unit, true, false, work.cooling);
  settle(unit, false, work.cooling.state.controlFuseBlown, work.idle);
  const { state } = work.cooling;
  putDeadCircuit(unit, state.overloadTripped, state.controlFuseBlown, work.dead.values);
  work.dead.solver.load(work.dead.values);
  return { unit, ...work };
}

/** Tests that this unit can have. */
export function testsFor(profile: UnitProfile): TestId[] {
  return TEST_IDS.filter((id) => {
    const model = TEST_MODELS[id];
    if (model.possible && !model.possible(profile)) return false;
    return model.function !== 'pressure' || profile.refrigerant !== undefined;
  });
}

/** The draws of the faults in a column, one fault after the other, as they are built. */
interface Part {
  readonly fault: number;
  readonly drawn: Drawn;
}

function joined(parts: readonly Part[], field: Exclude<keyof Drawn, 'answers'>): Float32Array {
  const whole = new Float32Array(parts.reduce((sum, { drawn }) => sum + drawn[field].length, 0));
  let at = 0;
  for (const { drawn } of parts) {
    whole.set(drawn[field], at);
    at += drawn[field].length;
  }
  return whole;
}

/** Joins the parts; the span of readings decides how unlikely a stray one is; then the bins for planning. */
function columnOf(parts: readonly Part[], faults: number): TestColumn {
  const start = new Int32Array(faults).fill(-1);
  let at = 0;
  const { answers } = parts[0]!.drawn;
  for (const { fault, drawn } of parts) {
    start[fault] = at;
    at += answers > 0 ? drawn.chance.length / answers : drawn.mean.length;
  }
  if (answers > 0) return { start, column: { kind: 'look', answers, chance: joined(parts, 'chance') } };
  const mean = joined(parts, 'mean');
  const spread = joined(parts, 'spread');
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let d = 0; d < mean.length; d += 1) {
    low = Math.min(low, mean[d]! - 2 * spread[d]!);
    high = Math.max(high, mean[d]! + 2 * spread[d]!);
  }
  const column = {
    kind: 'number',
    mean,
    spread,
    ...beforeIn(parts),
    strayDensity: 1 / (high - low),
    ...binReadings(mean, spread),
  } as const;
  return { start, column };
}

const NONE_BEFORE = { meanBefore: new Float32Array(), spreadBefore: new Float32Array() };

/** Kept only where some draw reads otherwise before something trips. */
function beforeIn(parts: readonly Part[]): Pick<NumberColumn, 'meanBefore' | 'spreadBefore'> {
  const meanBefore = joined(parts, 'meanBefore');
  if (meanBefore.every(Number.isNaN)) return NONE_BEFORE;
  return { meanBefore, spreadBefore: joined(parts, 'spreadBefore') };
}

/** A family of their own whatever the list's length: a fault that is added must not change the draws of the others. */
const AIR_FAMILY = 75;

/**
 * Faults that mirror each other (leg one, leg two) share their draws, and so do those that shift the refrigerant
 * figures: none is favoured by chance.
 */
function familyOf(fault: FaultId): number {
  if (fault in AIR_FAULTS) return AIR_FAMILY;
  const family = fault.replace(/[12]/, '');
  return FAULTS.findIndex((f) => f.id.replace(/[12]/, '') === family);
}

function firstOfEach(faults: readonly FaultId[], fineness: number): Uint32Array {
  const first = new Uint32Array(faults.length + 1);
  faults.forEach((id, f) => {
    const draws = id === 'nothing-wrong' ? HEALTHY_DRAWS : FAULT_MODELS[id].graded ? GRADED_DRAWS : DRAWS;
    first[f + 1] = first[f]! + Math.round(draws * fineness);
  });
  return first;
}

/** Draws healthy units, the same for every fault: faults then differ by the fault alone. */
function healthyUnits(profile: UnitProfile, seed: number): (k: number) => Unit {
  const drawn: Unit[] = [];
  return (k) => {
    drawn[k] ??= drawUnit(profile, seededRandom(seed * 7919 + k));
    return copyUnit(drawn[k]);
  };
}

/**
 * Builds the table for one unit profile: draws healthy units, puts each fault into them, solves, writes down every
 * reading. The same profile and seed give the same table. Errors as `checkProfile`.
 */
export function buildTable(profile: UnitProfile, options: BuildOptions = {}): FaultTable {
  checkProfile(profile);
  const faults: FaultId[] = FAULTS.map((f) => f.id).filter((id) => FAULT_MODELS[id].possible?.(profile) ?? true);
  const first = firstOfEach(faults, options.fineness ?? 1);
  const particles = first.at(-1)!;
  const tests = testsFor(profile);
  const kind = new Uint8Array(particles);
  const standing = new Float32Array(particles);
  const valve = new Uint8Array(particles);
  const hazards = new Uint32Array(particles);
  const seed = options.seed ?? 1;
  const healthyUnit = healthyUnits(profile, seed);
  const work = { cooling: new Settled(), idle: new Settled(), dead: new Settled() };

  function drawOf(f: number, k: number): Moment {
    const unit = healthyUnit(k);
    const severity = seededRandom(seed * 104_729 + familyOf(faults[f]!) * 997 + k);
    FAULT_MODELS[faults[f]!].apply(unit, evenly(severity, k));
    const moment = settleMoment(unit, work);
    const p = first[f]! + k;
    kind[p] = (unit.nominal < 225 ? 2 : 0) + (unit.poles === 1 ? 1 : 0);
    standing[p] = unit.drawWeight * complaintChance(moment);
    valve[p] = unit.metering === 'thermostatic-valve' ? 1 : 0;
    hazards[p] = hazardBits(moment);
    return moment;
  }

  /** What the draws of a fault read in each test that it can move; of the healthy unit, in every test. */
  function readingsOf(f: number, healthy: readonly (Drawn | undefined)[] | undefined): (Drawn | undefined)[] {
    const draws = first[f + 1]! - first[f]!;
    const rooms = tests.map((test) => roomFor(test, draws));
    const write = (moment: Moment, k: number) => {
      rooms.forEach((room, t) => {
        if (room) writeDraw(room, tests[t]!, moment, k);
      });
    };
    const pilot = Math.min(draws, FIRST_DRAWS);
    for (let k = 0; k < pilot; k += 1) write(drawOf(f, k), k);
    if (healthy)
      for (let t = 0; t < tests.length; t += 1) if (!moved(rooms[t], healthy[t], pilot)) rooms[t] = undefined;
    for (let k = pilot; k < draws; k += 1) write(drawOf(f, k), k);
    return rooms;
  }

  const healthy = faults.indexOf('nothing-wrong');
  const parts: Part[][] = tests.map(() => []);
  let done = 0;
  const keep = (f: number, rooms: readonly (Drawn | undefined)[]) => {
    rooms.forEach((drawn, t) => {
      if (drawn) parts[t]!.push({ fault: f, drawn });
    });
    done += 1;
    options.onProgress?.(done / faults.length);
  };
  const ofHealthy = readingsOf(healthy, undefined);
  keep(healthy, ofHealthy);
  for (let f = 0; f < faults.length; f += 1) if (f !== healthy) keep(f, readingsOf(f, ofHealthy));
  const faultOf = new Uint8Array(particles);
  for (let f = 0; f < faults.length; f += 1) faultOf.fill(f, first[f]!, first[f + 1]!);
  const weights = faults.map((id) => FAULT_MODELS[id].weight);
  const total = weights.reduce((a, b) => a + b, 0);
  return {
    version: TABLE_VERSION,
    profile,
    first,
    faults,
    prior: Float64Array.from(weights, (w) => w / total),
    faultOf,
    kind,
    kinds: 4,
    healthy,
    standing,
    valve,
    hazards,
    tests,
    columns: parts.map((ofTest) => (ofTest.length > 0 ? columnOf(ofTest, faults.length) : null)),
  };
}

const moved = (own: Drawn | undefined, healthy: Drawn | undefined, draws: number) =>
  own !== undefined && healthy !== undefined && moves(own, healthy, draws);
