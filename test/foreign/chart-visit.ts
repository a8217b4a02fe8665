import type { Answer, AskedTest } from '../../client/practice/plant/answer-test.ts';
import { Dice } from '../../client/practice/plant/dice.ts';
import { type ForeignCase, unitOf } from '../../client/practice/plant/hidden-case.ts';
import { boilsAt } from '../../client/practice/plant/pressure-chart.ts';
import { type Job, WorkClock } from '../../client/practice/work-clock.ts';
import { listLines } from '../../client/terminal/diagnose-session.ts';
import { followChart } from '../simulator/branching-chart.ts';
import { type Conduct, ForeignTechnician } from './foreign-technician.ts';

const TESTS = new Map(
  (listLines() as (AskedTest & { readonly list: string })[]).filter((l) => l.list === 'test').map((t) => [t.id, t]),
);

/** The branching chart on the same case with the same technician, begun anew after each right repair. */
export function chartVisit(kase: ForeignCase, conduct: Conduct) {
  const { build, seed } = kase;
  const clock = new WorkClock();
  const dice = new Dice(seed + 29);
  const plate = {
    herm: build.plate.herm,
    fan: build.plate.fan,
    blower: build.plate.blower,
    valve: build.valve,
    subcool: build.plate.subcooling,
    twoStage: build.twoStage,
    dew: (psi: number) => boilsAt(build.refrigerant, psi),
    bubble: (psi: number) => boilsAt(build.refrigerant, psi),
  };
  let left = [...kase.hidden];
  while (left.length > 0) {
    const technician = new ForeignTechnician(unitOf(build, seed, left), conduct, dice);
    const known = new Map<string, Answer>();
    const named = followChart((id, again) => {
      if (known.has(id) && !again) return known.get(id) as never;
      const test = TESTS.get(id)!;
      const does = technician.does(test);
      if ('skip' in does) return undefined;
      clock.count(test as unknown as Job);
      known.set(id, does.reading);
      return does.reading as never;
    }, plate);
    const found = left.find((h) => (h.cause.called as readonly string[]).includes(named));
    if (!found) break;
    left = left.filter((h) => h !== found);
  }
  return { right: left.length === 0, tests: clock.tests, minutes: clock.minutes };
}
