import { understand } from '../../../grammar/phrases/understand.ts';
import { diagnosisFrom } from '../../diagnosis/make-diagnosis.ts';
import { buildTable } from '../../diagnosis/table/build-table.ts';
import type { FaultTable } from '../../diagnosis/table/fault-table.ts';
import { lookBack } from '../../practice/debrief.ts';
import { type DrawnExercise, drawExercise, handOver } from '../../practice/exercise-plan.ts';
import { runPlanner } from '../../practice/planner-run.ts';
import type { PracticeNews, PracticeQuestion } from './practice-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (news: PracticeNews) => self.postMessage(news);
let made: { readonly drawn: DrawnExercise; readonly table: FaultTable } | undefined;

self.onmessage = async ({ data }: MessageEvent<PracticeQuestion>) => {
  try {
    if ('draw' in data) draw(data.draw);
    else await run(data.software);
  } catch (error) {
    tell({ sentence: error instanceof Error ? error.message : String(error) });
  }
};

/** Draws the exercise and builds the table of its unit. */
function draw(plan: Extract<PracticeQuestion, { draw: unknown }>['draw']): void {
  tell({ building: 0 });
  const drawn = drawExercise(plan);
  const table = buildTable(drawn.profile, { onProgress: (building) => tell({ building }) });
  made = { drawn, table };
  tell({ drawn: handOver(drawn), table });
}

async function run(software: string): Promise<void> {
  if (made === undefined) return;
  const { exercise, events } = await runPlanner(made.drawn, {
    diagnosis: diagnosisFrom(made.table),
    understand,
    software,
  });
  tell({ run: { back: lookBack(exercise), events } });
}
