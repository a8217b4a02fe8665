import { describe, expect, it } from 'vitest';
import { ARRIVAL, LIBRARY_UNIT, REPAIR_AND_PROOF, TO_LIVE_STEP, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** The outdoor unit off and locked, with a ground that has read a live leg: a proof may begin. */
const TO_LOCKED = TO_PROVEN_DEAD.slice(0, 4);
const TO_READS_DEAD = TO_PROVEN_DEAD.slice(0, 6);

async function visitAfter(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}

describe('a phase', () => {
  it.each([
    ['prove', []],
    ['close', ['customer declined']],
  ] as const)('of %s gives way to the repair when the part is taken back', async (phase, lines) => {
    const visit = await visitAfter(...TO_PROVEN_DEAD, ...REPAIR_AND_PROOF.slice(0, 3), ...lines);
    expect(visit.run.context.phase).toBe(phase);
    // What was said last is taken back first.
    for (const _ of [...lines, 'the part']) await visit.type('take that back');
    expect(visit.of('part.withdrawn')).toHaveLength(1);
    expect(visit.run.context.phase).toBe('repair');
  });

  const TO_REPAIR = ['compressor runs then trips', ...TO_PROVEN_DEAD, ...REPAIR_AND_PROOF.slice(0, 2)];
  it.each([
    ['arrive', []],
    ['testing', ARRIVAL],
    ['repair', [...ARRIVAL, ...TO_REPAIR]],
    ['prove', ['fitted a contactor']],
  ] as const)(
    'of %s ends in the close when the customer declines, and in the end when the visit is finished',
    async (phase, lines) => {
      const declined = await visitAfter(...lines);
      expect(declined.run.context.phase).toBe(phase);
      await declined.type('customer declined');
      expect(declined.run.context.phase).toBe('close');
      const finished = await visitAfter(...lines, 'outdoor disconnect is back in', 'finish the visit');
      // Hands were in a zone not proven dead: that wants a reason.
      if (phase === 'prove') await finished.type('note it was fitted before the log began');
      expect(finished.run.context.phase).toBe('closed');
    },
  );

  it('of close gives way to the proof when a part is fitted after all', async () => {
    const visit = await visitAfter('customer declined', 'fitted a contactor');
    expect(visit.run.context.phase).toBe('prove');
  });

  it('is entered once, however often it is called for', async () => {
    const visit = await visitAfter(...TO_PROVEN_DEAD, ...REPAIR_AND_PROOF.slice(0, 3), 'fitted a fan motor');
    expect(visit.of('part.fitted')).toHaveLength(2);
    expect(visit.of('phase.entered').filter(({ phase }) => phase === 'prove')).toHaveLength(1);
  });
});

describe('the energy of a zone', () => {
  it('is in its proof from the first meter number on, and a voltage ends that', async () => {
    const visit = await visitAfter(...TO_LOCKED, 'meter proves two forty');
    expect(visit.run.context.energy['outdoor-load']).toBe('proving');
    await visit.type('air handler leg one to ground one nineteen');
    expect(visit.run.context.energy).toMatchObject({ 'outdoor-load': 'proving', 'air-handler': 'live' });
    await visit.type('leg one to ground one eighteen');
    expect(visit.of('hazard.warned').at(-1)?.words).toContain('Hands off');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
  });

  it('leaves a proof that was begun and not gone on with for half an hour', async () => {
    const visit = await visitAfter(...TO_LOCKED, 'meter proves two forty');
    await visit.later(31);
    expect(visit.run.context).toMatchObject({ energy: { 'outdoor-load': 'reported-off' }, proof: undefined });
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain('Over ten minutes: the proof starts again');
  });

  it('is the one whose proof begins anew when another switch was reported meanwhile', async () => {
    const indoors = [
      'thermostat is not calling',
      'air handler leg one to ground one nineteen',
      'air handler switch is off and locked',
    ];
    const visit = await visitAfter(...indoors, 'meter proves two forty');
    const begun = visit.run.context.proof;
    expect(begun).toBeDefined();
    await visit.type('outdoor disconnect is unlocked');
    expect(visit.run.context.proof).toBeUndefined();
    await visit.type('meter proves two forty');
    expect(visit.run.context.proof).toMatchObject({ zone: begun?.zone, before: begun?.before, pairs: [] });
  });

  it('is live again at a voltage where it only read dead, and nowhere else', async () => {
    const visit = await visitAfter(...TO_READS_DEAD);
    expect(visit.run.context.energy['outdoor-load']).toBe('reads-dead');
    await visit.type('air handler leg one to ground one nineteen');
    expect(visit.run.context.energy['outdoor-load']).toBe('reads-dead');
    await visit.type('leg one to ground one eighteen');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
  });

  it.each([
    ['live', ['leg one to ground one eighteen']],
    ['reported-off', ['outdoor disconnect is pulled']],
    ['proving', [...TO_LOCKED, 'meter proves two forty']],
    ['reads-dead', TO_READS_DEAD],
    ['proven-dead', TO_PROVEN_DEAD],
  ] as const)(
    'that is %s is unknown once the lock is reported off, and another zone is left alone',
    async (from, lines) => {
      const visit = await visitAfter(...lines);
      expect(visit.run.context.energy['outdoor-load']).toBe(from);
      await visit.type('air handler switch is unlocked');
      expect(visit.run.context.energy['outdoor-load']).toBe(from);
      await visit.type('outdoor disconnect is unlocked');
      expect(visit.run.context.energy['outdoor-load']).toBe('unknown');
    },
  );
});

describe('a hands-on step', () => {
  it('makes room as soon as its zone is no longer proven dead', async () => {
    const visit = await visitAfter(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
    const { step } = visit.run.context;
    expect(visit.run.value).toMatchObject({ open: 'asked' });
    expect(step?.needs.bench === true || step?.needs.power === 'off').toBe(true);
    await visit.type('outdoor disconnect is unlocked');
    expect(visit.run.context.step?.id).not.toBe(step?.id);
  });
});

describe('a caution that is due', () => {
  it('goes with its step when that is passed, and with the visit when that is held', async () => {
    const passed = await visitAfter(...TO_LIVE_STEP);
    const step = passed.run.context.step?.id;
    await passed.type('pass');
    expect(passed.run.context.step?.id).not.toBe(step);
    const held = await visitAfter(...TO_LIVE_STEP, 'hold the visit');
    expect(held.run.context).toMatchObject({ step: undefined, caution: undefined });
  });

  it('is spoken once, whatever else the mouth has finished meanwhile', async () => {
    const visit = await visitAfter(...TO_LIVE_STEP);
    const said = visit.of('prompt.said').filter(({ kind }) => kind === 'caution').length;
    visit.run.take({ type: 'mouth.finished', prompt: 'another', outcome: 'cut' });
    visit.run.take({ type: 'mouth.finished', prompt: 'another', outcome: 'spoken' });
    await visit.run.settled();
    expect(visit.of('prompt.said').filter(({ kind }) => kind === 'caution')).toHaveLength(said);
  });
});

describe('a held visit', () => {
  it('is held once, asks nothing, and tells no step to whoever asks what comes next', async () => {
    const visit = await visitAfter(...TO_LIVE_STEP, 'hold the visit', 'hold the visit');
    expect(visit.of('visit.held')).toHaveLength(1);
    const steps = visit.of('prompt.said').filter(({ kind }) => kind === 'step').length;
    expect(await visit.type('what next')).toBe('Visit held. Say "go on with the visit" to take it up.');
    expect(visit.of('prompt.said').filter(({ kind }) => kind === 'step')).toHaveLength(steps);
    await visit.type('go on with the visit', 'go on with the visit');
    expect(visit.of('visit.resumed')).toHaveLength(1);
  });
});

describe("a trainee's live step", () => {
  const supervise = async (visit: TypedVisit): Promise<void> => {
    visit.run.take({ type: 'supervisor.acknowledged', supervisor: 'S. Visor' });
    await visit.run.settled();
  };
  const toLiveStep = async (): Promise<TypedVisit> => {
    const visit = await TypedVisit.open(LIBRARY_UNIT, 'trainee');
    await visit.type(...TO_LIVE_STEP, 'live');
    return visit;
  };

  it('waits for a supervisor, and is not told to whoever asks what comes next', async () => {
    const visit = await toLiveStep();
    const live = visit.run.context.step?.id;
    expect(visit.run.value).toMatchObject({ open: 'unsupervised' });
    expect(visit.mouth.last()).toBe("A trainee's live step: a supervisor must acknowledge it first.");
    expect(await visit.type('what next')).toBe("A trainee's live step: a supervisor must acknowledge it first.");
    expect(visit.of('step.asked').map(({ step }) => step)).not.toContain(live);
    await supervise(visit);
    expect(visit.of('step.asked').at(-1)?.step).toBe(live);
  });

  it('wants a supervisor anew after the visit was held', async () => {
    const visit = await toLiveStep();
    await supervise(visit);
    await visit.type('hold the visit');
    expect(visit.run.context.supervisor).toBeUndefined();
    await visit.type('go on with the visit');
    expect(visit.run.value).toMatchObject({ open: 'unsupervised' });
  });

  it('wants a supervisor anew once power came back where it was off', async () => {
    const visit = await toLiveStep();
    await supervise(visit);
    await visit.type('outdoor disconnect is pulled', 'outdoor disconnect is back in');
    expect(visit.run.context.supervisor).toBeUndefined();
  });

  it('wants a supervisor anew once power came back in the middle of a proof', async () => {
    const visit = await toLiveStep();
    await supervise(visit);
    await visit.type(...TO_LOCKED, 'meter proves two forty');
    expect(visit.run.context).toMatchObject({ energy: { 'outdoor-load': 'proving' }, supervisor: 'S. Visor' });
    await visit.type('leg one to ground one eighteen');
    expect(visit.run.context.supervisor).toBeUndefined();
  });

  it.each(['pass', 'outdoor disconnect is pulled'])('makes room at "%s"', async (line) => {
    const visit = await toLiveStep();
    const live = visit.run.context.step?.id;
    await visit.type(line);
    expect(visit.run.context.step?.id).not.toBe(live);
  });

  it('is answered by its reading though nobody had asked for it, once a supervisor has acknowledged', async () => {
    const visit = await toLiveStep();
    const ask = visit.run.context.step?.ask;
    if (ask?.kind !== 'reading') throw new Error('the live step is a reading');
    expect(ask).toMatchObject({ quantity: 'voltage', at: ['disconnect-load-1', 'disconnect-load-2'] });
    await visit.type('load lug one to load lug two two hundred forty volts');
    expect(visit.run.context.step?.ask).toEqual(ask);
    await supervise(visit);
    await visit.type('load lug one to load lug two two hundred forty volts');
    expect(visit.run.context.step?.ask).not.toEqual(ask);
  });
});

describe('the pace of talk', () => {
  it('is recorded when it changes, and only then', async () => {
    const visit = await visitAfter('short talk', 'full talk', 'full talk', 'short talk');
    expect(visit.of('talk.changed').map(({ pace }) => pace)).toEqual(['full', 'brief']);
  });
});

describe('an input that is not speech', () => {
  it('by touch is an order like a spoken one', async () => {
    const visit = await visitAfter();
    visit.run.touch('full-talk');
    await visit.run.settled();
    expect(visit.run.context.pace).toBe('full');
  });

  it('from an ear that failed is recorded and told', async () => {
    const visit = await visitAfter();
    visit.run.take({ type: 'edge.failed', edge: 'ear', fault: 'gone', sentence: 'The microphone is gone. Type on.' });
    await visit.run.settled();
    expect(visit.of('edge.interrupted')).toMatchObject([{ edge: 'ear', fault: 'gone' }]);
    expect(visit.mouth.last()).toBe('The microphone is gone. Type on.');
  });
});
