import { describe, expect, it } from 'vitest';
import { printRecord } from '../../../client/terminal/print-record.ts';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import type { AnsweredFrom } from '../../../grammar/visit/inputs.ts';
import { LIBRARY_UNIT, TypedVisit } from './typed-visit.ts';

const trainee = () => TypedVisit.open(LIBRARY_UNIT, 'trainee');
const FIRST = /A supervisor must acknowledge first/;

async function supervise(visit: TypedVisit, from?: AnsweredFrom): Promise<void> {
  visit.run.take({
    type: 'supervisor.acknowledged',
    supervisor: 'S. Visor',
    ...(from === undefined ? {} : { from }),
  });
  await visit.run.settled();
}

/** Live work of a trainee wants a qualified person: 29 CFR 1910.333(c)(2), from memory; our rule for a visit. */
const READINGS = [
  'leg one to ground one eighteen',
  'leg one to leg two two forty',
  'T one to ground one nineteen',
  'T one to T two two forty',
  'coil twenty four volts',
  'R to C at the air handler twenty five volts',
  'air handler leg one to ground one eighteen',
  'leg two to ground zero volts',
  'herm section zero volts d c',
  'fan section zero volts d c',
  'compressor amps eleven',
  'fan amps point nine',
  'suction pressure one hundred and two',
];
const PROOFS = [
  'meter proves two forty',
  'meter is good on two forty',
  'meter two forty zero zero zero meter two forty',
  'line side meter two forty zero zero zero meter two forty',
  'control meter twenty four zero zero zero meter twenty four',
  'discharged the capacitor',
];

describe('of a trainee alone', () => {
  it.each(READINGS)('a live reading waits: "%s"', async (line) => {
    const visit = await trainee();
    await visit.type('outdoor disconnect is pulled and locked');
    await visit.type(line);
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.of('proof.pair')).toEqual([]);
    expect(visit.of('reading.waits').map(({ reading }) => reading !== undefined)).toEqual([true]);
    expect(visit.mouth.said.some(({ text }) => FIRST.test(text))).toBe(true);
    expect(visit.run.context.waiting).toHaveLength(1);
  });

  it.each(PROOFS)('a proof waits: "%s"', async (line) => {
    const visit = await trainee();
    await visit.type('thermostat is not calling', 'outdoor disconnect is pulled and locked');
    await visit.type('panel breaker is off and locked', 'service switch is off and locked', line);
    for (const type of ['proof.began', 'proof.recorded', 'charge.released'] as const)
      expect(visit.of(type)).toEqual([]);
    expect(visit.of('reading.waits').length).toBeGreaterThan(0);
    expect(Object.values(visit.run.context.energy)).not.toContain('reads-dead');
    expect(visit.mouth.last()).toMatch(FIRST);
  });

  it.each(['outdoor air ninety four degrees', 'filter is clean', 'outdoor fan is turning', 'thermostat is calling'])(
    'what meets nothing live is taken: "%s"',
    async (line) => {
      const visit = await trainee();
      await visit.type(line);
      expect(visit.of('reading.waits')).toEqual([]);
      expect(visit.of('reading.logged').length + visit.of('observation.logged').length).toBe(1);
    },
  );

  it('a part in the hand is measured', async () => {
    const visit = await trainee();
    await visit.type('fan section one point one microfarads on the bench', 'yes');
    expect(visit.of('reading.logged')).toHaveLength(1);
  });

  it('each part of one breath waits for itself', async () => {
    const visit = await trainee();
    await visit.type('outdoor air ninety four degrees, leg one to ground one eighteen, compressor amps eleven');
    expect(visit.of('reading.logged')).toHaveLength(1);
    expect(visit.of('reading.waits')).toHaveLength(2);
  });

  it.each(['leg one to ground one eighteen', 'T one to T two two forty', 'compressor amps eleven'])(
    'live evidence is heeded at once where it was reported off: "%s"',
    async (line) => {
      const visit = await trainee();
      await visit.type('outdoor disconnect is pulled and locked', line);
      expect(visit.mouth.said.some(({ text }) => /^Hands off/.test(text))).toBe(true);
      expect(visit.run.context.energy['outdoor-load']).toBe('live');
      expect(visit.of('reading.logged')).toEqual([]);
    },
  );

  it.each([
    'leg one to ground one eighteen',
    'fan section thirty seven volts d c',
    'meter two forty zero zero one eighteen meter two forty',
    'compressor is running',
    'outdoor disconnect is back in',
  ])('evidence ends a proof at once: "%s"', async (line) => {
    const visit = await trainee();
    await supervise(visit);
    await visit.type('leg one to ground one eighteen', 'thermostat is not calling');
    await visit.type('outdoor disconnect is pulled and locked', 'meter proves two forty');
    expect(visit.run.context.energy['outdoor-load']).toBe('proving');
    await visit.type('hold the visit', 'go on with the visit');
    expect(visit.run.context.supervisor).toBeUndefined();
    visit.mouth.said.splice(0);
    await visit.type(line);
    expect(visit.run.context.energy['outdoor-load']).toMatch(/proving|live/);
    if (!line.startsWith('fan section')) expect(visit.run.context.energy['outdoor-load']).toBe('live');
    const said = visit.mouth.said.map(({ text }) => text).join(' ');
    expect(said).toMatch(
      /Hands off|still charged|Charged, and it does not read dead|not below three volts|Power back/i,
    );
  });

  it('a correction sets right what waits, and no earlier reading', async () => {
    const visit = await trainee();
    await visit.type('outdoor air ninety four degrees', 'leg one to ground one eighteen', 'correction one nineteen');
    expect(visit.of('reading.corrected')).toEqual([]);
    expect(visit.run.context.waiting.map(({ reading }) => reading?.value)).toEqual([119]);
  });

  it('what waits may be taken back, and nothing before it goes with it', async () => {
    const visit = await trainee();
    await visit.type('outdoor air ninety four degrees', 'leg one to ground one eighteen', 'take that back');
    expect(visit.run.context.waiting).toEqual([]);
    expect(visit.run.context.readings.filter(({ withdrawn }) => withdrawn)).toEqual([]);
    expect(foldVisit(visit.events()).waited).toHaveLength(1);
  });

  it('what waits stands open when the visit closes', async () => {
    const visit = await trainee();
    await visit.type('leg one to ground one eighteen', 'finish the visit');
    expect(foldVisit(visit.events()).summary?.openItems.join()).toMatch(/leg one to ground.*trainee alone/i);
  });
});

describe('when a supervisor acknowledges', () => {
  it('what waited is asked anew, and taken when it is read again', async () => {
    const visit = await trainee();
    await visit.type('leg one to ground one eighteen', 'meter proves two forty');
    await supervise(visit, 'own-device');
    expect(visit.mouth.said.map(({ text }) => text)).toContainEqual(
      expect.stringMatching(/^Supervisor acknowledged. Read it again: leg one to ground. Prove it again/i),
    );
    expect(visit.of('reading.logged')).toEqual([]);
    await visit.type('leg one to ground one eighteen');
    expect(visit.of('reading.logged')).toHaveLength(1);
    expect(visit.run.context.waiting).toEqual([]);
  });

  it.each([
    ['supervisor here', 'by voice'],
    ['supervisor here, go ahead', 'by voice'],
    ['the supervisor is here', 'by voice'],
    ['supervisor acknowledges', 'by voice'],
    ['supervisor acknowledges Robin Vale', 'Robin Vale'],
  ])('on this device it is said: "%s"', async (line, name) => {
    const visit = await trainee();
    await visit.type(line, 'leg one to ground one eighteen');
    expect(visit.of('supervisor.acknowledged')).toMatchObject([{ supervisor: name, from: 'this-device' }]);
    expect(visit.of('reading.logged')).toHaveLength(1);
  });

  it.each([
    ['own-device', /S\. Visor, from a device of their own/],
    ['this-device', /S\. Visor, on this device/],
    [undefined, /S\. Visor$/m],
  ] as const)('the record tells from which device: %s', async (from, printed) => {
    const visit = await trainee();
    await supervise(visit, from);
    const acknowledged = { supervisor: 'S. Visor', ...(from === undefined ? {} : { from }) };
    expect(foldVisit(visit.events()).acknowledgements).toMatchObject([acknowledged]);
    const record = toVisitRecord(visit.events());
    expect(record.acknowledgements).toMatchObject([acknowledged]);
    expect(printRecord(record)).toMatch(printed);
  });

  it('the word is taken back like any other', async () => {
    const visit = await trainee();
    await visit.type('supervisor here', 'take that back', 'leg one to ground one eighteen');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.of('reading.waits')).toHaveLength(1);
  });

  it('nobody waits where no trainee is', async () => {
    const visit = await TypedVisit.open();
    await visit.type('supervisor here', 'leg one to ground one eighteen');
    expect(visit.of('supervisor.acknowledged')).toEqual([]);
    expect(visit.of('reading.logged')).toHaveLength(1);
  });

  it('before a reload what waits waits after it, and who acknowledged has acknowledged', async () => {
    const visit = await trainee();
    await visit.type('leg one to ground one eighteen');
    visit.run = await VisitRun.restore(visit.edges(), [...visit.bodies]);
    expect(visit.run.context.waiting).toHaveLength(1);
    await visit.type('supervisor here');
    visit.run = await VisitRun.restore(visit.edges(), [...visit.bodies]);
    expect(visit.run.context).toMatchObject({ supervisor: 'by voice', waiting: [] });
  });
});
