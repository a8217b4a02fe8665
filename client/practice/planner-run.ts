import type { VisitEvent } from '../../grammar/visit/events.ts';
import { openQuestion } from '../../grammar/visit/standing.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { Diagnosis } from '../diagnosis/diagnosis.ts';
import type { LookId } from '../diagnosis/measuring/look-tests.ts';
import { LOOK_TESTS } from '../diagnosis/measuring/look-tests.ts';
import type { ActionDone, Step } from '../visit/chart/context.ts';
import { unreadSections } from '../visit/rules/charged-sections.ts';
import { CAPACITOR_ZONES, provedWith } from '../visit/rules/isolation.ts';
import { SteppedClock } from '../visit/run/stepped-clock.ts';
import type { VisitEdges } from '../visit/run/visit-run.ts';
import { bestTest } from '../visit/steps/choose-step.ts';
import { PERFORMED, SWITCHED, type SwitchAt, TOLD } from '../words/practice/performed-words.ts';
import { askHere } from './ask-diagnosis.ts';
import { DISCHARGED } from './discharged.ts';
import { Exercise } from './exercise.ts';
import type { DrawnExercise } from './exercise-plan.ts';
import type { ExerciseLine } from './exercise-voice.ts';
import { repairOfFinding } from './repair-of-finding.ts';

const MOST_TURNS = 220;
const MOST_TO_CLOSE = 6;
/** Asked so often with nothing changed, a step is passed. */
const MOST_AGAIN = 3;
/** The planner's run stands on a clock of its own; the day is nobody's. */
const BEGINS = Date.parse('2026-06-15T14:00:00Z');

export interface RunEdges {
  readonly diagnosis: Diagnosis;
  readonly understand: VisitEdges['understand'];
  readonly software: string;
}

/** A run of an exercise from its beginning to its end, with the record of its visit. */
export interface RunMade {
  readonly exercise: Exercise;
  readonly events: readonly VisitEvent[];
  readonly lines: readonly ExerciseLine[];
}

/** Who does an exercise by rule: what is done instead of what the planner would do. Undefined: as the planner does. */
export interface Manner {
  /** In place of the planner's next test. */
  readonly test?: (performer: Performer) => Promise<void> | undefined;
  /** In place of what a step asks. */
  readonly step?: (performer: Performer, step: Step) => Promise<void> | undefined;
}

/** Does an exercise as the planner leads it, every proof whole: the run that a trainee's is held beside. */
export async function runPlanner(drawn: DrawnExercise, edges: RunEdges): Promise<RunMade> {
  return new Performer(drawn, edges, {}).perform();
}

/** Somebody who follows the visit step by step; a manner makes a learner of it. */
export class Performer {
  exercise!: Exercise;
  readonly clock = new SteppedClock(BEGINS);
  readonly lines: ExerciseLine[] = [];
  readonly #bodies: string[] = [];
  readonly #drawn: DrawnExercise;
  readonly #edges: RunEdges;
  readonly #manner: Manner;
  #idle = 0;
  #again = 0;
  #stood = '';
  #gone: string | undefined;

  constructor(drawn: DrawnExercise, edges: RunEdges, manner: Manner) {
    this.#drawn = drawn;
    this.#edges = edges;
    this.#manner = manner;
  }

  async perform(): Promise<RunMade> {
    this.exercise = await Exercise.begin(this.#drawn, {
      ...this.#edges,
      diagnosis: askHere(this.#edges.diagnosis),
      clock: this.clock,
      mouth: { speak: async () => 'spoken', hush: () => {} },
      append: async (bodies) => void this.#bodies.push(...bodies),
      tell: (line) => this.lines.push(line),
      letPass: (minutes) => this.later(minutes),
    });
    for (let turn = 0; turn < MOST_TURNS && this.exercise.ended === undefined; turn += 1) await this.#turn();
    // Who gets no further leaves the unit as it is.
    for (let turn = 0; turn < MOST_TO_CLOSE && this.exercise.ended === undefined; turn += 1) await this.#leave();
    if (this.exercise.ended === undefined) await this.exercise.order({ order: 'give-up' });
    return {
      exercise: this.exercise,
      lines: this.lines,
      events: this.#bodies.map((body) => JSON.parse(body) as VisitEvent),
    };
  }

  async #leave(): Promise<void> {
    const { exercise } = this;
    if (exercise.halted) return exercise.touch('go-on');
    if (exercise.context.closeRefused.length === 0) return exercise.touch('finish');
    await exercise.say(TOLD.noTime);
  }

  async #turn(): Promise<void> {
    const { exercise } = this;
    const { context } = exercise;
    if (exercise.halted) return exercise.touch('go-on');
    if (exercise.asked !== undefined) return exercise.order({ order: 'suspect', suspect: 1 });
    const question = openQuestion(context);
    if (question !== undefined) {
      const wantsReason = question.kind === 'confirm-meaning' && question.wants === 'reason';
      return exercise.say(wantsReason ? TOLD.sameSize : TOLD.yes);
    }
    if (context.caution !== undefined) return exercise.touch('live');
    if (context.closeRefused.length > 0) return exercise.say(TOLD.noTime);
    const { step } = context;
    if (step !== undefined) {
      this.#idle = 0;
      const stands = `${step.id} ${context.evidenceNumber} ${JSON.stringify(context.energy)} ${context.proof?.pairs.length}`;
      this.#again = stands === this.#stood ? this.#again + 1 : 0;
      this.#stood = stands;
      if (this.#again >= MOST_AGAIN) return exercise.touch('pass');
      return (this.#manner.step?.(this, step) ?? this.follow(step)) as Promise<void>;
    }
    if (context.phase === 'testing' || context.phase === 'arrive') return this.#manner.test?.(this) ?? this.goOn();
    if (this.#idle > 5) return exercise.touch('finish');
    this.#idle += 1;
    await exercise.order({ order: 'wait', minutes: 5 });
  }

  /** The planner's next test; where none is left, the visit is finished. */
  async goOn(): Promise<void> {
    const best = bestTest(this.exercise.context);
    const key = `${best?.id} ${this.exercise.context.evidenceNumber}`;
    if (best === undefined || key === this.#gone) return this.exercise.touch('finish');
    this.#gone = key;
    if (this.exercise.probing.hypothesis === undefined) await this.exercise.order({ order: 'suspect', suspect: 1 });
    await this.exercise.probing.leadTo(best.id);
    // Where something stands in its way it is taken as it is.
    if (this.exercise.context.step === undefined)
      await this.#read(best.quantity === 'observation' ? (best.id as LookId) : undefined, best);
  }

  async #read(
    look: LookId | undefined,
    test: { readonly quantity: string; readonly at: readonly string[]; readonly needs: { readonly bench: boolean } },
  ): Promise<void> {
    if (look !== undefined) return this.exercise.order({ order: 'look', look });
    await this.exercise.measure({ quantity: test.quantity, at: test.at } as never, test.needs.bench);
  }

  async later(minutes: number): Promise<void> {
    for (let left = minutes; left > 0; ) {
      left = this.clock.step(left);
      await this.exercise.run.settled();
    }
  }

  /** Does what a step asks. */
  async follow(step: Step): Promise<void> {
    const { exercise } = this;
    const { ask } = step;
    if (ask.kind === 'action') return this.#act(ask.done, step);
    if (ask.kind === 'look') {
      if (step.id === 'arrive.call') return exercise.say(TOLD.isCalling);
      const look =
        step.test ??
        (Object.keys(LOOK_TESTS) as LookId[]).find((id) =>
          LOOK_TESTS[id].measure.answers.some((answer) => ask.answers.includes(answer)),
        );
      return exercise.order({ order: 'look', look: look! });
    }
    if (ask.quantity === 'mass') return exercise.say(step.id.endsWith('recovered') ? TOLD.recovered : TOLD.added);
    if (ask.quantity === 'voltage-dc') return this.#discharge(step.zone, ask.at);
    await exercise.measure(ask, step.needs.bench);
  }

  /** Leads a charge off and reads the section; the rest is asked one by one. */
  async #discharge(zone: ZoneId | 'none', at: readonly PointId[] | undefined): Promise<void> {
    const { unit } = this.exercise;
    const isCharged = CAPACITOR_ZONES.some((one) => unit.chargeOf(one) > FELT);
    if (zone !== 'none' && provedWith(zone) === 'outdoor-load' && isCharged)
      await this.exercise.enter(DISCHARGED, TOLD.discharged);
    if (at !== undefined) await this.exercise.measure({ quantity: 'voltage-dc', at });
  }

  async #act(done: ActionDone, step: Step): Promise<void> {
    const { exercise } = this;
    if (done === 'absence-proved' || done === 'meter-again') return exercise.order({ order: 'meter-on-source' });
    if (done === 'part-fitted') {
      const repair = repairOfFinding(exercise.context.finding?.fault, exercise.context.unit);
      return repair === undefined ? exercise.touch('finish') : exercise.enter(repair.meaning, repair.words);
    }
    if (done === 'capacitors-discharged' && step.zone !== 'none')
      return this.#discharge(step.zone, unreadSections(step.zone, exercise.context)[0]?.at);
    if (done === 'visit-finished') return exercise.touch('finish');
    await exercise.say(PERFORMED[done] ?? SWITCHED[done]?.[placeOf(step)] ?? TOLD.done);
  }
}

const FELT = 2;
function placeOf({ zone }: Step): SwitchAt {
  if (zone === 'air-handler' || zone === 'control') return 'handler';
  return zone === 'disconnect-line' ? 'panel' : 'outdoor';
}
