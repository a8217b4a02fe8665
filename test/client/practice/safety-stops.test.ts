import { describe, expect, it } from 'vitest';
import { lookBack } from '../../../client/practice/debrief.ts';
import { ARRIVED, PROVEN_DEAD, Practised } from './practise-lines.ts';

const FAN = 'motors-411';

/** What was stopped for last. */
async function stopped(...lines: readonly string[]) {
  const p = await Practised.begin(FAN);
  const told = await p.type(...ARRIVED, ...lines);
  const stop = p.exercise.log.findLast((deed) => deed.type === 'stopped-for');
  return { p, told, stop: stop?.type === 'stopped-for' ? stop : undefined };
}

describe('what would stop a person stops the exercise', () => {
  it.each([
    ['a live wire lifted', ['lifted the brown wire from T1'], 'touched-live'],
    ['a part fitted into a live unit', ['fitted a contactor'], 'touched-live'],
    ['a fan turned by hand under power', ['look at the fan by hand'], 'touched-live'],
    ['ohms on what is live', ['ohms leg one to leg two'], 'ohms-on-live'],
    ['a meter left on ohms', ['meter on ohms', 'leg one to ground'], 'ohms-on-live'],
    ['a charge led off a live capacitor', ['capacitor is discharged'], 'touched-live'],
  ])('%s: over', async (_what, lines, error) => {
    const { p, told, stop } = await stopped(...lines);
    expect(stop).toMatchObject({ error, weight: 'harm' });
    expect(stop?.volts).toBeGreaterThan(3);
    expect(told).toMatch(/stop: Held\. /);
    expect(p.exercise.ended).toBe('stopped');
    expect(lookBack(p.exercise).counts).toMatchObject({ harmful: 1, skippedProofs: 1 });
  });

  it('hands behind a switch that nobody proved: held, told, and gone on from', async () => {
    const { p, stop } = await stopped('thermostat is not calling', 'outdoor disconnect is pulled and locked');
    expect(stop).toBeUndefined();
    // What a section keeps is drawn: both are led off so that the proof alone is missing.
    p.exercise.unit.discharge('capacitor-herm');
    p.exercise.unit.discharge('capacitor-fan');
    expect(await p.type('compressor common to run')).toMatch(/not proven dead/);
    expect(p.exercise.halted).toBe(true);
    expect(await p.type('compressor common to run')).toMatch(/Say go on/);
    await p.type('go on');
    expect(p.exercise.halted).toBe(false);
    expect(p.exercise.ended).toBeUndefined();
    expect(lookBack(p.exercise).counts).toMatchObject({ harmful: 0, nearMisses: 1, skippedProofs: 1 });
  });

  it('a capacitor that kept its charge', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED);
    // Opened and closed until a section keeps a charge: about one in three does.
    for (let time = 0; time < 40 && p.exercise.unit.chargeOf('capacitor-fan') < 30; time += 1) {
      p.exercise.unit.throw('outdoor', true);
      p.exercise.unit.throw('outdoor', false);
    }
    expect(await p.type('fan section microfarads')).toMatch(/still holds [0-9]+ volts DC/);
    expect(p.exercise.ended).toBe('stopped');
  });

  it('power given back to what stands open', async () => {
    const { p, stop } = await stopped(...PROVEN_DEAD, 'lifted the brown wire from T1', 'outdoor disconnect is back in');
    expect(stop).toMatchObject({ error: 'energised-hands-in', weight: 'harm' });
    expect(p.exercise.ended).toBe('stopped');
  });

  it('nothing, where it is proven dead', async () => {
    const { p, stop } = await stopped(
      ...PROVEN_DEAD,
      'lifted the brown wire from T1',
      'compressor common to run',
      'none yet',
    );
    expect(stop).toBeUndefined();
    expect(lookBack(p.exercise).counts).toMatchObject({ harmful: 0, nearMisses: 0, skippedProofs: 0 });
  });
});

describe('an exercise that is held', () => {
  it('takes no order but to give up, until the trainee goes on', async () => {
    const { p } = await stopped('thermostat is not calling', 'outdoor disconnect is pulled and locked');
    p.exercise.unit.discharge('capacitor-herm');
    p.exercise.unit.discharge('capacitor-fan');
    await p.type('compressor common to run');
    expect(p.exercise.halted).toBe(true);
    const { length } = p.exercise.log;
    for (const line of ['look at the fan', 'two', 'hint', 'meter on ohms', 'prove the meter', 'wait 5 minutes'])
      expect(await p.type(line), line).toBe('exercise: Say go on.');
    expect(p.exercise.log.length).toBe(length);
    await p.type('go on');
    expect(await p.type('look at the fan')).toMatch(/Whom do you suspect/);
  });
});

describe('the clock of the device', () => {
  // Conduct, rule e: wall and monotonic clock apart by more than two minutes end a proof.
  it.each([5, -5])('set by %i minutes ends a proof, and ohms are held', async (minutes) => {
    const { p } = await stopped(...PROVEN_DEAD);
    expect(p.exercise.context.energy['outdoor-load']).toBe('proven-dead');
    p.clock.jumpWall(minutes);
    await p.type('ohms compressor common to run');
    expect(p.exercise.context.energy['outdoor-load']).not.toBe('proven-dead');
    expect(p.exercise.log.findLast((deed) => deed.type === 'stopped-for')).toMatchObject({
      error: 'not-proven-dead',
      weight: 'near-miss',
    });
  });
});

describe('probes on the drawing', () => {
  it('are put one by one, taken off again, and begin anew with a third place', async () => {
    const { exercise } = await Practised.begin(FAN);
    const put = (...points: Parameters<typeof exercise.probing.put>[0][]) => {
      for (const point of points) exercise.probing.put(point);
      return exercise.probing.probes;
    };
    expect(put('L1', 'L2')).toEqual(['L1', 'L2']);
    expect(put('L1')).toEqual(['L2']);
    expect(put('T1', 'T2')).toEqual(['T2']);
    expect(put('T2')).toEqual([]);
  });

  it('read where they stand by who was told so and says another place again, and the debrief knows', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED);
    p.exercise.probing.probes = ['T1', 'ground'];
    expect(await p.type('leg one to ground')).toMatch(/the probes stay on/);
    await p.type('leg one to ground', 'none yet', 'live');
    expect(lookBack(p.exercise).counts.probesElsewhere).toBe(1);
    expect(p.events().findLast((event) => event.type === 'reading.logged')).toMatchObject({
      reading: { at: ['L1', 'ground'] },
    });
  });

  it('are read without a word by the dial', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED);
    p.exercise.probing.probes = ['L1', 'L2'];
    await p.type('read', 'none yet', 'live');
    // Two legs of 120 V against each other, ± 5 % (ANSI C84.1, range A).
    const reading = p.events().findLast((event) => event.type === 'reading.logged');
    expect(Number(reading?.type === 'reading.logged' && reading.reading.value)).toBeGreaterThan(228);
  });
});
