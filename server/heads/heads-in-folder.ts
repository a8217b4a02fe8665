import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { addGivenUp, GIVEN_UP_FILE, readGivenUp } from './given-up.ts';
import { appendHead, readHeads } from './heads-file.ts';
import type { HeadsPlace } from './heads-place.ts';
import { highWaterSentence, openHighWater } from './high-water.ts';

export const HEADS_FILE = 'heads.jsonl';
export const HIGH_WATER_FILE = 'acknowledged';

/** Heads as files of a data folder, which one server has. */
export function headsInFolder(folder: string): HeadsPlace {
  const path = join(folder, HEADS_FILE);
  const waterPath = join(folder, HIGH_WATER_FILE);
  const givenUpPath = join(folder, GIVEN_UP_FILE);
  return {
    name: folder,
    read: async (signer) => readHeads(path, signer),
    add: async (known, next) => {
      const head = await next(known);
      if (head === undefined) return known;
      appendHead(path, head);
      return [...known, head];
    },
    setAside: async (time) => renameSync(path, `${path}.set-aside-${time}`),
    givenUp: async () => readGivenUp(givenUpPath),
    giveUp: async (findings, time) => addGivenUp(givenUpPath, findings, time),
    waterSentence: (held, leftInOrder) => highWaterSentence(waterPath, () => held, leftInOrder),
    openWater: (latest) => openHighWater(waterPath, latest),
  };
}
