import { describe, expect, it } from 'vitest';
import { TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** What was passed or answered is not asked again in the same state, and what cannot be is not asked (7-conduct l, s, u, v). */
const ARRIVED = [
  'customer agrees',
  'the plate is unreadable',
  'meter is category three',
  'outdoor air ninety four',
  'return air seventy five',
  'thermostat is calling',
];

async function visit(...lines: readonly string[]): Promise<TypedVisit> {
  const typed = await TypedVisit.open();
  await typed.type(...lines);
  return typed;
}

/** The steps that were asked while everything is passed, in their order. */
async function passed(typed: TypedVisit, times: number): Promise<readonly string[]> {
  const before = typed.of('step.asked').length;
  for (let time = 0; time < times; time += 1) await typed.type('pass');
  return (
    typed
      .of('step.asked')
      .slice(before)
      .map(({ step }) => step)
      // The last thing that is asked of all: it stands until it is done.
      .filter((step) => step !== 'close.visit-finished')
  );
}

describe('a technician who passes whatever is asked', () => {
  it.each([
    ['from arrival on', ARRIVED],
    ['beside a unit that is proven dead', TO_PROVEN_DEAD],
    ['behind a part', [...TO_PROVEN_DEAD, 'fitted a forty five over five dual capacitor four forty volt']],
    ['behind an opened circuit', [...ARRIVED, 'outdoor fan is turning', 'leak is repaired']],
  ])('is asked nothing twice running, and then told what is left: %s', async (_, lines) => {
    const typed = await visit(...lines);
    const steps = await passed(typed, 30);
    expect(steps.filter((step, at) => step === steps[at - 1])).toEqual([]);
    expect(Math.max(0, ...steps.map((step) => steps.filter((one) => one === step).length))).toBeLessThanOrEqual(2);
  });

  it('is not asked for power, a call or a run by an opened circuit that lacks its steps', async () => {
    const typed = await visit(...ARRIVED, 'outdoor fan is turning', 'leak is repaired');
    const steps = await passed(typed, 30);
    expect(steps.filter((step) => /power-on|call-on|prove\./.test(step))).toEqual([]);
    expect(typed.of('circuit.early')).toEqual([]);
  });

  it('who gave up the discharge is not sent back and forth between the switch and the proof', async () => {
    const typed = await visit(...TO_PROVEN_DEAD.slice(0, -2));
    const steps = await passed(typed, 20);
    expect(steps.filter((step) => step.startsWith('energy.power-off')).length).toBeLessThanOrEqual(1);
  });
});

describe('what is asked of a switch', () => {
  it('is asked again where another was told of', async () => {
    const typed = await visit(...TO_PROVEN_DEAD);
    for (let time = 0; time < 12; time += 1) {
      if (typed.run.context.step?.id === 'energy.power-off@air-handler') break;
      await typed.type('pass');
    }
    if (typed.run.context.step?.id !== 'energy.power-off@air-handler') return expect(typed.mouth.last()).not.toBe('');
    const words = typed.mouth.last();
    expect(await typed.type('outdoor disconnect is pulled and locked')).toBe(words);
  });
});

describe('short answers that answer nothing here', () => {
  it('are met by the step again, not by silence', async () => {
    const typed = await visit(...ARRIVED);
    const words = typed.mouth.last();
    expect(typed.run.context.step?.id).toBe('arrive.fan');
    expect(await typed.type('no')).toBe(words);
  });

  it('a unit that was taken off is not looked at for what it does', async () => {
    const typed = await visit(...ARRIVED.slice(0, 5), 'outdoor disconnect is pulled and locked', 'no call');
    expect(typed.of('step.asked').map(({ step }) => step)).not.toContain('arrive.fan');
  });
});

describe('both sections told discharged', () => {
  it('asks for the volts that count, once', async () => {
    const typed = await visit(...TO_PROVEN_DEAD.slice(0, -2));
    const before = typed.of('prompt.said').length;
    await typed.type('both sections discharged');
    const said = typed
      .of('prompt.said')
      .slice(before)
      .map(({ text }) => text);
    expect(said.filter((text) => text.startsWith('Discharged.'))).toEqual(['Discharged. Now herm section, volts DC.']);
    expect(said.join(' ')).not.toContain('not proven dead');
  });
});
