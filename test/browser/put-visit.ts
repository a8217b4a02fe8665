import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { Outbox } from '../../client/record/outbox.ts';
import { PROJECT_ROOT } from './project-root.ts';

/** The recorded visits of the fixtures. */
export const RECORDED = ['fuse', 'library', 'low-charge', 'one-pole'] as const;

/** The bodies of a recorded visit, as its device wrote them. */
export function recordedBodies(name: (typeof RECORDED)[number]): readonly string[] {
  const file = join(PROJECT_ROOT, 'fixtures/visits', name, 'events.jsonl');
  return readFileSync(file, 'utf8').trim().split('\n');
}

/** Puts bodies on a server as a device would, over its own protocol. */
export async function putVisit(url: string, visit: string, bodies: readonly string[], device = 'phone') {
  const stream = { company: 'local', visit, device, epoch: 1 };
  const log = await openMemoryLog(stream, (bytes) => createHash('sha256').update(bytes).digest());
  const outbox = new Outbox({ log, ...nodeLink(url) }).start();
  await outbox.append(bodies);
  await outbox.settled();
  outbox.stop();
}
