import { useEffect, useRef, useState } from 'react';
import { askedNow } from '../../practice/asked-now.ts';
import type { Exercise } from '../../practice/exercise.ts';
import { nameOf } from '../../practice/exercise-plan.ts';
import { capital } from '../../words/capital.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { placeWords, pointWords } from '../../words/things/place-words.ts';
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
  const { probes } = exercise.probing;
  const unit = useRef<HTMLElement>(null);
  const asked = askedNow(exercise);
  const placing = placesAsked(exercise, asked.kind);
  // On a phone the drawing lies below the talk: it comes up when probes are to be placed.
  useEffect(() => {
    if (placing !== '' && isStacked()) unit.current?.scrollIntoView();
  }, [placing]);
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
          <button type="button" className="key practice-down" onClick={() => unit.current?.scrollIntoView()}>
            {PRACTICE.toDrawing}
          </button>
          <SayIt onSay={(text) => session.say(text)} />
        </section>
        <section className="practice-side practice-unit" aria-label={PRACTICE.diagram} ref={unit}>
          {placing === '' ? null : <p className="practice-placing">{placing}</p>}
          <Ladder
            unit={exercise.drawn.profile}
            commonOn={exercise.drawn.kase.build.commonOn}
            probes={probes}
            onPut={(put) => session.give({ put }, '')}
          />
          <p role="status" className="practice-probes">
            {PRACTICE.probes(...probes.map(pointWords))}
          </p>
          <MeterKeys session={session} exercise={exercise} taken={state.taken} />
          {made?.type === 'tested' ? <TestMadePanel made={made} /> : null}
        </section>
        <section className="practice-side practice-does" aria-label={PRACTICE.answers}>
          <ExerciseKeys session={session} exercise={exercise} ear={state.ear} />
        </section>
      </div>
    </main>
  );
}

/** The two places that are asked for, in words; nothing where none are. */
function placesAsked(
  { context: { step }, expectation: { readings } }: Exercise,
  kind: ReturnType<typeof askedNow>['kind'],
): string {
  const [at = []] = readings.map((one) => one.at);
  return kind === 'step' && step?.ask.kind !== 'look' && at.length === 2 ? capital(placeWords(at)) : '';
}

/** Whether talk and drawing stand below each other: see practice.css. */
const isStacked = () => !matchMedia('(min-width: 900px)').matches;

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
  const { lines, taken } = state;
  // biome-ignore lint/correctness/useExhaustiveDependencies: with each line
  useEffect(() => {
    list.current?.scrollTo({ top: list.current.scrollHeight });
  }, [lines.length, taken.length]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
    <ol className="practice-talk" ref={list} tabIndex={0} aria-label={PRACTICE.talk} aria-live="polite">
      {lines.map((line, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines are only added
        <li key={at} data-by={line.by}>
          <span className="practice-by">{PRACTICE.by[line.by]}</span> <span dir="auto">{line.text}</span>
        </li>
      ))}
      {taken.map(({ words }, at) =>
        words === '' ? null : (
          // biome-ignore lint/suspicious/noArrayIndexKey: the first goes, the last comes
          <li key={`taken ${at}`} data-by="you" data-taken>
            <span className="practice-by">{PRACTICE.takenBy}</span> <span dir="auto">{words}</span>
          </li>
        ),
      )}
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
