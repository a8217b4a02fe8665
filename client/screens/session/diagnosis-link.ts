import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Evidence } from '../../diagnosis/diagnosis.ts';
import { VISIT } from '../../words/pages/visit-words.ts';
import type { DiagnosisNews, DiagnosisQuestion } from '../worker/diagnosis-messages.ts';

/** The diagnosis in its worker: the page stays free while a table is built. */
export class DiagnosisLink {
  readonly #worker = new Worker(new URL('../worker/diagnosis-worker.ts', import.meta.url), { type: 'module' });
  readonly #open = new Map<
    number,
    { readonly asked: number; resolve(answer: Assessment): void; reject(error: Error): void }
  >();
  #number = 0;
  /** When the last word of a table being built came: a question asked before it waited for the table. */
  #built = 0;

  /** @param onBuilding is told how much of the unit's table is built, 0…1; 1 when it is there. */
  constructor(onBuilding: (share: number) => void) {
    this.#worker.onmessage = ({ data }: MessageEvent<DiagnosisNews>) => {
      if (!('building' in data)) return this.#take(data);
      this.#built = performance.now();
      onBuilding(data.building);
    };
    this.#worker.onerror = () => this.#failAll(VISIT.diagnosisStopped);
  }

  ask(unit: UnitProfile, evidence: readonly Evidence[], parked: readonly TestId[]): Promise<Assessment> {
    this.#number += 1;
    const number = this.#number;
    return new Promise((resolve, reject) => {
      this.#open.set(number, { asked: performance.now(), resolve, reject });
      this.#worker.postMessage({ number, unit, evidence, parked } satisfies DiagnosisQuestion);
    });
  }

  end(): void {
    this.#worker.terminate();
  }

  #take(reply: Exclude<DiagnosisNews, { building: number }>): void {
    const waiting = this.#open.get(reply.number);
    this.#open.delete(reply.number);
    if (waiting !== undefined && waiting.asked > this.#built) {
      performance.measure('readback.assessed', { start: waiting.asked, end: performance.now() });
    }
    if ('answer' in reply) waiting?.resolve(reply.answer);
    else waiting?.reject(new Error(reply.sentence));
  }

  #failAll(sentence: string): void {
    for (const waiting of this.#open.values()) waiting.reject(new Error(sentence));
    this.#open.clear();
  }
}
