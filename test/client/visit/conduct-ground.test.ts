import { describe, expect, it } from 'vitest';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { ARRIVAL, TypedVisit, WEAK_FAN } from './typed-visit.ts';

const OFF = 'thermostat is not calling';
const PROOFS: Readonly<Record<'outdoor-load' | 'disconnect-line' | 'air-handler', readonly [string, string]>> = {
  'outdoor-load': [
    'outdoor disconnect is pulled and locked',
    'meter two forty zero zero zero zero zero zero meter two forty',
  ],
  'disconnect-line': [
    'breaker at the panel is off and locked',
    'line side meter two forty zero zero zero meter two forty',
  ],
  'air-handler': [
    'air handler switch is off and locked',
    'meter two forty zero zero zero meter two forty at the air handler',
  ],
};
type Proved = keyof typeof PROOFS;

async function visitAfter(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}

const isDead = (visit: TypedVisit, zone: ZoneId): boolean => /dead/.test(visit.run.context.energy[zone]);
const saidBy = (visit: TypedVisit): string => visit.mouth.said.map(({ text }) => text).join('\n');

/** An open ground reads a false zero: the ground of a proof has itself read a full leg while fed (common practice). */
describe('a proof stands on a ground that has read a full leg', () => {
  it.each<[Proved, string]>([
    ['outdoor-load', 'leg one to ground one eighteen'],
    ['outdoor-load', 'leg two to ground one eighteen'],
    ['outdoor-load', 'line side one to ground one eighteen'],
    ['disconnect-line', 'line side two to ground one eighteen'],
    ['air-handler', 'air handler leg one to ground one eighteen'],
  ])('%s: %s', async (zone, leg) => {
    expect(isDead(await visitAfter(leg, OFF, ...PROOFS[zone]), zone)).toBe(true);
  });

  it.each<[Proved, string, readonly string[]]>([
    ['outdoor-load', 'none', []],
    ['outdoor-load', 'one indoors', ['air handler leg one to ground one eighteen']],
    ['air-handler', 'one outdoors', ['leg one to ground one eighteen']],
    ['outdoor-load', 'one in the panel', ['breaker pole one to ground one eighteen']],
    ['outdoor-load', 'leg to leg', ['leg one to leg two two forty']],
    ['outdoor-load', 'one that read low', ['leg one to ground sixty two', 'yes']],
    ['outdoor-load', 'one taken back', ['leg one to ground one eighteen', 'take that back']],
    ['outdoor-load', 'one corrected away', ['leg one to ground one eighteen', 'correction zero']],
    ['outdoor-load', 'one moved elsewhere', ['leg one to ground one eighteen', 'correction leg one to leg two']],
  ])('%s is not proven by %s, and is told what can be done', async (zone, _, lines) => {
    const visit = await visitAfter(...lines, OFF, ...PROOFS[zone]);
    expect(isDead(visit, zone)).toBe(false);
    expect(saidBy(visit)).toMatch(/a live leg was never read to this ground\. .*(line side one|leg one)/i);
  });

  it('nor by what was read where power was locked off', async () => {
    const { 'outdoor-load': proof } = PROOFS;
    const visit = await visitAfter(OFF, proof[0], 'leg one to ground one eighteen', ...proof);
    expect(isDead(visit, 'outdoor-load')).toBe(false);
  });
});

describe('the ground is asked for in time', () => {
  /** The planner's next test wants the unit dead. */
  const WANTED_DEAD = [...ARRIVAL, 'compressor runs then trips', ...WEAK_FAN];
  const steps = (visit: TypedVisit): readonly string[] => visit.of('step.asked').map(({ step }) => step);

  it('before the call is taken off and the switch opened, as a live step with its caution', async () => {
    const visit = await visitAfter(...WANTED_DEAD);
    await visit.type('live', 'what next');
    const asked = steps(visit);
    const ground = asked.findIndex((step) => step.startsWith('energy.ground@L1'));
    const off = asked.indexOf('energy.call-off');
    expect(ground).toBeGreaterThanOrEqual(0);
    expect(off === -1 || off > ground).toBe(true);
    expect(visit.of('caution.acknowledged').some(({ caution }) => caution === 'live-line')).toBe(true);
  });

  it('on the line side under the locked disconnect, where the unit is off already', async () => {
    const visit = await visitAfter(...WANTED_DEAD, OFF, PROOFS['outdoor-load'][0]);
    await visit.type('live', 'live');
    expect(steps(visit)).toContain('energy.ground@disconnect-line-1+ground');
    await visit.type('one eighteen', 'live');
    expect(visit.mouth.last()).toContain('meter on a live source');
  });
});
