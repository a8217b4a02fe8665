import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { diagnosisFrom, makeDiagnosis } from '../../../client/diagnosis/make-diagnosis.ts';
import { readStockTable, writeStockTables } from '../../../client/diagnosis/node/stock-tables.ts';
import { STOCK_PROFILES } from '../../../client/diagnosis/stock/stock-profiles.ts';
import { buildTable } from '../../../client/diagnosis/table/build-table.ts';
import { readTableBytes, writeTableBytes } from '../../../client/diagnosis/table/table-bytes.ts';

describe('tables built before they are needed', () => {
  const folder = mkdtempSync(join(tmpdir(), 'readback-tables-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('tell how far they are, in order, up to the end', () => {
    const shares: number[] = [];
    buildTable({ id: 'x' }, { fineness: 0.25, onProgress: (share) => shares.push(share) });
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(50);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  it('are the same for the same profile, and cross as bytes unchanged', () => {
    const table = buildTable(STOCK_PROFILES[1]!, { fineness: 0.25 });
    expect(buildTable(STOCK_PROFILES[1]!, { fineness: 0.25 })).toEqual(table);
    expect(readTableBytes(writeTableBytes(table))).toEqual(table);
  });

  it('answer from the folder as a fresh one does, under any name', () => {
    writeStockTables(folder, () => undefined);
    const profile = { ...STOCK_PROFILES[2]!, id: 'another name' };
    const stock = readStockTable(folder, profile)!;
    const ours = diagnosisFrom(stock).assess([], []);
    expect(ours.suspects).toEqual(makeDiagnosis(profile).assess([], []).suspects);
    expect(readStockTable(folder, { id: 'no such plate', tons: 2.5 })).toBeUndefined();
  });

  it('refuses bytes that are no table of this version', () => {
    expect(() => readTableBytes(new Uint8Array([1, 2, 3]))).toThrow(/bad-table/);
    const other = { ...buildTable({ id: 'x' }, { fineness: 0.25 }), version: 'diagnosis-0' };
    expect(() => readTableBytes(writeTableBytes(other))).toThrow(/bad-table/);
  });
});
