import { useEffect, useState } from 'react';
import { PracticeError } from '../../practice/errors.ts';
import {
  type ExercisePlan,
  FAMILIES,
  linkOf,
  nameOf,
  type PracticeFamily,
  readPlan,
} from '../../practice/exercise-plan.ts';
import { type ExerciseDone, type FamilyProgress, progressOf } from '../../practice/progress.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { exercisesDone } from './kept-exercises.ts';

interface StartExerciseProps {
  /** Set by the link that led here. */
  readonly set: ExercisePlan | undefined;
  readonly wrong: string | undefined;
  readonly onBegin: (plan: ExercisePlan) => void;
}

/** Where an exercise is chosen, begun, or set for somebody by its address; and how one gets on. */
export function StartExercise({ set, wrong, onBegin }: StartExerciseProps) {
  const [family, setFamily] = useState<PracticeFamily>(set?.family ?? 'motors');
  const [seed, setSeed] = useState(() => String(set?.seed ?? 1 + (Date.now() % 9_999)));
  const [minutes, setMinutes] = useState(set?.minutes === undefined ? '' : String(set.minutes));
  const [hints, setHints] = useState(set?.hints === undefined ? '' : String(set.hints));
  const [plan, notThus] = planOf(family, seed, minutes, hints);
  return (
    <main className="start practice" data-stage="start">
      <h1>{PRACTICE.title}</h1>
      <p>{PRACTICE.intro}</p>
      {wrong === undefined ? null : (
        <p className="notice" role="alert">
          {wrong}
        </p>
      )}
      <form
        className="open-visit"
        onSubmit={(event) => {
          event.preventDefault();
          if (plan !== undefined) onBegin(plan);
        }}
      >
        <fieldset className="practice-families">
          <legend>{PRACTICE.family}</legend>
          {FAMILIES.map((one) => (
            <label key={one} className="practice-family">
              <input type="radio" name="family" checked={family === one} onChange={() => setFamily(one)} />
              <span>{PRACTICE.families[one]}</span>
            </label>
          ))}
        </fieldset>
        <NumberField label={PRACTICE.number} help={PRACTICE.numberHelp} value={seed} most={99_999} set={setSeed} />
        <NumberField label={PRACTICE.minutes} help={PRACTICE.noLimit} value={minutes} most={999} set={setMinutes} />
        <NumberField label={PRACTICE.hints} help={PRACTICE.noLimit} value={hints} least={0} most={999} set={setHints} />
        {notThus === undefined ? null : (
          <p className="notice" role="alert">
            {notThus}
          </p>
        )}
        <button type="submit" className="key first" disabled={plan === undefined}>
          {PRACTICE.begin}
        </button>
      </form>
      <section>
        <h2>{PRACTICE.setFor}</h2>
        <p>
          {plan === undefined ? (
            PRACTICE.link
          ) : (
            <a className="practice-link" href={linkOf(plan)}>
              {new URL(linkOf(plan), location.href).href}
            </a>
          )}
        </p>
      </section>
      <section>
        <h2>{PRACTICE.progress}</h2>
        <Progress />
      </section>
    </main>
  );
}

/** What was filled in as a plan, or why it is none. */
function planOf(
  family: PracticeFamily,
  seed: string,
  minutes: string,
  hints: string,
): readonly [ExercisePlan, undefined] | readonly [undefined, string] {
  try {
    return [readPlan(nameOf({ family, seed: Number(seed) }), minutes, hints), undefined];
  } catch (error) {
    if (!(error instanceof PracticeError)) throw error;
    return [undefined, error.message];
  }
}

interface NumberFieldProps {
  readonly label: string;
  readonly help: string;
  readonly value: string;
  readonly least?: number;
  readonly most: number;
  readonly set: (value: string) => void;
}

function NumberField({ label, help, value, least = 1, most, set }: NumberFieldProps) {
  return (
    <label>
      {label}
      <input type="number" min={least} max={most} step={1} value={value} onChange={({ target }) => set(target.value)} />
      <span className="quiet">{help}</span>
    </label>
  );
}

const THEN = ['harmful', 'skippedProofs', 'hints', 'pace'] as const;

function Progress() {
  const [done, setDone] = useState<readonly ExerciseDone[]>();
  useEffect(() => {
    exercisesDone().then(setDone, () => setDone([]));
  }, []);
  if (done === undefined) return null;
  const progress = progressOf(done);
  if (progress.length === 0) return <p className="quiet">{PRACTICE.noProgress}</p>;
  const { family, exercises, mended, harmful, skippedProofs, hints, pace } = PRACTICE.progressHeads;
  return (
    <>
      <p className="quiet">{PRACTICE.thenHelp}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard */}
      <section className="practice-scroll" tabIndex={0} aria-label={PRACTICE.progress}>
        <table className="practice-table">
          <thead>
            <tr>
              {[family, exercises, mended, harmful, skippedProofs, hints, pace].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {progress.map((one) => (
              <tr key={one.family} data-family={one.family}>
                <th scope="row">{PRACTICE.families[one.family]}</th>
                <td>{one.exercises}</td>
                <td>{one.mended}</td>
                {THEN.map((name) => (
                  <td key={name}>{thenWords(one[name])}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

function thenWords({ before, lately }: FamilyProgress['pace']): string {
  const show = (value: number | undefined) => (value === undefined ? undefined : value.toFixed(1));
  return PRACTICE.beforeAndLately(show(before), show(lately));
}
