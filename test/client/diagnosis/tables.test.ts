import { describe, expect, it } from 'vitest';
import { buildTable } from '../../../client/diagnosis/table/build-table.ts';
import { PROFILES } from './profiles.ts';

describe('a table', () => {
  it('tells while it is built how far it is, in order, up to the end', () => {
    const shares: number[] = [];
    buildTable({ id: 'x' }, { fineness: 0.25, onProgress: (share) => shares.push(share) });
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(50);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  it('is the same for the same profile', () => {
    const table = buildTable(PROFILES[1]!, { fineness: 0.25 });
    expect(buildTable(PROFILES[1]!, { fineness: 0.25 })).toEqual(table);
  });
});
