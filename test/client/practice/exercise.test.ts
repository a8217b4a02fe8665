import { describe, expect, it } from 'vitest';
import { mostLevel, streakOf } from '../../../client/practice/choose-hint.ts';
import { lookBack } from '../../../client/practice/debrief.ts';
import { PracticeError } from '../../../client/practice/errors.ts';
import type { Hint, TestMade } from '../../../client/practice/exercise-log.ts';
import { drawExercise, linkOf, readPlan } from '../../../client/practice/exercise-plan.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { ARRIVED, PROVEN_DEAD, Practised } from './practise-lines.ts';

// motors-411: an outdoor fan with seized bearings, on a unit with a hard start kit.
const FAN = 'motors-411';

describe('an exercise', () => {
  it('is the same unit with the same fault for the same name, and another for the next', () => {
    const drawn = () => drawExercise(readPlan(FAN));
    expect(drawn().kase.hidden.map(({ cause, severity }) => [cause.id, severity])).toEqual(
      drawn().kase.hidden.map(({ cause, severity }) => [cause.id, severity]),
    );
    expect(drawn().profile).toEqual(drawExercise(readPlan('power-412')).profile);
    expect(drawn().profile).not.toEqual(drawExercise(readPlan('motors-421')).profile);
  });

  it.each([
    ['motors', 'bad-exercise'],
    ['engines-4', 'unknown-family'],
    ['motors-0', 'bad-seed'],
    ['motors-123456', 'bad-seed'],
    ['<script>-1', 'bad-exercise'],
    ['motors-4; x', 'bad-exercise'],
  ])('refuses the name %s by the code %s', (name, code) => {
    expect(() => readPlan(name)).toThrow(expect.objectContaining({ code }));
    expect(() => readPlan('motors-1', '-4')).toThrow(PracticeError);
  });

  it('is set by a link that reads as it was written', () => {
    const plan = readPlan('cooling-77', '45', '3');
    const link = new URL(linkOf(plan), 'http://localhost');
    const { searchParams: at } = link;
    expect(readPlan(at.get('exercise') ?? '', at.get('minutes'), at.get('hints'))).toEqual(plan);
  });

  it('answers a place with the meter and writes the reading into the record of the visit', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED);
    expect(await p.type('leg one to ground')).toMatch(/Whom do you suspect/);
    expect(await p.type('none yet')).toMatch(/Live work/);
    expect(await p.type('live')).toMatch(/^meter: 1\d\d V/);
    const reading = p.events().findLast((event) => event.type === 'reading.logged');
    expect(reading).toMatchObject({ reading: { quantity: 'voltage', at: ['L1', 'ground'], unit: 'V' } });
    // 240 V from halves of one transformer: 120 V each to ground, ± 5 % (ANSI C84.1, range A).
    expect(Number(reading?.type === 'reading.logged' && reading.reading.value)).toBeGreaterThan(114);
  });

  it('marks its record as an exercise', async () => {
    const p = await Practised.begin(FAN);
    expect(p.events()[1]).toMatchObject({ type: 'visit.opened', exercise: FAN });
    expect(foldVisit(p.events()).site).toBe('practice');
  });

  it('says what each suspect would show, who is left, and that a test could tell nothing', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED, 'look at the compressor', 'one');
    const made = p.exercise.log.find((deed) => deed.type === 'tested');
    expect(made).toMatchObject({
      test: 'look-compressor',
      hypothesis: made?.type === 'tested' && made.before[0]?.fault,
    });
    expect(made?.type === 'tested' && made.expected.length).toBeGreaterThan(1);
    // The oil heater's resistance has nothing to do with a fan that stands.
    await p.type('look at the filter', 'none yet', 'look at the filter', 'none yet');
    expect(p.exercise.log.findLast((deed) => deed.type === 'tested')).toMatchObject({
      test: 'look-filter',
      redundant: true,
    });
  });

  it('hints from the circuit to the place to the test, counts, and says less after success', async () => {
    const p = await Practised.begin(FAN, undefined, '4');
    await p.type(...ARRIVED);
    expect(await p.type('hint')).toMatch(/^hint: Think of the/);
    expect(await p.type('what next')).toMatch(/^hint: At the/);
    expect(await p.type('hint')).toMatch(/^hint: (Look|Listen|Volts|Micro|Ohms|Amps)/);
    await p.type('compressor is running', 'none yet', 'fan section', 'none yet', 'live');
    expect(await p.type('hint')).toMatch(/^hint: Think of the/);
    expect(await p.type('hint')).toMatch(/used up/);
    expect(lookBack(p.exercise).counts.hints).toBe(4);
  });

  it('lets hints fade by what was found without one, and by nothing else', () => {
    const tested = (redundant: boolean) => ({ type: 'tested', redundant }) as TestMade;
    const hint: Hint = { type: 'hinted', test: 'look-filter', level: 1, words: '' };
    expect(streakOf([tested(false), tested(false)])).toBe(2);
    expect(streakOf([tested(false), hint, tested(false), tested(false)])).toBe(2);
    expect(streakOf([tested(false), tested(true), tested(false)])).toBe(1);
    expect([0, 1, 2, 4, 9].map(mostLevel)).toEqual([3, 3, 2, 1, 1]);
  });

  it('lets minutes pass where the unit has to run', async () => {
    const p = await Practised.begin(FAN);
    expect(await p.type('wait fifteen minutes')).toMatch(/^exercise: 15 minutes pass/);
    expect(await p.type('let 5 minutes pass')).toMatch(/^exercise: 5 minutes pass/);
    expect(await p.type('wait 90 minutes')).not.toMatch(/pass/);
  });

  it('ends when its minutes are over', async () => {
    const p = await Practised.begin(FAN, '5');
    await p.type(...ARRIVED);
    expect(p.exercise.ended).toBe('out-of-time');
    expect(await p.type('leg one to ground')).toMatch(/over/);
  });

  it('leads to a finding, a repair and its proof by words alone', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED, 'look at the compressor', 'one', ...PROVEN_DEAD);
    expect(p.exercise.context.energy['outdoor-load']).toBe('proven-dead');
    await p.type('fan section microfarads', 'one', 'look at the fan by hand', 'one', 'live');
    await p.type('ohms fan run to fan start on the bench', 'one', 'look at the fan by hand', 'one');
    expect(p.exercise.context.finding?.fault).toBe('fan-bearings-seized');
    await p.type(
      'fitted a quarter horse fan motor 230 volts',
      'covers are on',
      'live',
      'outdoor disconnect is back in',
      'thermostat is calling',
    );
    expect(p.exercise.unit.left).toEqual([]);
    expect(await p.type('look at the fan')).toMatch(/outdoor fan is turning/);
    await p.type('finish the visit', 'note that the trainee was called away');
    expect(lookBack(p.exercise).counts).toMatchObject({ harmful: 0, nearMisses: 0, needlessParts: 0, notProven: 1 });
  });
});
