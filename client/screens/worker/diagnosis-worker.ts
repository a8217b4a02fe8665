import type { Diagnosis } from '../../diagnosis/diagnosis.ts';
import { warmUp } from '../../diagnosis/warm-up.ts';
import { diagnoseFor } from '../../visit/steps/diagnose-for.ts';
import type { DiagnosisNews, DiagnosisQuestion, DiagnosisReply } from './diagnosis-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (news: DiagnosisNews) => self.postMessage(news);
const diagnose = diagnoseFor((building) => tell({ building }), warmInBetween);

self.onmessage = async ({ data }: MessageEvent<DiagnosisQuestion>) => {
  tell(await replyTo(data));
};

/** A step at a time, so that what the visit asks comes first. */
function warmInBetween(diagnosis: Diagnosis): void {
  const steps = warmUp(diagnosis);
  const go = (): void => {
    if (!steps.next().done) setTimeout(go, 0);
  };
  setTimeout(go, 0);
}

async function replyTo({ number, unit, evidence, parked }: DiagnosisQuestion): Promise<DiagnosisReply> {
  const start = performance.now();
  try {
    const answer = await diagnose(unit, evidence, parked);
    // A figure for the benchmark, beside the page's own, which holds the way there and back.
    performance.measure('readback.diagnosed', { start, end: performance.now() });
    return { number, answer };
  } catch (error) {
    return { number, sentence: error instanceof Error ? error.message : String(error) };
  }
}
