import { describe, expect, it } from 'vitest';
import { SAY } from '../../../client/words/talk/prompts.ts';
import { TypedVisit } from './typed-visit.ts';

const INDOORS = [
  'thermostat is not calling',
  'air handler switch is off and locked',
  'meter two forty zero zero zero meter two forty at the air handler',
] as const;
const OUTDOORS = [
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'live',
  'meter two forty zero zero zero zero zero zero meter two forty',
] as const;

/** An open ground reads a false zero: the ground of a proof has itself read a full leg, and no other ground vouches for it. */
describe('a proof stands on the ground where it was read', () => {
  it.each([
    ['indoors', 'outdoors', 'air-handler', 'leg one to ground one eighteen', INDOORS],
    ['outdoors', 'indoors', 'outdoor-load', 'air handler leg one to ground one eighteen', OUTDOORS],
  ] as const)('%s is not proven by a leg that was read %s', async (_here, _there, zone, elsewhere, proof) => {
    const visit = await TypedVisit.open();
    await visit.type(elsewhere, ...proof);
    expect(visit.run.context.energy[zone]).not.toMatch(/dead/);
    expect(visit.mouth.said.map(({ text }) => text)).toContain(SAY.groundNotSeen);
  });
});
