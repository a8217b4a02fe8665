import { describe, expect, it } from 'vitest';
import { cautionsTold } from '../../../grammar/visit/cautions-told.ts';

const told = (caution: string, zone: string | undefined, acknowledged: boolean) => ({
  caution,
  words: `${caution}.`,
  ...(zone === undefined ? {} : { zone }),
  acknowledged,
});
const count = (...lines: readonly ReturnType<typeof told>[]) => {
  const all = cautionsTold(lines, ({ acknowledged }) => acknowledged);
  return [all.length, all.filter(({ open }) => open).length];
};

describe('cautions as they are counted', () => {
  it('are one however often they were told, and done with when the last was acknowledged', () => {
    expect(count(told('live', 'outdoor-load', false), told('live', 'outdoor-load', true))).toEqual([1, 0]);
  });
  it('are open again where they were told again and nobody answered', () => {
    expect(count(told('live', 'outdoor-load', true), told('live', 'outdoor-load', false))).toEqual([1, 1]);
  });
  it('are others in another place', () => {
    expect(count(told('live', 'outdoor-load', true), told('live', undefined, false))).toEqual([2, 1]);
  });
});
