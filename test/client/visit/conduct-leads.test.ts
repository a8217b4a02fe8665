import { describe, expect, it } from 'vitest';
import { leadsOff } from '../../../grammar/visit/standing.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const warned = (visit: TypedVisit) => visit.mouth.said.filter(({ kind }) => kind === 'warning').map(({ text }) => text);
const isDead = (visit: TypedVisit) => visit.run.context.energy['outdoor-load'] === 'proven-dead';
async function typed(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}

/** Windings are read with their leads off: common practice. Hands at them: NFPA 70E 120.5, 29 CFR 1910.333(b). */
describe('leads that come off a part as a whole', () => {
  it.each([
    ['compressor leads are off', 'compressor'],
    ['I pulled the wires off the compressor', 'compressor'],
    ['disconnected the compressor', 'compressor'],
    ['took the plug off the compressor', 'compressor'],
    ['pulled the fan motor leads', 'fan'],
    ['the fan wires are off', 'fan'],
    ['took the wires off the capacitor', 'capacitor'],
    ['unplugged the blower motor', 'blower'],
  ])('are work in a zone that is not proven dead, and stand off: "%s"', async (line, part) => {
    const visit = await typed(...ARRIVAL, line);
    expect(leadsOff(visit.run.context)).toEqual([part]);
    expect(warned(visit)).toContainEqual(expect.stringMatching(/not proven dead/));
    expect(visit.of('work.unproven')).toHaveLength(1);
    await visit.type('take that back');
    expect(leadsOff(visit.run.context)).toEqual([]);
  });

  it('leave a proof as it is, off and on again', async () => {
    const visit = await typed(...TO_PROVEN_DEAD, 'pulled the compressor leads', 'put the compressor leads back on');
    expect(isDead(visit)).toBe(true);
    expect(leadsOff(visit.run.context)).toEqual([]);
    expect(visit.of('work.unproven')).toEqual([]);
  });

  it('are named when power comes back, each by its own name', async () => {
    const visit = await typed(
      ...TO_PROVEN_DEAD,
      'pulled the compressor leads',
      'fan leads are off',
      'fan leads are back on',
    );
    await visit.type('outdoor disconnect is back in');
    expect(warned(visit)).toContainEqual(expect.stringMatching(/Power back with: compressor leads off\./));
  });

  it('keep a visit from closing until they are on', async () => {
    const visit = await typed(...TO_PROVEN_DEAD, 'pulled the compressor leads', 'close the visit');
    expect(visit.run.context.closeRefused.join(' ')).toMatch(/Compressor leads are off/);
  });

  it.each(["didn't pull the compressor leads", 'should I pull the compressor leads', 'the compressor leads are burnt'])(
    'are not off by "%s"',
    async (line) => {
      expect(leadsOff((await typed(line)).run.context)).toEqual([]);
    },
  );
});
