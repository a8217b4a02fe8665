import { diagnoseFor } from '../../visit/diagnose-for.ts';
import type { DiagnosisQuestion, DiagnosisReply } from './diagnosis-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const diagnose = diagnoseFor();

self.onmessage = async ({ data }: MessageEvent<DiagnosisQuestion>) => {
  self.postMessage(await replyTo(data));
};

async function replyTo({ number, unit, evidence, parked }: DiagnosisQuestion): Promise<DiagnosisReply> {
  try {
    return { number, answer: await diagnose(unit, evidence, parked) };
  } catch (error) {
    return { number, sentence: error instanceof Error ? error.message : String(error) };
  }
}
