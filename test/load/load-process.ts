import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { median, quantile } from '../bench/figures.ts';
import { type Saturation, saturate } from './saturation.ts';
import { runSteadyVisits, type SteadyLoad } from './steady-visits.ts';

/** Of one processor, while it lasted: 0 to 1, the load generator's own. */
interface OwnShare {
  readonly share: number;
}

/** What a steady load came to, and what making it cost. */
interface LoadResult extends OwnShare {
  /** Milliseconds from sending an event to its acknowledgement. */
  readonly median: number;
  readonly p99: number;
  readonly sent: number;
  readonly acknowledged: number;
}

/** How long it took until all was acknowledged, and what making the load cost. */
interface SaturationResult extends OwnShare {
  readonly seconds: number;
}

type Work =
  | { readonly kind: 'steady'; readonly load: SteadyLoad }
  | { readonly kind: 'full'; readonly load: Saturation };

/** Runs a steady load in a process of its own, so that what it costs is not the server's, nor the bench's. */
export function loadInProcess(load: SteadyLoad): Promise<LoadResult> {
  return inProcess({ kind: 'steady', load });
}

/** Has devices send as fast as the server takes it, from a process of its own. */
export function saturateFromProcess(load: Saturation): Promise<SaturationResult> {
  return inProcess({ kind: 'full', load });
}

function inProcess<Result>(work: Work): Promise<Result> {
  return new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), [], { execArgv: [] });
    child.once('message', (result) => resolve(result as Result));
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the load generator ended with ${code}`)));
    child.send(work);
  });
}

async function run(work: Work): Promise<void> {
  const [cpu, began] = [process.cpuUsage(), performance.now()];
  const result = work.kind === 'steady' ? await runSteady(work.load) : { seconds: await saturate(work.load) };
  const { user, system } = process.cpuUsage(cpu);
  const share = (user + system) / 1_000 / (performance.now() - began);
  process.send?.({ ...result, share }, () => process.exit(0));
}

async function runSteady(load: SteadyLoad): Promise<Omit<LoadResult, 'share'>> {
  const { latencies, sent, acknowledged } = await runSteadyVisits(load);
  return { median: median(latencies), p99: quantile(latencies, 0.99), sent, acknowledged };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.once('message', (work) => void run(work as Work));
