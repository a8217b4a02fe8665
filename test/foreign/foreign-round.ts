import { Dice } from '../simulator/dice.ts';
import { drawBuild } from './draw-plant.ts';
import { drawForeignCase } from './foreign-case.ts';
import { type Plate, profileOf } from './foreign-profile.ts';
import { CAREFUL, type Conduct, UNFRIENDLY } from './foreign-technician.ts';
import { type ForeignOutcome, interview } from './interview.ts';
import { sessionTalks } from './session-talk.ts';

/** Which cases are drawn, and who stands at the unit. */
export interface ForeignRound {
  readonly where: 'inside' | 'outside';
  readonly faults: 1 | 2;
  readonly plate: Plate;
  readonly conduct: Conduct;
}

export const FOREIGN_ROUNDS = {
  'foreign-careful': { where: 'inside', faults: 1, plate: 'right', conduct: CAREFUL },
  'foreign-unfriendly': { where: 'inside', faults: 1, plate: 'right', conduct: UNFRIENDLY },
  'foreign-plate': { where: 'inside', faults: 1, plate: 'wrong', conduct: CAREFUL },
  'foreign-two': { where: 'inside', faults: 2, plate: 'right', conduct: CAREFUL },
  'foreign-outside': { where: 'outside', faults: 1, plate: 'right', conduct: CAREFUL },
} as const satisfies Readonly<Record<string, ForeignRound>>;
export type ForeignRoundName = keyof typeof FOREIGN_ROUNDS;

/** Plays `cases` spread over `designs` units; each number of `seed` gives other units and other cases. */
export function playForeignRound(
  round: ForeignRound,
  o: { readonly cases: number; readonly designs: number; readonly seed: number },
): ForeignOutcome[] {
  const outcomes: ForeignOutcome[] = [];
  const each = Math.ceil(o.cases / o.designs);
  for (let d = 0; d < o.designs; d += 1) {
    const seed = o.seed * 7919 + d * 101;
    const build = drawBuild(seed);
    const talks = sessionTalks(profileOf(build, `foreign-${seed}`, round.plate, new Dice(seed + 3)));
    for (let c = 0; c < each; c += 1) {
      const kase = drawForeignCase(build, seed * 1009 + c * 53, round.where, round.faults);
      outcomes.push(interview(talks(), kase, round.conduct));
    }
  }
  return outcomes;
}
