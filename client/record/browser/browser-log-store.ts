import type { LogStore } from '../visit-record.ts';
import { listStreams, openIndexedDbLog } from './indexed-db-log.ts';
import type { RecordDatabase } from './record-database.ts';

/** The browser's database as the place where a VisitRecord keeps its epochs. */
export function browserLogStore(database: RecordDatabase): LogStore {
  return {
    open: (stream, follows) => openIndexedDbLog(database, stream, follows),
    newestEpoch: async ({ company, visit, device }) => {
      const epochs = (await listStreams(database))
        .filter(({ stream }) => stream.company === company && stream.visit === visit && stream.device === device)
        .map(({ stream }) => stream.epoch);
      return epochs.length === 0 ? undefined : Math.max(...epochs);
    },
  };
}
