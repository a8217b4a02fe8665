import '../technician/technician.css';
import './practice.css';
import { lazy, Suspense, useEffect, useState } from 'react';
import { PracticeError } from '../../practice/errors.ts';
import { type ExercisePlan, linkOf, readPlan } from '../../practice/exercise-plan.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { forgetRun, type KeptRun, runOfTab } from './kept-run.ts';
import { StartExercise } from './start-exercise.tsx';

const fetchExercising = () => import('./exercising.tsx');
/** What an exercise runs on: the machine, the unit, ear and voice. */
const Exercising = lazy(async () => ({ default: (await fetchExercising()).Exercising }));

/** What the address asks for: an exercise that somebody set, a wrong one, or none. */
function planInAddress(): ExercisePlan | PracticeError | undefined {
  const at = new URLSearchParams(location.search);
  const name = at.get('exercise');
  if (name === null) return undefined;
  try {
    return readPlan(name, at.get('minutes'), at.get('hints'));
  } catch (error) {
    if (error instanceof PracticeError) return error;
    throw error;
  }
}

/** An exercise under way: as it was before a reload, or from its beginning. */
interface UnderWay {
  readonly plan: ExercisePlan;
  readonly kept: KeptRun | undefined;
}

function underWayInTab(): UnderWay | undefined {
  const kept = runOfTab(`${location.pathname}${location.search}`);
  return kept === undefined ? undefined : { plan: kept.plan, kept };
}

/** The page of the practice: an exercise is chosen or was set by a link, is worked through, and looked back upon. */
export function PracticePage() {
  const [asked] = useState(planInAddress);
  const [underWay, setUnderWay] = useState(underWayInTab);
  const set = asked instanceof PracticeError ? undefined : asked;
  useEffect(() => {
    // Fetched behind the page that is shown, ahead of the key that wants it.
    fetchExercising().catch(() => undefined);
  }, []);
  const begin = (plan: ExercisePlan) => {
    history.replaceState(undefined, '', linkOf(plan));
    setUnderWay({ plan, kept: undefined });
  };
  const leave = () => {
    forgetRun();
    history.replaceState(undefined, '', '/practice');
    setUnderWay(undefined);
  };
  if (underWay === undefined)
    return (
      <StartExercise set={set} wrong={asked instanceof PracticeError ? asked.message : undefined} onBegin={begin} />
    );
  return (
    <Suspense fallback={<p role="status">{PRACTICE.fetching}</p>}>
      <Exercising {...underWay} onBegin={begin} onLeave={leave} />
    </Suspense>
  );
}
