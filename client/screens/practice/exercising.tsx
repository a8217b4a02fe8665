import { lazy, Suspense, useEffect, useState, useSyncExternalStore } from 'react';
import { type ExercisePlan, nameOf } from '../../practice/exercise-plan.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import type { KeptRun } from './kept-run.ts';
import { PracticeSession } from './practice-session.ts';
import { RunningExercise } from './running-exercise.tsx';

const fetchDebrief = () => import('./debrief-view.tsx');
/** The replay comes with it, and nobody needs it before an exercise is over. */
const DebriefView = lazy(async () => ({ default: (await fetchDebrief()).DebriefView }));

interface ExercisingProps {
  readonly plan: ExercisePlan;
  /** The same exercise before a reload. */
  readonly kept: KeptRun | undefined;
  readonly onBegin: (plan: ExercisePlan) => void;
  readonly onLeave: () => void;
}

/** An exercise from its drawing to its debrief. */
export function Exercising(props: ExercisingProps) {
  const { plan, kept } = props;
  const [session, setSession] = useState<PracticeSession>();
  useEffect(() => {
    const begun = new PracticeSession(plan, kept);
    setSession(begun);
    return () => void begun.end();
  }, [plan, kept]);
  return session === undefined ? null : <Shown {...props} session={session} />;
}

function Shown({ session, onBegin, onLeave }: ExercisingProps & { readonly session: PracticeSession }) {
  const state = useSyncExternalStore(session.subscribe, session.state);
  const { plan } = session;
  const { stage, looked, building, sentence } = state;
  const next = { ...plan, seed: (plan.seed % 99_999) + 1 };
  useEffect(() => {
    // Fetched while the exercise is worked through.
    if (stage === 'running') fetchDebrief().catch(() => undefined);
  }, [stage]);
  if (stage === 'debrief' && looked !== undefined)
    return (
      <Suspense fallback={<p role="status">{PRACTICE.lookingBack}</p>}>
        <DebriefView looked={looked} name={nameOf(plan)} onAgain={() => onBegin(next)} onLeave={onLeave} />
      </Suspense>
    );
  if (stage === 'running' && session.exercise !== undefined)
    return <RunningExercise session={session} exercise={session.exercise} state={state} />;
  return (
    <main className="start practice" data-stage={stage}>
      <h1>{PRACTICE.running(nameOf(plan))}</h1>
      {stage === 'failed' ? (
        <>
          <p className="notice" role="alert">
            {PRACTICE.failed(sentence ?? '')}
          </p>
          <button type="button" className="key" onClick={() => onBegin({ ...plan })}>
            {PRACTICE.begin}
          </button>
        </>
      ) : (
        <p role="status">{stage === 'looking-back' ? PRACTICE.lookingBack : PRACTICE.built(building)}</p>
      )}
    </main>
  );
}
