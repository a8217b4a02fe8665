import type { Counts, RunLookedBack } from '../../../client/practice/debrief.ts';
import type { DrawnExercise } from '../../../client/practice/exercise-plan.ts';
import { Performer, type RunEdges, type RunMade } from '../../../client/practice/planner-run.ts';
import { Dice } from '../../../client/practice/plant/dice.ts';
import { isGroundProved } from '../../../client/visit/rules/proof-ground.ts';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { PartId } from '../../../grammar/vocabulary/parts.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';

export const LEARNERS = ['right', 'guesses', 'hurries', 'never-proves', 'swaps', 'gives-up'] as const;
export type Learner = (typeof LEARNERS)[number];

const PARTS: readonly PartId[] = ['contactor', 'fan-motor', 'hard-start', 'crankcase-heater', 'defrost-board'];

/** Terminals, pipes and ducts that stand beside each other and look alike. */
const BESIDE: Readonly<Partial<Record<PointId, PointId>>> = {
  L1: 'L2',
  L2: 'L1',
  T1: 'T2',
  T2: 'T1',
  'comp-R': 'comp-S',
  'comp-S': 'comp-R',
  'fan-R': 'fan-S',
  'fan-S': 'fan-R',
  'cap-HERM': 'cap-FAN',
  'cap-FAN': 'cap-HERM',
  'handler-L1': 'handler-L2',
  'handler-L2': 'handler-L1',
  'R@air-handler': 'Y@air-handler',
  'Y@air-handler': 'R@air-handler',
  'supply-air': 'return-air',
  'return-air': 'supply-air',
  'suction-line': 'liquid-line',
  'liquid-line': 'suction-line',
  'R@thermostat': 'Y@thermostat',
  'Y@thermostat': 'R@thermostat',
};

/** Lets a learner do an exercise: as the planner leads it, but for what marks that learner. */
export async function learn(learner: Learner, drawn: DrawnExercise, edges: RunEdges): Promise<RunMade> {
  return new Performer(drawn, edges, MANNERS[learner](drawn.kase.seed)).perform();
}

const MANNERS: Readonly<Record<Learner, (seed: number) => ConstructorParameters<typeof Performer>[2]>> = {
  right: () => ({}),
  /** Opens and proves as the visit has them do, then fits two parts by guess and never measures. */
  guesses: (seed) => {
    const dice = new Dice(seed + 3);
    const left = [...PARTS];
    const guess = (p: Performer) => {
      const [part] = left.splice(Math.floor(dice.roll() * left.length), 1);
      return p.exercise.enter({ kind: 'part', part: part!, ratings: {} } as Meaning, `fitted ${part}`);
    };
    const isDead = (p: Performer) => p.exercise.context.energy['outdoor-load'] === 'proven-dead';
    let reads = 0;
    const goesOn = () => left.length > PARTS.length - 2;
    return {
      test: (p) => {
        if (p.exercise.context.phase !== 'testing' || !goesOn()) return undefined;
        // The ground is vouched for while it is fed, as for any proof.
        if (reads > 1 || isGroundProved('outdoor-load', p.exercise.context))
          return p.exercise.probing.leadTo('microfarads-herm');
        reads += 1;
        return p.exercise.measure({ quantity: 'voltage', at: [reads === 1 ? 'L1' : 'L2', 'ground'] });
      },
      step: (p, step) =>
        isDead(p) && goesOn() ? guess(p) : step.source === 'planner' ? p.exercise.touch('finish') : undefined,
    };
  },
  /** Pulls the disconnect and goes for the windings, nothing proven. */
  hurries: () => {
    let hurried = 0;
    return {
      test: (p) => {
        if (hurried > 0 || p.exercise.context.phase !== 'testing') return undefined;
        hurried += 1;
        return (async () => {
          await p.exercise.say('outdoor disconnect is pulled and locked');
          // Pulled under load is held by itself.
          if (p.exercise.halted) await p.exercise.touch('go-on');
          await p.exercise.measure({ quantity: 'resistance', at: ['comp-C', 'comp-R'] });
        })();
      },
    };
  },
  'never-proves': () => ({
    step: (p, step) =>
      step.source === 'prove' || (p.exercise.context.phase === 'prove' && step.source === 'energy')
        ? p.exercise.touch('finish')
        : undefined,
  }),
  swaps: () => ({
    step: (p, step) => {
      const { ask } = step;
      if (ask.kind !== 'reading' || ask.quantity === 'wet-bulb') return undefined;
      const elsewhere = ask.at.map((point) => BESIDE[point] ?? point);
      if (elsewhere.join() === ask.at.join() || new Set(elsewhere).size !== ask.at.length) return undefined;
      p.exercise.probing.probes = elsewhere;
      // Told once that they stay there, this one says the place again.
      return p.exercise.measure(ask, step.needs.bench).then(() => p.follow(step));
    },
  }),
  'gives-up': () => ({
    test: (p) =>
      p.exercise.log.filter(({ type }) => type === 'tested').length >= 2
        ? p.exercise.order({ order: 'give-up' })
        : undefined,
  }),
};

/** Who it was, by the counts of the debrief and its ending alone. */
export function tellApart({ counts, ending }: Pick<RunLookedBack, 'ending'> & { readonly counts: Counts }): Learner {
  if (counts.probesElsewhere > 0) return 'swaps';
  if (counts.skippedProofs > 0) return 'hurries';
  if (counts.needlessParts > 0 && counts.tests <= 2) return 'guesses';
  if (ending === 'given-up') return 'gives-up';
  return counts.notProven > 0 ? 'never-proves' : 'right';
}
