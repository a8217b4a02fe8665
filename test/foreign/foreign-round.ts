import { Dice } from '../../client/practice/plant/dice.ts';
import { drawBuild } from '../../client/practice/plant/draw-plant.ts';
import { drawForeignCase, type ForeignCase, unitOf } from '../../client/practice/plant/hidden-case.ts';
import type { Job } from '../../client/practice/work-clock.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { jobsFor, proveKnown } from '../simulator/clairvoyant.ts';
import { chartVisit } from './chart-visit.ts';
import { type Plate, profileOf } from './foreign-profile.ts';
import { CAREFUL, type Conduct, ForeignTechnician, UNFRIENDLY } from './foreign-technician.ts';
import { type ForeignOutcome, interview, type Talk } from './interview.ts';
import { sessionTalks } from './session-talk.ts';
import { buildOf, caseOf, STORIES } from './stories.ts';

/** Which cases are drawn, what the diagnosis is told of the unit, and who stands there. */
interface Drawn {
  readonly title: string;
  readonly where: 'inside' | 'outside';
  readonly faults: 1 | 2;
  readonly plate: Plate;
  readonly conduct: Conduct;
  /** Units with a second stage. */
  readonly twoStage?: true;
}

const ONE: Drawn = { title: '', where: 'inside', faults: 1, plate: 'right', conduct: CAREFUL };
const DRAWN = {
  'foreign-careful': { ...ONE, title: 'in the list, careful' },
  'foreign-unfriendly': { ...ONE, title: 'in the list, unfriendly', conduct: UNFRIENDLY },
  'foreign-plate': { ...ONE, title: 'in the list, plate wrong', plate: 'wrong' },
  'foreign-two': { ...ONE, title: 'two of the list', faults: 2 },
  'foreign-two-stage': { ...ONE, title: 'two-stage, careful', twoStage: true },
  'foreign-outside': { ...ONE, title: 'outside the list', where: 'outside' },
} as const satisfies Readonly<Record<string, Drawn>>;

export const FOREIGN_ROUNDS = [...(Object.keys(DRAWN) as (keyof typeof DRAWN)[]), 'foreign-stories'] as const;
export type ForeignRoundName = (typeof FOREIGN_ROUNDS)[number];

export interface Sitting {
  readonly title: string;
  readonly outcomes: readonly ForeignOutcome[];
  readonly charts: readonly ReturnType<typeof chartVisit>[];
  /** Minutes of who knows the fault and only proves it, of cases with one fault of the list. */
  readonly known: readonly number[];
}

export interface HowMany {
  readonly cases: number;
  /** Units over which the cases are spread: each has a profile of its own. */
  readonly designs: number;
  readonly seed: number;
}

/** Plays a round; the same numbers give the same units and the same cases. */
export function playForeignRound(name: ForeignRoundName, how: HowMany): Sitting {
  return name === 'foreign-stories' ? tellStories() : playDrawn(DRAWN[name], how);
}

function playDrawn(round: Drawn, { cases, designs, seed }: HowMany): Sitting {
  const outcomes: ForeignOutcome[] = [];
  const charts: ReturnType<typeof chartVisit>[] = [];
  const known: number[] = [];
  const each = Math.ceil(cases / designs);
  for (let d = 0; d < designs; d += 1) {
    const own = seed * 7919 + d * 101;
    const build = drawBuild(own, round.twoStage);
    const profile = profileOf(build, `foreign-${own}`, round.plate, new Dice(own + 3));
    const talks = sessionTalks(profile);
    for (let c = 0; c < each; c += 1) {
      const kase = drawForeignCase(build, own * 1009 + c * 53, round.where, round.faults);
      outcomes.push(interview(talks(), kase, round.conduct));
      charts.push(chartVisit(kase, round.conduct));
      if (round.faults === 1 && round.where === 'inside') known.push(knowing(kase, profile));
    }
  }
  return { title: round.title, outcomes, charts, known };
}

/** Minutes of a careful one who knows what is wrong. */
function knowing(kase: ForeignCase, profile: UnitProfile): number {
  const technician = new ForeignTechnician(unitOf(kase.build, kase.seed, kase.hidden), CAREFUL, new Dice(kase.seed));
  const answer = (job: Job) => {
    const does = technician.does(job as never);
    return 'skip' in does ? undefined : (does.reading as never);
  };
  return proveKnown({ fault: kase.hidden[0]!.cause.called[0]!, profile, jobs: jobsFor(profile), answer }).minutes;
}

function tellStories(): Sitting {
  const known = new Map<string, () => Talk>();
  const cases: ForeignCase[] = STORIES.map(caseOf);
  const outcomes = STORIES.map((story, i) => {
    const profile = profileOf(buildOf(story), 'story', 'right', new Dice(1));
    const talks = known.get(JSON.stringify(profile)) ?? sessionTalks(profile);
    known.set(JSON.stringify(profile), talks);
    return interview(talks(), cases[i]!, CAREFUL);
  });
  const charts = cases.map((kase) => chartVisit(kase, CAREFUL));
  return { title: 'calls as texts tell them', outcomes, charts, known: [] };
}
