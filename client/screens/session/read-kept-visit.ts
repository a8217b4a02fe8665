import type { KeptVisit } from '../glance/kept-visit.ts';
import { AskedWorker } from './asked-worker.ts';

const FOLDING = new AskedWorker<readonly string[], KeptVisit>(
  () => new Worker(new URL('../worker/kept-visit-worker.ts', import.meta.url), { type: 'module' }),
  async (bodies) => (await import('../glance/kept-visit.ts')).keptVisitOf(bodies),
);

/** Starts the worker: what reads visits is on the device then, whatever becomes of the server. */
export function readyForKeptVisits(): void {
  FOLDING.ready();
}

/** Folds a record in a worker: the page stays free however many visits lie on this device. */
export const readKeptVisit = (bodies: readonly string[]): Promise<KeptVisit> => FOLDING.ask(bodies);
