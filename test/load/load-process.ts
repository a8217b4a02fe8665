import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { median, quantile } from '../bench/figures.ts';
import { runSteadyVisits, type SteadyLoad } from './steady-visits.ts';

/** What a steady load came to, and what making it cost. */
export interface LoadResult {
  /** Milliseconds from sending an event to its acknowledgement. */
  readonly median: number;
  readonly p99: number;
  readonly sent: number;
  readonly acknowledged: number;
  /** Of one processor, while it lasted: 0 to 1, the load generator's own. */
  readonly share: number;
}

/** Runs a steady load in a process of its own, so that what it costs is not the server's, nor the bench's. */
export function loadInProcess(load: SteadyLoad): Promise<LoadResult> {
  return new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), [], { execArgv: [] });
    child.once('message', (result) => resolve(result as LoadResult));
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the load generator ended with ${code}`)));
    child.send(load);
  });
}

async function run(load: SteadyLoad): Promise<void> {
  const [cpu, began] = [process.cpuUsage(), performance.now()];
  const { latencies, sent, acknowledged } = await runSteadyVisits(load);
  const { user, system } = process.cpuUsage(cpu);
  const share = (user + system) / 1_000 / (performance.now() - began);
  const result: LoadResult = { median: median(latencies), p99: quantile(latencies, 0.99), sent, acknowledged, share };
  process.send?.(result, () => process.exit(0));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.once('message', (load) => void run(load as SteadyLoad));
