import { useEffect, useRef, useState } from 'react';
import { askedNow } from '../../practice/asked-now.ts';
import type { Exercise } from '../../practice/exercise.ts';
import { nameOf } from '../../practice/exercise-plan.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { pointWords } from '../../words/things/place-words.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { ExerciseKeys, MeterKeys, MomentKeys } from './exercise-keys.tsx';
import { Ladder } from './ladder.tsx';
import type { PracticeSession, PracticeState } from './practice-session.ts';
import { TestMadePanel } from './test-made.tsx';

interface RunningExerciseProps {
  readonly session: PracticeSession;
  readonly exercise: Exercise;
  readonly state: PracticeState;
}

/** An exercise while it is worked through: talk, drawing, keys, and what the last test came to. */
export function RunningExercise({ session, exercise, state }: RunningExerciseProps) {
  const { context, log } = exercise;
  const made = log.findLast((deed) => deed.type === 'tested');
  const hints = log.filter(({ type }) => type === 'hinted').length;
  const { probes } = exercise;
  return (
    <main
      className="practice running"
      data-stage="running"
      data-waiting={state.waiting}
      aria-busy={state.waiting > 0}
      data-tests={log.length}
    >
      <header className="practice-head">
        <h1>{PRACTICE.running(nameOf(session.plan))}</h1>
        <p>
          {PRACTICE.work(exercise.work.minutes)} · {PRACTICE.hintsUsed(hints)}
        </p>
      </header>
      <EnergyBand energy={context.energy} />
      <div className="practice-work">
        <section className="practice-side practice-says" aria-label={PRACTICE.talk}>
          <Talk state={state} />
          <Now exercise={exercise} />
          <MomentKeys session={session} exercise={exercise} />
          <SayIt onSay={(text) => session.say(text)} />
        </section>
        <section className="practice-side practice-unit" aria-label={PRACTICE.diagram}>
          <Ladder
            unit={exercise.drawn.profile}
            commonOn={exercise.drawn.kase.build.commonOn}
            probes={probes}
            onPut={(put) => session.give({ put }, '')}
          />
          <p role="status" className="practice-probes">
            {PRACTICE.probes(...probes.map(pointWords))}
          </p>
          <MeterKeys session={session} exercise={exercise} />
          {made?.type === 'tested' ? <TestMadePanel made={made} /> : null}
        </section>
        <section className="practice-side practice-does" aria-label={PRACTICE.answers}>
          <ExerciseKeys session={session} exercise={exercise} ear={state.ear} />
        </section>
      </div>
    </main>
  );
}

/** What is asked now, or that the trainee leads. */
function Now({ exercise }: { readonly exercise: Exercise }) {
  const { kind, words } = askedNow(exercise);
  const panel = useRef<HTMLDivElement>(null);
  // Whoever touched something further down on a phone sees what is asked before it is done.
  useEffect(() => {
    if (kind !== 'lead' && kind !== 'step') panel.current?.scrollIntoView({ block: 'nearest' });
  }, [kind]);
  return (
    <div className="practice-now" data-asked={kind} ref={panel}>
      <h2>{PRACTICE.nowTitles[kind]}</h2>
      <p>{words}</p>
    </div>
  );
}

/** What was said and shown, the latest in view. */
function Talk({ state }: { readonly state: PracticeState }) {
  const list = useRef<HTMLOListElement>(null);
  const { lines } = state;
  // biome-ignore lint/correctness/useExhaustiveDependencies: with each line
  useEffect(() => {
    list.current?.scrollTo({ top: list.current.scrollHeight });
  }, [lines.length]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
    <ol className="practice-talk" ref={list} tabIndex={0} aria-label={PRACTICE.talk} aria-live="polite">
      {lines.map((line, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines are only added
        <li key={at} data-by={line.by}>
          <span className="practice-by">{PRACTICE.by[line.by]}</span> <span dir="auto">{line.text}</span>
        </li>
      ))}
    </ol>
  );
}

function SayIt({ onSay }: { readonly onSay: (text: string) => void }) {
  const [text, setText] = useState('');
  return (
    <form
      className="practice-say"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== '') onSay(text.trim());
        setText('');
      }}
    >
      <label>
        {PRACTICE.sentence}
        <input type="text" value={text} autoComplete="off" onChange={({ target }) => setText(target.value)} />
      </label>
      <button type="submit" className="control">
        {PRACTICE.send}
      </button>
    </form>
  );
}
