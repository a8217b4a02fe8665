import { afterAll, describe, expect, it } from 'vitest';
import { CompileCopy } from './compile-copy.ts';
import { PLANTED_ROWS } from './planted-rows.ts';

/** The lists of planted-rows.ts are whole: what one new id breaks is what they name, no file more. */
describe('one new id', () => {
  const copy = new CompileCopy(['grammar', 'client', 'server', 'test', 'fixtures']);
  afterAll(() => copy.remove());

  it('is all that is wrong: the copy compiles without one', () => {
    expect(copy.build('.')).toEqual([]);
  }, 120_000);

  it.each(PLANTED_ROWS)(
    'for $what is missed in each of its tables',
    (planted) => {
      const pull = copy.plant(planted);
      const errors = copy.build('.');
      pull();
      expect([...new Set(errors.map(({ file }) => file))].sort()).toEqual([...planted.mustFill].sort());
    },
    120_000,
  );
});
