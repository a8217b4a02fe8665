import { describe, expect, it } from 'vitest';
import { TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { type VisitEdges, VisitRun } from '../../../client/visit/run/visit-run.ts';
import { LOOKS } from '../../../client/visit/steps/looks.ts';
import type { RankedTest } from '../../../grammar/visit/inputs.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { ARRIVAL, LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit, WEAK_FAN } from './typed-visit.ts';

/** What is asked, and in which state: rules i, s, t, u and v of conduct. Common practice. */

const askedIn = (visit: TypedVisit) => visit.of('step.asked').map(({ step }) => step);
const lastAsked = (visit: TypedVisit) => askedIn(visit).at(-1);

/** A test as the diagnosis would rank it. */
function ranked(id: TestId): RankedTest {
  const { function: fn, quantity, at, needs, measure } = TEST_MODELS[id];
  const answers = measure.kind === 'look' ? { answers: measure.answers } : {};
  return { id, function: fn, quantity, at, needs, minutes: 1, hazards: [], ...answers };
}

/** A visit whose diagnosis wants just these tests, in this order, whatever it is told. */
async function wanting(tests: readonly TestId[], ...lines: readonly string[]): Promise<TypedVisit> {
  const visit = new TypedVisit();
  const diagnose: VisitEdges['diagnose'] = async (_unit, evidence) => ({
    version: 'told',
    forSeq: evidence.length,
    suspects: [{ fault: 'low-charge', probability: 0.3 }],
    next: tests.map(ranked),
    hazards: [],
    done: false,
  });
  visit.run = VisitRun.open(
    { ...visit.edges(), diagnose },
    {
      type: 'opened.visit',
      visit: 'wanting',
      site: 'reading room',
      complaint: 'does not cool',
      role: 'technician',
      unit: LIBRARY_UNIT,
      software: 'test',
    },
  );
  await visit.run.settled();
  await visit.type(...lines);
  return visit;
}

describe('a step that needs a state', () => {
  it.each(['look-no-call', 'look-contactor-no-call'] as const)(
    'without a call is asked only after the call is off: %s',
    async (test) => {
      const visit = await wanting([test], ...ARRIVAL);
      expect(lastAsked(visit)).toBe('energy.call-off');
      expect(askedIn(visit)).not.toContain(test);
    },
  );

  it('with a call is asked only after the call is on', async () => {
    const visit = await wanting(['look-compressor'], ...ARRIVAL, 'thermostat is not calling');
    expect(lastAsked(visit)).toBe('energy.call-on');
  });

  it.each(['look-fan-by-hand', 'look-contacts', 'look-capacitor'] as const)(
    'with hands or eyes in the dead unit comes after the proof: %s',
    async (test) => {
      const live = await wanting([test], ...ARRIVAL, 'leg one to ground one eighteen');
      expect(askedIn(live)).not.toContain(test);
      const dead = await wanting([test], ...ARRIVAL, ...TO_PROVEN_DEAD);
      if (dead.run.context.caution !== undefined) await dead.type('live');
      expect(lastAsked(dead)).toBe(test);
    },
  );

  it('at the air handler wants the air handler dead, not the outdoor unit', async () => {
    const visit = await wanting(['look-blower-by-hand'], ...ARRIVAL, ...TO_PROVEN_DEAD);
    expect(askedIn(visit)).not.toContain('look-blower-by-hand');
    expect(visit.run.context.step?.zone).toBe('air-handler');
  });

  it('is known for every look', () => {
    for (const [id, { zone }] of Object.entries(LOOKS)) {
      const { needs } = TEST_MODELS[id as TestId];
      if (needs.power === 'off') expect(zone, id).not.toBe('none');
    }
  });
});

describe('what was answered in a state', () => {
  it('is not asked again in it, whatever the diagnosis made of the answer', async () => {
    const visit = await wanting(['look-compressor', 'look-blower'], ...ARRIVAL);
    expect(lastAsked(visit)).toBe('look-compressor');
    await visit.type('compressor is running');
    expect(lastAsked(visit)).toBe('look-blower');
    await visit.type('blower is running');
    expect(visit.run.context.phase).toBe('repair');
    expect(askedIn(visit).filter((id) => id === 'look-compressor')).toHaveLength(1);
  });
});

describe('opening the supply', () => {
  it('is preceded by taking the call off where one is on, and not where none is', async () => {
    const on = await wanting(['look-contacts'], ...ARRIVAL, 'leg one to ground one eighteen');
    expect(lastAsked(on)).toBe('energy.call-off');
    const quiet = ARRIVAL.map((line) => (line === 'thermostat is calling' ? 'thermostat is not calling' : line));
    const off = await wanting(['look-contacts'], ...quiet, 'leg one to ground one eighteen', 'live');
    expect(askedIn(off)).not.toContain('energy.call-off');
    expect(off.mouth.said.map(({ text }) => text).filter((text) => /call off/i.test(text))).toEqual([]);
  });

  it.each(['compressor is running', 'contactor is pulled in', 'outdoor fan is turning', 'contacts are stuck'])(
    'is done at the breaker where the contactor holds in without a call: %s',
    async (seen) => {
      const visit = await wanting(
        ['look-contacts'],
        ...ARRIVAL,
        'leg one to ground one eighteen',
        'thermostat is not calling',
        seen,
      );
      const { step, caution } = visit.run.context;
      if (caution !== undefined) await visit.type('live');
      expect(step?.id).toBe('energy.breaker-off');
    },
  );

  it.each([
    ['with the call on and the unit running', ['compressor is running']],
    ['with the contactor held in', ['thermostat is not calling', 'contactor is pulled in']],
  ] as const)('of a pull-out is warned of %s', async (_, lines) => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, ...lines, 'outdoor disconnect is pulled and locked');
    expect(visit.of('hazard.warned').map(({ words }) => words)).toContainEqual(
      expect.stringContaining('a pull-out is not a load switch'),
    );
  });
});

describe('clamps', () => {
  it('are put on while it is dead, together with the covers', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...ARRIVAL,
      ...TO_PROVEN_DEAD,
      ...WEAK_FAN,
      'fitted a forty five over five dual capacitor four forty volt',
    );
    expect(lastAsked(visit)).toBe('energy.clamps-placed');
    await visit.type('done');
    expect(visit.run.context.settled).toEqual(expect.arrayContaining(['repair.clamps-placed', 'energy.covers-on']));
  });

  it('that are passed are not asked for again', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...ARRIVAL,
      ...TO_PROVEN_DEAD,
      'fitted a forty five over five dual capacitor four forty volt',
      'pass',
    );
    expect(lastAsked(visit)).toBe('energy.covers-on');
  });
});

describe('a caution that came late', () => {
  it('is recorded once it was spoken whole, with why it was late', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen', 'leg two to ground one nineteen');
    expect(visit.of('caution.spoken')).toMatchObject([{ caution: 'live-line', late: 'the reading came first' }]);
  });

  it('that was cut is not recorded, and is given with the next reading', async () => {
    const visit = await TypedVisit.open();
    visit.mouth.cutNext = 1;
    await visit.type('leg one to ground one eighteen');
    expect(visit.of('caution.spoken')).toEqual([]);
    await visit.type('leg two to ground one nineteen');
    expect(visit.of('caution.spoken')).toHaveLength(1);
  });
});

describe('the circumstances of a reading', () => {
  it('are those of its own zone', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...ARRIVAL,
      'leg one to ground one eighteen',
      'air handler leg one to ground one nineteen',
      'thermostat is not calling',
      'air handler switch is off and locked',
      'control circuit meter twenty five zero meter twenty five',
      'C at the air handler to Y at the air handler eleven ohms',
    );
    const ohms = visit.of('reading.logged').find(({ reading }) => reading.quantity === 'resistance');
    expect(ohms?.under.power).toBe('off');
  });
});
