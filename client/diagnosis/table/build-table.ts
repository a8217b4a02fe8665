import { FAULTS, type FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { putDeadCircuit } from '../circuit/branch-values.ts';
import { Settled, settle } from '../circuit/settle.ts';
import { AIR_FAULTS } from '../faults/air-faults.ts';
import { FAULT_MODELS } from '../faults/fault-models.ts';
import { hazardBits } from '../hazards/hazard-signs.ts';
import { seededRandom, stratified } from '../random.ts';
import type { Measure, Moment } from '../tests/test-model.ts';
import { TEST_IDS, TEST_MODELS } from '../tests/test-models.ts';
import { checkProfile } from '../unit/check-profile.ts';
import { drawUnit } from '../unit/draw-unit.ts';
import type { Unit } from '../unit/unit.ts';
import { binReadings } from './bin-readings.ts';
import { complaintChance } from './complaint.ts';
import { type Column, type FaultTable, type NumberColumn, TABLE_VERSION } from './fault-table.ts';
import { movedBy } from './moved-tests.ts';
import { predict } from './predict.ts';

/** Draws for a fault, and for one whose readings move a long way with its severity. */
const DRAWS = 28;
const GRADED_DRAWS = 72;
const SOUND_DRAWS = 160;

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

function emptyColumn(measure: Measure, particles: number): Column | null {
  if (measure.kind === 'condition') return null;
  if (measure.kind === 'look') {
    const answers = measure.answers.length;
    return { kind: 'look', answers, chance: new Float32Array(answers * particles) };
  }
  const none = { bins: 0, firstBin: new Uint8Array(0), share: new Float32Array(0) };
  return {
    kind: 'number',
    mean: new Float32Array(particles),
    spread: new Float32Array(particles),
    strayDensity: 0,
    ...none,
  };
}

function writeParticle(columns: readonly (Column | null)[], tests: readonly TestId[], moment: Moment, p: number): void {
  for (let t = 0; t < tests.length; t += 1) {
    const column = columns[t];
    if (!column) continue;
    const { measure } = TEST_MODELS[tests[t]!];
    if (column.kind === 'look') {
      if (measure.kind !== 'look') continue;
      column.chance.set(measure.chances(moment), p * column.answers);
      continue;
    }
    const { mean, spread } = predict(measure, moment);
    column.mean[p] = mean;
    column.spread[p] = spread;
  }
}

/** The span of readings decides how unlikely a stray one is; then the bins for planning. */
function finish(column: Column): Column {
  if (column.kind !== 'number') return column;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let p = 0; p < column.mean.length; p += 1) {
    low = Math.min(low, column.mean[p]! - 2 * column.spread[p]!);
    high = Math.max(high, column.mean[p]! + 2 * column.spread[p]!);
  }
  const done: NumberColumn = { ...column, strayDensity: 1 / (high - low), ...binReadings(column.mean, column.spread) };
  return done;
}

/**
 * Faults that mirror each other (leg one, leg two) share their draws, and so do those that shift the refrigerant
 * figures: none is favoured by chance.
 */
function familyOf(fault: FaultId): number {
  if (fault in AIR_FAULTS) return FAULTS.length;
  const family = fault.replace(/[12]/, '');
  return FAULTS.findIndex((f) => f.id.replace(/[12]/, '') === family);
}

/** The sound unit has the most draws: it is what the others are compared with, kind by kind. */
function firstOfEach(faults: readonly FaultId[], fineness: number): Uint32Array {
  const first = new Uint32Array(faults.length + 1);
  faults.forEach((id, f) => {
    const draws = id === 'nothing-wrong' ? SOUND_DRAWS : FAULT_MODELS[id].graded ? GRADED_DRAWS : DRAWS;
    first[f + 1] = first[f]! + Math.round(draws * fineness);
  });
  return first;
}

/**
 * Builds the table for one unit profile: draws sound units, puts each fault into them, solves, writes down every
 * reading. The same profile and seed give the same table. Errors as `checkProfile`.
 */
export function buildTable(profile: UnitProfile, options: BuildOptions = {}): FaultTable {
  checkProfile(profile);
  const faults: FaultId[] = FAULTS.map((f) => f.id).filter((id) => FAULT_MODELS[id].possible?.(profile) ?? true);
  const first = firstOfEach(faults, options.fineness ?? 1);
  const particles = first.at(-1)!;
  const tests = testsFor(profile);
  const columns = tests.map((id) => emptyColumn(TEST_MODELS[id].measure, particles));
  const kind = new Uint8Array(particles);
  const standing = new Float32Array(particles);
  const valve = new Uint8Array(particles);
  const hazards = new Uint32Array(particles);
  const work = { cooling: new Settled(), idle: new Settled(), dead: new Settled() };
  for (let f = 0; f < faults.length; f += 1) {
    const draws = first[f + 1]! - first[f]!;
    for (let k = 0; k < draws; k += 1) {
      // The same draw of the sound unit under every fault: faults then differ by the fault alone.
      const unit = drawUnit(profile, seededRandom((options.seed ?? 1) * 7919 + k));
      const severity = seededRandom((options.seed ?? 1) * 104_729 + familyOf(faults[f]!) * 997 + k);
      FAULT_MODELS[faults[f]!].apply(unit, stratified(severity, k, draws));
      const moment = settleMoment(unit, work);
      const p = first[f]! + k;
      kind[p] = (unit.nominal < 225 ? 2 : 0) + (unit.poles === 1 ? 1 : 0);
      standing[p] = unit.drawWeight * complaintChance(moment);
      valve[p] = unit.metering === 'thermostatic-valve' ? 1 : 0;
      hazards[p] = hazardBits(moment);
      writeParticle(columns, tests, moment, p);
    }
    options.onProgress?.((f + 1) / faults.length);
  }
  const faultOf = new Uint8Array(particles);
  for (let f = 0; f < faults.length; f += 1) faultOf.fill(f, first[f]!, first[f + 1]!);
  const sound = faults.indexOf('nothing-wrong');
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
    sound,
    standing,
    valve,
    hazards,
    tests,
    columns: columns.map((column) => {
      const done = column && finish(column);
      return done && { column: done, moved: movedBy(done, first, sound) };
    }),
  };
}
