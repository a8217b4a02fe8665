import { describe, expect, it } from 'vitest';
import { TEST_IDS, TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { ANSWER, TELLS } from '../../../client/words/talk/answer-words.ts';
import { placementWords } from '../../../client/words/talk/step-words.ts';
import { pointWords } from '../../../client/words/things/place-words.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { NEVER_SAID } from './never-said.ts';
import { ARRIVAL, LIBRARY_UNIT, TO_LIVE_STEP, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;
/** So long may an answer be: about ten seconds beside a fan. Our choice. */
const MOST_WORDS = 25;

/** What comes before the first reading of arrival, each answered as it is asked. */
const ASKED_IN_TURN = ['customer agrees', 'pass', 'okay', 'category three'] as const;
const LIVE = [...ARRIVAL, 'compressor is not running', 'live'] as const;
const IN_PROOF = [
  ...ARRIVAL,
  'compressor runs then trips',
  'leg one to ground one eighteen',
  'leg two to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'live',
  'two forty',
  'zero',
] as const;

/** The states in which people ask, and how to get there. */
const STATES = {
  'on arrival': [],
  'a caution waits': TO_LIVE_STEP,
  'a live step is asked': LIVE,
  'a proof is in progress': IN_PROOF,
  'proven dead': TO_PROVEN_DEAD,
} as const;

const QUESTIONS = [
  'what did you hear',
  'what did you write down',
  'what was leg one',
  'what did I get on leg two',
  'what was the suction pressure',
  'what was the last reading',
  'where do I put the probes',
  'where do the leads go',
  'what should it do',
  'what should it read',
  'what am I looking for',
  'what does that mean',
  "what's left",
  'how many more',
  'is it dead',
  'can I touch it',
] as const;

describe('a question put to Readback', () => {
  it.each(Object.entries(STATES))('is answered, where %s, in few words, and changes nothing', async (_, lines) => {
    const visit = await TypedVisit.open();
    await visit.type(...lines);
    for (const question of QUESTIONS) {
      const { energy, readings, step, settled } = visit.run.context;
      const told = visit.mouth.said.length;
      await visit.type(question);
      const said = visit.mouth.said.slice(told);
      expect(said, question).toHaveLength(1);
      expect(said[0]?.kind, question).not.toBe('question');
      expect(wordsIn(said[0]?.text ?? ''), said[0]?.text).toBeLessThanOrEqual(MOST_WORDS);
      expect(said[0]?.text, question).not.toMatch(NEVER_SAID);
      expect({ energy, readings, step, settled }).toEqual({
        energy: visit.run.context.energy,
        readings: visit.run.context.readings,
        step: visit.run.context.step,
        settled: visit.run.context.settled,
      });
    }
  });

  it('tells the value that stands, and the corrected one after a correction', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'leg one to ground one eighteen');
    expect(await visit.type('what was leg one')).toMatch(/one eighteen/);
    await visit.type('correction one nineteen');
    expect(await visit.type('what was leg one')).toMatch(/one nineteen/);
    await visit.type('take that back');
    expect(await visit.type('what was leg one')).toMatch(/not read/);
  });

  it('tells whether what was heard was taken', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'leg one to ground one thirty five');
    expect(await visit.type('what did you hear')).toMatch(/one three five|one thirty five/);
    expect(visit.mouth.last()).toMatch(/not taken/);
    await visit.type('yes', 'what did you hear');
    expect(visit.mouth.last()).not.toMatch(/not taken/);
    await visit.type('purple monkey dishwasher', 'what did you hear');
    expect(visit.mouth.last()).toMatch(/not taken/);
  });

  it('tells no place for probes before the caution of the step is acknowledged', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP);
    expect(visit.run.value).toEqual({ open: { cautioning: 'awaiting' } });
    expect(await visit.type('where do I put the probes')).not.toMatch(/probe on/i);
    await visit.type('live');
    const { step } = visit.run.context;
    const told = await visit.type('where do I put the probes');
    for (const point of step?.ask.kind === 'reading' ? step.ask.at : []) expect(told).toContain(pointWords(point));
    expect(told).toMatch(/probe on/i);
  });

  it('says that it is dead of nothing that is not proven so', async () => {
    const visit = await TypedVisit.open();
    for (const line of TO_PROVEN_DEAD) {
      await visit.type(line);
      const answer = await visit.type('is it dead');
      const isProven = visit.run.context.energy['outdoor-load'] === 'proven-dead';
      expect(/(?<!not )proven dead as measured/.test(answer), `${line}: ${answer}`).toBe(isProven);
    }
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
    await visit.type('power is back on');
    expect(await visit.type('is it dead')).not.toMatch(/as measured/);
  });

  it('never ends a proof by asking', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    const { energy } = visit.run.context;
    await visit.type('is it dead', 'is it off', 'is it live', 'can I touch it', 'is the power off');
    expect(visit.run.context.energy).toEqual(energy);
  });
});

describe('where the probes go', () => {
  const readings = TEST_IDS.filter((id) => TEST_MODELS[id].quantity !== 'observation');
  it.each(readings)('of %s is told in few words', (id) => {
    const { quantity, at } = TEST_MODELS[id];
    if (quantity === 'observation') throw new Error('a look');
    const words = placementWords({ quantity, at });
    expect(words).not.toBe('');
    expect(wordsIn(words), words).toBeLessThanOrEqual(MOST_WORDS);
    expect(words).not.toMatch(NEVER_SAID);
  });
});

describe('what a reading should do', () => {
  it.each(Object.keys(TELLS) as QuantityId[])('of %s is told without a number', (quantity) => {
    expect(TELLS[quantity]).not.toMatch(/\d/);
    expect(TELLS[quantity]).not.toMatch(/\b(ten|twenty|forty|hundred|zero)\b/i);
    expect(wordsIn(TELLS[quantity])).toBeLessThanOrEqual(MOST_WORDS);
  });
});

describe('a trainee', () => {
  it('hears where the probes go and how the meter is set, and after the reading what it means', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT, 'trainee');
    visit.run.take({ type: 'supervisor.acknowledged', supervisor: 'M. Ortega', from: 'own-device' });
    await visit.type(...LIVE, 'live');
    const asked = visit.of('step.asked').at(-1)?.words ?? '';
    expect(asked).toMatch(/meter on/i);
    expect(asked).toMatch(/probe/i);
    const told = visit.mouth.said.length;
    await visit.type('zero volts');
    const answers = visit.mouth.said.slice(told).filter(({ kind }) => kind === 'answer');
    expect(answers.map(({ text }) => text).join(' ')).toMatch(/likely now|finding/i);
    expect(answers.map(({ text }) => text).join(' ')).not.toMatch(/percent/);
  });

  it('hears that a reading fits, which nobody else is told', async () => {
    for (const role of ['trainee', 'technician'] as const) {
      const visit = await TypedVisit.open(LIBRARY_UNIT, role);
      visit.run.take({ type: 'supervisor.acknowledged', supervisor: 'M. Ortega', from: 'own-device' });
      await visit.type(...LIVE, 'live', 'two forty');
      const readbacks = visit.mouth.said.filter(({ kind }) => kind === 'readback').map(({ text }) => text);
      expect(readbacks.at(-1), role).toMatch(role === 'trainee' ? /two forty\. Fits\.$/ : /two forty\.$/);
    }
  });
});

describe('"one second"', () => {
  it('asks nothing more until something is said, and then the step again', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL);
    const told = visit.mouth.said.length;
    await visit.type('one second');
    await visit.later(3);
    expect(visit.mouth.said).toHaveLength(told);
    expect(visit.run.context.held).toBe(false);
    await visit.type('okay');
    expect(visit.mouth.said.at(-1)?.kind).toBe('step');
  });

  it('lets a question stand for as long as it lasts', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'leg one to ground one thirty five', 'hang on');
    await visit.later(3);
    expect(visit.run.context.questions).toHaveLength(1);
    await visit.type('yes');
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { value: 135 } });
  });

  it('says over a live step that hands stay off, and hears of power meanwhile', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIVE, 'hold on a second');
    expect(visit.mouth.last()).toBe(ANSWER.handsOff);
    const proven = await TypedVisit.open();
    await proven.type(...TO_PROVEN_DEAD, 'one second', 'power is back on');
    expect(proven.run.context.energy['outdoor-load']).not.toBe('proven-dead');
    expect(proven.mouth.said.filter(({ kind }) => kind === 'warning').length).toBeGreaterThan(0);
  });

  it('lets the proof age all the same', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...IN_PROOF, 'one second');
    await visit.later(12);
    await visit.type('zero');
    expect(visit.run.context.energy['outdoor-load']).not.toBe('reads-dead');
    expect(visit.run.context.proof?.pairs ?? []).toHaveLength(0);
  });
});

describe('"go back"', () => {
  it('asks the step before anew, and a new value takes its place', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL.slice(0, 2), 'go back');
    expect(visit.run.context.step?.id).toBe('arrive.return-air');
    await visit.type('seventy eight');
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { at: ['return-air'], value: 78 } });
    expect(visit.run.context.step?.id).toBe('arrive.call');
  });

  it('goes further back when said again', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ASKED_IN_TURN, 'ninety five', 'seventy eight', 'go back', 'go back');
    expect(visit.run.context.step?.id).toBe('arrive.outdoor-air');
  });

  it('never undoes what was told of power', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    const { energy, isolation, discharged } = visit.run.context;
    for (let times = 0; times < 6; times += 1) await visit.type('go back');
    expect(visit.run.context).toMatchObject({ energy, isolation, discharged });
  });

  it('takes the last number of a proof back, and asks for its pair again', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...IN_PROOF);
    const pairs = visit.run.context.proof?.pairs ?? [];
    expect(pairs).toHaveLength(1);
    await visit.type('go back');
    expect(visit.run.context.proof?.pairs).toHaveLength(0);
    expect(visit.run.context.step?.ask).toMatchObject({ at: pairs[0]?.at });
    expect(visit.run.context.energy['outdoor-load']).toBe('proving');
  });

  it('asks no live step again without its caution standing', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIVE);
    const { step } = visit.run.context;
    await visit.type('outdoor disconnect is pulled and locked', 'go back', 'go back');
    if (visit.run.context.step?.id === step?.id) {
      expect(visit.run.value).not.toEqual({ open: 'asked' });
    }
    expect(visit.run.context.energy['outdoor-load']).not.toBe('live');
  });
});

describe('"skip to the gauges"', () => {
  it('asks for pressures and lines next, each behind its caution', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIVE, 'skip to gauges');
    expect(visit.run.context.step?.ask).toMatchObject({ kind: 'reading', quantity: 'pressure', at: ['suction-port'] });
    expect(visit.of('caution.spoken').map(({ caution }) => caution)).toContain('refrigerant-pressure');
    await visit.type('one twenty');
    expect(visit.run.context.step?.ask).toMatchObject({ quantity: 'temperature', at: ['suction-line'] });
    await visit.type('fifty five', 'three sixty', 'ninety five');
    expect(
      visit
        .of('reading.logged')
        .slice(-4)
        .map(({ reading }) => reading.value),
    ).toEqual([120, 55, 360, 95]);
    expect(visit.run.context.step?.ask).not.toMatchObject({ quantity: 'pressure' });
  });

  it.each([
    ['a unit proven dead', TO_PROVEN_DEAD],
    ['a proof in progress', IN_PROOF],
    ['a unit that is locked', [...LIVE, 'outdoor disconnect is pulled and locked']],
    ['a thermostat without a call', [...LIVE, 'thermostat is not calling']],
  ] as const)('says what stands in the way at %s, and asks for no power', async (_, lines) => {
    const visit = await TypedVisit.open();
    await visit.type(...lines);
    const { energy, step } = visit.run.context;
    const told = visit.mouth.said.length;
    await visit.type('skip to gauges');
    expect(visit.mouth.said[told]).toMatchObject({ kind: 'answer', text: expect.stringMatching(/^Not now/) });
    expect(visit.run.context.energy).toEqual(energy);
    expect(visit.run.context.step?.id).toBe(step?.id);
  });

  it.each([
    ['go to the thermostat', 'control-circuit'],
    ['jump to the capacitor', 'loads'],
    ["let's go to the air side", 'air-side'],
  ] as const)('"%s" goes to another part of the unit', async (line, focus) => {
    const visit = await TypedVisit.open();
    await visit.type(...LIVE, line);
    expect(visit.of('focus.moved').at(-1)?.focus ?? visit.run.context.wanted?.steps[0]?.zone).toBeDefined();
    expect(visit.run.context.wanted?.steps.length).toBeGreaterThan(0);
    expect(visit.mouth.said.map(({ text }) => text)).toContain(ANSWER.goesTo(focus));
  });
});
