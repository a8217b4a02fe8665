import '../technician/technician.css';
import './practice.css';
import { useEffect, useState, useSyncExternalStore } from 'react';
import { PracticeError } from '../../practice/errors.ts';
import { type ExercisePlan, linkOf, nameOf, readPlan } from '../../practice/exercise-plan.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { DebriefView } from './debrief-view.tsx';
import { PracticeSession } from './practice-session.ts';
import { RunningExercise } from './running-exercise.tsx';
import { StartExercise } from './start-exercise.tsx';

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

/** The page of the practice: an exercise is chosen or was set by a link, is worked through, and looked back upon. */
export function PracticePage() {
  const [asked] = useState(planInAddress);
  const [session, setSession] = useState<PracticeSession>();
  const set = asked instanceof PracticeError ? undefined : asked;
  const begin = (plan: ExercisePlan) => {
    void session?.end();
    history.replaceState(undefined, '', linkOf(plan));
    setSession(new PracticeSession(plan));
  };
  const leave = () => {
    void session?.end();
    history.replaceState(undefined, '', '/practice');
    setSession(undefined);
  };
  useEffect(() => () => void session?.end(), [session]);
  if (session !== undefined) return <Exercising session={session} onAgain={begin} onLeave={leave} />;
  return <StartExercise set={set} wrong={asked instanceof PracticeError ? asked.message : undefined} onBegin={begin} />;
}

interface ExercisingProps {
  readonly session: PracticeSession;
  readonly onAgain: (plan: ExercisePlan) => void;
  readonly onLeave: () => void;
}

function Exercising({ session, onAgain, onLeave }: ExercisingProps) {
  const state = useSyncExternalStore(session.subscribe, session.state);
  const { plan } = session;
  const next = { ...plan, seed: (plan.seed % 99_999) + 1 };
  if (state.stage === 'debrief' && state.looked !== undefined)
    return <DebriefView looked={state.looked} name={nameOf(plan)} onAgain={() => onAgain(next)} onLeave={onLeave} />;
  if (state.stage === 'running' && session.exercise !== undefined)
    return <RunningExercise session={session} exercise={session.exercise} state={state} />;
  return (
    <main className="start practice" data-stage={state.stage}>
      <h1>{PRACTICE.running(nameOf(plan))}</h1>
      {state.stage === 'failed' ? (
        <>
          <p className="notice" role="alert">
            {PRACTICE.failed(state.sentence ?? '')}
          </p>
          <button type="button" className="key" onClick={() => onAgain(plan)}>
            {PRACTICE.begin}
          </button>
        </>
      ) : (
        <p role="status">{state.stage === 'looking-back' ? PRACTICE.lookingBack : PRACTICE.built(state.building)}</p>
      )}
    </main>
  );
}
