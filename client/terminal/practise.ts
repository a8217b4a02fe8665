import { createInterface } from 'node:readline';
import { understand } from '../../grammar/phrases/understand.ts';
import type { Diagnosis } from '../diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../diagnosis/make-diagnosis.ts';
import { askHere } from '../practice/ask-diagnosis.ts';
import { debriefOf, lookBack } from '../practice/debrief.ts';
import { PracticeError } from '../practice/errors.ts';
import { Exercise } from '../practice/exercise.ts';
import {
  type DrawnExercise,
  drawExercise,
  type ExercisePlan,
  FAMILIES,
  nameOf,
  readPlan,
} from '../practice/exercise-plan.ts';
import type { ExerciseLine } from '../practice/exercise-voice.ts';
import { runPlanner } from '../practice/planner-run.ts';
import { SteppedClock } from '../visit/run/stepped-clock.ts';
import { EXERCISE } from '../words/practice/exercise-words.ts';
import { PLAYED_LINES } from '../words/terminal/played-labels.ts';
import { LINE_SIGN } from '../words/terminal/visit-lines.ts';
import { letPass } from './let-pass.ts';
import { printDebrief, printTest } from './print-debrief.ts';
import { row } from './print-played.ts';
import { readVersion, runTool } from './run-tool.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'practise',
  purpose: 'has you search a fault in a simulated unit, a line an utterance, and looks back on it.',
  usage: ['[-- OPTIONS] [< LINES]'],
  options: {
    exercise: {
      value: 'NAME',
      says: `a family and a number, such as motors-412; families: ${FAMILIES.join(', ')} (any)`,
    },
    minutes: { value: 'N', says: 'ends after so many minutes of work' },
    hints: { value: 'N', says: 'gives so many hints and no more' },
    json: { says: 'prints one JSON object a line instead of a conversation' },
    planner: { says: 'lets the planner do the exercise, and prints its run' },
  },
  notes: [
    'Say where the probes go ("leg one to ground", "ohms common to run"); the meter says the number. Beside all that is',
    'said on a visit: "look at the fan", "meter on ohms", "prove the meter", "suspect two", "none yet", "hint", "give up".',
    'Minutes of the visit pass by "@wait MINUTES". Ctrl-D ends the exercise; the debrief follows.',
    'Nothing is kept: an exercise is no visit.',
  ],
  examples: [
    'npm run -s practise',
    'npm run -s practise -- --exercise motors-411',
    'npm run -s practise -- --exercise power-422 --planner',
  ],
  exits: '0 with the debrief, however the exercise ended; 2 when used wrongly.',
} as const satisfies Tool;

const print = (line: string) => process.stdout.write(`${line}\n`);
/** The clock of the exercise: the day is nobody's, and the same lines come to the same output. */
const BEGINS = Date.parse('2026-06-15T14:00:00Z');

const LABELS = {
  visit: 'says',
  meter: 'measured',
  eyes: 'seen',
  exercise: 'exercise',
  stop: 'warning',
  hint: 'hint',
} as const satisfies Readonly<Record<ExerciseLine['by'], Parameters<typeof row>[0]>>;

function planOf({ exercise, minutes, hints }: Given<typeof TOOL>['options']): ExercisePlan {
  const now = Date.now();
  try {
    return readPlan(
      exercise ?? `${FAMILIES[now % FAMILIES.length]}-${1 + (Math.floor(now / 7) % 99_999)}`,
      minutes,
      hints,
    );
  } catch (error) {
    if (error instanceof PracticeError) throw new TerminalError('usage', error.message, error);
    throw error;
  }
}

async function main({ options }: Given<typeof TOOL>): Promise<void> {
  const plan = planOf(options);
  const json = options.json === true;
  const tell = (line: ExerciseLine) => print(json ? JSON.stringify(line) : row(LABELS[line.by], line.text));
  const drawn = drawExercise(plan);
  if (!json) print(row('notice', `${nameOf(plan)}. ${PLAYED_LINES.building}`));
  const diagnosis = makeDiagnosis(drawn.profile);
  const software = await readVersion();
  const planner = await runPlanner(drawn, { diagnosis, understand, software });
  if (options.planner === true) {
    for (const line of planner.lines) tell(line);
    return finish(planner.exercise, planner.exercise, json);
  }
  tell({ by: 'exercise', text: EXERCISE.begins('does not cool') });
  const exercise = await practise(drawn, diagnosis, software, tell, json);
  finish(exercise, planner.exercise, json);
}

async function practise(
  drawn: DrawnExercise,
  diagnosis: Diagnosis,
  software: string,
  tell: (line: ExerciseLine) => void,
  json: boolean,
): Promise<Exercise> {
  const clock = new SteppedClock(BEGINS);
  const exercise = await Exercise.begin(drawn, {
    ...{ diagnosis: askHere(diagnosis), understand, clock, software, tell },
    mouth: { speak: async () => 'spoken', hush: () => {} },
    append: async () => {},
  });
  const terminal = process.stdin.isTTY === true && process.stdout.isTTY === true && !json;
  const reader = createInterface({
    input: process.stdin,
    ...(terminal ? { output: process.stdout, prompt: LINE_SIGN } : {}),
    terminal,
  });
  const invite = () => {
    if (terminal) reader.prompt();
  };
  invite();
  for await (const text of reader) {
    const told = text.trim();
    if (!terminal && !json && told !== '') print(`${LINE_SIGN}${told}`);
    const before = exercise.log.length;
    const wait = /^@wait ([0-9]{1,3})$/.exec(told);
    if (wait !== null) await letPass(exercise.run, clock, Number(wait[1]));
    else if (told !== '') await exercise.say(told);
    for (const deed of exercise.log.slice(before)) {
      if (deed.type !== 'tested') continue;
      for (const line of json ? [JSON.stringify(deed)] : printTest(deed)) print(line);
    }
    if (exercise.ended !== undefined) break;
    invite();
  }
  reader.close();
  if (exercise.ended === undefined) await exercise.order({ order: 'give-up' });
  return exercise;
}

function finish(trainee: Exercise, planner: Exercise, json: boolean): void {
  const debrief = debriefOf(trainee, lookBack(planner));
  if (json)
    print(
      JSON.stringify({
        debrief: { hidden: debrief.hidden, trainee: debrief.trainee.counts, planner: debrief.planner.counts },
      }),
    );
  else for (const line of printDebrief(debrief)) print(line);
}

await runTool(TOOL, main);
