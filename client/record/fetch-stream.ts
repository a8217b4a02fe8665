import type { Entry, StreamId } from '../../grammar/visit/envelope.ts';
import { fetchVisit } from './fetch-visit.ts';
import type { LinkOptions } from './link.ts';

/** What the server holds of a stream at this moment, in order. Waits for the network; rejects where it is refused. */
export async function fetchStream(link: LinkOptions, stream: StreamId): Promise<readonly Entry[]> {
  return (await fetchVisit(link, stream))
    .filter(({ device, epoch }) => device === stream.device && epoch === stream.epoch)
    .map(({ seq, hash, body }) => ({ seq, hash, body }));
}
