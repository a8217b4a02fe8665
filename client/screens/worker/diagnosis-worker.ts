import { diagnoseFor } from '../../visit/diagnose-for.ts';
import type { DiagnosisNews, DiagnosisQuestion, DiagnosisReply } from './diagnosis-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (news: DiagnosisNews) => self.postMessage(news);
const diagnose = diagnoseFor((building) => tell({ building }));

self.onmessage = async ({ data }: MessageEvent<DiagnosisQuestion>) => {
  tell(await replyTo(data));
};

async function replyTo({ number, unit, evidence, parked }: DiagnosisQuestion): Promise<DiagnosisReply> {
  try {
    return { number, answer: await diagnose(unit, evidence, parked) };
  } catch (error) {
    return { number, sentence: error instanceof Error ? error.message : String(error) };
  }
}
