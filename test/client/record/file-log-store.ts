import { access } from 'node:fs/promises';
import { openFileLog } from '../../../client/record/node/file-log.ts';
import type { LogStore } from '../../../client/record/visit-record.ts';

/**
 * A record file, and beside it one for each later epoch: NAME, NAME.2, NAME.3. `noticed` hears the sentence where a
 * file was cut short.
 */
export function fileLogStore(path: string, noticed: (notice: string) => void): LogStore {
  const pathOf = (epoch: number) => (epoch === 1 ? path : `${path}.${epoch}`);
  return {
    open: async (stream, follows) => {
      const { log, notice } = await openFileLog(pathOf(stream.epoch), stream, follows);
      if (notice !== undefined) noticed(notice);
      return log;
    },
    newestEpoch: async () => {
      let epoch = 0;
      while (await exists(pathOf(epoch + 1))) epoch += 1;
      return epoch === 0 ? undefined : epoch;
    },
  };
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
