import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { profileKey, STOCK_PROFILES } from '../stock/stock-profiles.ts';
import { buildTable } from '../table/build-table.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { readTableBytes, writeTableBytes } from '../table/table-bytes.ts';

const fileOf = (folder: string, id: string) => join(folder, `${id}.table.gz`);

/** Builds the tables of the stock profiles into a folder. `onProgress` is told the profile and 0…1. */
export function writeStockTables(folder: string, onProgress: (id: string, share: number) => void): void {
  mkdirSync(folder, { recursive: true });
  for (const profile of STOCK_PROFILES) {
    const table = buildTable(profile, { onProgress: (share) => onProgress(profile.id, share) });
    writeFileSync(fileOf(folder, profile.id), gzipSync(writeTableBytes(table)));
  }
}

/** The table of a profile if it stands in the folder, whatever the profile is called. Errors: `bad-table`. */
export function readStockTable(folder: string, profile: UnitProfile): FaultTable | undefined {
  const stock = STOCK_PROFILES.find((s) => profileKey(s) === profileKey(profile));
  const file = stock && fileOf(folder, stock.id);
  return file && existsSync(file) ? readTableBytes(gunzipSync(readFileSync(file))) : undefined;
}
