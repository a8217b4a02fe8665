import { askHere } from '../../../client/practice/ask-diagnosis.ts';
import { Exercise } from '../../../client/practice/exercise.ts';
import { type DrawnExercise, drawExercise, readPlan } from '../../../client/practice/exercise-plan.ts';
import type { ExerciseLine } from '../../../client/practice/exercise-voice.ts';
import { SteppedClock } from '../../../client/visit/run/stepped-clock.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';

/** An exercise on typed lines, with the real grammar, machine, diagnosis and unit. */
export class Practised {
  readonly lines: ExerciseLine[] = [];
  readonly bodies: string[] = [];
  readonly clock = new SteppedClock(Date.parse('2026-06-15T14:00:00Z'));
  readonly drawn: DrawnExercise;
  exercise!: Exercise;

  private constructor(drawn: DrawnExercise) {
    this.drawn = drawn;
  }

  static async begin(name: string, minutes?: string, hints?: string): Promise<Practised> {
    const practised = new Practised(drawExercise(readPlan(name, minutes, hints)));
    const { drawn } = practised;
    const { clock } = practised;
    practised.exercise = await Exercise.begin(drawn, {
      ...{ understand, diagnosis: askHere(diagnosisOf(drawn.profile)), software: 'test' },
      clock,
      letPass: async (minutes, settled) => {
        for (let left = minutes; left > 0; await settled()) left = clock.step(left);
      },
      mouth: { speak: async () => 'spoken', hush: () => {} },
      append: async (bodies) => void practised.bodies.push(...bodies),
      tell: (line) => practised.lines.push(line),
    });
    return practised;
  }

  /** Types lines one after another; returns what was told after the last. */
  async type(...lines: readonly string[]): Promise<string> {
    let told = this.lines.length;
    for (const line of lines) {
      told = this.lines.length;
      await this.exercise.say(line);
    }
    return this.lines
      .slice(told)
      .map(({ by, text }) => `${by}: ${text}`)
      .join('\n');
  }

  events(): readonly VisitEvent[] {
    return this.bodies.map((body) => JSON.parse(body) as VisitEvent);
  }
}

/** From the door to where the trainee leads. */
export const ARRIVED = ['outdoor air', 'return air', 'thermostat is calling', 'look at the fan'] as const;

/** Off, locked, every pair read, the meter before and after, both sections discharged and read. */
export const PROVEN_DEAD = [
  'leg one to ground',
  'none yet',
  'live',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'prove the meter',
  'leg one to ground',
  'leg two to ground',
  'leg one to leg two',
  'T1 to ground',
  'T2 to ground',
  'T1 to T2',
  'prove the meter',
  'live',
  'capacitor is discharged',
  'herm section',
  'fan section',
  'start capacitor is discharged',
  'start capacitor',
] as const;
