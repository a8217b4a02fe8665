import type { RefrigerantCheck } from '../../../grammar/visit/events.ts';
import type { RefrigerantWork } from '../../../grammar/visit/facts.ts';
import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { judgeRefrigerant, pressureAt, REFRIGERANT_RULES } from '../../../grammar/visit/refrigerant-rules.ts';
import { isRefrigerantOpened, outdoorFahrenheit } from '../../../grammar/visit/refrigerant-work.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import type { Turn } from '../chart/turn.ts';
import { minutesLeft, type RefrigerantStep } from '../rules/refrigerant-plan.ts';

/** What a logged reading at the system comes to; `before` is what was known of the opened circuit without it. */
export function followRefrigerant(turn: Turn, { quantity, at, value }: Reading, before: RefrigerantWork): void {
  if (at[0] !== 'system' || typeof value !== 'number' || !isRefrigerantOpened(turn.context)) return;
  if (quantity === 'pressure') takePressure(turn, value, before);
  if (quantity === 'vacuum') takeVacuum(turn, value);
}

/** What was reported of an opened refrigerant circuit. */
export function followRefrigerantItem(turn: Turn, item: JobItemId): void {
  if (item === 'leak-found') turn.say('answer', SAY_OF_REFRIGERANT.leakFirst);
  if (item === 'vacuum-isolated' && isRefrigerantOpened(turn.context)) stand(turn, 'decay');
}

/** The timer of a standing test: whoever has moved on or begun again is not asked. */
export function endStanding(turn: Turn): void {
  const { refrigerantWork: work } = turn.context;
  const name: RefrigerantStep = work.isolatedAt === undefined ? 'testEnd' : 'decay';
  const standing = name === 'decay' ? work.stood === undefined : work.test !== undefined && !work.held;
  if (!standing || minutesLeft(name, turn.context) > 0) return;
  turn.say('answer', SAY_OF_REFRIGERANT.readAgain);
}

function takePressure(turn: Turn, psi: number, { held, test }: RefrigerantWork): void {
  if (held === true) return;
  if (test === undefined) return stand(turn, 'pressure-test');
  const { now } = turn.context;
  if (minutesLeft('testEnd', turn.context) > 0) return;
  const then = test.fahrenheit;
  const here = outdoorFahrenheit(turn.context);
  const expected = then === undefined || here === undefined ? test.psi : pressureAt(test.psi, then, here);
  judge(turn, 'pressure-test', Math.round((expected - psi) * 10) / 10, now.mono - test.mono);
}

function takeVacuum(turn: Turn, microns: number): void {
  const { refrigerantWork: work, now } = turn.context;
  if (work.isolatedAt === undefined) return judge(turn, 'evacuation', microns, 0);
  if (work.stood === true || minutesLeft('decay', turn.context) > 0) return;
  judge(turn, 'decay', microns, now.mono - work.isolatedAt);
}

function judge(turn: Turn, check: RefrigerantCheck, value: number, ms: number): void {
  const judged = judgeRefrigerant(check, value);
  turn.record({ type: 'refrigerant.judged', check, value, minutes: Math.round(ms / MS_A_MINUTE), judged });
  turn.say('answer', SAY_OF_REFRIGERANT.judged(check, value, judged.word));
}

function stand(turn: Turn, check: 'pressure-test' | 'decay'): void {
  const { minutes } = REFRIGERANT_RULES[check];
  turn.startTimer('refrigerant', minutes);
  turn.say('answer', SAY_OF_REFRIGERANT.standing(minutes));
}
