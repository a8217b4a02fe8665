import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LONG } from '../../how-much.ts';
import { TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const SAID = readFileSync(new URL('../../../fixtures/beside-a-proof/said.txt', import.meta.url), 'utf8').split('\n');
const lines = (kind: 'ends' | 'keeps') =>
  SAID.filter((line) => line.startsWith(`${kind}: `)).map((line) => line.slice(kind.length + 2));
/** All of them in the long run, every twelfth in the short one. */
const some = (all: readonly string[]) => all.filter((_, at) => LONG || at % 12 === 0);

async function said(line: string): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...TO_PROVEN_DEAD, line);
  return visit;
}
const outdoors = ({ run }: TypedVisit) => run.context.energy['outdoor-load'];

/** Lines of somebody who had not seen the signs; common practice. */
describe('said beside a unit that is proven dead', () => {
  it.each(some(lines('ends')))('ends its proof at once: "%s"', async (line) => {
    expect(['proven-dead', 'in-doubt']).not.toContain(outdoors(await said(line)));
  });

  it.each(some(lines('keeps')))('leaves it as it is, at most with a question: "%s"', async (line) => {
    const visit = await said(line);
    // What is not understood is asked about, and a yes is enough.
    await visit.saysStillOff();
    expect(outdoors(visit)).toBe('proven-dead');
  });

  it('was written down in numbers that mean something', () => {
    expect(lines('ends').length).toBeGreaterThan(600);
    expect(lines('keeps').length).toBeGreaterThan(250);
  });
});
