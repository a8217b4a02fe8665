import { makeDiagnosis } from '../../client/diagnosis/make-diagnosis.ts';
import { saturationTemperature } from '../../client/diagnosis/refrigerant/saturation.ts';
import { Dice } from '../../client/practice/plant/dice.ts';
import type { Job } from '../../client/practice/work-clock.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Plate } from './branching-chart.ts';
import { jobsFor, proveKnown } from './clairvoyant.ts';
import { type Case, drawCase, profileFor, type Wrong } from './draw-case.ts';
import { drawRatings, type Ratings } from './hidden-unit.ts';
import { Instrument } from './instrument.ts';
import { type Outcome, runChart, runDiagnosis } from './run-case.ts';

export interface Quality {
  readonly cases: number;
  readonly right: number;
  readonly confidentlyWrong: number;
  readonly medianTests: number;
  readonly meanTests: number;
  readonly medianMinutes: number;
  readonly meanMinutes: number;
}

export interface Round {
  readonly diagnosis: Quality;
  readonly chart: Quality;
  readonly order: Quality;
  /** Minutes of whoever knows the fault and only proves it; of rounds with one fault. */
  readonly known?: readonly number[];
  /** Claimed against true share of right leaders, by bin of probability. */
  readonly calibration: readonly { readonly claimed: number; readonly true: number; readonly steps: number }[];
  readonly outcomes: readonly Outcome[];
  readonly charts: readonly Done[];
  readonly stepMilliseconds: readonly number[];
}

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

interface Done {
  readonly right: boolean;
  readonly confidentlyWrong?: boolean;
  readonly tests: number;
  readonly minutes: number;
}

function summarise(done: readonly Done[]): Quality {
  return {
    cases: done.length,
    right: mean(done.map((d) => (d.right ? 1 : 0))),
    confidentlyWrong: mean(done.map((d) => (d.confidentlyWrong ? 1 : 0))),
    medianTests: median(done.map((d) => d.tests)),
    meanTests: mean(done.map((d) => d.tests)),
    medianMinutes: median(done.map((d) => d.minutes)),
    meanMinutes: mean(done.map((d) => d.minutes)),
  };
}

function plateOf(r: Ratings): Plate {
  return {
    herm: r.herm,
    fan: r.fanMicrofarads,
    blower: r.blowerMicrofarads,
    valve: r.valve,
    subcool: r.subcool,
    twoStage: r.stages === 2,
    dew: (psi) => saturationTemperature(r.fluid, 'dew', psi + 14.696),
    bubble: (psi) => saturationTemperature(r.fluid, 'bubble', psi + 14.696),
  };
}

export interface RoundOptions {
  readonly wrong: Wrong;
  /** Unit designs, and cases for each. */
  readonly designs: number;
  readonly casesEach: number;
  readonly faults: 1 | 2;
  readonly seed: number;
  readonly misread: number;
  /** Units with a second stage. */
  readonly stages?: 2;
}

/** Minutes of whoever knows the case's fault and reads without a slip. */
function knowing(kase: Case, profile: UnitProfile, jobs: ReadonlyMap<TestId, Job>): number {
  const instrument = new Instrument(kase.unit, kase.dice, 0);
  const answer = (job: Job) => instrument.answer(job);
  return proveKnown({ fault: kase.faults[0]!, profile, jobs, answer }).minutes;
}

/** Runs one round of cases for the diagnosis, the branching chart and the fixed order. */
export function runRound(o: RoundOptions): Round {
  const outcomes: Outcome[] = [];
  const chart: Done[] = [];
  const order: Done[] = [];
  const known: number[] = [];
  for (let d = 0; d < o.designs; d += 1) {
    const drawn = drawRatings(new Dice(o.seed * 1000 + d));
    const ratings: Ratings = o.stages === undefined ? drawn : { ...drawn, stages: o.stages };
    const profile = profileFor(ratings, `design-${o.seed}-${d}`, o.wrong);
    const diagnosis = makeDiagnosis(profile);
    const jobs = jobsFor(profileFor(ratings, 'true', 'matched'));
    for (let c = 0; c < o.casesEach; c += 1) {
      const seed = o.seed * 100_003 + d * 1009 + c;
      const again = () => drawCase(ratings, seed, o.wrong, o.faults);
      outcomes.push(runDiagnosis(diagnosis, again(), o.misread));
      chart.push(runChart('chart', again(), plateOf(ratings), jobs, o.misread));
      if (o.faults === 1) known.push(knowing(again(), profile, jobs));
      order.push(runChart('order', again(), plateOf(ratings), jobs, o.misread));
    }
  }
  return {
    diagnosis: summarise(outcomes),
    chart: summarise(chart),
    order: summarise(order),
    ...(known.length > 0 ? { known } : {}),
    calibration: calibrate(outcomes.flatMap((x) => x.claims)),
    outcomes,
    charts: chart,
    stepMilliseconds: outcomes.flatMap((x) => x.steps),
  };
}

/** Claimed against true share, by tenths of probability. */
export function calibrate(claims: readonly (readonly [number, boolean])[]) {
  const bins = Array.from({ length: 10 }, () => [] as (readonly [number, boolean])[]);
  for (const claim of claims) bins[Math.min(9, Math.floor(claim[0] * 10))]!.push(claim);
  return bins
    .filter((bin) => bin.length > 0)
    .map((bin) => ({
      claimed: mean(bin.map(([p]) => p)),
      true: mean(bin.map(([, right]) => (right ? 1 : 0))),
      steps: bin.length,
    }));
}
