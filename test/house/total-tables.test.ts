import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CompileCopy, type CompileError } from './compile-copy.ts';
import { PLANTED_ROWS } from './planted-rows.ts';

/** "Function lacks ending return statement": a switch that leaves a case out; it names the function and no case. */
const CASE_LEFT_OUT = 'TS2366';

/** All rows are planted at once, since a build takes seconds; one at a time they are in total-tables.long.test.ts. */
describe('a row that is left out', () => {
  const copy = new CompileCopy(['grammar', 'client']);
  let errors: readonly CompileError[] = [];
  beforeAll(() => {
    for (const planted of PLANTED_ROWS) copy.plant(planted);
    errors = copy.build('client/terminal', 'client/screens');
  });
  afterAll(() => copy.remove());

  it.each(PLANTED_ROWS)('for $what does not compile', ({ id, mustFill }) => {
    const named = errors.filter(({ text, code }) => text.includes(id) || code === CASE_LEFT_OUT);
    const files = [...new Set(named.map(({ file }) => file))];
    expect(files).toEqual(expect.arrayContaining(mustFill.filter((file) => !file.startsWith('test/'))));
    expect(errors.some(({ text }) => text.includes(id))).toBe(true);
  });
});
