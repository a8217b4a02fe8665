import { join } from 'node:path';
import { afterAll, describe, test } from 'vitest';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { openFileLog } from '../../client/record/node/file-log.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import type { VisitLog } from '../../client/record/visit-log.ts';
import { streamText } from '../../grammar/visit/envelope.ts';
import { scratchFolder } from '../server/built-server.ts';
import { LOG_CONTRACT } from './page/log-contract.ts';

const scratch = scratchFolder();
afterAll(() => scratch.remove());

describe('the memory log', () => {
  for (const { name, run } of LOG_CONTRACT.filter((each) => each.lasting === undefined)) {
    test(name, () => run((stream, follows) => openMemoryLog(stream, sha256, follows), sha256));
  }
});

describe('the file log', () => {
  for (const { name, run } of LOG_CONTRACT) {
    test(name, async () => {
      const opened: VisitLog[] = [];
      await run(async (stream, follows) => {
        const { log } = await openFileLog(join(scratch.path, `${streamText(stream)}.jsonl`), stream, follows);
        opened.push(log);
        return log;
      }, sha256);
      for (const log of opened) await log.close();
    });
  }
});
