import { describe, expect, it } from 'vitest';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

const LIVE = [...ARRIVAL, 'compressor runs then trips', 'live'] as const;
const PULL = [...LIVE, 'leg one to ground one eighteen', 'thermostat is off', 'okay'] as const;
const PROOF = [...PULL, 'pulled and locked', 'two forty'] as const;
const CHARGE = [...PROOF, 'zero', 'zero', 'zero', 'zero', 'zero', 'zero', 'two forty', 'live'] as const;

async function visited(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}

const logged = (visit: TypedVisit): readonly string[] =>
  visit.of('reading.logged').map(({ reading }) => `${reading.quantity} ${reading.at.join(' ')} ${reading.value}`);

/** Common practice: who has a probe in each hand says the place, looks at the meter, then says the number. */
describe('a place that is named alone', () => {
  it.each([
    ['suction pressure', 'one eighteen', 'pressure suction-port 118'],
    ['leg two to ground', 'one nineteen', 'voltage L2 ground 119'],
    ['fan amps', 'point nine', 'current fan-motor 0.9'],
    ['leg one to ground', 'one nineteen', 'voltage L1 ground 119'],
    ['leg one', 'one nineteen', 'voltage L1 ground 119'],
  ])('"%s", then "%s", are one reading, whatever the step asks for', async (place, value, reading) => {
    const visit = await visited(...LIVE, place, value);
    expect(logged(visit).at(-1)).toBe(reading);
    expect(logged(visit).filter((one) => one.startsWith('voltage L1'))).toHaveLength(reading.includes(' L1 ') ? 1 : 0);
  });

  it.each([
    ['suction pressure nine thousand', 'one eighteen', 'pressure suction-port 118'],
    ['compressor seven thousand two hundred eleven amps', 'seventeen point two', 'current compressor 17.2'],
  ])('keeps its number where the first cannot be: "%s", then "%s"', async (first, second, reading) => {
    const visit = await visited(...LIVE, first, second);
    expect(logged(visit).at(-1)).toBe(reading);
    expect(logged(visit).filter((one) => one.startsWith('voltage L1'))).toEqual([]);
  });

  it('behind a whole reading in one breath has its number too', async () => {
    const visit = await visited(...LIVE, 'leg one to ground one twenty two leg two to ground', 'one nineteen');
    expect(logged(visit).slice(-2)).toEqual(['voltage L1 ground 122', 'voltage L2 ground 119']);
  });

  it('keeps a number of another unit from itself and from the step', async () => {
    const visit = await visited(...LIVE, 'suction pressure', 'one eighteen volts');
    expect(logged(visit).filter((one) => /118/.test(one))).toEqual([]);
    expect(openQuestion(visit.run.context)?.kind).toBe('what-value');
  });

  it.each(['pass', 'no', 'done'])('is left by "%s", and the step is asked again', async (word) => {
    const visit = await visited(...LIVE, 'suction pressure', word);
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.mouth.last()).toMatch(/leg one to ground/i);
  });

  it('is let go after a minute, aloud and in the record', async () => {
    const visit = await visited(...LIVE, 'suction pressure');
    await visit.later(2);
    expect(visit.of('question.ended')).toMatchObject([{ how: 'expired' }]);
    expect(visit.mouth.said.slice(-2).map(({ text }) => text)).toEqual([
      'Suction pressure: left out.',
      'Live. Leg one to ground.',
    ]);
  });

  it('gives way to another place, and to another whole reading', async () => {
    const visit = await visited(...LIVE, 'suction pressure', 'fan amps', 'point nine');
    expect(logged(visit).at(-1)).toBe('current fan-motor 0.9');
    const other = await visited(...LIVE, 'suction pressure', 'leg two to ground one nineteen');
    expect(logged(other).at(-1)).toBe('voltage L2 ground 119');
    expect(other.run.context.questions).toEqual([]);
  });

  it('takes no answer to a question that was put before it', async () => {
    const visit = await visited(...LIVE, 'fifty four', 'suction pressure', 'one eighteen');
    expect(logged(visit).at(-1)).toBe('pressure suction-port 118');
    expect(visit.of('reading.refused')).toMatchObject([{ reading: { value: 54 }, reason: 'not-answered' }]);
  });

  it('counts in a proof where it was named, and nowhere else', async () => {
    const visit = await visited(...PROOF, 'T one to ground', 'zero');
    expect(visit.of('proof.pair').map(({ at }) => at.join(' '))).toEqual(['T1 ground']);
    expect(visit.run.context.step?.id).toBe('energy.pair@L1+ground');
  });
});

describe('the switch that the step asks for', () => {
  it.each([
    ['disconnect is pulled', 'open'],
    ['I pulled the disconnect', 'open'],
    ['disconnect is out and locked out', 'locked'],
    ['pulled the disconnect and locked it out', 'locked'],
  ])('is meant by "%s"', async (words, state) => {
    const visit = await visited(...PULL, words);
    expect(visit.of('switch.reported')).toMatchObject([{ place: 'outdoor', device: 'disconnect', state }]);
    expect(visit.run.context.questions).toEqual([]);
  });

  it.each(['breaker is off', 'power is off', 'main panel is off'])('is not meant by "%s"', async (words) => {
    const visit = await visited(...PULL, words);
    expect(visit.of('switch.reported')).toEqual([]);
    expect(openQuestion(visit.run.context)?.kind).toBe('which-switch');
  });

  it('is asked for where no step names it', async () => {
    const visit = await visited(...LIVE, 'disconnect is pulled');
    expect(visit.of('switch.reported')).toEqual([]);
    expect(openQuestion(visit.run.context)?.kind).toBe('which-switch');
  });

  it('is not told open by who is ready for it', async () => {
    const visit = await visited(...PULL.slice(0, -1), 'ready');
    expect(visit.of('switch.reported')).toEqual([]);
    expect(visit.run.context.caution).toBeUndefined();
  });
});

describe('both sections of a capacitor, where their charge is asked for', () => {
  it.each([
    'both zero',
    'zero on both',
    "they're both zero",
    'both sections zero',
    'zero on both sections',
    'herm zero fan zero',
    'herm section zero and fan section zero',
  ])('"%s"', async (words) => {
    const visit = await visited(...CHARGE, words);
    expect(visit.run.context.discharged).toEqual(expect.arrayContaining(['capacitor-herm', 'capacitor-fan']));
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
    expect(logged(visit).slice(-2)).toEqual(['voltage-dc cap-C cap-HERM 0', 'voltage-dc cap-C cap-FAN 0']);
  });

  it('are never meant by legs, which are asked about', async () => {
    const visit = await visited(...CHARGE, 'zero on both legs');
    expect(visit.run.context.discharged).toEqual([]);
    expect(logged(visit)).toHaveLength(logged(await visited(...CHARGE)).length);
  });
});

describe('help', () => {
  it.each([
    ['in a proof', PROOF, /one breath: meter .* each pair in order, meter again/],
    ['at its meter', [...PULL, 'pulled and locked'], /one breath: meter .* each pair in order, meter again/],
    ['at a discharge', CHARGE, /volts DC of each section/],
  ])('tells the form of the numbers %s', async (_, lines, words) => {
    const visit = await visited(...lines, 'what can I say');
    expect(visit.mouth.last()).toMatch(words);
    expect(visit.mouth.last().split(' ').length).toBeLessThanOrEqual(25);
    // It tells no value that is still to be read.
    expect(visit.mouth.last()).not.toMatch(/zero|two forty|\d/);
  });
});
