import { describe, expect, it } from 'vitest';
import type { AskedTest } from '../../client/practice/plant/answer-test.ts';
import { drawSeverity } from '../../client/practice/plant/causes.ts';
import { Dice } from '../../client/practice/plant/dice.ts';
import { drawBuild } from '../../client/practice/plant/draw-plant.ts';
import { CAUSES_INSIDE, drawForeignCase, familyOf, unitOf } from '../../client/practice/plant/hidden-case.ts';
import { listLines } from '../../client/terminal/diagnose-session.ts';
import { FAULTS } from '../../grammar/vocabulary/faults.ts';
import { CAREFUL, ForeignTechnician } from './foreign-technician.ts';
import { interview } from './interview.ts';

const TESTS = (listLines() as (AskedTest & { list: string })[]).filter((l) => l.list === 'test');
const VOLTS = TESTS.filter((t) => t.function === 'volts').slice(0, 12);

const sample = (seed: number) => drawForeignCase(drawBuild(seed), seed, 'inside', 1);

describe('cases of the third simulator', () => {
  it('are the same for the same numbers, and others for others', () => {
    const readings = (seed: number) => {
      const { build, hidden } = sample(seed);
      const technician = new ForeignTechnician(unitOf(build, seed, hidden), CAREFUL, new Dice(seed));
      return TESTS.slice(0, 40).map((test) => technician.does(test));
    };
    expect(readings(5)).toEqual(readings(5));
    expect(readings(5)).not.toEqual(readings(6));
  });

  it('hide every fault of the list but the two open ends', () => {
    const called = new Set(CAUSES_INSIDE.flatMap((c) => c.called));
    const left = FAULTS.map((f) => f.id).filter((id) => !called.has(id));
    expect(left).toEqual(['nothing-wrong', 'something-else']);
    expect(CAUSES_INSIDE.every((c) => familyOf(c.id) !== undefined)).toBe(true);
  });

  it('are barely or entirely wrong more often than half wrong', () => {
    const dice = new Dice(3);
    const drawn = Array.from({ length: 3000 }, () => drawSeverity(dice));
    const between = (low: number, high: number) => drawn.filter((s) => s >= low && s <= high).length;
    expect(between(0, 0.1)).toBeGreaterThan(1.3 * between(0.45, 0.55));
    expect(between(0.9, 1)).toBeGreaterThan(2 * between(0.45, 0.55));
  });
});

describe('an unfriendly technician', () => {
  const { build, hidden } = sample(11);
  const unit = () => unitOf(build, 11, hidden);

  it('misreads in pairs: what goes wrong goes wrong once more, and then is noticed', () => {
    const technician = new ForeignTechnician(unit(), { ...CAREFUL, misread: 0.05 }, new Dice(2));
    const asked = TESTS.find((t) => t.id === 'volts-handler-supply')!;
    const volts = Array.from({ length: 600 }, () => {
      const does = technician.does(asked);
      return 'reading' in does ? Number(does.reading) : 0;
    });
    const usual = volts.toSorted((a, b) => a - b)[300]!;
    const runs = volts
      .map((v) => (Math.abs(v / usual - 1) > 0.03 ? 'x' : '.'))
      .join('')
      .match(/x+/g)!;
    expect(runs.length).toBeGreaterThan(10);
    // Here and there a slip comes out near the truth.
    expect(runs.filter((run) => run.length === 1).length).toBeLessThan(runs.length / 4);
    expect(runs.filter((run) => run.length === 2).length).toBeGreaterThan(runs.length / 2);
  });

  it('passes tests over, and never reaches a place that is closed to him', () => {
    const lazy = new ForeignTechnician(unit(), { ...CAREFUL, skips: 1 }, new Dice(4));
    expect(VOLTS.every((test) => 'skip' in lazy.does(test))).toBe(true);
    const shutOut = new ForeignTechnician(unit(), { ...CAREFUL, outOfReach: 1 }, new Dice(4));
    const closed = TESTS.filter((test) => 'skip' in shutOut.does(test)).map((t) => t.place);
    const open = TESTS.filter((test) => 'reading' in shutOut.does(test)).map((t) => t.place);
    expect(closed.some((place) => !open.includes(place))).toBe(true);
  });

  it('takes terminals for each other a whole visit long', () => {
    const asked = TESTS.find((t) => t.id === 'microfarads-fan')!;
    const reads = Array.from({ length: 60 }, (_, i) => {
      const swapping = new ForeignTechnician(unit(), { ...CAREFUL, swaps: 1 }, new Dice(i));
      return [swapping.does(asked), swapping.does(asked)].map((d) => ('reading' in d ? Number(d.reading) : -1));
    });
    const herm = reads.filter(([first, second]) => first! > 20 && second! > 20);
    expect(herm.length).toBeGreaterThan(2);
    expect(herm.length).toBeLessThan(30);
  });
});

describe('an interview', () => {
  const ask = (id: string) => JSON.stringify({ next: TESTS.find((t) => t.id === id), suspects: [], done: false });
  const line = (fault: string, probability: number, next?: string) =>
    JSON.stringify({
      ...JSON.parse(next ? ask(next) : '{"next":null,"done":true}'),
      suspects: [{ fault, probability }],
    });

  it('answers what is asked until it is done, and tells right from wrong by what was hidden', () => {
    const kase = sample(17);
    const truth = kase.hidden[0]!.cause.called[0]!;
    const heard: string[] = [];
    const talk = (fault: string) => ({
      first: line(fault, 0.4, 'volts-L1-L2'),
      hear: (said: string) => {
        heard.push(said);
        return line(fault, 0.97);
      },
    });
    expect(interview(talk(truth), kase, CAREFUL)).toMatchObject({ right: true, tests: 1, probability: 0.97 });
    expect(interview(talk('nothing-wrong'), kase, CAREFUL)).toMatchObject({ right: false, named: ['nothing-wrong'] });
    expect(heard.map((h) => Object.keys(JSON.parse(h)))).toEqual([['reading'], ['reading']]);
  });

  it('takes again what is refused, passes it over when it is refused twice, and tells it', () => {
    const answers = [
      '{"error":{"code":"bad-reading","message":"No."}}',
      '{"error":{"code":"bad-reading","message":"No."}}',
    ];
    const heard: string[] = [];
    const talk = {
      first: line('supply-low', 0.4, 'volts-L1-L2'),
      hear: (said: string) => {
        heard.push(said);
        return answers.shift() ?? line('supply-low', 0.5);
      },
    };
    const outcome = interview(talk, sample(17), CAREFUL);
    expect(heard.at(-1)).toBe('{"skip":true}');
    expect(outcome.refused).toHaveLength(1);
  });
});
