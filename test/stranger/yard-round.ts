import { makeDiagnosis } from '../../client/diagnosis/make-diagnosis.ts';
import { type Job, type Spending, WorkClock } from '../../client/practice/work-clock.ts';
import { DiagnoseSession, listLines } from '../../client/terminal/diagnose-session.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { followChart } from '../simulator/branching-chart.ts';
import { jobsFor, proveKnown } from '../simulator/clairvoyant.ts';
import { Chance } from './chance.ts';
import { boilingAt } from './loop.ts';
import type { Question, Reading } from './meter.ts';
import { HURRIED, type Manner, STEADY, Visitor } from './visitor.ts';
import { type Design, drawDesign } from './yard.ts';
import { drawYardCase, type YardCase, yardOf } from './yard-case.ts';

interface Kind {
  readonly title: string;
  readonly where: 'inside' | 'outside';
  readonly faults: 1 | 2;
  readonly manner: Manner;
  readonly stages?: 2;
}

const KINDS = {
  'stranger-steady': { title: 'in the list, steady', where: 'inside', faults: 1, manner: STEADY },
  'stranger-hurried': { title: 'in the list, hurried', where: 'inside', faults: 1, manner: HURRIED },
  'stranger-two': { title: 'two of the list', where: 'inside', faults: 2, manner: STEADY },
  'stranger-two-stage': { title: 'two-stage, steady', where: 'inside', faults: 1, manner: STEADY, stages: 2 },
  'stranger-outside': { title: 'outside the list', where: 'outside', faults: 1, manner: STEADY },
} as const satisfies Readonly<Record<string, Kind>>;
export type YardRoundName = keyof typeof KINDS;
export const YARD_ROUNDS = Object.keys(KINDS) as YardRoundName[];

/** What the plates of a yard say. */
export function plateOf(design: Design, id: string): UnitProfile {
  return {
    id,
    supply: { nominal: design.volts },
    contactorPoles: design.poles,
    capacitor: { herm: design.herm, fan: design.fanMicrofarads },
    compressor: { rla: design.rla, lra: design.lra },
    fanMotor: { fla: design.fla },
    ...(design.drivenBlower ? {} : { blowerCapacitor: design.blowerMicrofarads }),
    blowerDrive: design.drivenBlower ? 'electronic' : 'capacitor',
    crankcaseHeater: design.heater,
    metering: design.valve ? 'thermostatic-valve' : 'fixed-orifice',
    refrigerant: design.fluid,
    heatPump: design.heatPump,
    tons: design.tons,
    fusedDisconnect: design.fused,
    floatSwitch: design.float,
    pressureSwitches: design.switches,
    hardStart: design.hardStart,
    ...(design.stages === 2 ? { twoStage: true } : {}),
    ...(design.valve ? { plateSubcooling: 10 } : {}),
  } as UnitProfile;
}

/** How a visit to a yard ended. */
export interface YardOutcome {
  readonly causes: readonly string[];
  readonly family: string;
  readonly depths: readonly number[];
  readonly named: readonly string[];
  readonly probability: number;
  readonly right: boolean;
  readonly tests: number;
  readonly minutes: number;
  readonly spent: ReadonlyMap<Spending, number>;
  readonly searching: number;
  readonly asked: readonly string[];
  readonly claims: readonly (readonly [number, boolean])[];
  readonly refused: readonly string[];
  readonly steps: readonly number[];
}

interface Said {
  readonly next?: (Question & Job) | null;
  readonly suspects?: readonly { readonly fault: string; readonly probability: number }[];
  readonly done?: boolean;
  readonly error?: { readonly code: string };
}

const MOST = 60;
const called = (kase: YardCase['wrongs'][number]): readonly string[] => kase.trouble.called;

/** Lets whatever speaks the lines find what is wrong in a yard. */
export function visitYard(first: string, hear: (line: string) => string, kase: YardCase, manner: Manner): YardOutcome {
  const clock = new WorkClock();
  const chance = new Chance(kase.seed + 17);
  let left = [...kase.wrongs];
  let visitor = new Visitor(yardOf(kase, left), manner, chance);
  const out = { named: [] as string[], asked: [] as string[], refused: [] as string[], steps: [] as number[] };
  const claims: [number, boolean][] = [];
  let found = 0;
  let probability = 0;
  const tell = (line: object): Said => {
    const before = performance.now();
    const said = JSON.parse(hear(JSON.stringify(line))) as Said;
    out.steps.push(performance.now() - before);
    return said;
  };
  let said = JSON.parse(first) as Said;
  for (let n = 0; n < MOST; n += 1) {
    const leader = said.suspects![0]!;
    const truth = left.find((w) => called(w).includes(leader.fault));
    const isElse = leader.fault === 'something-else' && left.some((w) => w.trouble.family === 'outside');
    claims.push([leader.probability, truth !== undefined || isElse]);
    if (!truth && !isElse) found = Number.NaN;
    else if (Number.isNaN(found)) found = clock.minutes;
    if (said.done || !said.next) {
      out.named.push(leader.fault);
      probability = leader.probability;
      left = left.filter((w) => w !== truth && !isElse);
      if ((!truth && !isElse) || left.length === 0) break;
      visitor = new Visitor(yardOf(kase, left), manner, chance);
      said = tell({ repaired: leader.fault });
      continue;
    }
    const { next } = said;
    let does = visitor.does(next);
    if ('reading' in does) clock.count(next);
    out.asked.push(`${next.id}=${'skip' in does ? 'skip' : does.reading}`);
    let answer = tell(does);
    for (let again = 0; answer.error && again < 2; again += 1) {
      out.refused.push(`${next.id}=${JSON.stringify(does)}: ${answer.error.code}`);
      does = again === 0 ? visitor.does(next) : { skip: true };
      answer = tell(does);
    }
    said = answer;
  }
  return {
    causes: kase.wrongs.map((w) => w.trouble.id),
    family: kase.wrongs[0]!.trouble.family,
    depths: kase.wrongs.map((w) => w.depth),
    probability,
    right: left.length === 0,
    tests: clock.tests,
    minutes: clock.minutes,
    spent: clock.spent,
    searching: Number.isNaN(found) ? clock.minutes : found,
    claims,
    ...out,
  };
}

const QUESTIONS = new Map(
  (listLines() as (Question & Job & { list: string })[])
    .filter((l) => l.list === 'test')
    .map((q) => [q.id as string, q]),
);

/** The branching chart in the same yard with the same visitor. */
function chartYard(kase: YardCase, manner: Manner) {
  const { design } = kase;
  const clock = new WorkClock();
  const chance = new Chance(kase.seed + 17);
  const plate = {
    herm: design.herm,
    fan: design.fanMicrofarads,
    blower: design.blowerMicrofarads,
    valve: design.valve,
    subcool: 10,
    twoStage: design.stages === 2,
    dew: (psi: number) => boilingAt(design.fluid, psi),
    bubble: (psi: number) => boilingAt(design.fluid, psi, 'liquid'),
  };
  let left = [...kase.wrongs];
  while (left.length > 0) {
    const visitor = new Visitor(yardOf(kase, left), manner, chance);
    const known = new Map<string, Reading>();
    const named = followChart((id, again) => {
      if (known.has(id) && !again) return known.get(id) as never;
      const question = QUESTIONS.get(id)!;
      const does = visitor.does(question);
      if ('skip' in does) return undefined;
      clock.count(question);
      known.set(id, does.reading);
      return does.reading as never;
    }, plate);
    const truth = left.find(
      (w) => called(w).includes(named) || (named === 'something-else' && w.trouble.family === 'outside'),
    );
    if (!truth) break;
    left = left.filter((w) => w !== truth);
  }
  return { right: left.length === 0, minutes: clock.minutes };
}

/** Minutes of a steady one who knows what is wrong. */
function knowing(kase: YardCase, profile: UnitProfile): number {
  const visitor = new Visitor(yardOf(kase, kase.wrongs), STEADY, new Chance(kase.seed));
  const answer = (job: Job) => {
    const does = visitor.does(job as unknown as Question);
    return 'skip' in does ? undefined : (does.reading as never);
  };
  return proveKnown({ fault: kase.wrongs[0]!.trouble.called[0]!, profile, jobs: jobsFor(profile), answer }).minutes;
}

/** Plays a round; the same numbers give the same yards and cases. */
export function playYardRound(
  name: YardRoundName,
  how: { readonly cases: number; readonly designs: number; readonly seed: number },
) {
  const kind: Kind = KINDS[name];
  const outcomes: YardOutcome[] = [];
  const charts: ReturnType<typeof chartYard>[] = [];
  const known: number[] = [];
  for (let d = 0; d < how.designs; d += 1) {
    const own = how.seed * 6007 + d * 211;
    const design = drawDesign(new Chance(own), kind.stages);
    const plate = plateOf(design, `yard-${own}`);
    const diagnosis = makeDiagnosis(plate);
    for (let c = 0; c < Math.ceil(how.cases / how.designs); c += 1) {
      const kase = drawYardCase(design, own * 911 + c * 31, kind.where, kind.faults);
      const session = new DiagnoseSession(diagnosis);
      const hear = (line: string) => JSON.stringify(session.hear(line));
      outcomes.push(visitYard(JSON.stringify(session.status()), hear, kase, kind.manner));
      charts.push(chartYard(kase, kind.manner));
      if (kind.faults === 1 && kind.where === 'inside') known.push(knowing(kase, plate));
    }
  }
  return { title: kind.title, outcomes, charts, known };
}
