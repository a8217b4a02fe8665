import { understand } from '../../../grammar/phrases/understand.ts';
import type { Diagnosis } from '../../diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../../diagnosis/make-diagnosis.ts';
import { type AskedDiagnosis, askHere } from '../../practice/ask-diagnosis.ts';
import { lookBack } from '../../practice/debrief.ts';
import { type DrawnExercise, drawExercise, handOver } from '../../practice/exercise-plan.ts';
import { runPlanner } from '../../practice/planner-run.ts';
import type { DiagnosisCall, PracticeNews, PracticeQuestion } from './practice-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (news: PracticeNews) => self.postMessage(news);
let made: { readonly drawn: DrawnExercise; readonly diagnosis: Diagnosis; readonly asked: AskedDiagnosis } | undefined;

self.onmessage = async ({ data }: MessageEvent<PracticeQuestion>) => {
  try {
    if ('draw' in data) draw(data.draw);
    else if ('call' in data) tell({ number: data.number, answer: await answer(data) });
    else await run(data.software);
  } catch (error) {
    tell({ sentence: error instanceof Error ? error.message : String(error) });
  }
};

/** Draws the exercise and builds the table of its unit. */
function draw(plan: Extract<PracticeQuestion, { draw: unknown }>['draw']): void {
  tell({ building: 0 });
  const drawn = drawExercise(plan);
  const diagnosis = makeDiagnosis(drawn.profile, { onProgress: (building) => tell({ building }) });
  made = { drawn, diagnosis, asked: askHere(diagnosis) };
  tell({ drawn: handOver(drawn) });
}

async function answer(call: DiagnosisCall): Promise<unknown> {
  const { assess, testFor, weigh } = made!.asked;
  if (call.call === 'assess') return assess(...call.given);
  return call.call === 'testFor' ? testFor(...call.given) : weigh(...call.given);
}

async function run(software: string): Promise<void> {
  if (made === undefined) return;
  const { exercise, events } = await runPlanner(made.drawn, { diagnosis: made.diagnosis, understand, software });
  tell({ run: { back: lookBack(exercise), events } });
}
