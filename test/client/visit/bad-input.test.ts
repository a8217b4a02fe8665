import { describe, expect, it } from 'vitest';
import { evidenceOf } from '../../../client/visit/rules/evidence-of.ts';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { observationWords } from '../../../client/words/things/observation-words.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { entriesOfDevice, joinDevices } from '../../../grammar/visit/join-devices.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';
import { JOB_ITEMS } from '../../../grammar/vocabulary/job-items.ts';
import { NAMEPLATE_FIELDS } from '../../../grammar/vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../../../grammar/vocabulary/observations.ts';
import { PARTS } from '../../../grammar/vocabulary/parts.ts';
import { POINTS } from '../../../grammar/vocabulary/points.ts';
import { TESTS } from '../../../grammar/vocabulary/tests.ts';
import { NEVER_SAID } from './never-said.ts';
import { ARRIVAL, LIBRARY_UNIT, REPAIR_AND_PROOF, TO_PROVEN_DEAD, TypedVisit, WEAK_FAN } from './typed-visit.ts';

const FITTED = 'fitted a forty five over five dual capacitor four forty volt';
/** Yes to the odd value, and once more where the finding rests on it alone. */
const FOUND = WEAK_FAN;

/** Whether any prompt of the visit holds these words. */
const said = (visit: TypedVisit, words: string | RegExp) =>
  visit.mouth.said.some((prompt) =>
    typeof words === 'string' ? prompt.text.includes(words) : words.test(prompt.text),
  );

/** The one visit of two devices, the first of which opened it. */
const joined = (first: TypedVisit, second: TypedVisit) =>
  joinDevices([...entriesOfDevice('phone', first.events()), ...entriesOfDevice('tablet', second.events())]).entries.map(
    ({ event }) => event,
  );

const timesAsked = (visit: TypedVisit, step: string) =>
  visit.of('step.asked').filter((event) => event.step === step).length;

async function inRepair(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD, ...FOUND);
  return visit;
}

describe('reports of energy that contradict each other', () => {
  it('end on the careful side: power reported back after off counts as live, off after that is only reported', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled and locked', 'outdoor disconnect is back in');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    expect(said(visit, 'Power back.')).toBe(true);
    await visit.type('outdoor disconnect is pulled');
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
    expect(said(visit, 'Off, not proven.')).toBe(true);
  });

  it('are answered with hands off where something runs that was reported off', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor disconnect is pulled and locked', 'compressor is running');
    expect(said(visit, /^Hands off: compressor is running\. Power is on/)).toBe(true);
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    expect(visit.of('hazard.warned')).toHaveLength(1);
  });
});

describe('voltage found after dead', () => {
  it('takes the hands off: the step is withdrawn, the proof is gone, and the part is not asked again before it', async () => {
    const visit = await inRepair();
    expect(visit.run.context.step?.id).toBe('repair.part-fitted');
    await visit.type('T one to ground one eighteen');
    expect(said(visit, 'Hands off: voltage present')).toBe(true);
    expect(visit.run.context.step?.id).not.toBe('repair.part-fitted');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    const before = timesAsked(visit, 'repair.part-fitted');
    await visit.type('what next');
    expect(timesAsked(visit, 'repair.part-fitted')).toBe(before);
  });
});

describe('a step that is skipped', () => {
  it('is asked no more until something was read, and stands once among the open items', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips');
    for (let round = 0; round < 60; round += 1) {
      const { caution, questions } = visit.run.context;
      await visit.type(questions.length > 0 ? 'no' : caution === undefined ? 'pass' : 'live');
    }
    const tests = visit.of('step.parked').filter(({ test }) => test !== undefined);
    const parked = [...new Set(tests.map(({ step }) => step))];
    expect(parked.length).toBeGreaterThan(2);
    for (const step of parked) expect(timesAsked(visit, step)).toBeLessThanOrEqual(1);
    await visit.type('finish the visit');
    const open = foldVisit(visit.events()).summary?.openItems ?? [];
    // By the words in which it was asked, and none that only the program knows.
    const asked = [...new Set(tests.map(({ words }) => words?.replace(/[.?!]+$/, '')))];
    expect(asked).toHaveLength(parked.length);
    for (const words of asked) expect(open.filter((item) => item.startsWith(`${words}:`))).toHaveLength(1);
    expect(open.join(' ')).not.toMatch(/\b[a-z]+\.[a-z]+-|\b(?:volts|ohms|amps|look)-/);
  });
});

describe('a technician who leaves in the middle of a repair', () => {
  it('finds the proof lapsed, the wire still off, and the close refused for it', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, ...TO_PROVEN_DEAD, 'lifted the brown wire from fan', 'hold the visit');
    const back = new TypedVisit();
    back.clock.step(visit.run.context.now.mono / 60_000 + 7 * 24 * 60);
    back.bodies.push(...visit.bodies);
    back.run = await VisitRun.restore(back.edges(), visit.bodies);
    await back.run.settled();
    expect(said(back, 'Taken up again after a while. Proof ended')).toBe(true);
    expect(back.run.context.energy['outdoor-load']).toBe('reported-off');
    await back.type('go on with the visit', 'finish the visit');
    expect(back.of('close.refused')[0]?.why.join(' ')).toContain('Not landed: brown wire from');
    expect(back.run.context.phase).not.toBe('closed');
  });
});

describe('a mouth that fails', () => {
  it('is told of once, and what it could not say silences nothing that follows', async () => {
    const visit = new TypedVisit();
    const said: string[] = [];
    let broken = true;
    const mouth = {
      speak: async (prompt: { readonly text: string }) => {
        if (broken) throw new Error('no voice');
        said.push(prompt.text);
        return 'spoken' as const;
      },
      hush: () => {},
    };
    visit.run = VisitRun.open(
      { ...visit.edges(), mouth },
      {
        type: 'opened.visit',
        visit: 'mute',
        site: 'here',
        complaint: 'warm',
        role: 'technician',
        unit: LIBRARY_UNIT,
        software: 'test',
      },
    );
    await visit.run.settled();
    await visit.type('leg one to ground one eighteen', 'leg two to ground one nineteen');
    expect(visit.of('edge.interrupted')).toMatchObject([
      { edge: 'mouth', sentence: 'The voice failed. Read the screen.' },
    ]);
    broken = false;
    await visit.type('status');
    expect(said).toHaveLength(1);
    // Nothing was spoken whole, so no caution counts as given.
    expect(visit.of('caution.spoken')).toEqual([]);
  });
});

describe('two devices on one visit', () => {
  const remark = { type: 'remarked.visit', author: 'S. Visor', text: 'look at the lug' } as const;

  it('are told apart by the lease: what the second one logs does not count, its remarks do', async () => {
    const first = await TypedVisit.open();
    await first.type('leg one to ground one eighteen', 'leg two to ground one nineteen');
    const second = await TypedVisit.open();
    await second.type('leg one to ground zero volts', 'outdoor disconnect is pulled and locked');
    second.run.take(remark);
    await second.run.settled();

    const view = foldVisit(joined(first, second));
    expect(view.readings).toEqual(
      foldVisit(first.events()).readings.map((line) => ({ ...line, seq: expect.anything() })),
    );
    expect(view.energy).toEqual(foldVisit(first.events()).energy);
    expect(view.remarks).toMatchObject([{ author: 'S. Visor', text: 'look at the lug' }]);
  });

  it('leave the machine where it was: a remark moves neither a region nor what it holds', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen');
    const { context, value } = visit.run;
    visit.run.take(remark);
    await visit.run.settled();
    expect({ ...visit.run.context, events: context.events }).toEqual(context);
    expect(visit.run.value).toEqual(value);
    expect(visit.of('remark.made')).toHaveLength(1);
  });

  it('join into a record that restores to what the first device alone had', async () => {
    const first = await TypedVisit.open();
    await first.type(...ARRIVAL, ...TO_PROVEN_DEAD);
    const second = await TypedVisit.open();
    await second.type('outdoor air ninety degrees');
    second.run.take(remark);
    await second.run.settled();
    const bodies = joined(first, second).map((event) => JSON.stringify(event));
    expect(bodies).toHaveLength(first.bodies.length + 1);
    const restored = new TypedVisit();
    restored.clock.step(first.run.context.now.mono / 60_000);
    restored.run = await VisitRun.restore(restored.edges(), bodies);
    const { now: _now, ...held } = restored.run.context;
    const { now: _then, ...had } = first.run.context;
    const values = (lines: typeof had.readings) =>
      lines.map(({ number, reading, under }) => ({ number, reading, under }));
    expect(values(held.readings)).toEqual(values(had.readings));
    expect(held).toMatchObject({ energy: had.energy, phase: had.phase, proof: had.proof });
  });
});

describe('an undo after a repair', () => {
  it('takes the part back: it is said, the repair is asked again, and nothing is proved by it', async () => {
    const visit = await inRepair();
    await visit.type(FITTED);
    expect(visit.run.context.phase).toBe('prove');
    await visit.type('take that back');
    expect(said(visit, 'Taken back: dual capacitor')).toBe(true);
    expect(visit.of('part.withdrawn')).toHaveLength(1);
    expect(foldVisit(visit.events()).parts).toEqual([]);
    expect(visit.run.context).toMatchObject({ phase: 'repair', parts: [] });
    expect(evidenceOf(visit.run.context).some((item) => item.kind === 'repair')).toBe(false);
    await visit.type('outdoor disconnect is back in', 'finish the visit');
    expect(foldVisit(visit.events()).summary?.plain).toContain('Nothing was fitted.');
  });
});

describe('a part whose ratings were not all said', () => {
  it.each([
    ['fitted a dual capacitor', 'The herm section was not said'],
    ['fitted a forty five over five dual capacitor', 'Its volts were not said'],
    ['fitted a contactor', 'Not said of the contactor: amps, poles, coil volts'],
    ['fitted a fuse', "The fuse's amps were not said"],
  ])('"%s" goes in with a warning of what is missing', async (line, words) => {
    const visit = await TypedVisit.open();
    await visit.type(line);
    expect(said(visit, words)).toBe(true);
    expect(visit.of('part.fitted')).toHaveLength(1);
    expect(visit.of('part.doubted').every((event) => event.weight === 'warn')).toBe(true);
  });

  it('that contradict the nameplate is asked, and stays an open item where it is kept', async () => {
    const visit = await TypedVisit.open();
    await visit.type('fitted a thirty five over five dual capacitor four forty volt');
    expect(said(visit, /Does not match\. .*Keep it all the same\?/)).toBe(true);
    expect(visit.of('part.fitted')).toEqual([]);
    await visit.type('yes', 'finish the visit', 'note it was fitted before the log began');
    expect(foldVisit(visit.events()).summary?.openItems.some((item) => item.startsWith('dual-capacitor:'))).toBe(true);
  });
});

describe('a terminal that the unit lacks', () => {
  const LIFTED = 'lifted the brown wire from start capacitor side one';

  it('is asked before a wire is recorded there, and recorded at a yes', async () => {
    const visit = await TypedVisit.open({ ...LIBRARY_UNIT, hardStart: false });
    await visit.type(LIFTED);
    expect(said(visit, 'This unit is listed without a start capacitor.')).toBe(true);
    expect(visit.of('wire.moved')).toEqual([]);
    await visit.type('yes');
    expect(visit.of('wire.moved')).toHaveLength(1);
  });

  it('is not asked where the unit has it', async () => {
    const visit = await TypedVisit.open({ ...LIBRARY_UNIT, hardStart: true });
    await visit.type(LIFTED);
    expect(visit.of('wire.moved')).toHaveLength(1);
  });
});

describe('a close with wires not landed', () => {
  it('is refused with the wire named, and goes through only with a spoken reason that is recorded', async () => {
    const visit = await TypedVisit.open();
    await visit.type('lifted the brown wire from fan', 'finish the visit');
    expect(visit.of('close.refused')[0]?.why).toEqual([
      'Not landed: brown wire from capacitor fan. Land it and say so.',
      'Not proven dead, outdoor unit: brown wire lifted from capacitor fan. Say why.',
    ]);
    expect(said(visit, 'Or say note and the reason.')).toBe(true);
    await visit.type('finish the visit');
    expect(visit.run.context.phase).not.toBe('closed');
    await visit.type('note the terminal is broken off');
    expect(visit.run.context.phase).toBe('closed');
    const view = foldVisit(visit.events());
    expect(view.overrides[0]).toMatchObject({ reason: 'the terminal is broken off' });
    expect(view.summary?.openItems.join(' ')).toContain('Not landed: brown wire');
  });

  it('is not refused once the wire is back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('lifted the brown wire from fan', 'finish the visit', 'landed the brown wire on fan');
    await visit.type('finish the visit');
    expect(visit.of('close.refused').at(-1)?.why.join(' ')).not.toContain('Not landed');
    await visit.type('note the main was off, tested with a pen');
    expect(visit.run.context.phase).toBe('closed');
  });
});

describe('every name that may be spoken', () => {
  const names: readonly string[] = [
    ...OBSERVATIONS.map(({ id }) => observationWords(id)),
    ...[...FAULTS, ...TESTS, ...POINTS, ...PARTS, ...JOB_ITEMS, ...NAMEPLATE_FIELDS].map(({ name }) => name),
  ];

  it.each(names)('"%s" holds none of the words that are listened for', (name) => {
    expect(name).not.toMatch(NEVER_SAID);
  });

  it.each(OBSERVATIONS.map(({ id }) => id))('of what is seen is understood when it is repeated: %s', (observation) => {
    expect(understand(observationWords(observation)).meaning).toEqual({
      kind: 'report',
      report: { type: 'observation', observation },
    });
  });
});

describe('every prompt of what goes wrong', () => {
  it('holds none of the words that are listened for, and never says safe', async () => {
    const visit = await TypedVisit.open();
    await visit.type('full talk', 'customer agrees', 'nameplate is gone', 'meter is cat two', 'check on me in five');
    await visit.type(...ARRIVAL, ...TO_PROVEN_DEAD, 'lifted the brown wire from fan', 'landed the brown wire on herm');
    await visit.type('yes', 'fitted a filter drier', 'recovered six pounds', 'live');
    await visit.type('nitrogen pressure three hundred psi', 'found a leak', 'what next');
    await visit.type('nitrogen pressure three hundred psi', 'leak search found nothing');
    await visit.later(16);
    await visit.type('nitrogen pressure two hundred psi', 'cancel the check', 'I am fine', ...REPAIR_AND_PROOF);
    await visit.type('vacuum four hundred microns', 'pump is valved off', 'recommend', 'customer signs');
    await visit.type('finish the visit');
    expect(visit.mouth.said.length).toBeGreaterThan(60);
    for (const { text } of visit.mouth.said) expect(text).not.toMatch(NEVER_SAID);
  });
});
