import { VisitRun } from '../visit/run/visit-run.ts';
import type { ExerciseEdges } from './exercise-edges.ts';
import { type DrawnExercise, nameOf } from './exercise-plan.ts';

/**
 * Opens the visit of an exercise: one as on any day, at a site of its own, by a technician, since nobody is there to be
 * hurt and no supervisor to ask.
 *
 * @param edges its voice and its record are the exercise's
 */
export function openVisit(
  drawn: DrawnExercise,
  edges: Pick<ExerciseEdges, 'understand' | 'clock' | 'diagnosis' | 'mouth' | 'append' | 'software'>,
): VisitRun {
  const { understand, clock, diagnosis, mouth, append, software } = edges;
  const name = nameOf(drawn.plan);
  return VisitRun.open(
    {
      ...{ understand, clock, mouth, append },
      diagnose: (_unit, evidence, parked) => diagnosis.assess(evidence, parked),
    },
    {
      ...{ type: 'opened.visit', visit: `exercise-${name}`, site: 'practice', complaint: 'does not cool' },
      ...{ role: 'technician', unit: drawn.profile, software, exercise: name },
    },
  );
}
